import type { Row } from '../../../shared/floor/board.ts';
import { idOf } from './ids.ts';

const MINUTE_MS = 60_000;

/** A row of the board, running and due in an hour where nothing else is said. */
export function boardRow(n: number, more: Partial<Row> = {}): Row {
  const dueMs = more.dueMs ?? 60 * MINUTE_MS;
  return {
    workpieceId: idOf(n),
    tag: `C${n}`,
    name: 'Country loaf',
    serviceDate: '2026-03-07',
    role: 'running',
    phase: 'resting',
    stage: 'bulk',
    stepId: 'fold-1',
    verb: 'fold',
    isCheck: false,
    check: null,
    caution: null,
    startedMs: 0,
    earliestMs: dueMs,
    dueMs,
    lateMs: dueMs + 5 * MINUTE_MS,
    lostMs: null,
    isAtOnce: false,
    heldUntilMs: null,
    heardMs: null,
    stationId: null,
    stationIds: [],
    pieces: null,
    piecesDone: null,
    shortPieces: 0,
    helperIds: [],
    leaveOut: null,
    stock: null,
    ripening: null,
    core: null,
    prompt: null,
    holding: null,
    joins: null,
    takes: [],
    placeId: null,
    ...more,
  };
}
