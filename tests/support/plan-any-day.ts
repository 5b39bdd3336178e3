import type { Activity, DayProblem, DaySolution, Hold } from '../../shared/plan/day/problem.ts';
import { PRICES } from '../../shared/plan/day/problem.ts';
import { Random } from '../simulation/support/random.ts';
import { smallDay } from './plan-small-day.ts';

/**
 * A day like the small ones that are proved, and with what those leave out: times that are no round ones, decks whose idling costs, hands that
 * should be level, an order that comes first, tins that all loads of a dough take at once and give back one after another.
 */
export function anyDay(seed: number, batchCount: number): DayProblem {
  const random = new Random(seed, 'any day');
  const problem = smallDay(seed, batchCount);
  const jitterS = (): number => random.whole(-40, 40);
  return {
    ...problem,
    activities: problem.activities.map((one) => ({ ...one, durationS: one.durationS + jitterS() })),
    lags: problem.lags.map((one) => ({ ...one, mostS: one.mostS === null ? null : one.mostS + random.whole(0, 200) })),
    resources: [
      ...problem.resources.map((one) => ({
        ...one,
        kind: one.kind === 'hands' ? 'station' : one.kind,
        idlePrice: one.kind === 'deck' ? PRICES.idleMin : 0,
      })),
      { kind: 'vessel', id: 'tin', capacity: TINS, calendar: null, setupS: null, stateAtFirst: null, sharesOneState: false, idlePrice: 0 },
    ],
    holds: [...problem.holds, ...problem.goals.map((goal) => tins(problem, goal.activity, random.whole(1, MOST_TINS)))],
    goals: problem.goals.map((one) => ({ ...one, dueS: one.dueS + jitterS(), earlyPrice: PRICES.earlyMin, isFirst: random.chance(0.05) })),
  };
}

const TINS = 5;
/** Of one load; a dough has two loads at most. */
const MOST_TINS = 2;

/** From the first shaping of a dough until a load of it is out of the oven, and washed. */
function tins(problem: DayProblem, out: number, amount: number): Hold {
  const batch = problem.activities[out]?.batch;
  const shape = problem.activities.findIndex((one) => one.batch === batch && one.key.endsWith('|0|shape'));
  return {
    from: shape,
    fromEdge: 'start',
    to: out,
    toEdge: 'end',
    afterS: 300,
    on: { resource: problem.resources.length, amount },
    states: null,
  };
}

/** The same day with a plan in force: what it moves from there costs. */
export function following(problem: DayProblem, { startsS, options }: Pick<DaySolution, 'startsS' | 'options'>): DayProblem {
  return {
    ...problem,
    activities: problem.activities.map((one, index) => ({ ...one, previousStartS: startsS[index] ?? null })),
    choices: problem.choices.map((one, index) => ({ ...one, previousOption: options[index] ?? null })),
  };
}

/** Told, and not to be moved any more unless that is impossible: what begins so soon. */
const TOLD_S = 600;

/** The same day at an instant, its plan followed so far: what began stands, with what it took; nothing else begins before now. */
export function atNow(problem: DayProblem, solution: Pick<DaySolution, 'startsS' | 'options'>, nowS: number): DayProblem {
  const begun = (activity: number): boolean => (solution.startsS[activity] ?? 0) < nowS;
  const activities = problem.activities.map((one, index): Activity => {
    const startS = solution.startsS[index] ?? 0;
    if (begun(index)) return { ...one, fixedStartS: startS, previousStartS: startS, isToldAlready: false };
    return { ...one, releaseS: Math.max(one.releaseS, nowS), previousStartS: startS, isToldAlready: startS < nowS + TOLD_S };
  });
  const choices = problem.choices.map((one, index) => {
    const previousOption = solution.options[index] ?? null;
    const isTaken = problem.holds.some((hold) => 'choice' in hold.on && hold.on.choice === index && begun(hold.from));
    return { ...one, previousOption, fixedOption: isTaken ? previousOption : one.fixedOption };
  });
  return { ...problem, activities, choices };
}
