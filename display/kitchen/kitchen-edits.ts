import type { Cleaning, Kitchen } from '../../shared/documents/kitchen.ts';
import { KITCHEN } from '../words/kitchen.ts';
import { cleanedOf } from './cleaned.ts';
import { isThing, LISTS, placeOf, type Chosen, type PlaceKind } from './chosen.ts';
import { inwardsOf, valueAt, withValueAt, type Inwards } from '../desk/inwards.ts';

/** The longest key that a document may have is 40 characters; this leaves room for a number behind it. */
const STEM_CHARACTERS = 34;

/** A kitchen with one thing more, and that thing's id; null where what it belongs to is not there. */
export function withAdded(
  kitchen: Kitchen,
  kind: PlaceKind,
  withinId: string | null,
): { readonly kitchen: Kitchen; readonly id: string } | null {
  const stem = KEY_STEMS[kind];
  const list = listFor(kitchen, kind, withinId);
  // A kitchen of which nobody said a cleaning has no list of them.
  const things = list === null ? null : (valueAt(kitchen, list) ?? []);
  if (list === null || !Array.isArray(things)) return null;
  const id = freshKey(kitchen, kind === 'slot' || kind === 'deck' ? `${withinId ?? 'oven'}-${stem}`.slice(-STEM_CHARACTERS) : stem);
  const name = kind === 'slot' || kind === 'deck' ? `${things.length + 1}` : `${KITCHEN.kinds[kind]} ${things.length + 1}`;
  const thing = newThing(kitchen, kind, id, name, withinId);
  return thing === null ? null : { kitchen: withValueAt(kitchen, list, [...(things as unknown[]), thing]), id };
}

/** A kitchen without a thing. */
export function withRemoved(kitchen: Kitchen, path: Inwards): Kitchen {
  const list = path.slice(0, -1);
  const things = valueAt(kitchen, list) as readonly unknown[];
  const left = things.filter((_thing, index) => index !== path.at(-1));
  return withValueAt(kitchen, list, left.length === 0 && list[0] === 'cleanings' ? undefined : left);
}

/** A kitchen in which a field of what is chosen says something else; the same where that is not there. The house is no part of it. */
export function withField(kitchen: Kitchen, chosen: Chosen, key: string, value: unknown): Kitchen {
  if (chosen.kind === 'bench') return withBench(kitchen, key, value);
  const place = isThing(chosen) ? placeOf(kitchen, chosen) : null;
  if (place === null) return kitchen;
  return withValueAt(kitchen, [...place, ...inwardsOf(key)], chosen.kind === 'cleaning' ? cleaningValue(key, value) : value);
}

/** Of a bench of which nothing is said any more there is nothing. */
function withBench(kitchen: Kitchen, key: string, value: unknown): Kitchen {
  const bench = withValueAt<object>(kitchen.bench ?? {}, inwardsOf(key), value);
  return withValueAt(kitchen, ['bench'], Object.keys(bench).length === 0 ? undefined : bench);
}

/** What the choices of a cleaning say, as the document keeps it. */
function cleaningValue(key: string, value: unknown): unknown {
  if (key === 'resource') return cleanedOf(String(value));
  return key === 'station' && value === '' ? undefined : value;
}

/** A kitchen in which a thing stands one place earlier or later among its like; the same where it is the first or last. */
export function withMoved(kitchen: Kitchen, path: Inwards, by: -1 | 1): Kitchen {
  const list = path.slice(0, -1);
  const from = Number(path.at(-1));
  const things = [...(valueAt(kitchen, list) as readonly unknown[])];
  if (from + by < 0 || from + by >= things.length) return kitchen;
  const [thing] = things.splice(from, 1);
  things.splice(from + by, 0, thing);
  return withValueAt(kitchen, list, things);
}

const KEY_STEMS: Readonly<Record<PlaceKind, string>> = {
  mixer: 'mixer',
  bowl: 'bowl',
  restPlace: 'place',
  vessel: 'vessel',
  oven: 'oven',
  deck: 'deck',
  slot: 'slot',
  station: 'station',
  cleaning: 'cleaning',
};

function listFor(kitchen: Kitchen, kind: PlaceKind, withinId: string | null): Inwards | null {
  if (kind !== 'deck' && kind !== 'slot') return [LISTS[kind]];
  const outer = withinId === null ? null : placeOf(kitchen, { kind: kind === 'deck' ? 'oven' : 'deck', id: withinId });
  return outer === null ? null : [...outer, kind === 'deck' ? 'decks' : 'slots'];
}

/** What is usual for a thing of the kind, to be put right by whoever adds it. */
function newThing(kitchen: Kitchen, kind: PlaceKind, id: string, name: string, withinId: string | null): object | null {
  switch (kind) {
    case 'mixer': {
      const station = kitchen.stations[0]?.id;
      return station === undefined ? null : { id, name, kind: 'spiral', leastG: 2000, mostG: 12_000, bowlComesOff: false, station };
    }
    case 'bowl': {
      const mixerId = withinId ?? kitchen.mixers[0]?.id;
      return mixerId === undefined ? null : { id, name, litres: 20, fits: [mixerId] };
    }
    case 'restPlace':
      return { id, name, kind: 'bench', temperatureC: 22 };
    case 'vessel':
      return { id, name, kind: 'tray', count: 10, turnRoundMin: 10 };
    case 'oven':
      return { id, name, decks: [{ id: freshKey(kitchen, `${id}-deck`), name: '1', temperatureC: 230, slots: [slotOf(kitchen, id)] }] };
    case 'deck':
      return { id, name, temperatureC: 230, slots: [slotOf(kitchen, id)] };
    case 'slot':
      return { id, name };
    case 'station':
      return { id, name, hands: 1 };
    case 'cleaning': {
      const resource = firstToClean(kitchen);
      return resource === null ? null : { id, name, resource, minutes: 15, from: '16:00', to: '20:00' };
    }
  }
}

function firstToClean(kitchen: Kitchen): Cleaning['resource'] | null {
  const [mixer] = kitchen.mixers;
  if (mixer !== undefined) return { kind: 'mixer', id: mixer.id };
  const bench = kitchen.restPlaces.find((place) => place.kind === 'bench');
  if (bench !== undefined) return { kind: 'bench', id: bench.id };
  const deck = kitchen.ovens[0]?.decks[0];
  return deck === undefined ? null : { kind: 'deck', id: deck.id };
}

function slotOf(kitchen: Kitchen, outerId: string): object {
  return { id: freshKey(kitchen, `${outerId.slice(-STEM_CHARACTERS)}-slot`), name: '1' };
}

/** A key that nothing in the kitchen has. */
function freshKey(kitchen: Kitchen, stem: string): string {
  const decks = kitchen.ovens.flatMap((oven) => oven.decks);
  const lists = [...Object.values(LISTS).map((list) => kitchen[list] ?? []), decks, decks.flatMap((deck) => deck.slots)];
  const taken = new Set(lists.flatMap((things) => things.map((thing) => thing.id)));
  const begins = stem.replace(/^[^a-z]+/, '') || 'thing';
  for (let number = 1; ; number += 1) {
    const key = number === 1 && begins.includes('-') ? begins : `${begins}-${number}`;
    if (!taken.has(key)) return key;
  }
}
