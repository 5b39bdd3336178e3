import { RECORDS } from '../words/records.ts';
import type { NamesAnswer } from '../../shared/records/answers.ts';
import type { AskRecords } from './records-store.ts';

/** What the views of the records are given to ask and to move by. */
export interface RecordsTools {
  readonly ask: AskRecords;
  /** Gives a command to the floor as this device; the status of the answer, null where none came. */
  readonly command: (command: unknown) => Promise<{ readonly status: number; readonly body: unknown } | null>;
  /** Reads what another address of the api answers, such as a formula of the book; null where nothing came. */
  readonly read: (path: string) => Promise<{ readonly status: number; readonly body: unknown } | null>;
  /** Shows another search of this page, such as `?view=batch&id=…`. */
  readonly goTo: (search: string) => void;
  /** The clock of this machine, in ms: for how long ago something was, never for anything that is kept. */
  readonly wallMs: () => number;
}

/** Names beside ids, and the house's zone. Until they are here, ids stand for themselves. */
export const NO_NAMES: NamesAnswer = {
  zone: 'UTC',
  units: { temperature: 'C', weight: 'g' },
  house: '',
  formulas: [],
  products: [],
  ingredients: [],
  places: [],
  stations: [],
  mixers: [],
  decks: [],
  slots: [],
  devices: [],
  firstDate: null,
  lastDate: null,
};

/** The lists of names in which an id is looked up. */
export type NameList = 'formulas' | 'products' | 'ingredients' | 'places' | 'stations' | 'mixers' | 'decks' | 'slots' | 'devices';

/** The name of an id, or the id itself where it has none (any more). */
export function nameIn(names: NamesAnswer, list: NameList, id: string): string {
  return names[list].find((known) => known.id === id)?.name ?? id;
}

/** A device by its name; one that was forgotten, or whose name was erased, by how its id begins. */
export function deviceName(names: NamesAnswer, id: string): string {
  return names.devices.find((known) => known.id === id)?.name ?? RECORDS.unnamed(id.slice(0, 4));
}

/** The name of a place of any kind: rest place, mixer, deck, slot. */
export function placeName(names: NamesAnswer, id: string): string {
  const lists = [names.places, names.mixers, names.decks, names.slots, names.stations];
  return lists.flat().find((known) => known.id === id)?.name ?? id;
}

/** What a view is asked to show, as the address says it: `?view=batch&id=…`. */
export function searchOf(view: string, asked: Readonly<Record<string, string | undefined>> = {}): string {
  const query = new URLSearchParams({ view });
  for (const [key, value] of Object.entries(asked)) if (value !== undefined && value !== '') query.set(key, value);
  return `?${query.toString()}`;
}
