import { endsByNext, targetMin, type Step } from '../documents/method.ts';
import { assert } from '../result.ts';
import type { CallLevel, StepPins } from './events.ts';
import { feedsAsPlanned } from './planned-feeds.ts';
import { holdingOf, type Holding } from './holding.ts';
import { plannedStepOf } from './planned-step.ts';
import { prepDueMs } from './prep-due.ts';
import { promptOf, type Prompt } from './bake-phases.ts';
import { coreHeatOf, type CoreHeat } from './core-heat.ts';
import { ripeningOf, type Ripening } from './ripening.ts';
import type { FloorState, StepLife, Workpiece } from './state.ts';
import type { Role } from './role.ts';
import { positionOf, wayOf } from './way.ts';

const MINUTE_MS = 60_000;

/**
 * planned: the first step waits for its planned start. waiting: the step could begin now. working: hands are on it.
 * judging: it runs until its check is passed. resting: it waits, in a rest or in the oven.
 */
export type Phase = 'planned' | 'waiting' | 'working' | 'judging' | 'resting';

/** Where one workpiece stands and when it wants hands. Derived from the state; never stored. */
export interface Due {
  readonly workpiece: Workpiece;
  readonly phase: Phase;
  /** The step that stands first on the way. */
  readonly step: Step;
  /** The step that the call is for: in a rest, the one that ends it. Commands name this one. */
  readonly action: Step;
  readonly startedMs: number | null;
  /** Not before this, as far as the method knows. */
  readonly earliestMs: number;
  readonly dueMs: number;
  readonly lateMs: number;
  /** From here on it is being lost; null where waiting does not spoil it. */
  readonly lostMs: number | null;
  /** How it ripens by how warm it is; null where its minutes count as they are. */
  readonly ripening: Ripening | null;
  /** How the core of a bake goes toward its target; null where that is not known. */
  readonly core: CoreHeat | null;
  /** What the next phase of a bake asks for, before it is over. */
  readonly prompt: Prompt | null;
  /** Food that has to be kept, with its limit; null where nothing in it has to be. */
  readonly holding: Holding | null;
  /** Due the moment the step before was tapped done: whoever tapped stands there, no sound is needed until it is late. */
  readonly isAtOnce: boolean;
}

/** Where the workpiece stands, or null once it is finished. */
export function dueOf(state: FloorState, workpiece: Workpiece): Due | null {
  if (workpiece.finishedMs !== null) return null;
  const due = dueByMethod(state, workpiece);
  const holding = holdingOf(state, workpiece);
  return holding === null ? due : { ...due, ...withinLimit(due, holding), holding };
}

/** Food that is kept calls early enough before its limit, whatever its method says, and is lost from there on. */
function withinLimit(due: Due, { callMs, lateMs, limit }: Holding): Pick<Due, 'earliestMs' | 'dueMs' | 'lateMs' | 'lostMs' | 'isAtOnce'> {
  const dueMs = Math.min(due.dueMs, callMs ?? due.dueMs);
  return {
    earliestMs: Math.min(due.earliestMs, dueMs),
    dueMs,
    lateMs: Math.min(due.lateMs, lateMs ?? due.lateMs),
    lostMs: limit === null ? due.lostMs : Math.min(due.lostMs ?? limit.limitMs, limit.limitMs),
    isAtOnce: due.isAtOnce && dueMs === due.dueMs,
  };
}

function dueByMethod(state: FloorState, workpiece: Workpiece): Due {
  const way = wayOf(state, workpiece);
  const index = positionOf(way, workpiece);
  const step = way[index];
  assert(step !== undefined, `${workpiece.tag} has no step left and is not finished`);
  const life = workpiece.steps[step.id];
  if (life === undefined) return dueWaiting(state, workpiece, step, index === 0);
  const [feed] = way;
  if (workpiece.stock !== null && index === way.length - 1 && feed !== undefined) return dueFeeding(state, workpiece, step, feed, life);
  if (endsByNext(step)) return withPrompt(dueResting(state, workpiece, step, way[index + 1] ?? step, life), life);
  return dueUnderWay(state, workpiece, step.kind === 'judged' ? 'judging' : 'working', step, step, life);
}

/** What was read of a core counts more than what was planned before the loaf was in. */
function dueResting(state: FloorState, workpiece: Workpiece, step: Step, action: Step, life: StepLife): Due {
  const due = dueUnderWay(state, workpiece, 'resting', step, action, life);
  return (due.core?.reachesMs ?? null) === null ? asPlanned(state, due, life) : due;
}

function withPrompt(due: Due, life: StepLife): Due {
  return due.step.kind === 'bake' ? { ...due, prompt: promptOf(due.step, life, due.dueMs) } : due;
}

