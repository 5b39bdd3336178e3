import type { PageKind } from '../../shared/wire/up.ts';
import { MAX_KEPT_TAPS, keptTapSchema, type KeptRecord } from './kept-tap.ts';

/** Where a page keeps its unanswered taps across reloads. */
export interface TapStore {
  /** What is kept, in the order of the taps. */
  load(): readonly KeptRecord[];
  /** Whether the record is now where a reload will find it. */
  keep(record: KeptRecord): boolean;
  forget(commandId: string): void;
}

/** The part of the browser's `Storage` that keeping needs. */
export interface TextStore {
  readonly length: number;
  key(index: number): string | null;
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

/** For browsers that offer no storage (private windows, blocked by policy): taps then live as long as the page. */
export const NO_STORE: TapStore = { load: () => [], keep: () => false, forget: () => undefined };

/**
 * Keeps each tap under a key of its own, so that two tabs of one phone never write over one another's. Both may send the
 * same tap after a reload: its id makes the second harmless. What cannot be read as a tap is removed.
 */
export function tapStoreOn(storage: TextStore, page: PageKind): TapStore {
  const prefix = `ovenward.tap.${page}.`;
  return {
    load: () => {
      const records: KeptRecord[] = [];
      for (const key of keysWith(storage, prefix)) {
        const record = readRecord(storage.getItem(key));
        if (record === null) storage.removeItem(key);
        else records.push(record);
      }
      return records.sort((a, b) => a.order - b.order).slice(0, MAX_KEPT_TAPS);
    },
    keep: (record) => {
      try {
        storage.setItem(prefix + record.commandId, JSON.stringify(record));
        return true;
      } catch {
        // The quota is used up or storage is switched off (both a DOMException): the tap lives in the page all the same.
        return false;
      }
    },
    forget: (commandId) => storage.removeItem(prefix + commandId),
  };
}

function keysWith(storage: TextStore, prefix: string): readonly string[] {
  const keys: string[] = [];
  for (let index = 0; index < storage.length; index += 1) {
    const key = storage.key(index);
    if (key !== null && key.startsWith(prefix)) keys.push(key);
  }
  return keys;
}

function readRecord(text: string | null): KeptRecord | null {
  if (text === null) return null;
  const parsed = keptTapSchema.safeParse(parseJson(text));
  return parsed.success ? parsed.data : null;
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
