import { describe, expect, test } from 'vitest';
import type { Bar, DoughLine } from '../../display/day/sheet-bar.ts';
import { doughLines } from '../../display/day/sheet-lines.ts';
import type { SheetProposal } from '../../display/day/sheet-places.ts';
import type { PlannedStep } from '../../shared/floor/events.ts';
import { busyDay, naivePlan, triedDay, unplannedDay, withPlan } from '../browser/harness-day-sheet/sheet-stage.ts';
import { Floor } from './support/floor.ts';
import { OPENING_MS, SERVICE_DATE } from './support/harbour.ts';
import { idOf } from './support/ids.ts';

const MINUTE_MS = 60_000;

function lineOf(lines: readonly DoughLine[], tag: string): DoughLine {
  const found = lines.find((line) => line.tag === tag);
  if (found === undefined) throw new Error(`no line ${tag} among ${lines.map((line) => line.tag).join(', ')}`);
  return found;
}

function barOf(lines: readonly DoughLine[], tag: string, stepId: string): Bar {
  const found = lineOf(lines, tag).bars.find((bar) => bar.stepId === stepId);
  if (found === undefined) throw new Error(`${tag} has no ${stepId}`);
  return found;
}

/** Minutes after the day's opening. */
const minuteOf = (atMs: number): number => (atMs - OPENING_MS) / MINUTE_MS;

/** The plain harbour day with the plan of nobody's making. */
function planned(): Floor {
  return withPlan(Floor.harbour());
}

const linesOf = (floor: Floor, proposal: SheetProposal | null = null): readonly DoughLine[] =>
  doughLines(floor.state, proposal, floor.nowMs, null);

describe('I20 the sheet shows every step of every dough, what was, what is and what is planned', () => {
  test('what is planned stands where the plan has it', () => {
    const floor = planned();
    const lines = linesOf(floor);
    const steps = Object.values(floor.state.plan?.steps ?? {}).flat();
    const bars = lines.flatMap((line) => line.bars);
    expect(bars).toHaveLength(steps.length);
    for (const { workpieceId, cut, stepId, plannedStartMs, plannedEndMs } of steps) {
      const bar = bars.find((one) => one.ownerId === workpieceId && one.cut === (cut ?? null) && one.stepId === stepId);
      expect(bar, stepId).toMatchObject({ standing: 'planned', fromMs: plannedStartMs, toMs: plannedEndMs });
    }
  });

  test('what is done, and what runs, stands where it really was', () => {
    const floor = planned().wait(1);
    const first = floor.due('C1');
    floor.ok({ type: 'startStep', workpieceId: first.workpiece.id, stepId: first.step.id }, { stationId: 'mixer' });
    floor.wait(9).finish('C1');
    const next = floor.due('C1');
    floor.wait(2);
    floor.ok({ type: 'startStep', workpieceId: next.workpiece.id, stepId: next.step.id }, { stationId: 'mixer' });
    const lines = linesOf(floor);
    const done = barOf(lines, 'C1', first.step.id);
    expect([done.standing, minuteOf(done.fromMs), minuteOf(done.toMs)]).toEqual(['done', 1, 10]);
    const begun = barOf(lines, 'C1', next.step.id);
    expect([begun.standing, minuteOf(begun.fromMs)]).toEqual(['begun', 12]);
    expect(begun.toMs - begun.fromMs).toBe(next.step.minutes.target * MINUTE_MS);
  });

  test('what runs longer than it should lasts until now, not until it should have ended', () => {
    const floor = planned();
    const { workpiece, step } = floor.due('C1');
    floor.ok({ type: 'startStep', workpieceId: workpiece.id, stepId: step.id });
    floor.wait(45);
    expect(minuteOf(barOf(linesOf(floor), 'C1', step.id).toMs)).toBe(45);
  });

  test('a rest that runs lasts until what ends it is planned', () => {
    const floor = planned();
    floor.bringTo('C1', 'fold-1');
    const rest = floor.piece('C1').steps['bulk-1'];
    const plan = floor.state.plan?.steps[floor.id('C1')]?.find(({ stepId }) => stepId === 'fold-1');
    if (plan === undefined || rest === undefined) throw new Error('there is no fold');
    const later: PlannedStep = { ...plan, plannedStartMs: floor.nowMs + 25 * MINUTE_MS, plannedEndMs: floor.nowMs + 27 * MINUTE_MS };
    floor.record({ type: 'planAdopted', planId: idOf(801), isWhole: false, starts: [later], moved: [], warnings: [], atMs: floor.nowMs });
    const bar = barOf(linesOf(floor), 'C1', 'bulk-1');
    expect([bar.standing, bar.toMs]).toEqual(['begun', later.plannedStartMs]);
  });

  test('without a plan a dough goes on by its target times, its cuts from where it is divided', () => {
    const { state, nowMs } = unplannedDay();
    const lines = doughLines(state, null, nowMs, null);
    const cut = lines.find((line) => line.depth === 1 && line.bars[0]?.cut !== null);
    const root = lines.find((line) => line.key === `${cut?.bars[0]?.ownerId}||`);
    expect(cut?.bars[0]?.fromMs).toBe(root?.bars.at(-1)?.toMs);
    for (const { bars } of lines)
      bars.forEach((bar, index) => {
        if (index > 0 && bar.standing === 'planned') expect(bar.fromMs).toBe(Math.max(bars[index - 1]?.toMs ?? 0, nowMs));
      });
  });

  test('families stand together, by when they begin, the dough above what it becomes', () => {
    const { state, nowMs } = busyDay();
    const tags = doughLines(state, null, nowMs, null).map((line) => line.tag);
    const at = tags.indexOf('M1');
    expect(tags.slice(at, at + 3)).toEqual(['M1', 'M1a', 'M1b']);
    expect(tags.indexOf('O1')).toBeLessThan(tags.indexOf('C1'));
  });
});

