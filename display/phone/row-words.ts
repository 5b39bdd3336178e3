import type { Row } from '../../shared/floor/board.ts';
import type { Role } from '../../shared/floor/role.ts';
import { clockText } from '../parts/clock-text.ts';
import { promptNotes } from '../parts/row-verb.ts';
import { heardAtWords, heldToWords, piecesDoneWords, startedAtWords } from '../words/phone.ts';
import { joinsWords, notBeforeWords, PANELS, shortWords } from '../words/panels.ts';
import { lostWords, ROLES } from '../words/roles.ts';
import { VERBS } from '../words/verbs.ts';
import { isUnderWay } from './work-model.ts';

/** The role's word: "late", or how it is being lost. */
export function roleWords(row: Row, role: Role = row.role): string {
  return role === 'lost' ? lostWords(row.stage) : ROLES[role];
}

/** What is to be known of a row beside its verb and countdown, calmly: heard, held, since when, how far. */
export function quietWords(row: Row, zone: string): readonly string[] {
  const words: string[] = [];
  words.push(...promptNotes(row.prompt));
  if (row.isCheck) words.push(VERBS[row.verb].running);
  if (row.role === 'late' || row.role === 'lost') words.push(roleWords(row));
  if (row.heldUntilMs !== null) words.push(heldToWords(clockText(row.heldUntilMs, zone)));
  else if (row.heardMs !== null) words.push(heardAtWords(clockText(row.heardMs, zone)));
  if (row.phase === 'working' && row.startedMs !== null) words.push(startedAtWords(clockText(row.startedMs, zone)));
  if (row.piecesDone !== null && row.pieces !== null) words.push(piecesDoneWords(row.piecesDone, row.pieces));
  if (row.shortPieces > 0 && row.pieces !== null) words.push(shortWords(row.shortPieces));
  return words;
}

/** What is to be known of a pot and of a prep: when it is ripe, what it joins and when, and when it may be begun. */
export function standingWords(row: Row, zone: string, nowMs: number): readonly string[] {
  const words: string[] = [];
  const { stock, joins } = row;
  if (stock !== null && stock.ripeFromMs !== null && stock.ripeToMs !== null)
    words.push(PANELS.ripe(clockText(stock.ripeFromMs, zone), clockText(stock.ripeToMs, zone)));
  if (joins !== null) {
    words.push(joinsWords(joins.tag, joins.joinsMs === null ? null : clockText(joins.joinsMs, zone)));
    if (joins.notBeforeMs !== null && joins.notBeforeMs > nowMs && row.phase === 'planned')
      words.push(notBeforeWords(clockText(joins.notBeforeMs, zone)));
  }
  return words;
}

/** Who is at it: the station that has it and those that help; nobody while nothing is under way. */
export function whoIds(row: Row): readonly string[] {
  return isUnderWay(row) ? [...(row.stationId === null ? [] : [row.stationId]), ...row.helperIds] : [];
}

/** How much of the time to its due instant is gone, 0 to 1; 0 for what has not begun. */
export function progressOf(row: Row, nowMs: number): number {
  if (row.startedMs === null || row.dueMs <= row.startedMs) return 0;
  return Math.min(1, Math.max(0, (nowMs - row.startedMs) / (row.dueMs - row.startedMs)));
}
