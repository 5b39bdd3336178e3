import type { Activity, Choice, DayProblem, Goal, Hold, Lag, PlanResource } from '../../shared/plan/day/problem.ts';
import { Random } from '../simulation/support/random.ts';

/**
 * Small days in the shape of the trade, in steps of five minutes: two mixers with a change-over between doughs, hands with a break,
 * two decks that get hot and cool down, doughs that rest and prove between least and most, some in two loads. All numbers
 * are invented. Where a set-up stands between two states, it is never longer than a way round over a third (a change in
 * temperature takes as long as it takes), so that neighbours say all that pairs say.
 */

/** What a minute costs here is always a multiple of this, so that a solver with whole numbers can reckon with it. */
export const PRICE_STEP = 0.05;

/** Seconds of a step: everything here begins and lasts whole ones. */
const STEP_S = 300;

/** The same seed, the same day. */
export function smallDay(seed: number, batchCount: number): DayProblem {
  return new SmallDay(new Random(seed, `small day of ${batchCount}`)).make(batchCount);
}

const TEAM = 0;
const MIXERS = [1, 2] as const;
const DECKS = [3, 4] as const;
const TUBS = 5;
const PRICES = { spoil: 1000, late: 100, away: 1, stale: 3, early: 0.05 } as const;

class SmallDay {
  readonly #random: Random;
  readonly #activities: Activity[] = [];
  readonly #lags: Lag[] = [];
  readonly #choices: Choice[] = [];
  readonly #holds: Hold[] = [];
  readonly #goals: Goal[] = [];

  constructor(random: Random) {
    this.#random = random;
  }

  make(batchCount: number): DayProblem {
    const resources = this.#resources(batchCount);
    for (let batch = 0; batch < batchCount; batch += 1) this.#batch(batch);
    this.#setDues(batchCount);
    return {
      activities: this.#activities,
      lags: this.#lags,
      resources,
      choices: this.#choices,
      holds: this.#holds,
      goals: this.#goals,
      batchCount,
    };
  }

