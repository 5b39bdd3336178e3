import { describe, expect, test } from 'vitest';
import type { CommandOf } from '../../shared/floor/commands.ts';
import { newestFormula } from '../../shared/floor/contents.ts';
import { Floor } from './support/floor.ts';
import { isLeft, LEAST_TIMES, marginMin, proposedMin, takesMinutes, withTarget } from '../../shared/records/lesson-rules.ts';
import { assert } from '../../shared/result.ts';
import { given } from './support/given.ts';
import { built, emptyFloor, MINUTE_MS } from './support/planned-house.ts';
import { SERVICE_DATE } from './support/harbour.ts';

const FOUND = { n: LEAST_TIMES, medianLow: 13, medianHigh: 15, estimate: 14.2 };

function taken(floor: Floor, formulaId: string, stepId: string, toMin: number): CommandOf<'adoptFormula'> {
  const formula = newestFormula(floor.state)(formulaId);
  assert(formula !== null, `no formula ${formulaId}`);
  const fromVersion = floor.state.formulaVersions[formulaId] ?? 0;
  return { type: 'adoptFormula', fromVersion, formula: { ...formula, method: withTarget(formula.method, stepId, toMin) } };
}

describe('LS5 when something is proposed', () => {
  test('eight times at least, and a median that is surely off by more than a minute and a tenth', () => {
    expect(proposedMin(FOUND, 10)).toBe(14);
    expect(proposedMin({ ...FOUND, n: LEAST_TIMES - 1 }, 10)).toBeNull();
    // Within a minute of the interval, or a tenth of what is assumed.
    expect(proposedMin(FOUND, 12)).toBeNull();
    expect(proposedMin(FOUND, 11.8)).toBe(14);
    expect(proposedMin(FOUND, 16)).toBeNull();
    expect(proposedMin(FOUND, 17)).toBe(14);
    expect(proposedMin({ ...FOUND, medianLow: 105, medianHigh: 108, estimate: 106 }, 100)).toBeNull();
    expect(proposedMin({ ...FOUND, medianLow: 111, medianHigh: 115, estimate: 113 }, 100)).toBe(113);
    expect([marginMin(3), marginMin(10), marginMin(60)]).toEqual([1, 1, 6]);
  });

  test('what is drawn back to where the document is proposes nothing; minutes are whole and never less than none', () => {
    expect(proposedMin({ ...FOUND, estimate: 10.4 }, 10)).toBeNull();
    expect(proposedMin({ ...FOUND, medianLow: -2, medianHigh: 0, estimate: -0.4 }, 5)).toBe(0);
  });

  test('what was left is offered again once it has moved, or the document says something else', () => {
    const left = { assumedMin: 10, foundMin: 14 };
    expect(isLeft(left, { fromMin: 10, toMin: 14 })).toBe(true);
    expect(isLeft(left, { fromMin: 10, toMin: 15 })).toBe(true);
    expect(isLeft(left, { fromMin: 10, toMin: 16 })).toBe(false);
    expect(isLeft(left, { fromMin: 8, toMin: 14 })).toBe(false);
  });

  test('minutes of bakes are their phases’, and what ripens goes by what was taught already', () => {
    expect(takesMinutes({ kind: 'hands' })).toBe(true);
    expect(takesMinutes({ kind: 'timed' })).toBe(true);
    expect(takesMinutes({ kind: 'bake' })).toBe(false);
    expect(takesMinutes({ kind: 'timed', ripening: { model: 'levain', referenceC: 25 } })).toBe(false);
  });
});

