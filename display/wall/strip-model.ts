import type { Row } from '../../shared/floor/board.ts';
import { projectionOf, type OvenStay } from '../../shared/floor/projection.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { clockText } from '../parts/clock-text.ts';
import { fittingText, textWidthPx } from '../parts/text-width.ts';
import { ripeWords } from '../words/wall.ts';
import { axisX, REACH_MS } from './axis.ts';
import { shortTagOf } from './day-tags.ts';
import { obstacleLine, type ObstacleTexts } from './obstacle-texts.ts';
import type { Entry } from '../parts/entry.ts';

/** A stretch of the axis, in px from NOW. */
export interface Span {
  readonly fromPx: number;
  readonly toPx: number;
}

/** A stay in the oven as the strip draws it, with its clock time where there is room. */
export interface BakeBlock extends Span {
  readonly text: string;
  /** Left edge of the text; null where there is none. */
  readonly textPx: number | null;
}

/** What is right of NOW for one line. */
export interface StripModel {
  readonly name: string;
  /** The rest, or the work, that is on now. */
  readonly rest: Span | null;
  readonly duePx: number | null;
  /** The way from there to the last bake. */
  readonly way: Span | null;
  readonly bakes: readonly BakeBlock[];
  /** When a ferment is ripe. */
  readonly ripe: Span | null;
  /** Where a side prep joins its dough: the last thing on its strip. */
  readonly join: BakeBlock | null;
}

/** Shortest block that still reads as one, px. */
const LEAST_BLOCK_PX = 12;
/** The name stands so far from NOW, in em: as the strip's styles have it. */
const NAME_INSET_EM = 0.3;
/** Half of the ring where a prep joins, in em: as the strip's styles have it. */
const JOIN_EM = 0.25;
/** Between a block and its clock time, px. */
const TEXT_GAP_PX = 10;

/** The strip of a line: several doughs share one, where their call is the same. `beside` is what the row had no room for. */
export function stripModel(
  state: FloorState,
  entry: Entry,
  nowMs: number,
  widthPx: number,
  nearPx: number,
  beside: ObstacleTexts | null = null,
): StripModel {
  const zone = state.house?.document.zone ?? 'UTC';
  const [first] = entry;
  const names = [...new Set(entry.map((row) => row.name))].join(', ');
  const ripe = ripeWindow(first, nowMs);
  const ripeText = ripe === null ? [] : [ripeWords(clockText(ripe.fromMs, zone), clockText(ripe.toMs, zone))];
  const inOven = entry.filter((row) => isInOven(row));
  const duePx = first.dueMs > nowMs && first.dueMs - nowMs < REACH_MS ? axisX(first.dueMs - nowMs, widthPx) : null;
  const stays = staysAhead(state, entry, nowMs);
  const now = inOven.length === 0 ? [] : [bakingNow(inOven, nowMs, widthPx, zone)];
  const blocks = withTexts([...now, ...stays.map((stay) => blockOf(stay, nowMs, widthPx, zone))], widthPx, nearPx);
  const join = joinOf(state, first, nowMs, widthPx, nearPx);
  const last = join ?? blocks.at(-1);
  const startPx = duePx ?? 0;
  return {
    name: nameText([names, ...ripeText], beside, nearPx, widthPx - NAME_INSET_EM * nearPx),
    rest: duePx !== null && inOven.length === 0 && first.phase !== 'planned' ? { fromPx: 0, toPx: duePx } : null,
    duePx: inOven.length === 0 ? duePx : null,
    way: last !== undefined && last.fromPx > startPx ? { fromPx: startPx, toPx: last.fromPx } : null,
    bakes: blocks,
    ripe: ripe === null ? null : spanOf(ripe.fromMs, ripe.toMs, nowMs, widthPx),
    join,
  };
}

/** The line above the strip. What is in the way comes before the name: it is what has to be read. */
function nameText(texts: readonly string[], beside: ObstacleTexts | null, nearPx: number, widthPx: number): string {
  return beside === null ? fittingText(texts.join(' · '), nearPx, widthPx) : obstacleLine(beside, texts, nearPx, widthPx);
}

