import { randomBytes } from 'node:crypto';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import { boardRows, type Row } from '../../shared/floor/board.ts';
import { ID_BYTES, idFromBytes } from '../../shared/ids.ts';
import type { House } from '../../server/main/house.ts';
import type { StagedClocks } from './staged-clocks.ts';

const MINUTE_MS = 60_000;

/** Hands that follow the wall: each minute they answer what calls, one job a station at a time. */
export async function workThrough(house: House, clocks: StagedClocks, deviceId: string, minutes: number): Promise<void> {
  for (let minute = 0; minute < minutes; minute += 1) {
    clocks.advance(MINUTE_MS);
    for (const row of boardRows(house.floor.state, house.clock.nowMs())) await answer(house, deviceId, row);
  }
}

/** Lets time go by with nobody answering. */
export async function stepBack(house: House, clocks: StagedClocks, minutes: number): Promise<void> {
  clocks.advance(minutes * MINUTE_MS);
  await house.callNow();
}

async function answer(house: House, deviceId: string, row: Row): Promise<void> {
  const isOver = row.dueMs <= house.clock.nowMs();
  if (!isOver) return;
  const onStep = { workpieceId: row.workpieceId, stepId: row.stepId };
  // A judged step and bench work begin with a tap and end with another; the oven's door is one tap.
  const begins =
    row.startedMs === null && row.phase !== 'resting' && (row.verb === 'firstSpeed' || row.verb === 'shape' || row.verb === 'divide');
  await tap(house, deviceId, begins ? { type: 'startStep', ...onStep } : { type: 'finishStep', ...onStep });
}

/** One tap of a device, as the live hub would hand it on. Refusals are part of a day: a full oven waits a minute. */
export async function tap(house: House, deviceId: string, command: ClientCommand): Promise<void> {
  const commandId = idFromBytes(randomBytes(ID_BYTES));
  await house.floor.submit({ commandId, deviceId, stationId: null, command, tap: { agoMonotonicMs: 0, agoWallMs: 0 } });
}