describe('LS6 what is taken over is the next version, and the plan goes by it', () => {
  const plannedMin = (floor: Floor): number => {
    floor.ok({
      type: 'planBatches',
      serviceDate: SERVICE_DATE,
      batches: [
        {
          formulaId: 'country',
          plannedStartMs: floor.nowMs + 60 * MINUTE_MS,
          grams: 9200,
          cuts: [{ productId: 'country-loaf', pieces: 10, grams: 9000 }],
        },
      ],
    });
    const tag = Object.values(floor.state.workpieces).find(
      ({ finishedMs, formulaId }) => finishedMs === null && formulaId === 'country',
    )?.tag;
    return built(floor).activity(`${tag ?? ''} turn-out`).durationS / 60;
  };

  test('a planned day takes the new minutes', () => {
    const before = emptyFloor();
    const assumed = newestFormula(before.state)('country')?.method.find(({ id }) => id === 'turn-out')?.minutes.target ?? 0;
    expect(plannedMin(before)).toBe(assumed);
    const floor = emptyFloor();
    floor.ok(taken(floor, 'country', 'turn-out', assumed + 11));
    expect(plannedMin(floor)).toBe(assumed + 11);
  });

  test('and so does the card of a dough that is begun then; one that runs keeps its own', () => {
    const floor = Floor.harbour();
    floor.ok(taken(floor, 'country', 'turn-out', 14));
    const batch = {
      formulaId: 'country',
      plannedStartMs: floor.nowMs,
      grams: 9200,
      cuts: [{ productId: 'country-loaf', pieces: 10, grams: 9000 }],
    };
    floor.ok({ type: 'planBatches', serviceDate: SERVICE_DATE, batches: [batch] });
    const [planned] = Object.values(floor.state.workpieces).filter(
      ({ formulaVersion, formulaId }) => formulaId === 'country' && formulaVersion === 2,
    );
    const minutes = (tag: string): number => {
      floor.bringTo(tag, 'turn-out');
      floor.ok({ type: 'startStep', workpieceId: floor.id(tag), stepId: 'turn-out' });
      const min = (floor.due(tag).dueMs - floor.nowMs) / MINUTE_MS;
      floor.finish(tag, 'turn-out');
      return min;
    };
    expect([minutes('C1'), minutes(planned?.tag ?? '')]).toEqual([3, 14]);
  });

  test('earliest and latest give way where they would no longer hold it between them, and nothing else changes', () => {
    const floor = emptyFloor();
    const method = newestFormula(floor.state)('country')?.method ?? [];
    const stand = method.find(({ kind, minutes }) => kind === 'timed' && minutes.latest !== undefined && minutes.earliest !== undefined);
    assert(stand !== undefined, 'a rest with both');
    const { earliest = 0, latest = 0 } = stand.minutes;
    const stepOf = (toMin: number): object | undefined => withTarget(method, stand.id, toMin).find(({ id }) => id === stand.id)?.minutes;
    expect(stepOf(earliest + 1)).toEqual({ earliest, target: earliest + 1, latest });
    expect(stepOf(latest + 5)).toEqual({ earliest, target: latest + 5, latest: latest + 5 });
    expect(stepOf(1)).toEqual({ earliest: 1, target: 1, latest });
    expect(withTarget(method, stand.id, 1).filter(({ id }) => id !== stand.id)).toEqual(method.filter(({ id }) => id !== stand.id));
    expect(withTarget(method, 'no-such-step', 1)).toEqual(method);
  });
});

describe('LS7 what is left is remembered', () => {
  const leave = (said: Partial<CommandOf<'leaveLesson'>> = {}): CommandOf<'leaveLesson'> => ({
    type: 'leaveLesson',
    subject: { kind: 'formula', id: 'country' },
    stepId: 'turn-out',
    assumedMin: 3,
    foundMin: 10,
    ...said,
  });

  test('as a fact with what was assumed and found; the last word on a step counts', () => {
    const floor = given()
      .when(() => leave())
      .thenTypes(['lessonLeft']);
    floor.ok(leave({ foundMin: 12 }));
    floor.ok(leave({ subject: { kind: 'product', id: 'country-loaf' }, stepId: 'bench-rest', assumedMin: 20, foundMin: 30 }));
    expect(floor.state.leftLessons).toEqual([
      { subject: { kind: 'formula', id: 'country' }, stepId: 'turn-out', assumedMin: 3, foundMin: 12, atMs: floor.nowMs },
      { subject: { kind: 'product', id: 'country-loaf' }, stepId: 'bench-rest', assumedMin: 20, foundMin: 30, atMs: floor.nowMs },
    ]);
  });

  test('not twice, not of what is not there, nor of what says something else by now', () => {
    given((floor) => floor.ok(leave()))
      .when(() => leave())
      .thenRefusal({ code: 'nothingChanges' });
    given()
      .when(() => leave({ subject: { kind: 'product', id: 'ghost' } }))
      .thenRefusal({ code: 'documentMissing', kind: 'product', id: 'ghost' });
    given()
      .when(() => leave({ stepId: 'lunch' }))
      .thenRefusal({ code: 'documentChanged', version: 1 });
    given((floor) => floor.ok(taken(floor, 'country', 'turn-out', 10)))
      .when(() => leave())
      .thenRefusal({ code: 'documentChanged', version: 2 });
  });

  test('of so many steps as the state keeps, the newest', () => {
    const floor = given()
      .when(() => leave())
      .thenTypes(['lessonLeft']);
    for (let n = 0; n < 220; n += 1)
      floor.record({
        type: 'lessonLeft',
        subject: { kind: 'formula', id: `formula-${n}` },
        stepId: 'mix',
        assumedMin: 1,
        foundMin: 4,
        atMs: floor.nowMs,
      });
    expect(floor.state.leftLessons.length).toBe(200);
    expect(floor.state.leftLessons.at(-1)?.subject.id).toBe('formula-219');
  });
});
