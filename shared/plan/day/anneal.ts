import type { Random } from '../core/random.ts';
import { JUST_IN_TIME } from './batch-inserter.ts';
import type { CompiledHold } from './compiled-holds.ts';
import { NO_INSTANT_S } from './compiled-day.ts';
import { OPEN } from './day-plan.ts';
import type { DaySearch, PlanCopy } from './day-search.ts';
import type { Manner } from './settler.ts';
import { freeBlocks, KEPT, shiftBlocks } from './shift-blocks.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** How much worse than the best a plan may be at first to go on with it: by a share of it, and by so much more. In the end it may not. */
export interface Warmth {
  readonly share: number;
  readonly minutes: number;
}

/** The search goes back to the best when it has found nothing better in so large a share of its schedules. */
const BACK_SHARE = 0.12;
/** Moves by chance go so far, mostly much less. */
const FARTHEST_S = 5400;
const WHIM_S = 1200;
const MOST_RUINED = 4;
const MOST_REWORKED = 8;
const MOST_RENEWED = 6;
/** Who had a resource so long before at most counts as in the way. */
const BEFORE_S = 3600;

/**
 * Ruins a part of the plan, makes it anew, and keeps what is better, or by chance what is a little worse while it is warm. Ends after so
 * many schedules. Gives the best; calls back after each schedule, with the plan if it is better than all before.
 */
export function anneal(
  search: DaySearch,
  schedules: number,
  warmth: Warmth,
  onDone?: (better: PlanCopy | null, schedulesDone: number) => void,
): PlanCopy {
  const { plan, costs, openBatches } = search;
  let best = search.copy();
  if (openBatches.length === 0) return best;
  let sinceBest = 0;
  for (let done = 0; done < schedules; done += 1) {
    const before = costs.total;
    const mark = plan.mark;
    const left = (1 - done / schedules) ** 2;
    const limit = Math.max(before, best.total * (1 + warmth.share * left) + warmth.minutes * left);
    const isMade = move(search, limit);
    if (!isMade || costs.total > limit) costs.undoTo(mark);
    plan.keep();
    sinceBest += 1;
    const isBest = costs.total < best.total - 1e-6;
    if (isBest) {
      best = search.copy();
      sinceBest = 0;
    } else if (sinceBest > Math.max(200, schedules * BACK_SHARE)) {
      search.load(best);
      sinceBest = 0;
    }
    onDone?.(isBest ? best : null, done + 1);
  }
  return best;
}

function move(search: DaySearch, limit: number): boolean {
  const kind = search.random.share();
  if (kind < 0.3) return remake(search, limit);
  if (kind < 0.42) return rework(search);
  if (kind < 0.48) return renew(search);
  if (kind < 0.6) return shift(search);
  if (kind < 0.75) return otherOption(search);
  return polish(search);
}

/** Takes some batches out that have to do with each other and puts them in again, in an order by chance; not once they cost too much. */
function remake(search: DaySearch, limit: number): boolean {
  const { inserter, random, plan, costs } = search;
  const first = costlyBatch(search);
  const count = 1 + random.below(MOST_RUINED);
  const ruined = [first];
  for (let more = 1; more < count; more += 1) {
    const next = neighbourOf(search, first);
    if (!ruined.includes(next)) ruined.push(next);
  }
  const mark = plan.mark;
  for (const batch of ruined) inserter.takeOut(batch);
  costs.refreshSince(mark);
  if (random.share() < 0.5) shuffle(ruined, search);
  for (const batch of ruined) {
    const tries = random.below(3);
    if (!inserter.insert(batch, manner(search), tries === 0 ? 0 : 1, tries !== 1)) return false;
    // What was put in roughly may cost too much only until each of its blocks is where it is best.
    if (costs.total > limit) smooth(search, [batch], mark);
    if (costs.total > limit) return false;
  }
  return true;
}

/** Takes up what is on one resource within a while, and what waits for it, and puts it down in another order. */
function rework(search: DaySearch): boolean {
  const { day, plan, settler, random, costs } = search;
  const blocks = freeBlocks(search, costlyBatch(search));
  const hold = anyOf(random, day.holdsOf[blocks[random.below(blocks.length)] as number] ?? []);
  const place = hold === null ? OPEN : plan.placeOf(hold);
  if (hold === null || place === OPEN) return polish(search);
  const resource = hold.resources[place] as number;
  const farS = Math.floor((0.2 + random.share()) * BEFORE_S);
  const fromS = plan.holdFromS(hold) - farS;
  const toS = plan.holdToS(hold) + farS;
  const lifted = new Set<number>();
  for (const other of day.holdsOn[resource] ?? []) {
    if (other.resources[plan.placeOf(other)] !== resource || plan.holdFromS(other) >= toS || plan.holdToS(other) <= fromS) continue;
    if (day.fixedS[other.from] === NO_INSTANT_S && lifted.size < MOST_REWORKED) lifted.add(other.from);
  }
  if (random.share() < 0.7) for (const block of lifted) addWaiting(search, block, lifted);
  const mark = plan.mark;
  const backS = random.share() < 0.3 ? 0 : Math.floor(random.share() ** 2 * FARTHEST_S);
  const keys = search.keys;
  settler.begin(keys);
  const isBlurred = random.share() < 0.8;
  for (const block of lifted) {
    const startS = plan.startS[block] as number;
    keys[block] = startS + (isBlurred ? Math.floor(random.share() * farS) : 0);
  }
  // In their order, so that the keys stand before the first of them waits.
  for (const block of lifted) settler.lift(block, (plan.startS[block] as number) - backS);
  if (random.share() < 0.5) for (const block of lifted) openChoices(search, block);
  const isSettled = settler.settle(random.share() < 0.5 ? { ...KEPT, whimS: WHIM_S } : manner(search));
  costs.refreshSince(mark);
  return isSettled;
}

