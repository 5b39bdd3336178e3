import type { FloorEvent, RecordedEvent } from '../../shared/floor/events.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { RecordStatements } from './record-statements.ts';

/** The number of a workpiece in the records, given now where it has none. */
export type NumberOf = (workpieceId: string) => number;

/** Writes down what one event says that the fold of the floor does not keep for long. `after` is the state with the event in it. */
export function writeFacts(
  rows: RecordStatements,
  numberOf: NumberOf,
  after: FloorState,
  { event, sequence, deviceId }: RecordedEvent,
): void {
  switch (event.type) {
    case 'workpieceDivided':
    case 'loadsMade': {
      const source = numberOf(event.workpieceId);
      const kind = event.type === 'workpieceDivided' ? 'divide' : 'load';
      event.children.forEach((child, item) =>
        rows.put('edges', sequence, item, kind, source, numberOf(child.workpieceId), child.grams, event.atMs),
      );
      return;
    }
    case 'workpiecesJoined': {
      const target = numberOf(event.workpieceId);
      event.parents.forEach((parent, item) =>
        rows.put('edges', sequence, item, 'join', numberOf(parent.workpieceId), target, parent.grams, event.atMs),
      );
      return;
    }
    case 'workpieceDrawn':
    case 'scrapPutBack': {
      const kind = event.type === 'workpieceDrawn' ? 'draw' : 'putBack';
      const [source, target] = [numberOf(event.fromWorkpieceId), numberOf(event.toWorkpieceId)];
      rows.put('edges', sequence, 0, kind, source, target, event.grams, event.atMs);
      return;
    }
    case 'fermentFed': {
      const pot = numberOf(event.workpieceId);
      rows.put('edges', sequence, 0, 'feed', pot, pot, event.flourG + event.waterG, event.atMs);
      if (event.discardedG > 0) rows.put('losses', sequence, pot, 'seed', event.discardedG, null, event.atMs);
      return;
    }
    case 'ingredientWeighed':
      replaceLine(rows, numberOf(event.workpieceId), event.lineId, sequence);
      writeLots(rows, numberOf, event, event.ingredientId, event.lotNumbers, sequence);
      return;
    case 'ingredientUnweighed':
      replaceLine(rows, numberOf(event.workpieceId), event.lineId, sequence);
      return;
    case 'ingredientAdded':
      if (event.lotNumber !== undefined) writeLots(rows, numberOf, event, event.ingredientId, [event.lotNumber], sequence);
      return;
    case 'temperatureRead':
      rows.put('readings', sequence, numberOf(event.workpieceId), event.where, event.celsius, event.atMs);
      return;
    case 'lossNamed':
      rows.put('losses', sequence, numberOf(event.workpieceId), event.what, event.grams, event.pieces ?? null, event.atMs);
      return;
    case 'moreTimeGiven':
      rows.put('more_time', sequence, numberOf(event.workpieceId), event.stepId, event.minutes, event.atMs);
      return;
    case 'workpieceHeld':
      rows.put('holds', sequence, numberOf(event.workpieceId), event.stepId, event.atMs, event.untilMs, null, null);
      return;
    case 'workpieceReleased':
      rows.run(
        'UPDATE holds SET released_ms = ?, released_sequence = ? WHERE workpiece = ? AND step = ? AND released_ms IS NULL AND until_ms > ?',
        event.atMs,
        sequence,
        numberOf(event.workpieceId),
        event.stepId,
        event.atMs,
      );
      return;
    case 'timeCorrected':
    case 'countCorrected':
    case 'tagCorrected':
      writeCorrection(rows, numberOf(event.workpieceId), event, sequence, deviceId);
      return;
    case 'stepSkipped':
      rows.put('reasons', sequence, numberOf(event.workpieceId), event.stepId, 'skipped', event.reason, event.atMs);
      return;
    case 'workpieceDiscarded':
      rows.put('reasons', sequence, numberOf(event.workpieceId), null, 'discarded', event.reason, event.atMs);
      return;
    case 'holdingDecided':
      rows.put('reasons', sequence, numberOf(event.workpieceId), null, 'usedPastLimit', event.reason, event.atMs);
      return;
    case 'stepStarted':
      event.resources.forEach(({ kind, id }, item) =>
        rows.put('uses', sequence, item, numberOf(event.workpieceId), event.stepId, kind, id, event.atMs),
      );
      return;
    case 'ovenLoaded':
      rows.put(
        'oven_loads',
        sequence,
        numberOf(event.workpieceId),
        event.stepId,
        event.slotIds.join(' '),
        event.pieces ?? null,
        event.atMs,
        null,
        null,
      );
      return;
    case 'ovenUnloaded':
      rows.run(
        'UPDATE oven_loads SET to_ms = ?, out_sequence = ? WHERE workpiece = ? AND to_ms IS NULL',
        event.atMs,
        sequence,
        numberOf(event.workpieceId),
      );
      return;
    case 'riseLearned': {
      const { mixerId, formulaId, loadG, riseK, atMs } = event;
      rows.put('samples', sequence, 'rise', mixerId, formulaId, null, numberOf(event.workpieceId), loadG, riseK, atMs);
      return;
    }
    case 'ripenessLearned': {
      const { formulaId, stepId, factor, atMs } = event;
      rows.put('samples', sequence, 'ripeness', formulaId, formulaId, stepId, numberOf(event.workpieceId), null, factor, atMs);
      return;
    }
    case 'slotHeatLearned':
      rows.put('samples', sequence, 'slotHeat', event.slotIds.join(' '), null, event.kind, null, null, event.minutesShare, event.atMs);
      return;
    case 'planAdopted':
      event.moved.forEach(({ workpieceId, stepId, fromMs, toMs, because }, item) => {
        const cause = because?.resource?.id ?? because?.workpieceId ?? null;
        const why = because?.what ?? null;
        rows.put('plan_moves', sequence, item, numberOf(workpieceId), stepId, fromMs, toMs, why, cause, event.atMs ?? null);
      });
      return;
    case 'dayOpened':
      rows.put('day_ends', sequence, event.serviceDate, 'opened');
      return;
    case 'dayClosed':
      rows.put('day_ends', sequence, event.serviceDate, 'closed');
      return;
    case 'orderPlaced': {
      const { id, serviceDate, productId, pieces, readyMs, label = null } = event.order;
      rows.put('orders', id, serviceDate, productId, pieces, readyMs, 0, label, sequence);
      return;
    }
    case 'orderWithdrawn':
      rows.run('UPDATE orders SET is_withdrawn = 1, sequence = ? WHERE id = ?', sequence, event.orderId);
      return;
    case 'clockJumped':
      shiftOpen(rows, after, numberOf, event.byMs);
      return;
    default:
      writeDocument(rows, event, sequence);
  }
}

