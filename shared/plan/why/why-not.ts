import type { BuiltDay } from '../build/built-day.ts';
import type { DaySolution } from '../day/problem.ts';
import { causeKey, causeOf } from './cause-of.ts';
import { networkOf } from './day-network.ts';
import { familiesFor, type FamilyFacts, type Sought } from './families.ts';
import { leastThatHelps, type Outcome } from './least-change.ts';
import type { Cause, Change, Reason, Remedy, Trouble } from './reason.ts';
import { NOTHING_MIN, troublesOf, type FoundTrouble } from './troubles.ts';

/** Reasons that are told; more would not be read. */
const MOST_REASONS = 3;
/** Remedies that are shown for one of them. */
const MOST_REMEDIES = 4;
/** Tries that one kind of change may take. */
const TRIES_OF_A_KIND = 7;
/** So large a share of a trouble, and so many minutes at least, have to be gone for it to be clearly less. */
const CLEARLY_SHARE = 0.25;
const CLEARLY_MIN = 10;

/** What a day comes to with a change: minutes late by order, minutes by which doughs wait too long, and minutes off pins. */
export interface TriedDay {
  readonly lateMin: ReadonlyMap<string, number>;
  readonly spoilMin: number;
  readonly pinMin: number;
  /** The change as it was made, where the plan tells more of it than was asked: from when to when the hands are needed. */
  readonly change?: Change;
}

export interface WhyTools {
  /** Plans the day anew with a change, with as much search as there is time for; with none, as it stands. Null where it cannot be made. */
  readonly tryWith: (change: Change | null) => TriedDay | null;
  readonly orders: FamilyFacts['orders'];
  readonly nowMs: number;
  /** Most changes that are tried in all. */
  readonly tries: number;
}

/**
 * Why a day does not fit, and what would make it fit: troubles are followed back to what holds them, those with one cause told
 * as one, and changes about that are tried by planning the day anew, the least of each kind that makes it fit being sought.
 * What is named as a remedy was planned so, and left nothing of the trouble or clearly less, and the day as a whole no worse;
 * nothing is put down to a change that search alone would have found. Pure; deterministic where `tryWith` is.
 */
export function whyNot(built: BuiltDay, solution: DaySolution, tools: WhyTools): readonly Reason[] {
  const groups = toldOf(groupsOf(built, solution));
  if (groups.length === 0) return [];
  const before = tools.tryWith(null);
  if (before === null) return groups.map((sought): Reason => ({ ...sought, remedies: [] }));
  const facts = { built, solution, nowMs: tools.nowMs, orders: tools.orders };
  let left = tools.tries - 1;
  return groups.map((sought, index): Reason => {
    const share = Math.floor(left / (groups.length - index));
    const search = new RemedySearch(tools, before, sought, share);
    const remedies = search.run(facts);
    left -= search.tried;
    return { ...sought, remedies: [...remedies] };
  });
}

interface Groups {
  readonly late: readonly Group[];
  readonly spoils: readonly Group[];
  readonly pins: readonly Group[];
}

interface Group extends Sought {
  readonly trouble: Trouble;
  readonly also: Trouble[];
  readonly cause: Cause | null;
}

function groupsOf(built: BuiltDay, solution: DaySolution): Groups {
  const { late, spoils, pins } = troublesOf(built, solution);
  if (late.length + spoils.length + pins.length === 0) return { late: [], spoils: [], pins: [] };
  const network = networkOf(built.problem, solution);
  const grouped = (found: readonly FoundTrouble[]): readonly Group[] => {
    const groups = new Map<string, Group>();
    for (const [index, one] of found.entries()) {
      const cause = causeOf(built, solution, network, one);
      const key = causeKey(cause) ?? `${index}`;
      const group = groups.get(key);
      if (group === undefined) groups.set(key, { trouble: one.trouble, also: [], cause });
      else group.also.push(one.trouble);
    }
    return [...groups.values()];
  };
  return { late: grouped(late), spoils: grouped(spoils), pins: grouped(pins) };
}

