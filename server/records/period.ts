import { Temporal } from 'temporal-polyfill';
import { dateIn, instantOf } from '../main/planned-starts.ts';
import { number, numberOrNull, type RecordsReader } from './records-reader.ts';

/** Without a word of how far back, so many days are looked at: enough for a median, and answered at once in a large house too. */
export const USUAL_DAYS = 42;
/** However far back is asked for, no more days than these: what is older says little of how it is done now, and an answer stays quick. */
export const MOST_DAYS = 370;

/** Days of the house's zone, both included, and the instants from which and until before which they last. */
export interface Period {
  readonly from: string;
  readonly to: string;
  readonly fromMs: number;
  readonly toMs: number;
  readonly zone: string;
}

/** The days that are asked about: up to the newest that anything is known of, and the last weeks, where nothing else is said. */
export function periodOf(
  reader: RecordsReader,
  zone: string,
  asked: { readonly from?: string | undefined; readonly to?: string | undefined },
): Period {
  const to = asked.to ?? dateIn(zone, newestMs(reader));
  const last = Temporal.PlainDate.from(to);
  const usual = last.subtract({ days: USUAL_DAYS - 1 }).toString();
  const earliest = last.subtract({ days: MOST_DAYS - 1 }).toString();
  const wanted = asked.from ?? usual;
  const from = wanted < earliest ? earliest : wanted > to ? to : wanted;
  return { from, to, fromMs: instantOf(zone, from, '00:00'), toMs: instantOf(zone, last.add({ days: 1 }).toString(), '00:00'), zone };
}

/** The dates of a period with the instants at which they begin, the oldest first. */
export function datesOf({ from, to, zone }: Period): readonly { readonly date: string; readonly fromMs: number }[] {
  const dates: { date: string; fromMs: number }[] = [];
  for (let date = Temporal.PlainDate.from(from); date.toString() <= to; date = date.add({ days: 1 })) {
    dates.push({ date: date.toString(), fromMs: instantOf(zone, date.toString(), '00:00') });
  }
  return dates;
}

function newestMs(reader: RecordsReader): number {
  const row = reader.row(
    'SELECT max((SELECT coalesce(max(ended_ms), 0) FROM steps), (SELECT coalesce(max(raised_ms), 0) FROM calls)) AS newest',
  );
  return row === undefined ? 0 : number(row, 'newest');
}

/** What the newest version of something says, read from the journal: sequence numbers of documents by kind and id. */
export function newestDocument(reader: RecordsReader, kind: string, id: string): number | null {
  const row = reader.row('SELECT sequence FROM documents WHERE kind = ? AND id = ? ORDER BY version DESC, sequence DESC LIMIT 1', kind, id);
  return row === undefined ? null : numberOrNull(row, 'sequence');
}

/** The zone of the house as its newest document has it. */
export async function zoneOf(reader: RecordsReader): Promise<string> {
  const sequence = newestDocument(reader, 'house', 'house');
  const [recorded] = sequence === null ? [] : await reader.events([sequence]);
  return recorded?.event.type === 'houseAdopted' ? recorded.event.house.zone : 'UTC';
}
