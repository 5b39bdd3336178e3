import type { KeepingKind } from '../documents/keeping.ts';
import { RULE_SETS, type RuleSet } from '../trade/holding-rules.ts';
import { holdingTime, type Control, type HoldingSpell, type PastLimit } from '../trade/holding-time.ts';
import { coolingLimit, coolingOf, type Cooling } from './cooling.ts';
import { spellsOf } from './holding-spells.ts';
import { keptCourses, type KeptCourse } from './kept-courses.ts';
import type { FloorState, Workpiece } from './state.ts';

const MINUTE_MS = 60_000;
/** It calls so long before its limit, and is late so long before: our choice, enough to use it, chill it or say what becomes of it. */
const CALL_MS = 30 * MINUTE_MS;
const LATE_MS = 10 * MINUTE_MS;

/** Why food passes its limit: as the rule counts time, or because it was not cooled as it asks. */
export type LimitWhy = PastLimit | 'cooling';

/** An instant from which food may not be used any more, as it stands. */
export interface HoldingLimit {
  /** By the rule set alone. */
  readonly ruleMs: number;
  /** With what somebody responsible has decided. */
  readonly limitMs: number;
  readonly why: LimitWhy;
  readonly clause: string;
}

/** Food that has to be kept, as it stands. Derived from facts alone; time changes nothing of it. */
export interface Holding {
  readonly kind: KeepingKind;
  readonly rules: RuleSet;
  /** Null while no time runs. */
  readonly limit: HoldingLimit | null;
  /** When somebody has to act, or to read it: some time before the limit, or at once where a cooling will not pass. */
  readonly callMs: number | null;
  readonly lateMs: number | null;
  /** How it cools; null where it does not come from the heat or the rule has no figures. */
  readonly cooling: Cooling | null;
  /** What has kept it, in minutes from `originMs`: of the food in it whose limit is the nearest. */
  readonly spells: readonly HoldingSpell[];
  readonly originMs: number;
}

/**
 * What the house's rule set says of the food in a workpiece, with its limit if nothing more is done. Of several the one whose limit is the
 * nearest counts; without any limit, the one that counts for longest. Null where nothing in it has to be kept, or it is not there yet.
 */
export function holdingOf(state: FloorState, workpiece: Workpiece): Holding | null {
  const house = state.house?.document;
  if (house === undefined || workpiece.finishedMs !== null) return null;
  const rules = RULE_SETS[house.ruleSet];
  const all = keptCourses(state, workpiece).map((course) => holdingOfCourse(state, rules, course, workpiece));
  const open = all.flatMap(({ holding, isOver }) => (isOver ? [] : [holding]));
  return open.reduce<Holding | null>((nearest, holding) => (nearest === null || isNearer(holding, nearest) ? holding : nearest), null);
}

function isNearer(one: Holding, other: Holding): boolean {
  const [ours, theirs] = [one, other].map(({ limit }) => limit?.limitMs ?? Number.POSITIVE_INFINITY) as [number, number];
  return ours === theirs ? one.originMs < other.originMs : ours < theirs;
}

/** `isOver`: it was heated through before it had passed any limit, and is food anew since. */
function holdingOfCourse(
  state: FloorState,
  rules: RuleSet,
  course: KeptCourse,
  workpiece: Workpiece,
): { readonly holding: Holding; readonly isOver: boolean } {
  const { spells, cooledMs } = spellsOf(state, rules, course);
  const cooling = coolingOf(state, rules, course, workpiece);
  const limits = [
    timeLimit(rules, course, spells),
    cooling === null ? notChilled(rules, course, cooledMs) : failedCooling(course, cooling),
  ];
  const limit = limits.reduce((a, b) => (a === null || (b !== null && b.limitMs < a.limitMs) ? b : a), null);
  const before = (ms: number): number => (limit === null ? Number.POSITIVE_INFINITY : Math.max(course.fromMs, limit.limitMs - ms));
  const cools = cooling === null || cooling.steps.at(-1)?.isSeen === true ? [] : coolingCalls(course, cooling);
  const callMs = Math.min(before(CALL_MS), ...cools);
  return {
    holding: {
      kind: course.kind,
      rules,
      limit,
      callMs: Number.isFinite(callMs) ? callMs : null,
      lateMs: limit === null ? null : before(LATE_MS),
      cooling,
      spells,
      originMs: course.fromMs,
    },
    isOver: course.toMs !== null && (limit === null || limit.limitMs >= course.toMs),
  };
}

