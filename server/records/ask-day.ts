import type { DayAnswer } from '../../shared/records/answers.ts';
import type { QuestionOf } from '../../shared/records/questions.ts';
import { kitchenInForce } from './book-in-force.ts';
import { ovenUse } from './oven-use.ts';
import { PIECE_COLUMNS, pieceRow, STEP_COLUMNS, stepRow } from './piece-rows.ts';
import { number, numberOrNull, text, textOrNull, words, type RecordsReader, type Row } from './records-reader.ts';

const NO_CALLS = { call: 0, late: 0, lost: 0 };

/** One day as it was: everything of its service date, planned against actual, with orders, ovens, what was spoiled and saved. */
export async function askDay(reader: RecordsReader, { date: wanted }: QuestionOf<'day'>): Promise<DayAnswer | null> {
  const date = wanted ?? textOf(reader.row('SELECT max(service_date) AS date FROM workpieces'), 'date');
  if (date === null) return null;
  const pieces = reader.rows(`SELECT ${PIECE_COLUMNS} FROM workpieces w WHERE w.service_date = ? ORDER BY w.number`, date);
  // A pot that is kept from day to day belongs to the day on which it was begun; its feeds are not a day's work that ends.
  const rows = pieces.filter((piece) => piece['kind'] !== 'ferment');
  const own = (table: string, columns: string): readonly Row[] =>
    reader.rows(
      `SELECT ${columns} FROM workpieces w JOIN ${table} t ON t.workpiece = w.number WHERE w.service_date = ? AND w.kind <> 'ferment'`,
      date,
    );
  const stays = own('oven_loads', 't.slots, t.from_ms, t.to_ms').map((row) => ({
    slotIds: words(row, 'slots'),
    fromMs: number(row, 'from_ms'),
    toMs: numberOrNull(row, 'to_ms'),
  }));
  return {
    date,
    previous: textOf(reader.row('SELECT max(service_date) AS date FROM workpieces WHERE service_date < ?', date), 'date'),
    next: textOf(reader.row('SELECT min(service_date) AS date FROM workpieces WHERE service_date > ?', date), 'date'),
    isClosed: reader.row("SELECT 1 AS closed FROM day_ends WHERE service_date = ? AND what = 'closed'", date) !== undefined,
    pieces: rows.map(pieceRow),
    steps: reader
      .rows(
        `SELECT ${STEP_COLUMNS} FROM workpieces w JOIN steps s ON s.workpiece = w.number WHERE w.service_date = ? AND w.kind <> 'ferment'
           ORDER BY w.number, s.position`,
        date,
      )
      .map(stepRow),
    uses: own('uses', 'w.id, t.step, t.kind, t.resource').map((row) => ({
      pieceId: text(row, 'id'),
      step: text(row, 'step'),
      kind: text(row, 'kind'),
      resource: text(row, 'resource'),
    })),
    orders: reader
      .rows('SELECT id, product, pieces, ready_ms, is_withdrawn FROM orders WHERE service_date = ? ORDER BY ready_ms', date)
      .map((row) => ({
        id: text(row, 'id'),
        product: text(row, 'product'),
        pieces: number(row, 'pieces'),
        readyMs: number(row, 'ready_ms'),
        isWithdrawn: number(row, 'is_withdrawn') === 1,
      })),
    decks: [...ovenUse(await kitchenInForce(reader), stays)],
    spoiled: [
      ...reader
        .rows(
          `SELECT w.id, w.tag, 'discarded' AS what, w.grams, w.pieces,
             (SELECT reason FROM reasons WHERE workpiece = w.number AND what = 'discarded' ORDER BY sequence DESC LIMIT 1) AS reason
           FROM workpieces w WHERE w.service_date = ? AND w.ending = 'discarded' ORDER BY w.number`,
          date,
        )
        .map(spoiledRow),
      ...own('losses', 'w.id, w.tag, t.what, t.grams, t.pieces, NULL AS reason')
        .filter((row) => !EXPECTED_LOSSES.has(text(row, 'what')))
        .map(spoiledRow),
    ],
    saved: [
      ...reader
        .rows(
          `SELECT w.id, w.tag, 'putBack' AS what, e.grams, NULL AS pieces, NULL AS reason FROM workpieces w
             JOIN edges e ON e.source = w.number AND e.kind = 'putBack' WHERE w.service_date = ? ORDER BY e.sequence`,
          date,
        )
        .map(spoiledRow),
      ...own('reasons', 'w.id, w.tag, t.what, w.grams, w.pieces, t.reason')
        .filter((row) => row['what'] === 'usedPastLimit')
        .map(spoiledRow),
    ],
    calls: {
      ...NO_CALLS,
      ...Object.fromEntries(
        reader
          .rows(
            `SELECT c.level, count(*) AS count FROM workpieces w JOIN calls c ON c.workpiece = w.number
             WHERE w.service_date = ? AND c.became IS NOT 'undone' GROUP BY c.level`,
            date,
          )
          .map((row) => [text(row, 'level'), number(row, 'count')]),
      ),
    },
  };
}

/** What every bake loses, and water that was not used, is no waste. */
const EXPECTED_LOSSES: ReadonlySet<string> = new Set(['bake', 'heldBack', 'cooking', 'seed']);

function spoiledRow(row: Row): DayAnswer['spoiled'][number] {
  return {
    pieceId: text(row, 'id'),
    tag: text(row, 'tag'),
    what: text(row, 'what'),
    reason: textOrNull(row, 'reason'),
    grams: number(row, 'grams'),
    pieces: numberOrNull(row, 'pieces'),
  };
}

function textOf(row: Row | undefined, column: string): string | null {
  return row === undefined ? null : textOrNull(row, column);
}
