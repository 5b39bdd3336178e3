import { describe, expect, it } from 'vitest';
import { stationCalendar, verbWords } from '../../server/plan/station-calendar.ts';
import type { PlannedStep } from '../../shared/floor/events.ts';
import { Floor } from '../domain/support/floor.ts';
import { OPENING_MS, SERVICE_DATE } from '../domain/support/harbour.ts';
import { idOf } from '../domain/support/ids.ts';

const MINUTE_MS = 60_000;
const BENCH = { kind: 'station', id: 'bench' } as const;

/** A step of ten minutes at the bench, so many minutes after the day began. */
function atBench(given: Pick<PlannedStep, 'workpieceId' | 'stepId'> & Partial<PlannedStep>, afterMin: number): PlannedStep {
  const plannedStartMs = OPENING_MS + afterMin * MINUTE_MS;
  return { plannedStartMs, plannedEndMs: plannedStartMs + 10 * MINUTE_MS, resources: [BENCH], ...given };
}

function adopt(floor: Floor, starts: readonly PlannedStep[], isWhole = true): void {
  floor.record({
    type: 'planAdopted',
    planId: idOf(4711 + floor.recorded.length),
    isWhole,
    starts: [...starts],
    moved: [],
    warnings: [],
    atMs: floor.nowMs,
  });
}

function gist(floor: Floor, date = SERVICE_DATE): readonly (readonly [string, number, number])[] {
  return stationCalendar(floor.state, 'bench', date).map(({ summary, startMs, endMs }) => [
    summary,
    (startMs - OPENING_MS) / MINUTE_MS,
    (endMs - startMs) / MINUTE_MS,
  ]);
}

describe("a station's plan as a calendar", () => {
  it('E5 has the steps of its hands on that production day, in order of time, and no others', () => {
    const floor = Floor.harbour();
    const rye = floor.state.workpieces[floor.id('R1')]?.id ?? '';
    adopt(floor, [
      atBench({ workpieceId: floor.id('C1'), stepId: 'fold-2' }, 150),
      atBench({ workpieceId: floor.id('C1'), stepId: 'fold-1' }, 100),
      atBench({ workpieceId: rye, stepId: 'divide', resources: [{ kind: 'station', id: 'oven' }] }, 90),
      atBench({ workpieceId: rye, stepId: 'bulk', resources: [] }, 60),
    ]);
    expect(gist(floor)).toEqual([
      ['FOLD C1', 100, 10],
      ['FOLD C1', 150, 10],
    ]);
    expect(gist(floor, '2026-03-08')).toEqual([]);
    expect(stationCalendar(Floor.harbour().state, 'bench', SERVICE_DATE)).toEqual([]);
  });

  it('E5 says with what, and the check that ends it', () => {
    const floor = Floor.harbour();
    const resources = [BENCH, { kind: 'mixer', id: 'spiral' }, { kind: 'deck', id: 'top' }] as const;
    adopt(floor, [atBench({ workpieceId: floor.id('C1'), stepId: 'divide', resources: [...resources] }, 100)]);
    const [divide] = stationCalendar(floor.state, 'bench', SERVICE_DATE);
    expect(divide?.location).toBe('Spiral, Top');
    expect(divide?.description).toMatch(/^10 × /);
  });

  it('E5 keeps the id of an entry when its step is moved, and has what has begun where it began', () => {
    const floor = Floor.harbour();
    const weigh = { workpieceId: floor.id('C1'), stepId: 'weigh' };
    adopt(floor, [atBench(weigh, 20)]);
    const [before] = stationCalendar(floor.state, 'bench', SERVICE_DATE);
    adopt(floor, [atBench(weigh, 35)], false);
    const [moved] = stationCalendar(floor.state, 'bench', SERVICE_DATE);
    expect([moved?.uid, moved?.startMs]).toEqual([before?.uid, OPENING_MS + 35 * MINUTE_MS]);
    floor.wait(40);
    floor.ok({ type: 'startStep', workpieceId: weigh.workpieceId, stepId: 'weigh' });
    expect(gist(floor)).toEqual([['WEIGH C1', 40, 10]]);
    floor.wait(4);
    floor.ok({ type: 'finishStep', workpieceId: weigh.workpieceId, stepId: 'weigh' });
    expect(gist(floor)).toEqual([['WEIGH C1', 40, 4]]);
    expect(stationCalendar(floor.state, 'bench', SERVICE_DATE)[0]?.uid).toBe(before?.uid);
  });

  it('E5 has a cut under the same id before and after its dough is divided, by its own tag from then on, and once', () => {
    const floor = Floor.harbour();
    const buns = floor.id('M1');
    adopt(floor, [
      atBench({ workpieceId: buns, cut: 0, stepId: 'round' }, 200),
      atBench({ workpieceId: buns, cut: 1, stepId: 'shape' }, 220),
    ]);
    const before = stationCalendar(floor.state, 'bench', SERVICE_DATE);
    expect(before.map(({ summary }) => summary)).toEqual(['ROUND M1', 'SHAPE M1']);
    floor.bringTo('M1', 'divide');
    floor.finish('M1', 'divide');
    const custard = floor.piece('M1b');
    adopt(floor, [atBench({ workpieceId: custard.id, stepId: 'shape' }, 240)], false);
    const after = stationCalendar(floor.state, 'bench', SERVICE_DATE);
    expect(after.map(({ uid }) => uid)).toEqual(before.map(({ uid }) => uid));
    expect(after.map(({ summary, startMs }) => [summary, (startMs - OPENING_MS) / MINUTE_MS])).toEqual([
      ['ROUND M1a', 200],
      ['SHAPE M1b', 240],
    ]);
  });

  it('E5 has nothing of what was skipped', () => {
    const floor = Floor.harbour();
    adopt(floor, [atBench({ workpieceId: floor.id('C1'), stepId: 'weigh' }, 20)]);
    floor.ok({ type: 'skipStep', workpieceId: floor.id('C1'), stepId: 'weigh', reason: 'weighed yesterday' });
    expect(gist(floor)).toEqual([]);
  });

  it.each([
    ['fold', 'FOLD'],
    ['firstSpeed', 'FIRST SPEED'],
    ['takeOut', 'TAKE OUT'],
  ] as const)('E5 writes the verb %s as %s', (verb, words) => {
    expect(verbWords(verb)).toBe(words);
  });
});