/** From when to when a pot is ripe; null for what is no ferment, does not ripen now, or was ripe. */
function ripeWindow({ stock }: Row, nowMs: number): { readonly fromMs: number; readonly toMs: number } | null {
  if (stock === null || stock.ripeFromMs === null || stock.ripeToMs === null || stock.ripeToMs <= nowMs) return null;
  return { fromMs: stock.ripeFromMs, toMs: stock.ripeToMs };
}

/** Where a prep joins, with the tag of its dough beside it. */
function joinOf(state: FloorState, row: Row, nowMs: number, widthPx: number, nearPx: number): BakeBlock | null {
  const joinsMs = row.joins?.joinsMs ?? null;
  const served = state.workpieces[row.workpieceId]?.serves?.workpieceId;
  if (row.joins === null || joinsMs === null || joinsMs - nowMs >= REACH_MS) return null;
  const text = served === undefined ? row.joins.tag : shortTagOf(state, served, row.joins.tag);
  const xPx = axisX(joinsMs - nowMs, widthPx);
  const textWidth = textWidthPx(text, nearPx);
  const gapPx = TEXT_GAP_PX + nearPx * JOIN_EM;
  const rightPx = xPx + gapPx;
  return { fromPx: xPx, toPx: xPx, text, textPx: rightPx + textWidth <= widthPx ? rightPx : Math.max(0, xPx - gapPx - textWidth) };
}

function spanOf(fromMs: number, toMs: number, nowMs: number, widthPx: number): Span {
  const fromPx = Math.min(axisX(fromMs - nowMs, widthPx), widthPx - LEAST_BLOCK_PX);
  return { fromPx, toPx: Math.max(fromPx + LEAST_BLOCK_PX, axisX(toMs - nowMs, widthPx)) };
}

function isInOven(row: Row): boolean {
  return row.stage === 'oven' && row.phase === 'resting';
}

/** Stays that are still to come, in order of time; cuts that go in together are one. */
function staysAhead(state: FloorState, entry: Entry, nowMs: number): OvenStay[] {
  const stays: OvenStay[] = [];
  for (const row of entry) {
    const workpiece = state.workpieces[row.workpieceId];
    const projection = workpiece === undefined ? null : projectionOf(state, workpiece, nowMs);
    if (projection === null) continue;
    stays.push(...projection.stays.slice(isInOven(row) ? 1 : 0));
  }
  return stays.filter((stay) => stay.fromMs - nowMs < REACH_MS).sort((a, b) => a.fromMs - b.fromMs);
}

function bakingNow(rows: readonly Row[], nowMs: number, widthPx: number, zone: string): BakeBlock {
  const outMs = Math.max(...rows.map((row) => row.dueMs));
  const toPx = Math.max(LEAST_BLOCK_PX, axisX(outMs - nowMs, widthPx));
  return { fromPx: 0, toPx, text: clockText(outMs, zone), textPx: null };
}

function blockOf(stay: OvenStay, nowMs: number, widthPx: number, zone: string): BakeBlock {
  return { ...spanOf(stay.fromMs, stay.toMs, nowMs, widthPx), text: clockText(stay.fromMs, zone), textPx: null };
}

/** Gives each block its clock time right of it, or left of it at the end of the axis, where nothing else stands. */
function withTexts(blocks: readonly BakeBlock[], widthPx: number, nearPx: number): BakeBlock[] {
  const placed: BakeBlock[] = [];
  blocks.forEach((block, index) => {
    const textPx = textWidthPx(block.text, nearPx);
    const before = placed.at(-1);
    const takenPx = before === undefined ? 0 : Math.max(before.toPx, before.textPx === null ? 0 : before.textPx + textPx);
    const nextPx = blocks[index + 1]?.fromPx ?? widthPx;
    const rightPx = block.toPx + TEXT_GAP_PX;
    const leftPx = block.fromPx - TEXT_GAP_PX - textPx;
    if (before !== undefined && block.text === before.text && block.fromPx - before.fromPx < LEAST_BLOCK_PX) placed.push(block);
    else if (rightPx + textPx <= nextPx) placed.push({ ...block, textPx: rightPx });
    else if (leftPx >= takenPx + TEXT_GAP_PX) placed.push({ ...block, textPx: leftPx });
    else placed.push(block);
  });
  return placed;
}