/** The worst of each kind first, so that none hides another; then as many late orders, doughs and pins as there is room for. */
function toldOf({ late, spoils, pins }: Groups): readonly Group[] {
  const kinds = [late, spoils, pins];
  return [...kinds.flatMap((kind) => kind.slice(0, 1)), ...kinds.flatMap((kind) => kind.slice(1))].slice(0, MOST_REASONS);
}

interface Weighed extends Outcome {
  readonly day: TriedDay;
}

/** Seeks remedies for one trouble. */
class RemedySearch {
  readonly #tools: WhyTools;
  readonly #before: TriedDay;
  readonly #sought: Sought;
  readonly #most: number;
  tried = 0;

  constructor(tools: WhyTools, before: TriedDay, sought: Sought, most: number) {
    this.#tools = tools;
    this.#before = before;
    this.#sought = sought;
    this.#most = most;
  }

  run(facts: FamilyFacts): readonly Remedy[] {
    const found: { readonly remedy: Remedy; readonly fits: boolean }[] = [];
    const families = familiesFor(facts, this.#sought);
    for (const [index, { amounts, change }] of families.entries()) {
      let left = Math.min(TRIES_OF_A_KIND, Math.ceil((this.#most - this.tried) / (families.length - index)));
      const best = leastThatHelps(amounts, (amount) => {
        if (left === 0 || this.tried >= this.#most) return null;
        left -= 1;
        return this.#try(change(amount));
      });
      if (best !== null) found.push({ remedy: this.#remedy(best.tried.day, change(best.amount)), fits: best.tried.fits });
    }
    // Those that make it fit keep their order: what asks least of people comes first.
    const fit = found.filter(({ fits }) => fits);
    const rest = found.filter(({ fits }) => !fits).sort((a, b) => a.remedy.troubleLeftMin - b.remedy.troubleLeftMin);
    return [...fit, ...rest].slice(0, MOST_REMEDIES).map(({ remedy }) => remedy);
  }

  /** A day that cannot be made leaves it as it was: it is no help, and no end of trying. */
  #try(change: Change): Weighed {
    this.tried += 1;
    const day = this.#tools.tryWith(change);
    const before = this.#before;
    if (day === null) return { day: before, fits: false, lessens: false, left: Infinity };
    const was = this.#troubleMin(before);
    const left = this.#troubleMin(day);
    const isNoWorse = this.#isNoWorse(day, before);
    const fits = isNoWorse && left < NOTHING_MIN && was >= NOTHING_MIN;
    return { day, fits, lessens: isNoWorse && was - left >= Math.max(CLEARLY_MIN, was * CLEARLY_SHARE), left: left / was };
  }

  #remedy(day: TriedDay, change: Change): Remedy {
    const { trouble } = this.#sought;
    return {
      change: day.change ?? change,
      troubleLeftMin: trouble.kind === 'late' ? (day.lateMin.get(trouble.orderId) ?? 0) : this.#troubleMin(day),
      beforeMin: sum(this.#before.lateMin.values()),
      leftMin: sum(day.lateMin.values()),
    };
  }

  /** What there is of the trouble and of those with the same cause. */
  #troubleMin({ lateMin, spoilMin, pinMin }: TriedDay): number {
    const { trouble, also } = this.#sought;
    switch (trouble.kind) {
      case 'late':
        return sum([trouble, ...also].map((each) => (each.kind === 'late' ? (lateMin.get(each.orderId) ?? 0) : 0)));
      case 'spoils':
        return spoilMin;
      case 'pinBroken':
        return pinMin;
    }
  }

  /** Whether nothing else is the price: orders late as they weigh, doughs that wait too long, pins. */
  #isNoWorse(day: TriedDay, before: TriedDay): boolean {
    const late = ({ lateMin }: TriedDay): number =>
      sum([...lateMin].map(([orderId, minutes]) => minutes * (this.#tools.orders.get(orderId)?.weight ?? 1)));
    return (
      late(day) < late(before) + NOTHING_MIN && day.spoilMin < before.spoilMin + NOTHING_MIN && day.pinMin < before.pinMin + NOTHING_MIN
    );
  }
}

function sum(numbers: Iterable<number>): number {
  let total = 0;
  for (const number of numbers) total += number;
  return total;
}
