import type { EventOf } from '../../shared/floor/events.ts';
import type { NamesAnswer } from '../../shared/records/answers.ts';
import { numberOrNull, text, textOrNull, type RecordsReader } from './records-reader.ts';

/** What is in the books now, for lists to choose from and for names beside ids. Devices are not in the journal: whoever asks adds them. */
export async function askNames(reader: RecordsReader): Promise<Omit<NamesAnswer, 'devices'>> {
  const house = await newest(reader, 'house', 'houseAdopted');
  const kitchen = (await newest(reader, 'kitchen', 'kitchenAdopted'))?.kitchen;
  const ingredients = await newest(reader, 'ingredients', 'ingredientsAdopted', 'ingredientsAdopted');
  const since = reader.rows("SELECT e.sequence FROM house_events e WHERE e.type = 'ingredientAdopted' ORDER BY e.sequence DESC LIMIT 500");
  const later = (await reader.events(since.map((row) => Number(row['sequence'])).sort((a, b) => a - b))).flatMap(({ event }) =>
    event.type === 'ingredientAdopted' ? [event.ingredient] : [],
  );
  const dates = reader.row('SELECT min(service_date) AS first, max(service_date) AS last FROM workpieces');
  const slots = (kitchen?.ovens ?? []).flatMap((oven) =>
    oven.decks.flatMap((deck) => deck.slots.map((slot) => ({ id: slot.id, name: `${deck.name} ${slot.name}` }))),
  );
  return {
    house: house?.house.name ?? '',
    zone: house?.house.zone ?? 'UTC',
    units: house?.house.units ?? { temperature: 'C', weight: 'g' },
    formulas: named(reader, 'formula'),
    products: named(reader, 'product'),
    ingredients: byId([...(ingredients?.ingredients ?? []), ...later]),
    places: byId(kitchen?.restPlaces ?? []),
    stations: byId(kitchen?.stations ?? []),
    mixers: byId(kitchen?.mixers ?? []),
    decks: byId((kitchen?.ovens ?? []).flatMap((oven) => oven.decks)),
    slots,
    firstDate: dates === undefined ? null : textOrNull(dates, 'first'),
    lastDate: dates === undefined ? null : textOrNull(dates, 'last'),
  };
}

function byId(things: readonly { readonly id: string; readonly name: string }[]): { id: string; name: string }[] {
  return [...new Map(things.map(({ id, name }) => [id, { id, name }])).values()].sort((a, b) => a.name.localeCompare(b.name));
}

function named(reader: RecordsReader, kind: string): { id: string; name: string }[] {
  const rows = reader.rows('SELECT id, name FROM documents WHERE kind = ? ORDER BY version', kind);
  return byId(rows.map((row) => ({ id: text(row, 'id'), name: text(row, 'name') })));
}

async function newest<Type extends 'houseAdopted' | 'kitchenAdopted' | 'ingredientsAdopted'>(
  reader: RecordsReader,
  kind: string,
  type: Type,
  only?: string,
): Promise<EventOf<Type> | null> {
  const row =
    only === undefined
      ? reader.row('SELECT max(sequence) AS sequence FROM documents WHERE kind = ?', kind)
      : reader.row('SELECT max(sequence) AS sequence FROM house_events WHERE type = ?', only);
  const sequence = row === undefined ? null : numberOrNull(row, 'sequence');
  if (sequence === null) return null;
  const [recorded] = await reader.events([sequence]);
  return recorded?.event.type === type ? (recorded.event as EventOf<Type>) : null;
}
