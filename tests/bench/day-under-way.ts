import type { Random } from '../../shared/plan/core/random.ts';
import type { Activity, Choice, DayProblem, DaySolution } from '../../shared/plan/day/problem.ts';

const MINUTE_S = 60;
/** What begins within this was told to somebody. */
const TOLD_S = 600;
const MOST_LONGER_MIN = 15;
const MOST_IDLE_MIN = 10;
const LAST_START_MIN = 120;

/** A day that is lived through: time goes by, what was to begin begins, and things take longer or shorter than planned, or begin late. */
export class DayUnderWay {
  readonly #day: DayProblem;
  readonly #random: Random;
  readonly #durationS: number[];
  readonly #begunS = new Map<number, number>();
  #plan: DaySolution;
  #nowS: number;

  /** @param plan the day's first plan. The day begins within two hours of it. */
  constructor(day: DayProblem, plan: DaySolution, random: Random) {
    this.#day = day;
    this.#plan = plan;
    this.#random = random;
    this.#durationS = day.activities.map(({ durationS }) => durationS);
    this.#nowS = random.below(LAST_START_MIN) * MINUTE_S;
  }

  get plan(): DaySolution {
    return this.#plan;
  }

  get isOver(): boolean {
    return this.#begunS.size === this.#day.activities.length;
  }

  hasBegun(activity: number): boolean {
    return this.#begunS.has(activity);
  }

  /** Goes on by so many seconds: the day as it stands then, with nothing amiss. */
  goOn(seconds: number): DayProblem {
    this.#nowS += seconds;
    for (const [index, startS] of this.#plan.startsS.entries()) {
      if (!this.#begunS.has(index) && startS <= this.#nowS) this.#begunS.set(index, startS);
    }
    return this.#asItStands();
  }

  /** Something takes longer, or is over already, or what was to begin does not: the day as it stands then. */
  disturb(): DayProblem {
    const running = [...this.#begunS].filter(([index, startS]) => startS + (this.#durationS[index] ?? 0) > this.#nowS);
    const kind = this.#random.share();
    const [index, startS] = running[this.#random.below(Math.max(1, running.length))] ?? [-1, 0];
    if (index >= 0 && kind < 0.6) this.#durationS[index] = (this.#durationS[index] ?? 0) + this.#minutes(MOST_LONGER_MIN) * MINUTE_S;
    else if (index >= 0 && kind < 0.8) this.#durationS[index] = Math.max(MINUTE_S, this.#nowS - startS);
    else this.#nowS += this.#minutes(MOST_IDLE_MIN) * MINUTE_S;
    return this.#asItStands();
  }

  /** Works by another plan from now on. */
  adopt(plan: DaySolution): void {
    this.#plan = plan;
  }

  #minutes(most: number): number {
    return 1 + this.#random.below(most);
  }

  #asItStands(): DayProblem {
    return { ...this.#day, activities: this.#day.activities.map(this.#activity), choices: this.#day.choices.map(this.#choice) };
  }

  readonly #activity = (activity: Activity, index: number): Activity => {
    const previousStartS = this.#plan.startsS[index] ?? null;
    const fixedStartS = this.#begunS.get(index) ?? null;
    return {
      ...activity,
      durationS: this.#durationS[index] ?? activity.durationS,
      releaseS: Math.max(activity.releaseS, this.#nowS),
      fixedStartS,
      previousStartS,
      isToldAlready: fixedStartS === null && previousStartS !== null && previousStartS < this.#nowS + TOLD_S,
    };
  };

  readonly #choice = (choice: Choice, index: number): Choice => {
    const isMade = this.#day.holds.some(({ on, from }) => 'choice' in on && on.choice === index && this.#begunS.has(from));
    const previousOption = this.#plan.options[index] ?? null;
    return { ...choice, previousOption, fixedOption: isMade ? previousOption : null };
  };
}