describe('I21 how long a step may wait follows from the method', () => {
  test('after a rest: not beyond its latest, nor beyond what the step itself bears', () => {
    const lines = linesOf(planned());
    const bindsBy = new Set<'rest' | 'step'>();
    for (const { bars } of lines) {
      bars.forEach((bar, index) => {
        const rest = bars[index - 1];
        const { latest, target = 0 } = rest?.step.minutes ?? {};
        const { lost } = bar.step.toleranceMin;
        if (rest === undefined || (rest.step.kind !== 'timed' && rest.step.kind !== 'bake') || latest === undefined || lost === undefined)
          return;
        if (latest !== target + lost) bindsBy.add(latest < target + lost ? 'rest' : 'step');
        expect(((bar.latestStartMs ?? 0) - rest.fromMs) / MINUTE_MS, `${bar.tag} ${bar.stepId}`).toBe(Math.min(latest, target + lost));
      });
    }
    expect(bindsBy).toEqual(new Set(['rest', 'step']));
  });

  test('after work: as long as the step bears from then; where the method says nothing, as long as anybody likes', () => {
    const lines = linesOf(planned());
    const bars = lineOf(lines, 'C1').bars;
    const afterWork = bars.filter((_, index) => index > 0 && bars[index - 1]?.step.kind === 'hands');
    expect(afterWork.length).toBeGreaterThan(2);
    for (const bar of afterWork) {
      const before = bars[bars.indexOf(bar) - 1];
      const { lost } = bar.step.toleranceMin;
      expect(bar.latestStartMs).toBe(lost === undefined ? null : (before?.toMs ?? 0) + lost * MINUTE_MS);
    }
  });

  test('what is first in a cut waits for the dividing of its dough', () => {
    const lines = linesOf(planned());
    const divide = barOf(lines, 'M1', 'divide');
    const first = lineOf(lines, 'M1a').bars[0];
    expect(first?.latestStartMs).toBe(divide.toMs + (first?.step.toleranceMin.lost ?? 0) * MINUTE_MS);
  });

  test('what has begun waits for nothing', () => {
    const { state, nowMs } = busyDay();
    const bars = doughLines(state, null, nowMs, null).flatMap((line) => line.bars);
    const begun = bars.filter((bar) => bar.standing === 'begun' || bar.standing === 'done');
    expect(begun.length).toBeGreaterThan(5);
    expect(begun.every((bar) => bar.latestStartMs === null)).toBe(true);
  });
});