  #resources(batchCount: number): PlanResource[] {
    const random = this.#random;
    const plain = { calendar: null, setupS: null, stateAtFirst: null, sharesOneState: false, idlePrice: 0 };
    const hands = (batchCount > 5 ? 2 : 1) + (random.chance(0.3) ? 1 : 0);
    const breakS = random.whole(24, 36) * STEP_S;
    const isOpen = random.chance(0.5);
    const calendar = isOpen
      ? null
      : [
          { fromS: breakS, capacity: hands - 1 },
          { fromS: breakS + 4 * STEP_S, capacity: hands },
        ];
    const cleanS = random.pick([0, 2, 3]) * STEP_S;
    const [hotterS, coolerS] = [random.whole(1, 3) * STEP_S, random.whole(2, 4) * STEP_S];
    const heat = [0, 1, 2].map((from) => [0, 1, 2].map((to) => (to > from ? (to - from) * hotterS : (from - to) * coolerS)));
    return [
      { ...plain, kind: 'hands', id: 'team', capacity: hands, calendar },
      ...MIXERS.map((_, index) => ({
        ...plain,
        kind: 'mixer',
        id: `m${index}`,
        capacity: 1,
        setupS: [
          [0, 0],
          [cleanS, 0],
        ],
      })),
      ...DECKS.map((_, index) => ({
        ...plain,
        kind: 'deck',
        id: `d${index}`,
        capacity: random.whole(1, 2),
        setupS: heat,
        stateAtFirst: random.pick([null, 0, 1, 2]),
        sharesOneState: true,
      })),
      { ...plain, kind: 'vessel', id: 'tub', capacity: Math.max(2, Math.ceil(batchCount / 2)) },
    ];
  }

  #batch(batch: number): void {
    const random = this.#random;
    const heat = random.whole(0, 2);
    const mix = this.#mix(batch);
    const loads = random.chance(0.25) ? 2 : 1;
    const leastRest = random.whole(3, 6);
    const rest = leastRest + random.whole(0, 3);
    const times = { bake: random.whole(4, 8), prove: random.whole(5, 12) };
    let before: number | null = null;
    for (let load = 0; load < loads; load += 1) {
      const shape = this.#activity(batch, `b${batch}|0|${load}|shape`, random.whole(1, 3));
      this.#hands(shape);
      if (before === null) {
        this.#lag(mix, shape, leastRest, rest, rest + random.whole(0, 5));
        // A tub is washed before the next dough gets it.
        this.#holds.push({
          ...NO_STATE,
          from: mix,
          fromEdge: 'end',
          to: shape,
          toEdge: 'start',
          afterS: STEP_S,
          on: { resource: TUBS, amount: 1 },
        });
      } else this.#lag(before, shape, 0, null, null);
      before = shape;
      const out = this.#bake(batch, load, shape, heat, times);
      this.#want(`b${batch}|${load}`, out, times.bake + times.prove + rest);
    }
  }

  #mix(batch: number): number {
    const random = this.#random;
    const pinnedStartS = random.chance(0.1) ? random.whole(0, 36) * STEP_S : null;
    const mix = this.#activity(batch, `b${batch}|||mix`, random.whole(2, 3), random.chance(0.3) ? random.whole(0, 12) : 0, pinnedStartS);
    this.#hands(mix);
    const mixers = random.chance(0.7) ? MIXERS : [random.pick(MIXERS)];
    const mixer = this.#choice(mixers.map((resource) => ({ resource, price: 0 })));
    this.#hold(mix, mix, mixer, random.whole(0, 1));
    return mix;
  }

  #bake(
    batch: number,
    load: number,
    shape: number,
    heat: number,
    { bake, prove }: { readonly bake: number; readonly prove: number },
  ): number {
    const random = this.#random;
    const put = this.#activity(batch, `b${batch}|0|${load}|load`, 1);
    const out = this.#activity(batch, `b${batch}|0|${load}|out`, 1);
    this.#hands(put);
    this.#hands(out);
    this.#lag(shape, put, prove - random.whole(0, 2), prove, prove + random.whole(1, 5));
    this.#lag(put, out, bake, bake, bake + random.whole(0, 1));
    this.#hold(put, out, this.#choice(DECKS.map((resource, index) => ({ resource, price: index === 0 ? 0 : 0.5 }))), heat);
    return out;
  }

  /** When it is due is set at the end; until then `dueS` is how long it takes. */
  #want(key: string, activity: number, takes: number): void {
    const random = this.#random;
    this.#goals.push({
      key,
      activity,
      edge: 'end',
      dueS: takes * STEP_S,
      latePrice: PRICES.late * random.whole(1, 2),
      fresh: random.chance(0.4) ? { activity, edge: 'end', mostS: random.whole(6, 12) * STEP_S, price: PRICES.stale } : null,
      earlyPrice: PRICES.early,
      isFirst: false,
    });
  }

  /** Due about when a kitchen with this many doughs could have them, some before they can be. */
  #setDues(batchCount: number): void {
    const span = 12 + batchCount * 6;
    for (const [index, goal] of this.#goals.entries()) {
      const dueSteps = 6 + Math.round(goal.dueS / STEP_S) + this.#random.whole(0, span);
      this.#goals[index] = { ...goal, dueS: dueSteps * STEP_S };
    }
  }

  #activity(batch: number, key: string, duration: number, release = 0, pinnedStartS: number | null = null): number {
    const plain = { fixedStartS: null, previousStartS: null, isToldAlready: false };
    return this.#activities.push({ ...plain, key, batch, durationS: duration * STEP_S, releaseS: release * STEP_S, pinnedStartS }) - 1;
  }

  #choice(options: Choice['options']): number {
    return this.#choices.push({ options, fixedOption: null, previousOption: null }) - 1;
  }

  #lag(from: number, to: number, least: number, target: number | null, most: number | null): void {
    const secondsOf = (steps: number | null): number | null => (steps === null ? null : steps * STEP_S);
    this.#lags.push({
      from,
      fromEdge: 'end',
      to,
      toEdge: 'start',
      minS: least * STEP_S,
      mostS: secondsOf(most),
      targetS: secondsOf(target),
      awayPrice: PRICES.away,
      spoilPrice: PRICES.spoil,
    });
  }

  #hands(activity: number): void {
    this.#holds.push({ ...NO_STATE, ...whileItLasts(activity, activity), on: { resource: TEAM, amount: 1 } });
  }

  #hold(from: number, to: number, choice: number, state: number): void {
    const options = this.#choices[choice]?.options ?? [];
    this.#holds.push({
      ...whileItLasts(from, to),
      on: { choice, amounts: options.map(() => 1) },
      states: options.map(() => state),
    });
  }
}

const NO_STATE = { states: null } as const;

/** From the start of one to the end of another. */
function whileItLasts(from: number, to: number): Omit<Hold, 'on' | 'states'> {
  return { from, fromEdge: 'start', to, toEdge: 'end', afterS: 0 };
}
