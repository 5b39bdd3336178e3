import type { CallRow, PieceRow, StepRow } from '../../shared/records/answers.ts';
import { number, numberOrNull, text, textOrNull, words, type Row } from './records-reader.ts';

/** The columns of a workpiece, to be read with `pieceRow`; the table stands as `w`. */
export const PIECE_COLUMNS = `w.number, w.id, w.kind, w.tag, w.service_date, w.formula, w.formula_version, w.product, w.product_version,
  (SELECT id FROM workpieces WHERE number = w.parent) AS parent_id, w.planned_start_ms, w.started_ms, w.ended_ms, w.ending, w.grams,
  w.scaled_to_g, w.scrap_g, w.pieces, w.planned_pieces, w.allergens`;

/** One workpiece of the records. */
export function pieceRow(row: Row): PieceRow {
  return {
    id: text(row, 'id'),
    kind: text(row, 'kind') as PieceRow['kind'],
    tag: text(row, 'tag'),
    serviceDate: text(row, 'service_date'),
    formula: text(row, 'formula'),
    formulaVersion: number(row, 'formula_version'),
    product: textOrNull(row, 'product'),
    productVersion: numberOrNull(row, 'product_version'),
    parentId: textOrNull(row, 'parent_id'),
    plannedStartMs: number(row, 'planned_start_ms'),
    startedMs: numberOrNull(row, 'started_ms'),
    endedMs: numberOrNull(row, 'ended_ms'),
    ending: textOrNull(row, 'ending') as PieceRow['ending'],
    grams: number(row, 'grams'),
    scaledToG: number(row, 'scaled_to_g'),
    scrapG: number(row, 'scrap_g'),
    pieces: numberOrNull(row, 'pieces'),
    plannedPieces: numberOrNull(row, 'planned_pieces'),
    allergens: words(row, 'allergens'),
  };
}

/** The columns of a step, to be read with `stepRow`; steps stand as `s`, their workpieces as `w`. */
export const STEP_COLUMNS = `w.id AS piece_id, s.round, s.step, s.position, s.verb, s.kind, s.status, s.started_ms, s.ended_ms,
  s.planned_start_ms, s.planned_end_ms, s.target_min, s.factor, s.more_min, s.station, s.helpers, s.started_by, s.ended_by, s.pieces,
  s.inferred, s.place`;

/** One step of the records. */
export function stepRow(row: Row): StepRow {
  return {
    pieceId: text(row, 'piece_id'),
    round: number(row, 'round'),
    step: text(row, 'step'),
    position: number(row, 'position'),
    verb: text(row, 'verb'),
    kind: text(row, 'kind'),
    status: text(row, 'status') as StepRow['status'],
    startedMs: numberOrNull(row, 'started_ms'),
    endedMs: numberOrNull(row, 'ended_ms'),
    plannedStartMs: numberOrNull(row, 'planned_start_ms'),
    plannedEndMs: numberOrNull(row, 'planned_end_ms'),
    targetMin: numberOrNull(row, 'target_min'),
    factor: numberOrNull(row, 'factor'),
    moreMin: number(row, 'more_min'),
    station: textOrNull(row, 'station'),
    helpers: words(row, 'helpers'),
    startedBy: textOrNull(row, 'started_by'),
    endedBy: textOrNull(row, 'ended_by'),
    pieces: numberOrNull(row, 'pieces'),
    isInferred: number(row, 'inferred') === 1,
    place: textOrNull(row, 'place'),
  };
}

/** The columns of a call, to be read with `callRow`; calls stand as `c`, their workpieces as `w`. */
export const CALL_COLUMNS = 'w.id AS piece_id, c.step, c.level, c.due_ms, c.raised_ms, c.heard_ms, c.ended_ms, c.became, c.sounded_count';

/** One call of the records. */
export function callRow(row: Row): CallRow {
  return {
    pieceId: text(row, 'piece_id'),
    step: text(row, 'step'),
    level: text(row, 'level') as CallRow['level'],
    dueMs: number(row, 'due_ms'),
    raisedMs: number(row, 'raised_ms'),
    heardMs: numberOrNull(row, 'heard_ms'),
    endedMs: numberOrNull(row, 'ended_ms'),
    became: textOrNull(row, 'became') as CallRow['became'],
    soundedCount: number(row, 'sounded_count'),
  };
}
