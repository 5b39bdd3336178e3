import { statSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import * as fc from 'fast-check';
import { describe, expect, it, onTestFinished } from 'vitest';
import { canonicalJson } from '../../server/journal/canonical-json.ts';
import { decodeBody, encodeBody } from '../../server/journal/body-codec.ts';
import { InternedNames } from '../../server/journal/interned-names.ts';
import { JOURNAL_DATABASE } from '../../server/journal/journal-schema.ts';
import { JournalError } from '../../server/journal/journal.ts';
import { numberPragma, openDatabase } from '../../server/journal/open-database.ts';
import { SqliteJournal, type SqliteJournalOptions } from '../../server/journal/sqlite-journal.ts';
import type { FloorEvent } from '../../shared/floor/events.ts';
import { dayOfEntries, entryOf, formulaEvent, idOf, tapEvents } from './support/journal-events.ts';
import { folderForTest } from './support/temporary-folder.ts';

function journalIn(folder: string, options?: SqliteJournalOptions): SqliteJournal {
  const journal = new SqliteJournal(join(folder, 'journal.db'), options);
  onTestFinished(() => journal.close());
  return journal;
}

function rawIn(folder: string): Database.Database {
  const database = new Database(join(folder, 'journal.db'));
  onTestFinished(() => void database.close());
  return database;
}

function newNames(maxCached?: number): InternedNames {
  const database = openDatabase(join(folderForTest(), 'journal.db'), JOURNAL_DATABASE);
  onTestFinished(() => void database.close());
  // One transaction, for what is tried here does not depend on the disk.
  database.exec('BEGIN');
  return new InternedNames(database, maxCached);
}

describe('the journal in SQLite', () => {
  it('J11 flushes every commit on every opening, which the file alone would not have it do', () => {
    const path = join(folderForTest(), 'journal.db');
    const settings = (database: Database.Database): unknown[] => {
      const found = ['synchronous', 'foreign_keys'].map((name) => numberPragma(database, name));
      const mode: unknown = database.pragma('journal_mode', { simple: true });
      database.close();
      return [mode, ...found];
    };
    expect(settings(openDatabase(path, JOURNAL_DATABASE))).toEqual(['wal', 2, 1]);
    // Why it has to be set: https://www.sqlite.org/pragma.html#pragma_synchronous, and the driver's build of SQLite.
    expect(settings(new Database(path))).toEqual(['wal', 1, 1]);
    expect(settings(openDatabase(path, JOURNAL_DATABASE))).toEqual(['wal', 2, 1]);
  });

  it('J12 needs at most 300 bytes of file for an event, over a mix of single taps and calls', async () => {
    const folder = folderForTest();
    const journal = journalIn(folder);
    const kitchenId = await journal.kitchenId();
    const entries = dayOfEntries(4000);
    let sequence = 0;
    for (let start = 0; start < entries.length; start += 500) {
      ({ sequence } = await journal.append(kitchenId, sequence, entries.slice(start, start + 500)));
    }
    await journal.close();
    expect(sequence / entries.length).toBeCloseTo(1.75, 2);
    expect(statSync(join(folder, 'journal.db')).size / sequence).toBeLessThanOrEqual(300);
  });

  it('J12 keeps a name once, however often it is said', async () => {
    const folder = folderForTest();
    const journal = journalIn(folder);
    const kitchenId = await journal.kitchenId();
    await journal.append(kitchenId, 0, [entryOf(1, tapEvents(idOf(100), 5), 2)]);
    const count = rawIn(folder).prepare('SELECT count(*) FROM names').pluck();
    const before = count.get();
    await journal.append(kitchenId, 2, [entryOf(2, tapEvents(idOf(100), 6), 4)]);
    expect(count.get()).toBe(before);
    await journal.append(kitchenId, 4, [entryOf(3, tapEvents(idOf(101), 6), 6)]);
    expect(count.get()).toBe(Number(before) + 1);
  });

  it('J13 takes no number for a name and no name for a number: any JSON value survives', () => {
    const names = newNames();
    const plain = fc.jsonValue({ stringUnit: 'binary' }).filter((value) => !JSON.stringify(value).includes('"__proto__":'));
    fc.assert(
      fc.property(plain, (value) => {
        // As JSON says it: -0 is 0.
        const said: unknown = JSON.parse(JSON.stringify(value));
        expect(decodeBody(encodeBody(value, names), names)).toEqual(said);
      }),
      { seed: 20_260_302, numRuns: 150 },
    );
    const numbers = Array.from({ length: 300 }, (_, n) => n - 20);
    expect(decodeBody(encodeBody([numbers, numbers.map(String)], names), names)).toEqual([numbers, numbers.map(String)]);
  });

  it('J13 refuses what JSON cannot say and properties that no object may have', () => {
    const names = newNames();
    for (const value of [Number.POSITIVE_INFINITY, Number.NaN, 5n, [undefined], Symbol('x'), { ['__proto__']: 1 }]) {
      expect(() => encodeBody(value, names)).toThrow('assertion failed');
    }
  });

  it('J14 holds no more names in memory than it may, and gives the same numbers all the same', () => {
    const names = newNames(3);
    const texts = Array.from({ length: 20 }, (_, n) => `deck-${n}`);
    const numbers = texts.map((text) => names.numberOfText(text));
    names.keepFresh();
    expect(new Set(numbers).size).toBe(20);
    expect(numbers.map((number) => names.at(number))).toEqual(texts);
    expect(texts.map((text) => names.numberOfText(text))).toEqual(numbers);
    const keys = names.numberOfKeys(texts);
    names.keepFresh();
    expect([names.numberOfKeys(texts), names.at(keys)]).toEqual([keys, texts]);
    expect(() => names.at(999)).toThrow('there is no name 999');
  });

  it('J14 gives every name of a dropped group back: later events do not get them', async () => {
    const folder = folderForTest();
    const journal = journalIn(folder);
    const kitchenId = await journal.kitchenId();
    await journal.append(kitchenId, 0, [entryOf(1, tapEvents(idOf(100), 5), 2)]);
    const dropped = [entryOf(2, tapEvents(idOf(200), 5, 'soaker', 'scald'), 4), entryOf(1, [], 0)];
    await expect(journal.append(kitchenId, 2, dropped)).rejects.toMatchObject({ code: 'commandRepeated' });
    const kept = tapEvents(idOf(300), 5, 'glaze', 'slice');
    await journal.append(kitchenId, 2, [entryOf(3, kept, 4)]);
    const opened = journalIn(folder);
    expect((await opened.read(kitchenId, 2, 10)).map(({ event }) => event)).toEqual(kept);
    expect(await opened.verifyChain(kitchenId)).toBeNull();
    const texts = rawIn(folder).prepare('SELECT value FROM names WHERE kind = 0').pluck().all();
    expect(texts).toContain('glaze');
    expect(texts).not.toContain('soaker');
  });

  it('J15 says that the disk is full, keeps nothing of the group, and goes on once there is room', async () => {
    const folder = folderForTest();
    const journal = journalIn(folder, { maxPages: 40 });
    const kitchenId = await journal.kitchenId();
    let { sequence, hash } = await journal.head(kitchenId);
    let fault: unknown;
    let n = 0;
    for (; fault === undefined && n < 1000; n += 1) {
      try {
        ({ sequence, hash } = await journal.append(kitchenId, sequence, [
          entryOf(n, [formulaEvent(n + 1), ...tapEvents(idOf(n + 5000), n, `step-${n}`)], sequence + 3),
        ]));
      } catch (error) {
        fault = error;
      }
    }
    expect(fault).toBeInstanceOf(JournalError);
    expect(fault).toMatchObject({ code: 'diskFull', cause: { code: 'SQLITE_FULL' } });
    expect(sequence).toBeGreaterThan(100);
    expect(await journal.head(kitchenId)).toEqual({ kitchenId, sequence, hash });
    expect(await journal.outcomeOf(kitchenId, idOf(n - 1))).toBeNull();
    expect(await journal.verifyChain(kitchenId)).toBeNull();
    await journal.close();
    const roomy = journalIn(folder);
    const again = await roomy.append(kitchenId, sequence, [
      entryOf(n - 1, [formulaEvent(n), ...tapEvents(idOf(n + 4999), n)], sequence + 3),
    ]);
    expect(again.sequence).toBe(sequence + 3);
    expect(await roomy.verifyChain(kitchenId)).toBeNull();
  });

  it('J15 names every other fault of the database with its cause', async () => {
    const folder = folderForTest();
    const kitchenId = await journalIn(folder).kitchenId();
    const readOnly = journalIn(folder, { readOnly: true });
    const fault: unknown = await readOnly.append(kitchenId, 0, [entryOf(1, [], 0)]).catch((error: unknown) => error);
    expect(fault).toBeInstanceOf(JournalError);
    expect(fault).toMatchObject({ code: 'journalFailed', cause: { code: 'SQLITE_READONLY' } });
    expect(await readOnly.outcomeOf(kitchenId, idOf(1))).toBeNull();
  });

  it('J15 does not wait long for another who writes to the file', async () => {
    const folder = folderForTest();
    const journal = journalIn(folder);
    const kitchenId = await journal.kitchenId();
    const other = rawIn(folder);
    other.exec('BEGIN IMMEDIATE');
    await expect(journal.append(kitchenId, 0, [entryOf(1, [], 0)])).rejects.toMatchObject({
      code: 'journalFailed',
      cause: { code: 'SQLITE_BUSY' },
    });
    other.exec('ROLLBACK');
    await journal.append(kitchenId, 0, [entryOf(1, [], 0)]);
    expect(await journal.outcomeOf(kitchenId, idOf(1))).not.toBeNull();
  });

  it('J16 lifts events of an older version when they are read, and leaves what is kept, and its hash, as it was', async () => {
    const folder = folderForTest();
    const old = journalIn(folder, { eventVersion: 0 });
    const kitchenId = await old.kitchenId();
    // A shape that never was: minutes as a text.
    const before = { type: 'moreTimeGiven', workpieceId: idOf(1), stepId: 'bulk', atMs: 1, more: '5 min' } as unknown as FloorEvent;
    await old.append(kitchenId, 0, [entryOf(1, [before], 1)]);
    await old.close();

    const lift = (event: unknown): unknown => {
      const { more, ...rest } = event as { more: string };
      return { ...rest, minutes: Number.parseInt(more, 10) };
    };
    const journal = journalIn(folder, { upcasters: new Map([[0, lift]]) });
    const now: FloorEvent = { type: 'moreTimeGiven', workpieceId: idOf(1), stepId: 'bulk', atMs: 2, minutes: 2 };
    await journal.append(kitchenId, 1, [entryOf(2, [now], 2)]);
    expect((await journal.read(kitchenId, 0, 10)).map(({ event }) => event)).toEqual([
      { type: 'moreTimeGiven', workpieceId: idOf(1), stepId: 'bulk', atMs: 1, minutes: 5 },
      now,
    ]);
    expect(await journal.verifyChain(kitchenId)).toBeNull();
  });

  it('J16 throws on an event that it cannot lift, and on one of a later version', async () => {
    for (const [eventVersion, message] of [
      [0, 'nothing lifts an event of version 0'],
      [2, 'an event of version 2'],
    ] as const) {
      const folder = folderForTest();
      const writer = journalIn(folder, { eventVersion });
      const kitchenId = await writer.kitchenId();
      await writer.append(kitchenId, 0, [entryOf(1, tapEvents(idOf(1), 1), 2)]);
      await expect(journalIn(folder).read(kitchenId, 0, 10)).rejects.toThrow(message);
    }
  });

  it('J7 writes JSON in one spelling, whatever the order of the properties', () => {
    const shuffled = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(shuffled);
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .toReversed()
          .map(([key, part]) => [key, shuffled(part)]),
      );
    };
    fc.assert(
      fc.property(fc.jsonValue({ stringUnit: 'binary' }), (value) => {
        const text = canonicalJson(value);
        expect(canonicalJson(shuffled(value))).toBe(text);
        expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(value)));
      }),
      { seed: 20_260_302 },
    );
    expect(canonicalJson({ b: 1, a: undefined })).toBe('{"b":1}');
  });

  it('J7 sorts properties and writes numbers as RFC 8785 does', () => {
    // The example of RFC 8785 section 3.2.3 and numbers of its appendix B, from memory.
    const example = { '\u20ac': 1, '\r': 2, '\ufb33': 3, 1: 4, '\u{1f600}': 5, '\u0080': 6, '\u00f6': 7 };
    expect(canonicalJson(example)).toBe('{"\\r":2,"1":4,"\u0080":6,"\u00f6":7,"\u20ac":1,"\u{1f600}":5,"\ufb33":3}');
    expect(canonicalJson([-0, 5e-324, 1.7976931348623157e308, 1e21, 333333333.3333333])).toBe(
      '[0,5e-324,1.7976931348623157e+308,1e+21,333333333.3333333]',
    );
  });
});