/** What was on a line of the weigh-out is not what counts from this event on; undoing the event gives it back. */
function replaceLine(rows: RecordStatements, workpiece: number, line: string, sequence: number): void {
  rows.run(
    `UPDATE lots SET replaced_by = ? WHERE workpiece = ? AND line = ? AND replaced_by IS NULL AND sequence <> ?
       AND sequence > coalesce((SELECT max(sequence) FROM edges WHERE source = lots.workpiece AND kind = 'feed'), 0)`,
    sequence,
    workpiece,
    line,
    sequence,
  );
}

function writeLots(
  rows: RecordStatements,
  numberOf: NumberOf,
  event: { readonly workpieceId: string; readonly lineId?: string; readonly grams: number; readonly atMs: number },
  ingredientId: string | undefined,
  lotNumbers: readonly string[],
  sequence: number,
): void {
  if (ingredientId === undefined) return;
  const workpiece = numberOf(event.workpieceId);
  // How a line was shared between two sacks nobody has said.
  const grams = event.grams / Math.max(1, lotNumbers.length);
  lotNumbers.forEach((lot, item) =>
    rows.put('lots', sequence, item, workpiece, ingredientId, lot, event.lineId ?? null, grams, event.atMs, null),
  );
}

function writeCorrection(
  rows: RecordStatements,
  workpiece: number,
  event: Extract<FloorEvent, { type: 'timeCorrected' | 'countCorrected' | 'tagCorrected' }>,
  sequence: number,
  deviceId: string,
): void {
  const told =
    event.type === 'timeCorrected'
      ? [event.stepId, event.edge, String(event.fromMs), String(event.toMs)]
      : event.type === 'countCorrected'
        ? [null, 'count', String(event.fromPieces), String(event.toPieces)]
        : [null, 'tag', event.fromTag, event.toTag];
  const [step = null, what = '', was = '', became = ''] = told;
  rows.put('corrections', sequence, workpiece, step, what ?? '', was ?? '', became ?? '', event.atMs, deviceId);
  if (event.type === 'countCorrected' && event.reason !== undefined)
    rows.put('reasons', sequence, workpiece, null, 'counted', event.reason, event.atMs);
}

function writeDocument(rows: RecordStatements, event: FloorEvent, sequence: number): void {
  switch (event.type) {
    case 'formulaAdopted':
      rows.put('documents', sequence, 'formula', event.formula.id, event.version, event.formula.name);
      return;
    case 'productAdopted':
      rows.put('documents', sequence, 'product', event.product.id, event.version, event.product.name);
      return;
    case 'kitchenAdopted':
      rows.put('documents', sequence, 'kitchen', 'kitchen', event.version, '');
      return;
    case 'houseAdopted':
      rows.put('documents', sequence, 'house', 'house', event.version, event.house.name);
      return;
    case 'ingredientsAdopted':
    case 'ingredientAdopted':
      rows.put('documents', sequence, 'ingredients', 'ingredients', event.version, '');
      return;
    default:
  }
}

/** What moves along: instants of a table, and of which of its rows. */
const MOVED_ALONG: readonly (readonly [table: string, columns: readonly string[], only: string])[] = [
  ['readings', ['at_ms'], ''],
  ['more_time', ['at_ms'], ''],
  ['holds', ['at_ms', 'until_ms', 'released_ms'], ''],
  ['oven_loads', ['from_ms', 'to_ms'], ''],
  ['calls', ['due_ms', 'raised_ms', 'heard_ms'], ' AND ended_ms IS NULL'],
];

/** Instants of open work move along when the clock is set, as they do on the floor; what is over keeps the clock that it had. */
function shiftOpen(rows: RecordStatements, after: FloorState, numberOf: NumberOf, byMs: number): void {
  for (const workpiece of Object.values(after.workpieces)) {
    if (workpiece.finishedMs !== null) continue;
    const number = numberOf(workpiece.id);
    for (const [table, columns, only] of MOVED_ALONG) {
      const set = columns.map((column) => `${column} = ${column} + ?`).join(', ');
      rows.run(`UPDATE ${table} SET ${set} WHERE workpiece = ?${only}`, ...columns.map(() => byMs), number);
    }
  }
}