describe('I22 a plan for a dough follows it through its dividing', () => {
  test('the cuts show what was planned for them while they were one dough, and pins stay with them', () => {
    const floor = planned();
    const dough = floor.id('M1');
    const pin = {
      id: idOf(820),
      kind: 'startsAt',
      workpieceId: dough,
      cut: 0,
      stepId: 'load',
      startMs: OPENING_MS + 200 * MINUTE_MS,
    } as const;
    floor.record({ type: 'pinSet', pin, atMs: floor.nowMs });
    const before = linesOf(floor);
    const prove = barOf(before, 'M1a', 'prove');
    expect([prove.ownerId, prove.cut]).toEqual([dough, 0]);
    expect(barOf(before, 'M1a', 'load').pin).toEqual({ id: pin.id, startMs: pin.startMs });
    floor.bringTo('M1', 'divide').finish('M1');
    const after = linesOf(floor);
    const same = barOf(after, 'M1a', 'prove');
    expect([same.ownerId, same.cut, same.fromMs]).toEqual([floor.id('M1a'), null, prove.fromMs]);
    expect(barOf(after, 'M1a', 'load').pin).toEqual({ id: pin.id, startMs: pin.startMs });
    expect(after.filter((line) => line.tag === 'M1a')).toHaveLength(1);
  });
});

describe('I23 a day that is only tried is told from the plan that is kept', () => {
  test('what stays is planned, what is new is proposed, what moves says from where', () => {
    const { state, nowMs, proposal } = triedDay();
    if (proposal === null) throw new Error('nothing is tried');
    const moved = proposal.steps.find(({ batchKey, stepId }) => state.workpieces[batchKey]?.tag === 'R1' && stepId === 'weigh');
    if (moved === undefined) throw new Error('the rye is not in it');
    const steps = proposal.steps.map((step) =>
      step === moved
        ? { ...step, plannedStartMs: step.plannedStartMs + 15 * MINUTE_MS, plannedEndMs: step.plannedEndMs + 15 * MINUTE_MS }
        : step,
    );
    const lines = doughLines(state, { ...proposal, steps }, nowMs, null);
    const rye = barOf(lines, 'R1', 'weigh');
    expect([rye.standing, rye.wasMs, rye.fromMs]).toEqual(['proposed', moved.plannedStartMs, moved.plannedStartMs + 15 * MINUTE_MS]);
    expect(barOf(lines, 'R1', 'fill-bowl')).toMatchObject({ standing: 'planned', wasMs: null });
    // C1 to C3 and M1 are on the floor.
    expect(lineOf(lines, 'C4').bars.every((bar) => bar.standing === 'proposed' && bar.ownerId === 'country#1')).toBe(true);
    expect(lineOf(lines, 'M2b').name).toBe(lineOf(lines, 'M1b').name);
  });

  test('a pin that is only tried is shown where it is', () => {
    const { state, nowMs, proposal } = triedDay();
    if (proposal === null) throw new Error('nothing is tried');
    const ask = { ...proposal.ask, pins: [{ key: 'country#1|||weigh', startMs: nowMs + MINUTE_MS }] };
    const lines = doughLines(state, { ...proposal, ask }, nowMs, SERVICE_DATE);
    expect(barOf(lines, 'C4', 'weigh').pin).toEqual({ id: null, startMs: nowMs + MINUTE_MS });
  });

  test('what the last change of the plan moved says from where', () => {
    const floor = planned();
    const start = naivePlan(floor.state).find(({ workpieceId, stepId }) => workpieceId === floor.id('R1') && stepId === 'weigh');
    if (start === undefined) throw new Error('the rye is not weighed');
    const fromMs = start.plannedStartMs - 12 * MINUTE_MS;
    const moved = [{ workpieceId: start.workpieceId, stepId: 'weigh', fromMs, toMs: start.plannedStartMs }];
    floor.record({ type: 'planAdopted', planId: idOf(802), isWhole: false, starts: [start], moved, warnings: [], atMs: floor.nowMs });
    expect(barOf(linesOf(floor), 'R1', 'weigh').wasMs).toBe(fromMs);
  });
});