/** Takes some batches up whole, moves one of them in their order, and puts all down again step by step, not batch by batch. */
function renew(search: DaySearch): boolean {
  const { day, plan, settler, random, costs, keys } = search;
  const first = costlyBatch(search);
  const chosen = new Set([first]);
  const count = 2 + random.below(MOST_RENEWED - 1);
  for (let more = 1; more < count; more += 1) chosen.add(neighbourOf(search, first));
  const blocks = [...chosen].flatMap((batch) => freeBlocks(search, batch));
  const byS = Math.floor(random.share() ** 2 * FARTHEST_S) * (random.share() < 0.5 ? 1 : -1);
  const backS = random.share() < 0.5 ? 0 : Math.floor(random.share() ** 2 * BEFORE_S);
  const blurS = random.share() < 0.5 ? 1 : Math.floor(random.share() * BEFORE_S) + 1;
  const mark = plan.mark;
  settler.begin(keys);
  const likes = blocks.map((block) => (plan.startS[block] as number) + (day.batchOf[block] === first ? byS : -backS));
  for (const [index, block] of blocks.entries()) keys[block] = (likes[index] as number) + random.below(blurS);
  for (const [index, block] of blocks.entries()) settler.lift(block, likes[index]);
  if (random.share() < 0.5) for (const block of blocks) openChoices(search, block);
  const isSettled = settler.settle({ ...KEPT, whimS: random.share() < 0.5 ? WHIM_S : 0 });
  costs.refreshSince(mark);
  if (isSettled) smooth(search, [...chosen], mark);
  return isSettled;
}

/** Holds batches back and moves their blocks, the last first, to where they cost least; all that changed since `mark` is taken into account. */
function smooth(search: DaySearch, batches: readonly number[], mark: number): void {
  const { plan, inserter, nudger, costs } = search;
  for (const batch of batches) inserter.holdBack(batch);
  const blocks = batches.flatMap((batch) => freeBlocks(search, batch));
  blocks.sort((one, other) => (plan.startS[other] as number) - (plan.startS[one] as number));
  for (const block of blocks) nudger.nudge(block);
  costs.refreshSince(mark);
}

function addWaiting({ day }: DaySearch, block: number, lifted: Set<number>): void {
  for (const lag of day.lags.outOf[block] as Int32Array) {
    const to = day.lags.to[lag] as number;
    if (day.fixedS[to] === NO_INSTANT_S && day.batchOf[to] === day.batchOf[block]) lifted.add(to);
  }
}

function openChoices({ day, plan }: DaySearch, block: number): void {
  for (const choice of day.choicesOf[block] as Int32Array) {
    if ((day.blocksOfChoice[choice] as Int32Array).every((held) => plan.stands[held] === 0)) plan.choose(choice, OPEN);
  }
}

function anyOf<Item>(random: Random, list: readonly Item[]): Item | null {
  return list[random.below(Math.max(1, list.length))] ?? null;
}

function manner({ random }: DaySearch): Manner {
  const kind = random.share();
  const aheadS = kind < 0.4 ? 0 : kind < 0.95 ? Math.floor(random.share() ** 2 * FARTHEST_S) : Infinity;
  return {
    ...JUST_IN_TIME,
    aheadS,
    isTight: random.share() < 0.2,
    isHeldBack: random.share() < 0.35,
    whimS: random.share() < 0.5 ? WHIM_S : 0,
  };
}

/** Moves a batch, or what of it comes after or before an instant, by so much; the rest gives way. */
function shift(search: DaySearch): boolean {
  const { plan, random } = search;
  const blocks = freeBlocks(search, random.share() < 0.5 ? costlyBatch(search) : anyBatch(search));
  const pivot = blocks[random.below(blocks.length)] as number;
  const pivotS = plan.startS[pivot] as number;
  const which = random.share();
  const byS = stepS(search, pivot);
  if (byS === 0) return false;
  return shiftBlocks(search, blocks, which < 0.4 ? 'whole' : which < 0.7 ? 'later' : 'earlier', pivotS, byS);
}

