import type { Row } from '../../shared/floor/board.ts';

/** Whether a row is to be seen at a station: its own, and what is anybody's. Without a station everything is. */
export function isOfStation(row: Pick<Row, 'stationIds'>, stationId: string | null): boolean {
  return stationId === null || row.stationIds.length === 0 || row.stationIds.includes(stationId);
}

/** What is late or being lost at other stations: a screen that hides their rows still says so. The rows' order stays. */
export function pressingElsewhere(rows: readonly Row[], stationId: string | null): readonly Row[] {
  return rows.filter((row) => (row.role === 'late' || row.role === 'lost') && !isOfStation(row, stationId));
}
