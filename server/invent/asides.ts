import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { Due } from '../../shared/floor/due.ts';
import type { DayMind } from './day-mind.ts';
import type { Hand } from './invented-floor.ts';
import { mixedDoughC, weighOut } from './weighing.ts';

/** What is said instead of the step that is due; null where that is done. */
export function wayAside({ floor, chance }: DayMind, due: Due, _hand: Hand): ClientCommand | null {
  const { workpiece, action, phase } = due;
  const on = { workpieceId: workpiece.id, stepId: action.id };
  void floor;
  if (action.leaveOut !== undefined && phase !== 'judging' && chance.is(0.75)) return { type: 'skipStep', ...on, reason: action.leaveOut };
  return null;
}

export function startedAside(mind: DayMind, due: Due, hand: Hand, fromMs: number, toMs: number): void {
  const { action, workpiece } = due;
  if (action.verb === 'weigh' || action.verb === 'feed') weighOut(mind, workpiece, hand, fromMs, toMs);
}

export function finishedAside(mind: DayMind, due: Due, hand: Hand, _commandId: string): void {
  const { floor } = mind;
  const { workpiece, action } = due;
  if (action.verb !== 'turnOut') return;
  const celsius = mixedDoughC(mind, floor.state.workpieces[workpiece.id] ?? workpiece);
  if (celsius !== null) floor.give({ type: 'readTemperature', workpieceId: workpiece.id, where: 'dough', celsius }, hand);
}