/** How far: to where a goal or a lag of the block is just kept, or anywhere. */
function stepS({ day, plan, random }: DaySearch, block: number): number {
  const startS = plan.startS[block] as number;
  const kind = random.share();
  const goals = day.goalsOf[block] as Int32Array;
  if (kind < 0.3 && goals.length > 0) {
    const goal = day.goals[goals[random.below(goals.length)] as number];
    if (goal !== undefined) return (goal.block === block ? goal.dueS : goal.notBeforeS) - startS;
  }
  const into = day.lags.into[block] as Int32Array;
  if (kind < 0.6 && into.length > 0) {
    const lag = into[random.below(into.length)] as number;
    const toS =
      (plan.startS[day.lags.from[lag] as number] as number) + Math.max(day.lags.minS[lag] as number, day.lags.targetS[lag] as number);
    if (toS !== startS) return toS - startS;
  }
  return Math.floor(random.share() ** 3 * FARTHEST_S) * (random.share() < 0.5 ? 1 : -1);
}

/** Another option for one choice; what hangs on it is put down anew near where it was. */
function otherOption(search: DaySearch): boolean {
  const { day, plan, settler, random, costs } = search;
  const count = day.problem.choices.length;
  if (count === 0) return polish(search);
  const choice = random.below(count);
  const options = day.optionsOf[choice] as Int32Array;
  const blocks = day.blocksOfChoice[choice] as Int32Array;
  if (options.length < 2 || blocks.some((block) => day.fixedS[block] !== NO_INSTANT_S) || plan.option[choice] === OPEN)
    return polish(search);
  const was = options.indexOf(plan.option[choice] as number);
  const mark = plan.mark;
  settler.begin(day.rank);
  const backS = random.share() < 0.5 ? 0 : Math.floor(random.share() ** 2 * FARTHEST_S);
  for (const block of blocks) settler.lift(block, (plan.startS[block] as number) - backS);
  plan.choose(choice, options[(was + 1 + random.below(options.length - 1)) % options.length] as number);
  const isSettled = settler.settle(KEPT);
  costs.refreshSince(mark);
  return isSettled;
}

/** Moves the blocks of a batch one by one to where they cost least. */
function polish(search: DaySearch): boolean {
  const { day, plan, nudger, random, costs } = search;
  const blocks = freeBlocks(search, random.share() < 0.7 ? costlyBatch(search) : anyBatch(search));
  const mark = plan.mark;
  if (random.share() < 0.3) search.inserter.holdBack(day.batchOf[blocks[0] as number] as number);
  const sign = random.share() < 0.7 ? -1 : 1;
  blocks.sort((one, other) => sign * ((day.rank[one] as number) - (day.rank[other] as number)));
  for (const block of blocks) nudger.nudge(block);
  costs.refreshSince(mark);
  return true;
}

function anyBatch({ openBatches, random }: DaySearch): number {
  return openBatches[random.below(openBatches.length)] as number;
}

/** The dearest of some drawn by chance. */
function costlyBatch(search: DaySearch): number {
  const draws = 1 + search.random.below(4);
  let best = anyBatch(search);
  let most = batchCost(search, best);
  for (let draw = 1; draw < draws; draw += 1) {
    const other = anyBatch(search);
    const cost = batchCost(search, other);
    if (cost > most) {
      best = other;
      most = cost;
    }
  }
  return best;
}

function batchCost({ day, costs }: DaySearch, batch: number): number {
  let sum = 0;
  for (const block of day.blocksOfBatch[batch] as Int32Array) sum += costs.ofBlock(block);
  return sum;
}

/** A batch that had a resource shortly before the given one, or has it at once with it; any other where there is none. */
function neighbourOf({ day, plan, random, openBatches }: DaySearch, batch: number): number {
  const blocks = day.blocksOfBatch[batch] as Int32Array;
  const holds = day.holdsOf[blocks[random.below(blocks.length)] as number] as readonly CompiledHold[];
  const hold = holds[random.below(Math.max(1, holds.length))];
  const place = hold === undefined ? OPEN : plan.placeOf(hold);
  if (hold === undefined || place === OPEN) return openBatches[random.below(openBatches.length)] as number;
  const resource = hold.resources[place] as number;
  const fromS = plan.holdFromS(hold) - Math.floor(random.share() * BEFORE_S);
  const toS = plan.holdToS(hold);
  let found = -1;
  let count = 0;
  for (const other of day.holdsOn[resource] ?? []) {
    const otherBatch = day.batchOf[other.from] as number;
    if (otherBatch === batch || other.resources[plan.placeOf(other)] !== resource) continue;
    if (plan.holdFromS(other) >= toS || plan.holdToS(other) <= fromS) continue;
    count += 1;
    if (random.below(count) === 0) found = otherBatch;
  }
  return found >= 0 && openBatches.includes(found) ? found : (openBatches[random.below(openBatches.length)] as number);
}

function shuffle(list: number[], { random }: DaySearch): void {
  for (let at = list.length - 1; at > 0; at -= 1) {
    const other = random.below(at + 1);
    const kept = list[at] as number;
    list[at] = list[other] as number;
    list[other] = kept;
  }
}