/** By the rule's minutes: the instant is looked for from one spell to the next, since a later one may end or change what runs. */
function timeLimit(rules: RuleSet, course: KeptCourse, spells: readonly HoldingSpell[]): HoldingLimit | null {
  for (const [index, { fromMin }] of spells.entries()) {
    const { discardAtMin, pastLimit, clause } = holdingTime(rules, spells.slice(0, index + 1), fromMin);
    if (pastLimit !== null) return limitAt(course, Math.min(fromMin, discardAtMin ?? fromMin), pastLimit, clause);
    const nextMin = spells[index + 1]?.fromMin ?? Number.POSITIVE_INFINITY;
    if (discardAtMin !== null && discardAtMin <= nextMin) return limitAt(course, discardAtMin, 'time', clause);
  }
  return null;
}

/** Where the rule has no figures for cooling, what comes from the heat is in the cold by when hot food has to be gone: our reading of "as quickly as possible". */
function notChilled(rules: RuleSet, course: KeptCourse, cooledMs: number | null): HoldingLimit | null {
  if (!course.isHot || rules.cooling !== null) return null;
  const { discardMin, clause } = rules.outOfHot;
  const byMs = course.fromMs + discardMin * MINUTE_MS;
  return cooledMs !== null && cooledMs <= byMs ? null : limitAt(course, discardMin, 'cooling', clause);
}

function failedCooling(course: KeptCourse, cooling: Cooling): HoldingLimit | null {
  const failed = coolingLimit(cooling);
  return failed === null ? null : limitAt(course, (failed.limitMs - course.fromMs) / MINUTE_MS, 'cooling', failed.clause);
}

function limitAt({ fromMs, decidedUntilMs }: KeptCourse, atMin: number, why: LimitWhy, clause: string): HoldingLimit {
  const ruleMs = Math.round(fromMs + atMin * MINUTE_MS);
  return { ruleMs, limitMs: Math.max(ruleMs, decidedUntilMs), why, clause };
}

/** Some time before each step that nobody has read it through; and from the reading on that says that it will not pass. */
function coolingCalls({ fromMs }: KeptCourse, { steps, readings }: Cooling): readonly number[] {
  const lastMs = readings.at(-1)?.atMs;
  return steps.flatMap(({ byMs, isSeen, passes }) => {
    if (isSeen || byMs === null) return [];
    const atMs = Math.max(fromMs, byMs - CALL_MS);
    return passes || lastMs === undefined ? [atMs] : [Math.min(atMs, lastMs)];
  });
}

/** How long kept food has been out at an instant, for a mark. */
export interface HoldingMark {
  /** What keeps it now. */
  readonly control: Control;
  readonly outMin: number;
  readonly outSinceMs: number | null;
  /** Until when it may go back; null where it is there or may not. */
  readonly backByMs: number | null;
  readonly clause: string;
}

/** The mark of kept food at an instant. */
export function markAt({ rules, spells, originMs }: Holding, nowMs: number): HoldingMark {
  const nowMin = Math.max(0, (nowMs - originMs) / MINUTE_MS);
  const { outMin, outSinceMin, backByMin, clause } = holdingTime(rules, spells, nowMin);
  const atMs = (minutes: number | null): number | null => (minutes === null ? null : Math.round(originMs + minutes * MINUTE_MS));
  const control = spells.findLast(({ fromMin }) => fromMin <= nowMin)?.control ?? 'none';
  return { control, outMin, outSinceMs: atMs(outSinceMin), backByMs: atMs(backByMin), clause };
}

/** The limit of kept food where it has come by an instant; null while it may be used. */
export function limitCome({ limit }: Holding, atMs: number): HoldingLimit | null {
  return limit === null || atMs < limit.limitMs ? null : limit;
}

/** The same of a workpiece, with what it holds. */
export function pastLimitAt(
  state: FloorState,
  workpiece: Workpiece,
  atMs: number,
): { readonly holding: Holding; readonly limit: HoldingLimit } | null {
  const holding = holdingOf(state, workpiece);
  const limit = holding === null ? null : limitCome(holding, atMs);
  return holding === null || limit === null ? null : { holding, limit };
}
