import type { AnsweredTap, FloorView } from '../link/floor-link.ts';

/** Refused taps that are told at most: after a whole night away the newest matter. */
export const MOST_TOLD = 20;

/**
 * The refused taps that are still to be told, the oldest first, after another look at the view. One alone goes with the
 * next action, as it always did; several (kept taps that were sent after an absence) stay until they are put away.
 */
export function stillToTell(told: readonly AnsweredTap[], { lastAnswer }: Pick<FloorView, 'lastAnswer'>): readonly AnsweredTap[] {
  if (lastAnswer === null) return told.length < 2 ? [] : told;
  if (!isRefused(lastAnswer) || told.some((tap) => tap.commandId === lastAnswer.commandId)) return told;
  return [...told, lastAnswer].slice(-MOST_TOLD);
}

/** Refused for good: a tap that could not be kept is sent again. */
function isRefused({ outcome }: AnsweredTap): boolean {
  return !outcome.ok && outcome.refusal.code !== 'notKept';
}
