import type Database from 'better-sqlite3';
import { idFromBytes, idToBytes, isId } from '../../shared/ids.ts';
import { assert } from '../../shared/result.ts';
import { NAME_KIND } from './journal-schema.ts';

/** Names held in memory at once; beyond that they are forgotten and read again as they are needed. */
export const MAX_CACHED_NAMES = 50_000;

/** What a number stands for: a text (ids too), or the keys of an object. */
export type Name = string | readonly string[];

type NameKind = (typeof NAME_KIND)[keyof typeof NAME_KIND];

/**
 * Texts, ids and lists of keys that recur, kept once each and referred to by number. New ones are written in whatever
 * transaction is open; after it, say `keepFresh` or `forgetFresh`, or memory would know names that the file does not.
 */
export class InternedNames {
  readonly #select: Database.Statement<[number]>;
  readonly #find: Database.Statement<[string | Uint8Array, number]>;
  readonly #insert: Database.Statement<[number, string | Uint8Array]>;
  readonly #byNumber = new Map<number, Name>();
  readonly #texts = new Map<string, number>();
  readonly #keyLists = new Map<string, number>();
  #fresh: number[] = [];
  readonly #maxCached: number;

  constructor(database: Database.Database, maxCached: number = MAX_CACHED_NAMES) {
    this.#maxCached = maxCached;
    this.#select = database.prepare<[number]>('SELECT kind, value FROM names WHERE number = ?').raw();
    this.#find = database.prepare<[string | Uint8Array, number]>('SELECT number FROM names WHERE value = ? AND kind = ?').pluck();
    this.#insert = database.prepare('INSERT INTO names (kind, value) VALUES (?, ?)');
  }

  /** The number of a text or id, kept now where it was not. The text must be well-formed Unicode. */
  numberOfText(text: string): number {
    const known = this.#texts.get(text);
    if (known !== undefined) return known;
    const number = isId(text) ? this.#intern(NAME_KIND.id, idToBytes(text)) : this.#intern(NAME_KIND.text, text);
    this.#remember(number, text);
    return number;
  }

  /** The number of a list of keys, kept now where it was not. */
  numberOfKeys(keys: readonly string[]): number {
    const spelling = JSON.stringify(keys);
    const known = this.#keyLists.get(spelling);
    if (known !== undefined) return known;
    const number = this.#intern(NAME_KIND.keys, spelling);
    this.#remember(number, keys);
    return number;
  }

  /** What a number stands for. Throws where nothing is kept under it: the file is damaged. */
  at(number: number): Name {
    const known = this.#byNumber.get(number);
    if (known !== undefined) return known;
    const row: unknown = this.#select.get(number);
    assert(Array.isArray(row), `there is no name ${number}`);
    const name = nameOf(row[0], row[1]);
    this.#remember(number, name);
    return name;
  }

  /** The transaction was kept, and its names with it. */
  keepFresh(): void {
    this.#fresh = [];
  }

  /** The transaction was rolled back: the numbers given in it will be given to others. */
  forgetFresh(): void {
    for (const number of this.#fresh) {
      const name = this.#byNumber.get(number);
      this.#byNumber.delete(number);
      if (typeof name === 'string') this.#texts.delete(name);
      else if (name !== undefined) this.#keyLists.delete(JSON.stringify(name));
    }
    this.#fresh = [];
  }

  #intern(kind: NameKind, value: string | Uint8Array): number {
    const found: unknown = this.#find.get(value, kind);
    if (typeof found === 'number') return found;
    const number = Number(this.#insert.run(kind, value).lastInsertRowid);
    this.#fresh.push(number);
    return number;
  }

  #remember(number: number, name: Name): void {
    // Not while a transaction has names of its own: what is to be forgotten with it must still be found.
    if (this.#byNumber.size >= this.#maxCached && this.#fresh.length === 0) {
      this.#byNumber.clear();
      this.#texts.clear();
      this.#keyLists.clear();
    }
    this.#byNumber.set(number, name);
    if (typeof name === 'string') this.#texts.set(name, number);
    else this.#keyLists.set(JSON.stringify(name), number);
  }
}

function nameOf(kind: unknown, value: unknown): Name {
  if (kind === NAME_KIND.text && typeof value === 'string') return value;
  if (kind === NAME_KIND.id && value instanceof Uint8Array) return idFromBytes(value);
  assert(kind === NAME_KIND.keys && typeof value === 'string', `a name of kind ${String(kind)} that is none`);
  const keys: unknown = JSON.parse(value);
  assert(Array.isArray(keys) && keys.every((key) => typeof key === 'string'), 'a list of keys that is none');
  return keys;
}
