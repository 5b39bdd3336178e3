import type { BatchAnswer } from '../../shared/records/answers.ts';
import type { QuestionOf } from '../../shared/records/questions.ts';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { lotsInto } from './lots-into.ts';
import { CALL_COLUMNS, callRow, PIECE_COLUMNS, pieceRow, STEP_COLUMNS, stepRow } from './piece-rows.ts';
import { number, numberOrNull, text, type RecordsReader } from './records-reader.ts';

/** Workpieces of one batch: its cuts and loads, and with them those of what it was joined with. */
const MOST_PIECES = 800;
/** What is known of the house from so many events before a batch began still counts for it: warmth of places, heat of decks. */
const HOUSE_EVENTS_BEFORE = 5_000;
/** Of a pot that lives for years, the events that are shown. */
const POT_EVENTS = 600;
/** Events that say nothing of one batch that its rows do not say. */
const LEFT_OUT = new Set<RecordedEvent['event']['type']>(['planAdopted', 'callSounded']);
/** What the house says that a batch's curves are drawn from. */
const HOUSE_TYPES = [
  'houseAdopted',
  'kitchenAdopted',
  'ingredientsAdopted',
  'placeRead',
  'placeOpened',
  'programmeBegun',
  'deckSet',
  'clockAnchored',
  'clockJumped',
];

/** Everything of one batch, whichever of its parts is named; null where nothing has that id. */
export async function askBatch(reader: RecordsReader, { id }: QuestionOf<'batch'>): Promise<BatchAnswer | null> {
  const named = reader.row('SELECT number, kind FROM workpieces WHERE id = ?', id);
  if (named === undefined) return null;
  const family = familyOf(reader, number(named, 'number'));
  const sources = sourcesOf(reader, family);
  const sequences = new Set<number>();
  for (const piece of family) for (const sequence of eventsOf(reader, piece)) sequences.add(sequence);
  const [first, last] = [Math.min(...sequences), Math.max(...sequences)];
  for (const [piece, before] of sources) for (const sequence of eventsOf(reader, piece, before)) sequences.add(sequence);
  for (const sequence of houseEvents(reader, first, last)) sequences.add(sequence);
  for (const sequence of documentsOf(reader, [...family, ...sources.keys()])) sequences.add(sequence);
  const events = await reader.events([...sequences].sort((a, b) => a - b));
  return {
    pieces: family.flatMap((piece) => reader.rows(`SELECT ${PIECE_COLUMNS} FROM workpieces w WHERE w.number = ?`, piece).map(pieceRow)),
    sources: [...sources.keys()].flatMap((piece) =>
      reader.rows(`SELECT ${PIECE_COLUMNS} FROM workpieces w WHERE w.number = ?`, piece).map(pieceRow),
    ),
    steps: family.flatMap((piece) =>
      reader
        .rows(
          `SELECT ${STEP_COLUMNS} FROM steps s JOIN workpieces w ON w.number = s.workpiece WHERE s.workpiece = ?
             AND s.round > (SELECT max(round) FROM steps WHERE workpiece = s.workpiece) - ? ORDER BY s.round, s.position`,
          piece,
          ROUNDS_SHOWN,
        )
        .map(stepRow),
    ),
    calls: family.flatMap((piece) =>
      reader
        .rows(
          `SELECT ${CALL_COLUMNS} FROM calls c JOIN workpieces w ON w.number = c.workpiece WHERE c.workpiece = ? ORDER BY c.sequence DESC LIMIT ?`,
          piece,
          POT_EVENTS,
        )
        .map(callRow),
    ),
    lots: [...lotsInto(reader, family)],
    events: events.filter(({ event }) => !LEFT_OUT.has(event.type)),
  };
}

/** Feeds of a pot that are shown, the newest. */
const ROUNDS_SHOWN = 8;

/** A workpiece with what it was divided from and into, loaded from, joined with: the oldest first. */
export function familyOf(reader: RecordsReader, workpiece: number): readonly number[] {
  const family = new Set([workpiece]);
  const open = [workpiece];
  for (let piece = open.pop(); piece !== undefined && family.size < MOST_PIECES; piece = open.pop()) {
    const edges = reader.rows(
      `SELECT target AS other FROM edges WHERE source = ? AND kind IN ('divide', 'load', 'join')
       UNION SELECT source AS other FROM edges WHERE target = ? AND kind IN ('divide', 'load', 'join')`,
      piece,
      piece,
    );
    for (const edge of edges) {
      const other = number(edge, 'other');
      if (family.has(other)) continue;
      family.add(other);
      open.push(other);
    }
  }
  return [...family].sort((a, b) => a - b);
}

/** What was drawn from or put back into a family, each with the last event at which that was. */
function sourcesOf(reader: RecordsReader, family: readonly number[]): ReadonlyMap<number, number> {
  const sources = new Map<number, number>();
  for (const piece of family) {
    const edges = reader.rows(
      "SELECT source, max(sequence) AS sequence FROM edges WHERE target = ? AND kind IN ('draw', 'putBack') GROUP BY source",
      piece,
    );
    for (const edge of edges) {
      const source = number(edge, 'source');
      if (!family.includes(source)) sources.set(source, Math.max(sources.get(source) ?? 0, number(edge, 'sequence')));
    }
  }
  return sources;
}

function eventsOf(reader: RecordsReader, piece: number, before = Number.MAX_SAFE_INTEGER): readonly number[] {
  // A pot's first event says what it is; of the years after it, what came last before it was drawn from.
  const rows = reader.rows(
    `SELECT sequence FROM (SELECT sequence FROM workpiece_events WHERE workpiece = ? AND sequence <= ? ORDER BY sequence DESC LIMIT ?)
     UNION SELECT min(sequence) AS sequence FROM workpiece_events WHERE workpiece = ?`,
    piece,
    before,
    POT_EVENTS,
    piece,
  );
  return rows.map((row) => number(row, 'sequence'));
}

function houseEvents(reader: RecordsReader, first: number, last: number): readonly number[] {
  const marks = HOUSE_TYPES.map(() => '?').join(', ');
  const within = reader.rows(
    `SELECT sequence FROM house_events WHERE sequence BETWEEN ? AND ? AND type IN (${marks})`,
    first - HOUSE_EVENTS_BEFORE,
    last,
    ...HOUSE_TYPES,
  );
  const inForce = reader.rows(
    `SELECT max(sequence) AS sequence FROM documents WHERE kind IN ('house', 'kitchen', 'ingredients') AND sequence < ? GROUP BY kind`,
    first,
  );
  return [...inForce, ...within].flatMap((row) => numberOrNull(row, 'sequence') ?? []);
}

/** Where the versions of formulas and products that workpieces began with were adopted. */
function documentsOf(reader: RecordsReader, pieces: readonly number[]): readonly number[] {
  const wanted = new Set<string>();
  for (const piece of pieces) {
    for (const row of reader.rows('SELECT formula, formula_version, product, product_version FROM workpieces WHERE number = ?', piece)) {
      wanted.add(`formula\n${text(row, 'formula')}\n${number(row, 'formula_version')}`);
      const version = numberOrNull(row, 'product_version');
      if (version !== null) wanted.add(`product\n${text(row, 'product')}\n${version}`);
    }
  }
  return [...wanted].flatMap((key) => {
    const [kind = '', id = '', version = ''] = key.split('\n');
    const row = reader.row(
      'SELECT min(sequence) AS sequence FROM documents WHERE kind = ? AND id = ? AND version = ?',
      kind,
      id,
      Number(version),
    );
    return row === undefined ? [] : (numberOrNull(row, 'sequence') ?? []);
  });
}
