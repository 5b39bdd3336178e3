import type { ClientCommand } from '../../../shared/floor/commands.ts';
import { calledStep, openDues, plannedMin, promptAt, type Due } from '../../../shared/floor/due.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { obstacleOf } from '../../../shared/floor/ways-out.ts';

/** Work shorter than this is over before anybody has said that it began. */
const WORTH_STARTING_MIN = 2;

/** The one command that a baker gives next, and when. */
export interface Deed {
  readonly atMs: number;
  readonly tag: string;
  readonly stepId: string;
  readonly command: ClientCommand;
}

/**
 * What a baker does who always goes to what is due first: begins work that takes a while, says when it is done, leaves
 * out what may be left out, and where something is in the way takes the first way out that is offered. Null when only
 * pots and kept fillings are on the floor: those wait for whoever takes of them.
 */
export function nextDeed(state: FloorState, nowMs: number): Deed | null {
  const [due] = openDues(state)
    .filter((candidate) => wantsHands(candidate) && !waitsForPrep(state, candidate))
    .sort((a, b) => wantedMs(a) - wantedMs(b) || a.workpiece.tag.localeCompare(b.workpiece.tag, 'en', { numeric: true }));
  if (due === undefined) return null;
  const atMs = Math.max(nowMs, wantedMs(due));
  return { atMs, tag: due.workpiece.tag, stepId: calledStep(due, atMs).id, command: commandFor(state, due, atMs) };
}

/** A pot that ripens and a filling that is kept are not ended by a tap of their own. */
function wantsHands(due: Due): boolean {
  if (due.workpiece.stock !== null) return due.phase !== 'resting';
  return !(due.phase === 'resting' && due.action.id === due.step.id);
}

/** A dough whose filling is being made is not topped before the filling is there. */
function waitsForPrep(state: FloorState, due: Due): boolean {
  const taken = new Set(due.action.additions.flatMap((addition) => addition.formula ?? []));
  return openDues(state).some((other) => other.workpiece.kind === 'prep' && taken.has(other.workpiece.formulaId) && wantsHands(other));
}

function wantedMs(due: Due): number {
  return Math.max(due.prompt?.dueMs ?? due.dueMs, due.workpiece.heldUntilMs ?? 0);
}

function commandFor(state: FloorState, due: Due, atMs: number): ClientCommand {
  const { workpiece, action } = due;
  const prompt = promptAt(due, atMs);
  if (prompt !== null) return { type: 'answerPrompt', workpieceId: workpiece.id, stepId: due.step.id, phase: prompt.phase };
  const on = { workpieceId: workpiece.id, stepId: action.id };
  if (action.leaveOut !== undefined) return { type: 'skipStep', ...on, reason: action.leaveOut };
  const [way] = obstacleOf(state, workpiece.id, atMs)?.waysOut ?? [];
  if (way !== undefined) return way.command;
  return isWorthStarting(due) ? { type: 'startStep', ...on } : { type: 'finishStep', ...on };
}

function isWorthStarting({ phase, action, workpiece }: Due): boolean {
  const goesAtOnce = action.kind !== 'hands' || action.verb === 'load' || action.verb === 'takeOut';
  return !goesAtOnce && phase !== 'working' && plannedMin(action, workpiece) >= WORTH_STARTING_MIN;
}