/** A pot ripens until it is fed again: when that is planned, or when it has had its time. */
function dueFeeding(state: FloorState, workpiece: Workpiece, ripen: Step, feed: Step, life: StepLife): Due {
  const under = dueUnderWay(state, workpiece, 'resting', ripen, feed, life);
  const [planned] = feedsAsPlanned(state, workpiece);
  const dueMs = (planned?.feedMs ?? under.lostMs ?? under.dueMs) + life.moreMin * MINUTE_MS;
  const { late, lost } = feed.toleranceMin;
  return {
    ...under,
    dueMs,
    lateMs: dueMs + late * MINUTE_MS,
    lostMs: lost === undefined ? null : dueMs + lost * MINUTE_MS,
  };
}

function dueWaiting(state: FloorState, workpiece: Workpiece, step: Step, isFirst: boolean): Due {
  const dueMs = waitingDueMs(state, workpiece, step, isFirst);
  const { late, lost } = step.toleranceMin;
  const isPlanned = isFirst && workpiece.kind !== 'cut' && workpiece.kind !== 'load';
  return {
    workpiece,
    phase: isPlanned ? 'planned' : 'waiting',
    step,
    action: step,
    startedMs: null,
    earliestMs: dueMs,
    dueMs,
    lateMs: dueMs + late * MINUTE_MS,
    lostMs: lost === undefined ? null : dueMs + lost * MINUTE_MS,
    ripening: null,
    core: null,
    prompt: null,
    holding: null,
    isAtOnce: !isPlanned && dueMs === lastEndMs(workpiece),
  };
}

/**
 * When a step that could begin is wanted: as the plan has it where there is one, but not before it is ready; otherwise at
 * once, and a prep when the dough that it joins asks for it.
 */
function waitingDueMs(state: FloorState, workpiece: Workpiece, step: Step, isFirst: boolean): number {
  const plannedMs = plannedStepOf(state, workpiece, step.id)?.plannedStartMs ?? null;
  if (isFirst && workpiece.kind !== 'cut' && workpiece.kind !== 'load')
    return plannedMs ?? prepDueMs(state, workpiece) ?? workpiece.readyMs;
  const readyMs = workpiece.readyMs + lagMs(workpiece, step);
  return plannedMs === null ? readyMs : Math.max(readyMs, plannedMs);
}

/**
 * A rest ends when the plan has its next step begin, within what the dough bears: never before its earliest nor after its
 * latest. More time that somebody gave counts, whatever was planned before.
 */
function asPlanned(state: FloorState, due: Due, life: StepLife): Due {
  if (due.action === due.step) return due;
  const planned = plannedStepOf(state, due.workpiece, due.action.id);
  if (planned === null) return due;
  const wantedMs = life.moreMin > 0 ? Math.max(planned.plannedStartMs, due.dueMs) : planned.plannedStartMs;
  const latestMs = latestOf(due, life);
  const bearsMs = latestMs === null ? wantedMs : Math.min(wantedMs, Math.max(latestMs, due.dueMs));
  const dueMs = Math.max(due.earliestMs, bearsMs);
  const { late, lost } = due.action.toleranceMin;
  const toleratedMs = lost === undefined ? null : dueMs + lost * MINUTE_MS;
  const lostMs =
    latestMs === null ? toleratedMs : toleratedMs === null ? Math.max(latestMs, dueMs) : Math.min(Math.max(latestMs, dueMs), toleratedMs);
  return { ...due, dueMs, lateMs: dueMs + late * MINUTE_MS, lostMs };
}

/** When the last step was ended, or a cut was made. A step that was put off is not due at once, though it is ready when it is due. */
function lastEndMs(workpiece: Workpiece): number {
  const endedMs = Object.values(workpiece.steps).map((life) => life.endedMs ?? 0);
  return endedMs.length === 0 ? workpiece.plannedStartMs : Math.max(...endedMs);
}

/** How long after the end of the step before this one is wanted, by its links to earlier steps. */
function lagMs(workpiece: Workpiece, step: Step): number {
  let wantedMs = workpiece.readyMs;
  for (const link of step.after ?? []) {
    const life = workpiece.steps[link.step];
    const edgeMs = link.from === 'start' ? life?.startedMs : life?.endedMs;
    if (edgeMs !== undefined && edgeMs !== null) wantedMs = Math.max(wantedMs, edgeMs + link.targetMin * MINUTE_MS);
  }
  return wantedMs - workpiece.readyMs;
}

