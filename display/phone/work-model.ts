import type { Station } from '../../shared/documents/kitchen.ts';
import type { Row } from '../../shared/floor/board.ts';

/** Whether somebody is at it: hands work, or a check decides when it is over. */
export function isUnderWay(row: Row): boolean {
  return row.phase === 'working' || row.phase === 'judging';
}

/** Whether this phone's station can say that it works on it too: another one has it. */
export function canHelp(row: Row, stationId: string | null): boolean {
  return isUnderWay(row) && stationId !== null && row.stationId !== stationId && !row.helperIds.includes(stationId);
}

/** The stations that started work can be handed over to. */
export function handOverTo(row: Row, stations: readonly Station[]): readonly Station[] {
  return isUnderWay(row) ? stations.filter((station) => station.id !== row.stationId) : [];
}

/** Whether it can be said how many pieces are done, or that some of them go on ahead. */
export function countsPieces(row: Row): boolean {
  return row.pieces !== null && row.pieces > 1;
}

/** Counts that a thumb says without counting on: a quarter, half, three quarters, all. Rising, none twice. */
export function quarterCounts(pieces: number): readonly number[] {
  return [...new Set([1, 2, 3, 4].map((quarter) => Math.ceil((pieces * quarter) / 4)))].filter((count) => count > 0);
}

/** So many pieces in so many loads as equal as they can be, the fuller ones first. */
export function equalLoads(pieces: number, loads: number): readonly number[] {
  const least = Math.floor(pieces / loads);
  return Array.from({ length: loads }, (_, index) => least + (index < pieces % loads ? 1 : 0));
}
