import { courseC } from '../trade/dough-course.ts';
import type { Verb } from '../documents/method.ts';
import { calledStep, dueOf, isHeld, promptAt, roleAt, type Due, type Phase } from './due.ts';
import type { Prompt } from './bake-phases.ts';
import type { CoreHeat } from './core-heat.ts';
import { limitCome } from './holding.ts';
import { isStronger, type Role } from './role.ts';
import { prepTimes } from './prep-due.ts';
import type { RuleSetName } from '../trade/holding-rules.ts';
import type { FloorState, Workpiece } from './state.ts';
import { stageOf, type Stage } from './stage.ts';
import { takesOf, type Take } from './takes.ts';
import { nameOf } from './way.ts';

const MINUTE_MS = 60_000;

/** One dough as wall and phone list it. */
export interface Row {
  readonly workpieceId: string;
  readonly tag: string;
  readonly name: string;
  readonly serviceDate: string;
  readonly role: Role;
  readonly phase: Phase;
  readonly stage: Stage;
  /** The step that a tap on this row is about. */
  readonly stepId: string;
  /** What to write: while a bake or a mix runs, that; otherwise what has to be done next. */
  readonly verb: Verb;
  /** A judged step is due: look, rather than do. */
  readonly isCheck: boolean;
  readonly check: string | null;
  readonly caution: string | null;
  readonly startedMs: number | null;
  readonly earliestMs: number;
  readonly dueMs: number;
  readonly lateMs: number;
  readonly lostMs: number | null;
  readonly isAtOnce: boolean;
  readonly heldUntilMs: number | null;
  /** When somebody said they heard the call that is out now; null where nobody has, or nothing calls. */
  readonly heardMs: number | null;
  readonly stationId: string | null;
  /** Whose it is: the stations that work on it, or that its method says should; empty where it is anybody's. */
  readonly stationIds: readonly string[];
  readonly pieces: number | null;
  readonly piecesDone: number | null;
  /** Pieces that were planned and are not there. */
  readonly shortPieces: number;
  /** Stations that work on it beside `stationId`. */
  readonly helperIds: readonly string[];
  /** The words by which this step may be left out. */
  readonly leaveOut: string | null;
  /** What is in the pot, and from when to when it is ripe; null for what is no living ferment. */
  readonly stock: {
    readonly grams: number;
    readonly seedG: number;
    readonly ripeFromMs: number | null;
    readonly ripeToMs: number | null;
  } | null;
  /** How a rest follows the warmth of its dough; null where its minutes count as they are. */
  readonly ripening: RowRipening | null;
  /** How the core of a bake goes toward its target; null where nobody has read it. */
  readonly core: CoreHeat | null;
  /** What the next phase of its bake asks for: the row counts down to that; null once the bake itself is due. */
  readonly prompt: RowPrompt | null;
  /** Food in it that has to be kept; null where there is none. */
  readonly holding: RowHolding | null;
  /** For a side prep: which dough it joins, when, and when it may be begun. */
  readonly joins: { readonly tag: string; readonly joinsMs: number | null; readonly notBeforeMs: number | null } | null;
  /** What the step takes of ferments and preps. */
  readonly takes: readonly Take[];
  readonly placeId: string | null;
}

/** What a row says of what its bake asks for, in the house's unit. */
export type RowPrompt = Prompt & { readonly unit: 'C' | 'F' };

/** What a row says of how its rest ripens. */
export interface RowRipening {
  /** How warm the dough is now, as far as anybody knows, in °C. */
  readonly doughC: number;
  /** What somebody last read of it, and when; null where its warmth is reckoned alone. */
  readonly read: { readonly celsius: number; readonly atMs: number } | null;
  readonly ripeMs: number;
  /** By how much it is ripe later (+) or earlier than by its minutes alone. */
  readonly byMin: number;
  /** It is due when it is ripe: no plan has it end elsewhere. More time that somebody gave counts on top. */
  readonly isDueByIt: boolean;
  /** When it may be ripe, where sane models differ. */
  readonly between: { readonly fromMs: number; readonly toMs: number } | null;
}

/** What a row says of food that has to be kept. */
export interface RowHolding {
  readonly ruleSet: RuleSetName;
  /** When it may not be used any more, if it stays as it is; null while no time runs. */
  readonly limitMs: number | null;
  /** Its limit has come, or will come soon: what it calls for is about that. */
  readonly isNear: boolean;
  /** Its limit has come: nothing uses it. */
  readonly isPast: boolean;
}

/** The row of one workpiece at an instant, or null once it is finished. */
export function rowOf(state: FloorState, workpieceId: string, nowMs: number): Row | null {
  const workpiece = state.workpieces[workpieceId];
  const due = workpiece === undefined ? null : dueOf(state, workpiece);
  return due === null ? null : toRow(state, due, nowMs);
}

/**
 * All open doughs, the most pressing first: being lost, late, called, running, and within a role by due time. Time
 * alone reorders nothing while no role changes, since all due times run down at one speed.
 */
export function boardRows(state: FloorState, nowMs: number): readonly Row[] {
  const rows: Row[] = [];
  for (const workpiece of Object.values(state.workpieces)) {
    const due = dueOf(state, workpiece);
    if (due !== null) rows.push(toRow(state, due, nowMs));
  }
  return rows.sort(byPressure);
}

function byPressure(a: Row, b: Row): number {
  if (a.role !== b.role) return isStronger(a.role, b.role) ? -1 : 1;
  return a.dueMs - b.dueMs || a.tag.localeCompare(b.tag, 'en', { numeric: true });
}

