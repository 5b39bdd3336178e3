import type { Row } from '../../shared/floor/board.ts';
import type { Role } from '../../shared/floor/role.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { clockText, countdownText } from '../parts/clock-text.ts';
import { fittingText, textWidthPx } from '../parts/text-width.ts';
import { lostWords, ROLES } from '../words/roles.ts';
import { VERBS } from '../words/verbs.ts';
import { heldWords, limitWords, IN_THE_WAY, piecesWords, shortWords, stationsWords, WALL } from '../words/wall.ts';
import { entryKey, strongestRole, type Entry } from '../parts/entry.ts';
import { longTag, shortTag } from './day-tags.ts';
import { obstacleTexts, type ObstacleTexts } from './obstacle-texts.ts';
import { obstacleOfRow } from './obstacles.ts';
import { coreTexts } from './core-texts.ts';
import { promptNotes, rowVerb } from '../parts/row-verb.ts';
import { ripeningTexts } from './ripening-texts.ts';
import type { TypeSizes } from './type-sizes.ts';

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
  /** The same in the form for narrow places. */
  readonly shortTags: readonly string[];
  readonly verb: string;
  /** Below the verb, the most telling first. */
  readonly notes: readonly string[];
  /** How many of the notes, from the first, are words of the role. */
  readonly roleNotes: number;
  /** How its rest follows the warmth of its dough, its bake the core's, behind the notes: the same in fewer and fewer words. */
  readonly warmth: readonly string[];
  /** What is in the way of it; null where nothing is. */
  readonly obstacle: ObstacleTexts | null;
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
  const unit = state.house?.document.units.temperature ?? 'C';
  return {
    key: entryKey(entry),
    role,
    roleWord: role === 'lost' ? lostWords(first.stage) : ROLES[role],
    isHeard: entry.every((row) => row.heardMs !== null),
    progress: progressOf(first, nowMs),
    tags: entry.map((row) => longTag(state, row.tag, row.serviceDate)),
    shortTags: entry.map((row) => shortTag(state, row.tag, row.serviceDate)),
    verb: rowVerb(first),
    notes: [...notesOf(state, first, entry, zone), ...promptNotes(first.prompt)],
    roleNotes: role === 'lost' || role === 'late' ? 1 : 0,
    // Of several doughs with one call each is as warm as it is: a line has no room for that.
    warmth: entry.length > 1 ? [] : first.core === null ? ripeningTexts(first, zone, unit) : coreTexts(first.core, zone, unit),
    obstacle: obstacleOfEntry(state, entry, nowMs),
    detail: first.check ?? first.caution,
    countdown: countdownText(first.dueMs, nowMs, zone),
  };
}

function progressOf(row: Row, nowMs: number): number {
  if (row.startedMs === null || row.dueMs <= row.startedMs) return 0;
  return Math.min(1, Math.max(0, (nowMs - row.startedMs) / (row.dueMs - row.startedMs)));
}

/** Of several doughs with one call, the first whose way is blocked speaks; a line has room for one. */
function obstacleOfEntry(state: FloorState, entry: Entry, nowMs: number): ObstacleTexts | null {
  for (const row of entry) {
    const found = obstacleOfRow(state, row, nowMs);
    if (found === null) continue;
    const texts = obstacleTexts(state, found);
    if (entry.length === 1) return texts;
    const tag = shortTag(state, row.tag, row.serviceDate);
    return { ...texts, what: `${tag} ${texts.what}`, brief: `${tag} ${texts.brief}` };
  }
  return null;
}

