import fc from 'fast-check';
import { expect } from 'vitest';
import { refusalSchema } from '../../../shared/floor/refusals.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { Floor } from './floor.ts';
import { bringInCommand, OPENING_MS } from './harbour.ts';
import { SERVER_DEVICE } from './ids.ts';
import { deedArbitrary, meant, type Deed, type Meant } from './random-day.ts';
import { houseFile } from './random-house.ts';

/** What happens on a day, and in which house: doughs only, the demo house, or one that is made by the number. */
export interface Day {
  readonly house: number;
  readonly deeds: readonly Deed[];
}

export const days: fc.Arbitrary<Day> = fc.record({
  house: fc.nat(1_000_000),
  deeds: fc.array(deedArbitrary, { minLength: 20, maxLength: 120, size: 'max' }),
});

/** What is looked at after each command. */
export type Watch = (floor: Floor, before: FloorState, given: Meant, commandId: string, isAccepted: boolean) => void;

/** A house with its day brought in. */
export function openedHouse(house: number): Floor {
  const floor = new Floor();
  floor.ok(bringInCommand(houseFile(house), OPENING_MS), { deviceId: SERVER_DEVICE });
  return floor;
}

/** Lives a random day of two phones and a server. Every refusal has its shape. */
export function liveDay({ house, deeds }: Day, watch: Watch = () => {}): Floor {
  const floor = openedHouse(house);
  const lastOf = new Map<string, string>();
  for (const deed of deeds) {
    const given = meant(floor, deed, lastOf);
    if (given === null) continue;
    const before = floor.state;
    const { deviceId, tapMs, stationId } = given;
    const { commandId, decision } = floor.give(given.command, { deviceId, tapMs, stationId });
    if (decision.ok) lastOf.set(deviceId, commandId);
    else expect(refusalSchema.safeParse(decision.fault).error).toBeUndefined();
    watch(floor, before, given, commandId, decision.ok);
  }
  return floor;
}
