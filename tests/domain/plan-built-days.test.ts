import { describe, expect, test } from 'vitest';
import { buildDay } from '../../shared/plan/build/build-day.ts';
import { stepsOf } from '../../shared/plan/build/proposed-steps.ts';
import { solveDay } from '../../shared/plan/day/solve-day.ts';
import { batchesFor } from '../../shared/plan/orders/batches-for.ts';
import { assert } from '../../shared/result.ts';
import { costFaults } from '../support/plan-cost.ts';
import { dayFaultsOf, type Manned } from '../support/plan-day-validator.ts';
import { harbourOrders, harbourState, NIGHT_MS, strictKitchen } from '../support/plan-harbour-day.ts';
import { faultsOf } from '../support/plan-validator.ts';

const HOUR_MS = 3_600_000;

/** Everybody all day, and the bench with a break at seven for half an hour. */
const MANNED: readonly Manned[] = [
  {},
  {
    bench: [
      { fromMs: NIGHT_MS, toMs: NIGHT_MS + 5 * HOUR_MS },
      { fromMs: NIGHT_MS + 5.5 * HOUR_MS, toMs: NIGHT_MS + 30 * HOUR_MS },
    ],
  },
];

describe('X10 from orders to a plan that the kitchen can follow', () => {
  test.each([1, 2, 3, 4, 5, 25, 37])('the harbour bakehouse with a morning of orders, number %i', (seed) => {
    const orders = harbourOrders(seed, 3 + (seed % 9));
    const state = seed % 2 === 0 ? harbourState(orders) : harbourState(orders, strictKitchen());
    const proposed = batchesFor(state, orders, NIGHT_MS);
    assert(proposed.ok, 'these orders can be made');
    const manned = MANNED[seed % MANNED.length] ?? {};
    const built = buildDay({
      state,
      nowMs: NIGHT_MS,
      calendars: { stations: manned, cleanings: [] },
      proposed: proposed.value,
      calendarsEndMs: NIGHT_MS + 30 * HOUR_MS,
    });
    assert(built.ok, 'this day can be built');
    const solution = solveDay(built.value.problem, { schedules: 150, seed });
    expect(faultsOf(built.value.problem, solution)).toEqual([]);
    expect(costFaults(built.value.problem, solution)).toEqual([]);
    const faults = dayFaultsOf(state, stepsOf(built.value, solution), { proposed: proposed.value, manned });
    // Where the planner says that something waits longer than it bears, the kitchen finds it so; and only there.
    expect(faults.filter((fault) => !fault.startsWith('overstayed:'))).toEqual([]);
    if (solution.spoiled.length === 0) expect(faults).toEqual([]);
  });

  test('the check bites: of a plan without faults, whatever follows another step is found when it is begun an hour sooner', () => {
    const orders = harbourOrders(1, 4);
    const state = harbourState(orders);
    const proposed = batchesFor(state, orders, NIGHT_MS);
    assert(proposed.ok, 'these orders can be made');
    const built = buildDay({
      state,
      nowMs: NIGHT_MS,
      calendars: { stations: {}, cleanings: [] },
      proposed: proposed.value,
      calendarsEndMs: NIGHT_MS + 30 * HOUR_MS,
    });
    assert(built.ok, 'this day can be built');
    const steps = stepsOf(built.value, solveDay(built.value.problem, { schedules: 150, seed: 1 }));
    expect(dayFaultsOf(state, steps, { proposed: proposed.value })).toEqual([]);
    const firstMs = new Map<string, number>();
    for (const { batchKey, plannedStartMs } of steps) firstMs.set(batchKey, Math.min(plannedStartMs, firstMs.get(batchKey) ?? Infinity));
    const later = steps.filter(({ batchKey, plannedStartMs }) => plannedStartMs > (firstMs.get(batchKey) ?? 0));
    const unseen = later.filter((moved) => {
      const sooner = { ...moved, plannedStartMs: moved.plannedStartMs - HOUR_MS, plannedEndMs: moved.plannedEndMs - HOUR_MS };
      return (
        dayFaultsOf(
          state,
          steps.map((step) => (step === moved ? sooner : step)),
          { proposed: proposed.value },
        ).length === 0
      );
    });
    expect(later.length).toBeGreaterThan(20);
    expect(unseen).toEqual([]);
  });
});
