import { boardRows } from '../../shared/floor/board.ts';
import type { CallLevel } from '../../shared/floor/events.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { announcement } from '../words/wall.ts';
import { mergeCalls } from '../parts/entry.ts';
import { callText, rowModel } from './row-model.ts';

const LEVELS: readonly CallLevel[] = ['lost', 'late', 'call'];

/**
 * All calls that are out as a few sentences, the most pressing first; equal ones are one. It names no time, so that it
 * is said again only when a call comes, grows or goes.
 */
export function announcementOf(state: FloorState, nowMs: number): string {
  const entries = mergeCalls(boardRows(state, nowMs), Number.POSITIVE_INFINITY);
  return LEVELS.map((level) => {
    const calls = entries.filter(([first]) => first.role === level).map((entry) => callText(rowModel(state, entry, nowMs)));
    return calls.length === 0 ? '' : announcement(level, calls);
  })
    .filter((sentence) => sentence !== '')
    .join(' ');
}
