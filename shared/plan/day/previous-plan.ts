import { NO_INSTANT_S, type CompiledDay } from './compiled-day.ts';
import type { DayCost } from './problem.ts';
import type { DaySearch } from './day-search.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** The start of an activity that the plan before did not have. */
export const NOT_PLANNED_S = -(2 ** 31);

/** Where a plan had everything, by activity and by choice. */
export interface PreviousPlan {
  readonly startsS: Int32Array;
  readonly options: Int32Array;
  /** What it cost when it was adopted, if somebody still knows: then what costs more now is a disturbance, too. */
  readonly cost?: Pick<DayCost, 'spoil' | 'late' | 'pins'>;
}

/** Where the plan before had each block: by the first of its activities; NO_INSTANT_S where it had none of them. */
export function previousStarts(day: CompiledDay, { startsS }: PreviousPlan): Int32Array {
  const blockS = new Int32Array(day.count).fill(NO_INSTANT_S);
  for (let activity = 0; activity < day.blocks.of.length; activity += 1) {
    const block = day.blocks.of[activity] as number;
    const startS = startsS[activity] ?? NOT_PLANNED_S;
    if (startS !== NOT_PLANNED_S && blockS[block] === NO_INSTANT_S) blockS[block] = startS - (day.blocks.offsetS[activity] as number);
  }
  return blockS;
}

/** Whether all that stands fast stands where the plan before had it. */
export function wentAsPlanned(day: CompiledDay, previous: PreviousPlan): boolean {
  return day.problem.activities.every(({ fixedStartS }, index) => {
    const plannedS = previous.startsS[index] ?? NOT_PLANNED_S;
    return plannedS !== NOT_PLANNED_S && (fixedStartS === null || fixedStartS === plannedS);
  });
}

/**
 * Puts everything where the plan before had it, if resources, calendars, set-ups, minimum lags and releases all allow it; else leaves the
 * plan as it was. Whether it did.
 */
export function putAsBefore(search: DaySearch, previous: PreviousPlan): boolean {
  const { day, plan, costs } = search;
  const mark = plan.mark;
  if (!isWhole(day, previous)) return false;
  choosePrevious(search, previous);
  const startS = previousStarts(day, previous);
  for (let block = 0; block < day.count; block += 1) {
    if (plan.stands[block] === 1) continue;
    if (!search.settler.fitsAt(block, startS[block] as number)) {
      costs.undoTo(mark);
      return false;
    }
    plan.put(block, startS[block] as number);
  }
  costs.refreshSince(mark);
  return true;
}

/** Makes the choices as the plan before had them, where there still is room for that. */
export function choosePrevious({ day, plan }: DaySearch, { options }: PreviousPlan): void {
  for (let choice = 0; choice < day.problem.choices.length; choice += 1) {
    const isHeld = (day.blocksOfChoice[choice] as Int32Array).some((block) => plan.stands[block] === 1);
    const option = options[choice] as number;
    if (!isHeld && (day.optionsOf[choice] as Int32Array).includes(option)) plan.choose(choice, option);
  }
}

/** Whether it had everything, with each block's activities as far apart as they must be, and every choice made as it can be. */
function isWhole(day: CompiledDay, previous: PreviousPlan): boolean {
  const blockS = previousStarts(day, previous);
  const isEachInPlace = day.problem.activities.every(({ fixedStartS }, index) => {
    const startS = previous.startsS[index] ?? NOT_PLANNED_S;
    const block = day.blocks.of[index] as number;
    return fixedStartS !== null || startS === (blockS[block] as number) + (day.blocks.offsetS[index] as number);
  });
  return isEachInPlace && day.optionsOf.every((options, choice) => options.includes(previous.options[choice] as number));
}
