import type { Row } from '../../shared/floor/board.ts';
import type { Role } from '../../shared/floor/due.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { clockText, countdownText, weekdayText } from '../parts/clock-text.ts';
import { fittingText, textWidthPx } from '../parts/text-width.ts';
import { lostWords, ROLES } from '../words/en/roles.ts';
import { CHECK_CALL, VERBS } from '../words/en/verbs.ts';
import { heldWords, piecesWords, WALL } from '../words/en/wall.ts';
import { entryKey, strongestRole, type Entry } from '../parts/entry.ts';

/** What a full row reads. */
export interface RowModel {
  readonly key: string;
  readonly role: Role;
  /** The word of the role where no note says it already. */
  readonly roleWord: string;
  readonly isHeard: boolean;
  /** Share of the time that is gone, 0 to 1. */
  readonly progress: number;
  readonly tags: readonly string[];
  readonly verb: string;
  /** Below the verb, the most telling first. */
  readonly notes: readonly string[];
  /** What to look for, where the row has a line for it. */
  readonly detail: string | null;
  readonly countdown: string;
}

/** What a screen reader is told of a call: "FOLD C1, C2". */
export function callText(row: RowModel): string {
  return `${row.verb} ${row.tags.join(', ')}`;
}

/** The reading of one line of the wall at an instant. */
export function rowModel(state: FloorState, entry: Entry, nowMs: number): RowModel {
  const zone = state.house?.document.zone ?? 'UTC';
  const role = strongestRole(entry);
  const first = entry.find((row) => row.role === role) ?? entry[0];
  const isRunning = role === 'running';
  return {
    key: entryKey(entry),
    role,
    roleWord: role === 'lost' ? lostWords(first.stage) : ROLES[role],
    isHeard: entry.every((row) => row.heardMs !== null),
    progress: progressOf(first, nowMs),
    tags: entry.map((row) => row.tag),
    verb: first.isCheck ? CHECK_CALL : isRunning ? VERBS[first.verb].running : VERBS[first.verb].call,
    notes: notesOf(state, first, entry, zone),
    detail: first.check ?? first.caution,
    countdown: countdownText(first.dueMs, nowMs, zone),
  };
}

function progressOf(row: Row, nowMs: number): number {
  if (row.startedMs === null || row.dueMs <= row.startedMs) return 0;
  return Math.min(1, Math.max(0, (nowMs - row.startedMs) / (row.dueMs - row.startedMs)));
}

function notesOf(state: FloorState, row: Row, entry: Entry, zone: string): string[] {
  const notes: string[] = [];
  if (row.role === 'lost') notes.push(lostWords(row.stage));
  if (row.role === 'late') notes.push(ROLES.late);
  if (row.isCheck) notes.push(VERBS[row.verb].running);
  if (row.heldUntilMs !== null) notes.push(heldWords(clockText(row.heldUntilMs, zone)));
  if (row.phase === 'working' || (row.phase === 'judging' && row.role === 'running')) {
    if (row.pieces !== null && row.piecesDone !== null) notes.push(piecesWords(row.piecesDone, row.pieces));
    const station = state.kitchen?.document.stations.find((candidate) => candidate.id === row.stationId);
    if (station !== undefined) notes.push(station.name);
  }
  if (row.role !== 'running' && entry.every((other) => other.heardMs !== null)) notes.push(WALL.heard);
  // Dough of another day says which.
  if (state.serviceDate !== null && row.serviceDate !== state.serviceDate) notes.push(weekdayText(row.serviceDate));
  return notes;
}

/** As many of the notes as fit, joined; the first is shortened rather than left out. */
export function fittingNotes(notes: readonly string[], sizePx: number, widthPx: number): string {
  for (let count = notes.length; count > 1; count -= 1) {
    const text = notes.slice(0, count).join(' · ');
    if (textWidthPx(text, sizePx) <= widthPx) return text;
  }
  return fittingText(notes[0] ?? '', sizePx, widthPx);
}

/** The tags of a merged row that fit, the others as a count: "C1 C2 +2". */
export function fittingTags(tags: readonly string[], sizePx: number, widthPx: number): string {
  for (let count = tags.length; count > 1; count -= 1) {
    const rest = tags.length - count;
    const text = [...tags.slice(0, count), ...(rest > 0 ? [`+${rest}`] : [])].join(' ');
    if (textWidthPx(text, sizePx) <= widthPx) return text;
  }
  return tags.length > 1 ? `${tags[0]} +${tags.length - 1}` : (tags[0] ?? '');
}