function toRow(state: FloorState, due: Due, nowMs: number): Row {
  const { workpiece, step, action } = due;
  const role = roleAt(due, nowMs);
  const prompt = promptAt(due, nowMs);
  const called = calledStep(due, nowMs);
  const life = workpiece.steps[step.id];
  const showsWork = role === 'running' && (step.kind === 'bake' || step.kind === 'judged') && due.phase !== 'planned';
  return {
    workpieceId: workpiece.id,
    tag: workpiece.tag,
    name: nameOf(state, workpiece),
    serviceDate: workpiece.serviceDate,
    role,
    phase: due.phase,
    stage: isPastLimit(due, nowMs) ? 'prep' : stageOf(state, due),
    stepId: called.id,
    verb: showsWork ? step.verb : action.verb,
    isCheck: due.phase === 'judging' && role !== 'running',
    check: prompt === null ? (action.check ?? null) : prompt.note,
    // Steam let out burns as it does when the load is taken out.
    caution: called.caution ?? action.caution ?? null,
    startedMs: due.startedMs,
    earliestMs: prompt?.dueMs ?? due.earliestMs,
    dueMs: prompt?.dueMs ?? due.dueMs,
    lateMs: prompt?.lateMs ?? due.lateMs,
    lostMs: due.lostMs,
    isAtOnce: due.isAtOnce,
    heldUntilMs: isHeld(workpiece, nowMs) ? workpiece.heldUntilMs : null,
    heardMs: workpiece.call?.heardMs ?? null,
    stationId: life?.stationId ?? step.station ?? null,
    stationIds: stationsOf(state, due),
    pieces: workpiece.pieces,
    // A count that was corrected downwards counts for what was said to be done before it too.
    piecesDone: workpiece.pieces === null ? (life?.piecesDone ?? null) : capped(life?.piecesDone ?? null, workpiece.pieces),
    shortPieces: Math.max(0, (workpiece.plannedPieces ?? 0) - (workpiece.pieces ?? 0)),
    helperIds: life?.helperIds ?? [],
    leaveOut: action.leaveOut ?? null,
    stock: stockOf(due),
    ripening: ripeningAt(due, life?.moreMin ?? 0, nowMs),
    core: due.core,
    prompt: prompt === null ? null : { ...prompt, unit: state.house?.document.units.temperature ?? 'C' },
    holding: holdingAt(due, nowMs),
    joins: joinsOf(state, workpiece),
    takes: takesOf(state, workpiece, action),
    placeId: workpiece.placeId,
  };
}

/** Those who are at it; before that, those that the step names by itself, by its hands or by its mixer. */
function stationsOf(state: FloorState, { workpiece, action }: Due): readonly string[] {
  const life = workpiece.steps[action.id];
  if (life?.status === 'started' && life.stationId !== null) return [life.stationId, ...life.helperIds];
  if (action.station !== undefined) return [action.station];
  const hands = action.claims.filter((claim) => claim.kind === 'hands').flatMap((claim) => claim.ids);
  if (hands.length > 0) return [...new Set(hands)];
  const mixerIds = new Set(action.claims.filter((claim) => claim.kind === 'mixer').flatMap((claim) => claim.ids));
  const mixers = state.kitchen?.document.mixers.filter((mixer) => mixerIds.has(mixer.id)) ?? [];
  return [...new Set(mixers.map((mixer) => mixer.station))];
}

function capped(pieces: number | null, most: number): number | null {
  return pieces === null ? null : Math.min(pieces, most);
}

function ripeningAt({ ripening, dueMs }: Due, moreMin: number, nowMs: number): RowRipening | null {
  if (ripening === null) return null;
  const { warmth, ripeMs, byMin, between } = ripening;
  const read = warmth.readings.at(-1);
  return {
    doughC: courseC(warmth.course, (nowMs - warmth.originMs) / MINUTE_MS),
    read: read === undefined ? null : { celsius: read.celsius, atMs: read.atMs },
    ripeMs,
    byMin,
    isDueByIt: Math.abs(dueMs - ripeMs - moreMin * MINUTE_MS) < MINUTE_MS,
    between,
  };
}

/** Food past its limit is told as such, wherever it stands: a dough goes over, a filling does not. */
function isPastLimit({ holding }: Due, nowMs: number): boolean {
  return holding !== null && limitCome(holding, nowMs) !== null;
}

function holdingAt({ holding }: Due, nowMs: number): RowHolding | null {
  if (holding === null) return null;
  return {
    ruleSet: holding.rules.name,
    limitMs: holding.limit?.limitMs ?? null,
    isNear: holding.callMs !== null && nowMs >= holding.callMs,
    isPast: limitCome(holding, nowMs) !== null,
  };
}

function stockOf(due: Due): Row['stock'] {
  const { workpiece, step, startedMs } = due;
  if (workpiece.stock === null) return null;
  const pins = workpiece.steps[step.id]?.pins ?? null;
  const isRipening = due.phase === 'resting' && startedMs !== null && pins !== null;
  return {
    grams: workpiece.grams,
    seedG: workpiece.stock.seedG,
    ripeFromMs: isRipening ? due.earliestMs : null,
    ripeToMs: isRipening
      ? (due.ripening?.latestMs ?? Math.round(startedMs + (pins.latestMin ?? pins.targetMin) * pins.factor * MINUTE_MS))
      : null,
  };
}

function joinsOf(state: FloorState, workpiece: Workpiece): Row['joins'] {
  if (workpiece.serves === null) return null;
  const served = state.workpieces[workpiece.serves.workpieceId];
  if (served === undefined) return null;
  const times = prepTimes(state, workpiece);
  return { tag: served.tag, joinsMs: times?.joinsMs ?? null, notBeforeMs: times?.notBeforeMs ?? null };
}
