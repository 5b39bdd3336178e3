import { describe, expect, test } from 'vitest';
import type { CommandOf } from '../../shared/floor/commands.ts';
import { Floor } from './support/floor.ts';
import { bringInCommand, harbourFile, OPENING_MS, SERVICE_DATE } from './support/harbour.ts';
import { derivedId } from '../../shared/ids.ts';
import { idOf, SERVER_DEVICE } from './support/ids.ts';

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;
const NEXT_DATE = '2026-03-08';

function harbourDay(): CommandOf<'bringInDay'> {
  return bringInCommand(harbourFile(), OPENING_MS);
}

function nextDay(): CommandOf<'bringInDay'> {
  return bringInCommand(harbourFile(), OPENING_MS + DAY_MS, NEXT_DATE);
}

describe('D14 a day is brought in once, and what changed becomes the next version', () => {
  test('documents first, then the day, then its batches in the order of their starts', () => {
    const floor = Floor.harbour();
    const types = floor.recorded.map(({ event }) => event.type);
    expect(types).toEqual([
      'houseAdopted',
      'kitchenAdopted',
      'ingredientsAdopted',
      ...Array<string>(5).fill('formulaAdopted'),
      ...Array<string>(7).fill('productAdopted'),
      'dayOpened',
      ...Array<string>(9).fill('workpiecePlanned'),
    ]);
    expect(floor.state).toMatchObject({
      serviceDate: SERVICE_DATE,
      openDates: [SERVICE_DATE],
      house: { version: 1 },
      kitchen: { version: 1 },
    });
  });

  test('batches are numbered formula by formula, in the order of their starts, whatever their order in the file', () => {
    const command = harbourDay();
    const floor = new Floor();
    floor.ok({ ...command, batches: [...command.batches].reverse() });
    const planned = Object.values(floor.state.workpieces).map(
      (workpiece) => `${workpiece.tag}@${(workpiece.plannedStartMs - OPENING_MS) / MINUTE_MS}`,
    );
    expect(planned).toEqual(['C1@0', 'R1@5', 'M1@20', 'C2@46', 'O1@50', 'O2@76', 'Ch1@95', 'C3@125', 'R2@160']);
  });

  test('their ids are derived from the command, so that whoever decides it names the same workpieces', () => {
    const floor = new Floor();
    floor.ok(harbourDay(), { commandId: idOf(42) });
    expect([floor.id('C1'), floor.id('R1')]).toEqual([derivedId(idOf(42), 0), derivedId(idOf(42), 1)]);
  });

  test('the same day twice is refused', () => {
    const floor = Floor.harbour();
    expect(floor.give(harbourDay()).decision).toEqual({ ok: false, fault: { code: 'dayAlreadyOpen', serviceDate: SERVICE_DATE } });
  });

  test('the next day with the same documents adopts none of them again', () => {
    const floor = Floor.harbour();
    const before = floor.recorded.length;
    floor.ok(nextDay(), { deviceId: SERVER_DEVICE });
    expect(floor.recorded.slice(before).map(({ event }) => event.type)).toEqual([
      'dayOpened',
      ...Array<string>(9).fill('workpiecePlanned'),
    ]);
    expect(floor.state.openDates).toEqual([SERVICE_DATE, NEXT_DATE]);
  });

  test('documents that say the same in another order of keys are the same', () => {
    const floor = Floor.harbour();
    const command = nextDay();
    const { name, ...house } = command.house;
    const { decision } = floor.give({ ...command, house: { ...house, name } });
    expect(decision.ok && decision.value.some((event) => event.type === 'houseAdopted')).toBe(false);
  });

  test('a formula that changed is a new version; what runs keeps the one it began with', () => {
    const floor = Floor.harbour();
    floor.finish('C1', 'weigh');
    const command = nextDay();
    const formulas = command.formulas.map((formula) =>
      formula.id === 'country'
        ? { ...formula, method: formula.method.map((step) => (step.id === 'first-speed' ? { ...step, minutes: { target: 5 } } : step)) }
        : formula,
    );
    floor.ok({ ...command, formulas, batches: command.batches.slice(0, 1) }, { deviceId: SERVER_DEVICE });
    const [old, fresh] = Object.values(floor.state.workpieces).filter((workpiece) => workpiece.tag === 'C1');
    expect([
      old?.formulaVersion,
      fresh?.formulaVersion,
      floor.state.formulaVersions['country'],
      floor.state.formulaVersions['rye'],
    ]).toEqual([1, 2, 2, 1]);
    floor.ok({ type: 'finishStep', workpieceId: old?.id ?? '', stepId: 'fill-bowl' });
    expect(floor.state.workpieces[old?.id ?? '']?.steps['first-speed']?.pins?.targetMin).toBe(4);
    floor.ok({ type: 'discardWorkpiece', workpieceId: old?.id ?? '', reason: 'makes room in the mixer' });
    for (const stepId of ['weigh', 'fill-bowl']) floor.ok({ type: 'finishStep', workpieceId: fresh?.id ?? '', stepId });
    expect(floor.state.workpieces[fresh?.id ?? '']?.steps['first-speed']?.pins?.targetMin).toBe(5);
  });

  test('a changed house is pinned by its version from then on', () => {
    const floor = Floor.harbour();
    const command = nextDay();
    floor.ok({ ...command, house: { ...command.house, altitudeM: 900 } }, { deviceId: SERVER_DEVICE });
    expect(floor.state.house).toMatchObject({ version: 2, document: { altitudeM: 900 } });
    const workpiece = Object.values(floor.state.workpieces).find((candidate) => candidate.serviceDate === NEXT_DATE);
    floor.ok({ type: 'startStep', workpieceId: workpiece?.id ?? '', stepId: 'weigh' });
    expect(floor.state.workpieces[workpiece?.id ?? '']?.steps['weigh']?.pins?.houseVersion).toBe(2);
  });

  test('a batch of a formula or product that is not there is refused, and nothing is taken in', () => {
    const command = harbourDay();
    const floor = new Floor();
    const ghost = { formulaId: 'ghost', plannedStartMs: OPENING_MS, grams: 1, cuts: [] };
    expect(floor.give({ ...command, batches: [ghost] }).decision).toEqual({
      ok: false,
      fault: { code: 'documentMissing', kind: 'formula', id: 'ghost' },
    });
    const cuts = [{ productId: 'ghost', pieces: 1, grams: 1 }];
    expect(floor.give({ ...command, batches: [{ ...ghost, formulaId: 'country', cuts }] }).decision).toEqual({
      ok: false,
      fault: { code: 'documentMissing', kind: 'product', id: 'ghost' },
    });
    expect(floor.state.house).toBeNull();
  });

  test('a day that is closed is no longer open', () => {
    const floor = Floor.harbour();
    floor.record({ type: 'dayClosed', serviceDate: SERVICE_DATE, carriedOver: [] });
    expect(floor.state.openDates).toEqual([]);
  });
});
