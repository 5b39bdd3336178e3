import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';

/**
 * The day is over. What is still open of it, or of days before, carries over and goes on as it is: dough in the cold,
 * pots, and what was planned and never begun. Named by tag, so that the list reads as the wall does.
 */
export function decideCloseDay(state: FloorState, command: CommandOf<'closeDay'>, _context: CommandContext): Decision {
  const { serviceDate } = command;
  if (!state.openDates.includes(serviceDate)) return refused({ code: 'dayNotOpen', serviceDate });
  // Dates of ISO 8601 sort as text.
  const carriedOver = Object.values(state.workpieces)
    .filter((workpiece) => workpiece.finishedMs === null && workpiece.serviceDate <= serviceDate)
    .sort((a, b) => a.tag.localeCompare(b.tag, 'en', { numeric: true }) || (a.serviceDate < b.serviceDate ? -1 : 1))
    .map((workpiece) => workpiece.id);
  return accepted([{ type: 'dayClosed', serviceDate, carriedOver }]);
}
