import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { versionKey } from '../../shared/floor/state.ts';
import { positionOf, wayOf } from '../../shared/floor/way.ts';
import type { BuiltDay, StepOf } from '../../shared/plan/build/built-day.ts';
import type { Floor } from './support/floor.ts';
import { days, liveDay } from './support/live-day.ts';
import { built } from './support/planned-house.ts';

/** What is wrong with a problem as such: what it names is not there, or it cannot be kept by anybody. */
function malformed({ problem, steps }: BuiltDay): readonly string[] {
  const { activities, resources, choices, lags, holds, goals } = problem;
  const faults: string[] = [];
  const claim = (isRight: boolean, what: string): void => {
    if (!isRight) faults.push(what);
  };
  claim(steps.length === activities.length, 'a step for every activity');
  claim(new Set(activities.map(({ key }) => key)).size === activities.length, 'keys are unique');
  for (const { key, durationS, batch, releaseS } of activities)
    claim(durationS >= 0 && Number.isInteger(durationS) && Number.isInteger(releaseS) && batch < problem.batchCount, `numbers of ${key}`);
  for (const { from, to, minS, mostS, targetS } of lags) {
    claim(from !== to && activities[from] !== undefined && activities[to] !== undefined, `ends of lag ${from}-${to}`);
    claim((mostS === null || mostS >= minS) && [minS, mostS ?? 0, targetS ?? 0].every(Number.isInteger), `lag ${from}-${to}`);
  }
  for (const { from, to, on, states } of holds) {
    const options = 'choice' in on ? (choices[on.choice]?.options ?? []) : [{ resource: on.resource }];
    const amounts = 'choice' in on ? on.amounts : [on.amount];
    claim(activities[from] !== undefined && activities[to] !== undefined, `ends of hold ${from}-${to}`);
    claim(
      options.length === amounts.length && options.length > 0 && (states === null || states.length === options.length),
      `options of hold ${from}-${to}`,
    );
    options.forEach(({ resource }, index) =>
      claim((amounts[index] ?? 0) <= (resources[resource]?.capacity ?? 0), `amount of hold ${from}-${to}`),
    );
  }
  for (const { activity, fresh } of goals)
    claim(activities[activity] !== undefined && (fresh === null || activities[fresh.activity] !== undefined), `goal of ${activity}`);
  return faults;
}

/** Every step that is not over of everything on the floor, and of what it is still to be divided into: once. */
function missing(floor: Floor, { steps, rests }: BuiltDay): readonly string[] {
  const isThere = new Map<string, number>();
  const count = ({ workpieceId, stepId, cut, load, productId }: StepOf): void => {
    const key = `${workpieceId} ${cut ?? ''} ${productId !== null && load !== undefined ? load : ''} ${stepId}`;
    isThere.set(key, (isThere.get(key) ?? 0) + 1);
  };
  for (const step of [...steps, ...rests]) if (step.status === 'ahead' || step.status === 'begun') count(step);
  const faults: string[] = [];
  for (const workpiece of Object.values(floor.state.workpieces).filter(({ finishedMs }) => finishedMs === null)) {
    const way = wayOf(floor.state, workpiece);
    const own = way.slice(positionOf(way, workpiece)).map(({ id }) => ({ cut: '', id }));
    const below = (workpiece.productId === null ? workpiece.cuts : []).flatMap(({ productId, productVersion }, cut) =>
      (floor.state.products[versionKey(productId, productVersion)]?.way ?? []).map(({ id }) => ({ cut: String(cut), id })),
    );
    for (const { cut, id } of [...own, ...below]) {
      const whole = isThere.get(`${workpiece.id} ${cut}  ${id}`) ?? 0;
      const inLoads = [...isThere].filter(
        ([key]) => key.startsWith(`${workpiece.id} ${cut} `) && key.endsWith(` ${id}`) && key.split(' ')[2] !== '',
      );
      const isFeed = workpiece.stock !== null;
      if (isFeed ? whole < 1 : whole + Math.min(1, inLoads.length) !== 1 || inLoads.some(([, times]) => times !== 1))
        faults.push(`${workpiece.tag} ${cut} ${id}`);
    }
  }
  return faults;
}

describe('Z18 any day that a floor can come to is a problem', () => {
  test('well formed, with every step that is ahead in it once', () => {
    let looked = 0;
    fc.assert(
      fc.property(days, (day) => {
        liveDay(day, (floor) => {
          if (floor.state.sequence % 20 !== 0) return;
          const made = built(floor).day;
          expect([malformed(made), missing(floor, made)]).toEqual([[], []]);
          looked += 1;
        });
      }),
      { numRuns: 8, seed: 11 },
    );
    expect(looked).toBeGreaterThan(5);
  });
});
