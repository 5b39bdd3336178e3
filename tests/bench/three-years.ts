import { join } from 'node:path';
import { derivedId, idFromBytes, idToBytes, isId } from '../../shared/ids.ts';
import { assert } from '../../shared/result.ts';
import { inventedDays } from '../../server/invent/invented-days.ts';
import type { JournalEntry } from '../../server/journal/journal.ts';
import { JOURNAL_FILE, SqliteJournal } from '../../server/journal/sqlite-journal.ts';
import { readBakehouse } from '../../server/main/read-bakehouse.ts';
import { DEMO } from './places.ts';

const DAY_MS = 86_400_000;
/** Days of one quarter that is invented; the others are the same again, on other days and with other ids. */
const QUARTER_DAYS = 91;
const QUARTERS = 12;
/** Houses of the demo's size at work at once under one roof: together they make some 2 700 events a day. */
const HOUSES = 4;
/** Commands appended in one go. */
const GROUP = 500;
/** What is in force is adopted once, with the first day: the same quarter again would be made by versions that are long gone. */
const DOCUMENTS: ReadonlySet<string> = new Set([
  'clockAnchored',
  'houseAdopted',
  'kitchenAdopted',
  'ingredientsAdopted',
  'ingredientAdopted',
  'formulaAdopted',
  'productAdopted',
  'standingAdopted',
]);

/** What three years of a large bakehouse came to. */
export interface ThreeYears {
  readonly events: number;
  readonly lastDate: string;
}

/** Fills a folder's journal with three years of work that end on a day: an invented quarter, again and again. */
export async function writeThreeYears(folder: string, lastDate: string): Promise<ThreeYears> {
  const read = await readBakehouse(DEMO);
  assert(read.ok, 'the demo bakehouse has no faults');
  const firstDate = dateOf(Date.parse(lastDate) - (QUARTER_DAYS - 1) * DAY_MS);
  const days = [...inventedDays({ file: read.value.file, firstDate, lastDate, seed: 1 })].map(({ entries }) => entries);
  const journal = new SqliteJournal(join(folder, JOURNAL_FILE));
  const kitchenId = await journal.kitchenId();
  let { sequence } = await journal.head(kitchenId);
  for (let quarter = 0; quarter < QUARTERS; quarter += 1) {
    for (const [day, entries] of days.entries()) {
      const isLast = day === days.length - 1;
      for (let house = 0; house < HOUSES; house += 1) {
        const isFirst = quarter === 0 && house === 0 && day === 0;
        const all = isLast ? [...entries, givingUpPots(days.flat())] : entries;
        const again = all.flatMap((entry) => elsewhere(entry, { quarter, house, isFirst }));
        for (let from = 0; from < again.length; from += GROUP)
          ({ sequence } = await journal.append(kitchenId, sequence, again.slice(from, from + GROUP)));
      }
    }
  }
  await journal.close();
  return { events: sequence, lastDate };
}

/** The next quarter begins its pots anew: those of this one are given up, or there would be more and more. */
function givingUpPots(entries: readonly JournalEntry[]): JournalEntry {
  const last = entries.at(-1);
  assert(last !== undefined, 'a quarter has commands');
  const atMs = last.receivedMs;
  const pots = entries.flatMap(({ events }) =>
    events.flatMap((event) => (event.type === 'workpiecePlanned' && event.kind === 'ferment' ? [event.workpieceId] : [])),
  );
  const events = pots.map((workpieceId) => ({ type: 'workpieceDiscarded', workpieceId, atMs, reason: 'Begun anew' }) as const);
  return { ...last, commandId: derivedId(last.commandId, 1), events, outcome: { ok: true, sequence: 0, undoable: false } };
}

interface Elsewhere {
  readonly quarter: number;
  readonly house: number;
  readonly isFirst: boolean;
}

/** The same command in another quarter and house; nothing where nothing is left of it. */
function elsewhere(entry: JournalEntry, { quarter, house, isFirst }: Elsewhere): readonly JournalEntry[] {
  const byMs = (quarter - QUARTERS + 1) * QUARTER_DAYS * DAY_MS;
  const events = entry.events.filter(({ type }) => isFirst || !DOCUMENTS.has(type));
  if (events.length === 0 && entry.events.length > 0) return [];
  const mask = quarter * HOUSES + house;
  const moved = (value: unknown, key: string): unknown => {
    if (typeof value === 'number') return key.endsWith('Ms') ? value + byMs : VERSIONS.has(key) ? 1 : value;
    if (typeof value === 'string') {
      if (key === 'serviceDate') return dateOf(Date.parse(value) + byMs);
      return key !== 'byDeviceId' && isId(value) ? otherId(value, mask) : value;
    }
    if (Array.isArray(value)) return value.map((item) => moved(item, key));
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([name, item]) => [name, moved(item, name)]));
  };
  return [
    {
      ...entry,
      commandId: otherId(entry.commandId, mask),
      receivedMs: entry.receivedMs + byMs,
      events: events.map((event) => moved(event, '') as JournalEntry['events'][number]),
    },
  ];
}

/** What is made is made by the first version. */
const VERSIONS: ReadonlySet<string> = new Set(['formulaVersion', 'productVersion']);

const others = new Map<string, string>();

/** Another id for each id and mask, and always the same one. */
function otherId(id: string, mask: number): string {
  if (mask === 0) return id;
  const key = `${id}${mask}`;
  const known = others.get(key);
  if (known !== undefined) return known;
  const bytes = idToBytes(id);
  bytes[3] = (bytes[3] ?? 0) ^ mask;
  bytes[7] = (bytes[7] ?? 0) ^ (mask * 5);
  const other = idFromBytes(bytes);
  if (others.size > 100_000) others.clear();
  others.set(key, other);
  return other;
}

function dateOf(ms: number): string {
  return new Date(ms).toISOString().slice(0, 10);
}
