import type { Step } from '../../shared/documents/method.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { Due } from '../../shared/floor/due.ts';
import { wayOf } from '../../shared/floor/way.ts';
import type { DayMind } from './day-mind.ts';

/** What may be left out of a method where the dough allows it, how often, and why. */
const LEFT_OUT: Readonly<Record<string, { readonly share: number; readonly reasons: readonly [string, ...string[]] }>> = {
  'fold-2': { share: 0.04, reasons: ['Strong enough after one fold', 'Dough already tight'] },
  score: { share: 0.012, reasons: ['Opened by itself', 'No time before the oven'] },
};
/** What is forgotten on the phone and seen on the bench: the next step is under way already. */
const FORGOTTEN: ReadonlySet<Step['verb']> = new Set(['fold', 'round']);
const FORGOTTEN_SHARE = 0.012;
/** What the oven, the prover or a pan has spoilt. */
const SPOILT: Readonly<Partial<Record<Step['verb'], { readonly share: number; readonly reasons: readonly [string, ...string[]] }>>> = {
  load: { share: 0.008, reasons: ['Gone over, no spring left', 'Collapsed on the way to the oven', 'Board slipped, on the floor'] },
  takeOut: { share: 0.004, reasons: ['Burnt below', 'Oven door left open, not baked through'] },
  cook: { share: 0.02, reasons: ['Curdled', 'Caught at the bottom of the pan'] },
};
const MORE_TIME_SHARE: Readonly<Partial<Record<Due['phase'], number>>> = { judging: 0.13, resting: 0.035 };
/** Nobody asks for more than so many minutes in all. */
const MOST_MORE_MIN = 6;
const HOLD_SHARE = 0.025;

/** What is said of a dough instead of the step that is due; null where that is done. */
export function saidInstead({ floor, chance }: DayMind, due: Due): ClientCommand | null {
  const { workpiece, action, phase } = due;
  const on = { workpieceId: workpiece.id, stepId: action.id };
  const isBegun = workpiece.steps[action.id] !== undefined && workpiece.stock === null;
  if (!isBegun && action.leaveOut !== undefined && chance.is(0.75)) return { type: 'skipStep', ...on, reason: action.leaveOut };
  const leftOut = LEFT_OUT[action.id];
  if (!isBegun && leftOut !== undefined && chance.is(leftOut.share))
    return { type: 'skipStep', ...on, reason: chance.pick(leftOut.reasons) };
  const spoilt = SPOILT[action.verb];
  if (spoilt !== undefined && chance.is(spoilt.share))
    return { type: 'discardWorkpiece', workpieceId: workpiece.id, reason: chance.pick(spoilt.reasons) };
  const isBake = due.step.kind === 'bake';
  const moreMin = workpiece.steps[due.step.id]?.moreMin ?? 0;
  if (workpiece.stock === null && !isBake && moreMin < MOST_MORE_MIN && chance.is(MORE_TIME_SHARE[phase] ?? 0))
    return { type: 'giveMoreTime', ...on, minutes: phase === 'judging' ? chance.pick([1, 1, 2]) : chance.pick([2, 5, 5]) };
  if (!isBake && phase !== 'judging' && workpiece.call?.level === 'call' && workpiece.heldUntilMs === null && chance.is(HOLD_SHARE))
    return { type: 'holdWorkpiece', ...on, minutes: chance.pick([5, 5, 10]) };
  if (!isBegun && FORGOTTEN.has(action.verb) && chance.is(FORGOTTEN_SHARE)) {
    const way = wayOf(floor.state, workpiece);
    const next = way[way.findIndex((step) => step.id === action.id) + 1];
    if (next !== undefined) return { type: 'sayWhere', workpieceId: workpiece.id, stepId: next.id, sinceMin: chance.whole(1, 4) };
  }
  return null;
}