function dueUnderWay(state: FloorState, workpiece: Workpiece, phase: Phase, step: Step, action: Step, life: StepLife): Due {
  const { startedMs, pins } = life;
  assert(startedMs !== null && pins !== null, `${workpiece.tag} ${step.id} is under way without a start`);
  const ripening = phase === 'resting' ? ripeningOf(state, workpiece, step, life) : null;
  const core = coreHeatOf(state, workpiece, step, life);
  const ripeMs = ripening?.ripeMs ?? bakedMs(core, pins, startedMs) ?? minutesOn(startedMs, pins.targetMin, pins);
  const dueMs = ripeMs + life.moreMin * MINUTE_MS;
  const under: Due = {
    workpiece,
    phase,
    step,
    action,
    startedMs,
    earliestMs: ripening?.earliestMs ?? minutesOn(startedMs, pins.earliestMin ?? pins.targetMin, pins),
    dueMs,
    lateMs: dueMs + action.toleranceMin.late * MINUTE_MS,
    lostMs: null,
    ripening,
    core,
    prompt: null,
    holding: null,
    isAtOnce: false,
  };
  const bearsMs = latestOf(under, life);
  // A little more, asked for knowingly, moves the latest along once it reaches beyond it.
  const latestMs = bearsMs === null ? null : Math.max(bearsMs, dueMs);
  const toleratedMs = action.toleranceMin.lost === undefined ? null : dueMs + action.toleranceMin.lost * MINUTE_MS;
  const lostMs = latestMs === null ? toleratedMs : toleratedMs === null ? latestMs : Math.min(latestMs, toleratedMs);
  return { ...under, lostMs };
}

/** When a bake is done by its core, within what its method allows: crust and crumb say the rest. Null where the core says nothing. */
function bakedMs(core: CoreHeat | null, pins: StepPins, startedMs: number): number | null {
  const reachesMs = core?.reachesMs ?? null;
  if (reachesMs === null) return null;
  const mostMs = pins.latestMin === undefined ? reachesMs : minutesOn(startedMs, pins.latestMin, pins);
  return Math.max(minutesOn(startedMs, pins.earliestMin ?? 0, pins), Math.min(reachesMs, mostMs));
}

/** So many of a step's minutes after its start, as long as they are by what was learned. Instants are whole. */
function minutesOn(startedMs: number, minutes: number, { factor }: StepPins): number {
  return Math.round(startedMs + minutes * factor * MINUTE_MS);
}

/** How long a rest bears to wait, by how it ripens, or by its minutes; null where its method names no latest. */
function latestOf({ ripening, startedMs }: Due, { pins }: StepLife): number | null {
  if (ripening !== null) return ripening.latestMs;
  if (pins?.latestMin === undefined || startedMs === null) return null;
  return minutesOn(startedMs, pins.latestMin, pins);
}

/** The wanted length of a step in minutes, as it will be pinned when it begins. */
export function plannedMin(step: Step, workpiece: Workpiece): number {
  return targetMin(step, workpiece.pieces);
}

/** What a phase of the bake asks for at an instant; null where it asks for nothing, and once the bake itself is over. */
export function promptAt({ prompt, dueMs }: Due, nowMs: number): Prompt | null {
  return nowMs < dueMs ? prompt : null;
}

/** The step that calls at an instant: the bake itself while one of its phases asks for hands, else the one to be done. */
export function calledStep(due: Due, nowMs: number): Step {
  return promptAt(due, nowMs) === null ? due.action : due.step;
}

/**
 * The role at an instant. Started work is no call: it has its own expected end, and is late only when that is past its
 * tolerance. A held workpiece calls again when the hold is over, or at once when it is being lost.
 */
export function roleAt(due: Due, nowMs: number): Role {
  if (due.lostMs !== null && nowMs >= due.lostMs) return 'lost';
  if (isHeld(due.workpiece, nowMs)) return 'running';
  const { prompt } = due;
  // Left undone it is as pressing when the bake is over as it was before.
  if (prompt !== null && nowMs >= prompt.lateMs) return 'late';
  if (prompt !== null && nowMs >= prompt.dueMs) return nowMs >= due.lateMs ? 'late' : 'call';
  if (nowMs >= due.lateMs) return 'late';
  if (nowMs >= due.dueMs && due.phase !== 'working') return 'call';
  return 'running';
}

/** Whether its call is held back at an instant. */
export function isHeld(workpiece: Workpiece, nowMs: number): boolean {
  return workpiece.heldUntilMs !== null && nowMs < workpiece.heldUntilMs;
}

/** The instant from which the call of a level was true, as it is at `nowMs`. */
export function levelSinceMs(due: Due, level: CallLevel, nowMs: number): number {
  if (level === 'lost') return due.lostMs ?? due.dueMs;
  const { dueMs, lateMs } = promptAt(due, nowMs) ?? withLateOfPrompt(due);
  const sinceMs = level === 'late' ? lateMs : dueMs;
  return Math.max(sinceMs, due.workpiece.heldUntilMs ?? 0);
}

/** What a bake left undone is late from its end on, or from when that was late. */
function withLateOfPrompt({ dueMs, lateMs, prompt }: Due): Pick<Due, 'dueMs' | 'lateMs'> {
  return { dueMs, lateMs: prompt === null ? lateMs : Math.min(lateMs, Math.max(dueMs, prompt.lateMs)) };
}

/** All open workpieces with where they stand. */
export function openDues(state: FloorState): Due[] {
  const dues: Due[] = [];
  for (const workpiece of Object.values(state.workpieces)) {
    const due = dueOf(state, workpiece);
    if (due !== null) dues.push(due);
  }
  return dues;
}