function notesOf(state: FloorState, row: Row, entry: Entry, zone: string): string[] {
  const notes: string[] = [];
  if (row.role === 'lost') notes.push(lostWords(row.stage));
  if (row.role === 'late') notes.push(ROLES.late);
  const limitMs = row.holding?.isNear === true ? row.holding.limitMs : null;
  if (limitMs !== null) notes.push(limitWords(clockText(limitMs, zone)));
  if (row.isCheck) notes.push(VERBS[row.verb].running);
  if (row.heldUntilMs !== null) notes.push(heldWords(clockText(row.heldUntilMs, zone)));
  if (row.phase === 'working' || (row.phase === 'judging' && row.role === 'running')) {
    if (row.pieces !== null && row.piecesDone !== null) notes.push(piecesWords(row.piecesDone, row.pieces));
    const names = stationNames(state, row);
    if (names.length > 0) notes.push(stationsWords(names));
  }
  if (row.shortPieces > 0) notes.push(shortWords(row.shortPieces, row.shortPieces + (row.pieces ?? 0)));
  if (row.role !== 'running' && entry.every((other) => other.heardMs !== null)) notes.push(WALL.heard);
  return notes;
}

/** Who works on it: the station that began, then those that help. */
function stationNames(state: FloorState, row: Row): string[] {
  const ids = row.stationId === null ? row.helperIds : [row.stationId, ...row.helperIds];
  const stations = state.kitchen?.document.stations ?? [];
  return [...new Set(ids)].flatMap((id) => stations.find((station) => station.id === id)?.name ?? []);
}

/** The second line of a row, and what of an obstacle found no room in it and has to be told beside the row. */
export interface SecondLine {
  readonly text: string;
  readonly untold: ObstacleTexts | null;
}

/** What is in the way goes before everything but the word of the role; where it does not fit, at least that something is. */
export function secondLine(model: RowModel, sizePx: number, widthPx: number): SecondLine {
  const { obstacle, notes, roleNotes, warmth } = model;
  if (obstacle === null) return { text: fittingNotes(notes, sizePx, widthPx, warmth), untold: null };
  const { what, brief, way } = obstacle;
  const fits = (texts: readonly string[]): boolean => textWidthPx(texts.join(' · '), sizePx) <= widthPx;
  const lead = notes.slice(0, roleNotes);
  const whole = [...lead, what, ...(way === null ? [] : [way])];
  if (fits(whole)) return { text: fittingNotes([...whole, ...notes.slice(roleNotes)], sizePx, widthPx, warmth), untold: null };
  if (way !== null && fits([...lead, what])) {
    return { text: fittingNotes([...lead, what], sizePx, widthPx), untold: { what: way, brief: way, way: null } };
  }
  const part = [brief, IN_THE_WAY.unsaid].map((text) => [...lead, text]).find(fits);
  return { text: fittingNotes(part ?? [...lead, IN_THE_WAY.unsaid], sizePx, widthPx), untold: obstacle };
}

/**
 * As many of the notes as fit, joined; the first is shortened rather than left out. Where all of them fit, the first of `lastTries` that
 * still does comes behind them.
 */
export function fittingNotes(notes: readonly string[], sizePx: number, widthPx: number, lastTries: readonly string[] = []): string {
  for (const last of lastTries) {
    const text = [...notes, last].join(' · ');
    if (textWidthPx(text, sizePx) <= widthPx) return text;
  }
  for (let count = notes.length; count > 1; count -= 1) {
    const text = notes.slice(0, count).join(' · ');
    if (textWidthPx(text, sizePx) <= widthPx) return text;
  }
  return fittingText(notes[0] ?? '', sizePx, widthPx);
}

/**
 * A tag for its column: the weekday in full where that fits, else run together, else that written smaller; cut off only
 * where even that does not do.
 */
export function fittingTag(
  long: string,
  short: string,
  roomPx: number,
  sizes: TypeSizes,
): { readonly text: string; readonly sizePx: number } {
  const { glancePx, secondPx, stretch } = sizes;
  const tries = [
    { text: long, sizePx: glancePx },
    { text: short, sizePx: glancePx },
    { text: short, sizePx: secondPx },
  ];
  const found = tries.find(({ text, sizePx }) => textWidthPx(text, sizePx * stretch) <= roomPx);
  return found ?? { text: fittingText(short, secondPx * stretch, roomPx), sizePx: secondPx };
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
