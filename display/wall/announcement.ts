import { boardRows, type Row } from '../../shared/floor/board.ts';
import type { CallLevel } from '../../shared/floor/events.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { announcement } from '../words/wall.ts';
import { mergeCalls } from '../parts/entry.ts';
import { isOfStation, pressingElsewhere } from '../parts/station-rows.ts';
import { countElsewhere, elsewhereText } from './elsewhere.ts';
import { callText, rowModel } from './row-model.ts';

const LEVELS: readonly CallLevel[] = ['lost', 'late', 'call'];

/**
 * All calls that are out as a few sentences, the most pressing first; equal ones are one; those of other stations as
 * their number. It names no time, so that it is said again only when a call comes, grows or goes.
 */
export function announcementOf(state: FloorState, nowMs: number, stationId: string | null = null): string {
  const rows = boardRows(state, nowMs);
  const own = mergeCalls(
    rows.filter((row) => isOfStation(row, stationId)),
    Number.POSITIVE_INFINITY,
  );
  const sentences = LEVELS.map((level) => {
    const calls = own.filter(([first]) => first.role === level).map((entry) => callText(rowModel(state, entry, nowMs)));
    return calls.length === 0 ? '' : announcement(level, calls);
  });
  return [...sentences, sentenceOfElsewhere(pressingElsewhere(rows, stationId))].filter((sentence) => sentence !== '').join(' ');
}

function sentenceOfElsewhere(rows: readonly Row[]): string {
  return rows.length === 0 ? '' : `${elsewhereText(countElsewhere(rows))}.`;
}
