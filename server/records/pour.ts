import type { ExportAsked } from '../../shared/records/export-asked.ts';
import { tableNamed, type TableDescription } from '../../shared/records/tables.ts';
import { assert } from '../../shared/result.ts';
import { zoneCalendar } from '../floor/house-hours.ts';
import { lineWriter, type LineWriter, type RawRow } from './record-lines.ts';
import { sourceOf } from './record-views.ts';
import type { RecordsReader } from './records-reader.ts';

/** Characters of one chunk, before the row that goes beyond: a quarter of a megabyte is some milliseconds of work. */
export const CHUNK_CHARACTERS = 256 * 1024;

/** Minute of a day at which every date of every zone is there. */
const NOON = 12 * 60;

/** One chunk of a table that is written. */
export interface Chunk {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly isLast: boolean;
}

/** The query of the rows of a table in a period, and its values. */
export function exportQuery(
  { table: name, from, to }: ExportAsked,
  selected: string,
  zone: string,
): { readonly sql: string; readonly values: readonly (string | number)[] } {
  const table = described(name);
  const { from: source, period } = sourceOf(table);
  const conditions: string[] = [];
  const values: (string | number)[] = [];
  const only = (condition: string, value: string | number): void => {
    conditions.push(`${period} ${condition} ?`);
    values.push(value);
  };
  if (period !== null) {
    const isByDate = table.columns.some((column) => column.name === table.periodBy && column.type === 'date');
    // A period by instants is one of whole days of the house, whatever their length.
    const calendar = zoneCalendar(zone);
    const beginMs = (date: string, daysOn: number): number =>
      calendar.instantMs(calendar.dateAt(calendar.instantMs(date, NOON), daysOn), 0);
    if (from !== undefined) only('>=', isByDate ? from : beginMs(from, 0));
    if (to !== undefined) only(isByDate ? '<=' : '<', isByDate ? to : beginMs(to, 1));
  }
  const where = conditions.length === 0 ? '' : ` WHERE ${conditions.join(' AND ')}`;
  return { sql: `SELECT ${selected} FROM ${source}${where}`, values };
}

function described(name: string): TableDescription {
  const table = tableNamed(name);
  assert(table !== undefined, `there is a table ${name}`);
  return table;
}

/** A table that is being written, a chunk whenever one is asked for; nothing of it is held beyond the chunk. */
export class Pour {
  readonly #rows: IterableIterator<RawRow>;
  readonly #writer: LineWriter;
  #text: string;

  constructor(reader: RecordsReader, asked: ExportAsked, zone: string) {
    this.#writer = lineWriter(described(asked.table), asked.format);
    const { sql, values } = exportQuery(asked, this.#writer.selected, zone);
    this.#text = this.#writer.head;
    this.#rows = reader.rawEach(sql, ...values);
  }

  next(): Chunk {
    let text = this.#text;
    this.#text = '';
    for (;;) {
      if (text.length >= CHUNK_CHARACTERS) return { bytes: bytesOf(text), isLast: false };
      const row = this.#rows.next();
      if (row.done === true) return { bytes: bytesOf(text), isLast: true };
      text += this.#writer.line(row.value);
    }
  }

  /** Lets go of its rows. */
  close(): void {
    this.#rows.return?.();
  }
}

/** With a memory of its own, which another thread can be given. */
function bytesOf(text: string): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(new ArrayBuffer(Buffer.byteLength(text)));
  Buffer.from(bytes.buffer).write(text, 'utf8');
  return bytes;
}
