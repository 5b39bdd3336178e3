import { describe, expect, it } from 'vitest';
import { isDisturbance, outdatesProposal } from '../../server/plan/disturbs.ts';
import { nextOverdueMs, OVERDUE_MS } from '../../server/plan/overdue.ts';
import type { FloorEvent, PlannedStep } from '../../shared/floor/events.ts';
import { Floor } from '../domain/support/floor.ts';
import { OPENING_MS, SERVICE_DATE } from '../domain/support/harbour.ts';
import { idOf } from '../domain/support/ids.ts';

const MINUTE_MS = 60_000;

/** A floor with a plan of these steps of C1: when each begins and how long it lasts, in minutes after the day began. */
function planned(steps: Readonly<Record<string, readonly [number, number]>>): Floor {
  const floor = Floor.harbour();
  const workpieceId = floor.id('C1');
  const starts = Object.entries(steps).map(([stepId, [afterMin, lastsMin]]): PlannedStep => {
    const plannedStartMs = OPENING_MS + afterMin * MINUTE_MS;
    return { workpieceId, stepId, plannedStartMs, plannedEndMs: plannedStartMs + lastsMin * MINUTE_MS, resources: [] };
  });
  floor.record({ type: 'planAdopted', planId: idOf(4711), isWhole: true, starts, moved: [], warnings: [], atMs: floor.nowMs });
  return floor;
}

/** Minutes after the day began at which the next thing counts as late; null where nothing is planned. */
function overdueMin(floor: Floor): number | null {
  const overdueMs = nextOverdueMs(floor.state);
  return overdueMs === null ? null : (overdueMs - OVERDUE_MS - OPENING_MS) / MINUTE_MS;
}

describe('what is late to happen', () => {
  it('E12 is a step that waits, from its planned start; nothing where there is no plan', () => {
    expect(overdueMin(Floor.harbour())).toBeNull();
    expect(overdueMin(planned({ weigh: [30, 10], 'fill-bowl': [40, 5] }))).toBe(30);
  });

  it('E12 is a step that is worked on, from the end that is expected of it, more time counted in', () => {
    const floor = planned({ weigh: [30, 10], 'fill-bowl': [45, 5] }).wait(20);
    floor.ok({ type: 'startStep', workpieceId: floor.id('C1'), stepId: 'weigh' });
    expect(overdueMin(floor)).toBe(30);
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'weigh', minutes: 25 });
    expect(overdueMin(floor)).toBe((floor.due('C1').dueMs - OPENING_MS) / MINUTE_MS);
    expect(overdueMin(floor)).toBeGreaterThan(40);
  });

  it('E12 is a rest, from when the step that ends it is planned to begin', () => {
    const floor = planned({ 'bulk-1': [100, 60], 'fold-1': [160, 3] }).bringTo('C1', 'fold-1');
    expect(floor.due('C1').phase).toBe('resting');
    expect(overdueMin(floor)).toBe(160);
  });
});

describe('what has the plan looked at again', () => {
  it('E11 is what can change times: not calls and weighing, nor the plan itself as it follows the floor', () => {
    const floor = planned({ weigh: [30, 10] });
    const workpieceId = floor.id('C1');
    floor.ok({ type: 'startStep', workpieceId, stepId: 'weigh' });
    expect(floor.recorded.filter(({ event }) => event.type === 'stepStarted').map(({ event }) => isDisturbance(event))).toEqual([true]);
    floor.until(floor.due('C1').lateMs);
    floor.raiseCalls();
    const calls = floor.recorded.filter(({ event }) => event.type === 'callRaised');
    expect(calls.length).toBeGreaterThan(0);
    expect(calls.some(({ event }) => isDisturbance(event))).toBe(false);
    const plan = (isWhole: boolean): FloorEvent => ({
      type: 'planAdopted',
      planId: idOf(1),
      isWhole,
      starts: [],
      moved: [],
      warnings: [],
      atMs: 0,
    });
    expect([plan(false), plan(true)].map(isDisturbance)).toEqual([false, true]);
  });

  it('E10 and a day that was proposed is outdated by other things: orders and batches of its own date', () => {
    const planEvents = Floor.harbour().recorded.filter(({ event }) => event.type === 'workpiecePlanned');
    expect(planEvents.every(({ event }) => outdatesProposal(event, SERVICE_DATE))).toBe(true);
    expect(planEvents.some(({ event }) => outdatesProposal(event, '2026-03-08'))).toBe(false);
  });
});
