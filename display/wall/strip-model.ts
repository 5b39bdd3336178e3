import type { Row } from '../../shared/floor/board.ts';
import { projectionOf, type OvenStay } from '../../shared/floor/projection.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { clockText } from '../parts/clock-text.ts';
import { fittingText, textWidthPx } from '../parts/text-width.ts';
import { axisX, REACH_MS } from './axis.ts';
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
}

/** Shortest block that still reads as one, px. */
const LEAST_BLOCK_PX = 12;
/** Between a block and its clock time, px. */
const TEXT_GAP_PX = 10;

/** The strip of a line: several doughs share one, where their call is the same. */
export function stripModel(state: FloorState, entry: Entry, nowMs: number, widthPx: number, nearPx: number): StripModel {
  const zone = state.house?.document.zone ?? 'UTC';
  const [first] = entry;
  const names = [...new Set(entry.map((row) => row.name))].join(', ');
  const inOven = entry.filter((row) => isInOven(row));
  const duePx = first.dueMs > nowMs && first.dueMs - nowMs < REACH_MS ? axisX(first.dueMs - nowMs, widthPx) : null;
  const stays = staysAhead(state, entry, nowMs);
  const now = inOven.length === 0 ? [] : [bakingNow(inOven, nowMs, widthPx, zone)];
  const blocks = withTexts([...now, ...stays.map((stay) => blockOf(stay, nowMs, widthPx, zone))], widthPx, nearPx);
  const lastBake = blocks.at(-1);
  const startPx = duePx ?? 0;
  return {
    name: fittingText(names, nearPx, widthPx),
    rest: duePx !== null && inOven.length === 0 && first.phase !== 'planned' ? { fromPx: 0, toPx: duePx } : null,
    duePx: inOven.length === 0 ? duePx : null,
    way: lastBake !== undefined && lastBake.fromPx > startPx ? { fromPx: startPx, toPx: lastBake.fromPx } : null,
    bakes: blocks,
  };
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
  const fromPx = Math.min(axisX(stay.fromMs - nowMs, widthPx), widthPx - LEAST_BLOCK_PX);
  const toPx = Math.max(fromPx + LEAST_BLOCK_PX, axisX(stay.toMs - nowMs, widthPx));
  return { fromPx, toPx, text: clockText(stay.fromMs, zone), textPx: null };
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
