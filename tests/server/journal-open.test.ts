import { chmodSync, copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { DEVICES_DATABASE } from '../../server/devices/devices-schema.ts';
import { lockFolder } from '../../server/journal/folder-lock.ts';
import { JOURNAL_DATABASE } from '../../server/journal/journal-schema.ts';
import { openDatabase } from '../../server/journal/open-database.ts';
import { OpenError } from '../../server/journal/open-error.ts';
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts';
import { entryOf } from './support/journal-events.ts';
import { folderForTest } from './support/temporary-folder.ts';

function fault(open: () => unknown): { code: string; message: string } {
  try {
    open();
  } catch (error) {
    if (error instanceof OpenError) return { code: error.code, message: error.message };
    throw error;
  }
  throw new Error('it was opened');
}

/** Every file of a folder, byte by byte. */
function contents(folder: string): Record<string, string> {
  return Object.fromEntries(readdirSync(folder).map((name) => [name, readFileSync(join(folder, name)).toString('base64')]));
}

describe('opening the journal', () => {
  it('J19 refuses a file that is no database, and does not touch it', () => {
    for (const text of ['flour, water, salt\n', 'x', 'SQLite format 3\0 but for the rest of it', 'y'.repeat(20_000)]) {
      const folder = folderForTest();
      const path = join(folder, 'journal.db');
      writeFileSync(path, text);
      expect(fault(() => new SqliteJournal(path))).toEqual({ code: 'notADatabase', message: `${path} is not a database.` });
      expect(contents(folder)).toEqual({ 'journal.db': Buffer.from(text).toString('base64') });
    }
  });

  it('J19 refuses a database of another program, marked as such or not, and another one of ours', () => {
    for (const sql of ['CREATE TABLE recipes (x)', 'PRAGMA application_id = 77', 'PRAGMA user_version = 3', DEVICES_DATABASE]) {
      const folder = folderForTest();
      const path = join(folder, 'journal.db');
      if (typeof sql === 'string') new Database(path).exec(sql).close();
      else openDatabase(path, sql).close();
      const before = contents(folder);
      expect(fault(() => new SqliteJournal(path))).toEqual({ code: 'otherProgram', message: `${path} is a database of another program.` });
      expect(contents(folder)['journal.db']).toBe(before['journal.db']);
    }
  });

  it('J20 refuses a file from a newer version, and does not change it by a byte', () => {
    const folder = folderForTest();
    const path = join(folder, 'journal.db');
    openDatabase(path, { ...JOURNAL_DATABASE, schemaVersion: 2 }).close();
    const before = contents(folder);
    expect(fault(() => new SqliteJournal(path))).toEqual({
      code: 'newerVersion',
      message: `${path} was written by a newer version of this program (its schema is 2, this program knows 1).`,
    });
    expect(contents(folder)['journal.db']).toBe(before['journal.db']);
  });

  it('J20 refuses it also where the newer version was killed and its last writes are still in the log, and leaves the log', () => {
    const folder = folderForTest();
    const newer = openDatabase(join(folder, 'journal.db'), JOURNAL_DATABASE);
    newer.pragma('user_version = 2');
    const killed = folderForTest();
    for (const name of ['journal.db', 'journal.db-wal']) copyFileSync(join(folder, name), join(killed, name));
    newer.close();
    const before = contents(killed);
    expect(fault(() => new SqliteJournal(join(killed, 'journal.db'))).code).toBe('newerVersion');
    const { 'journal.db': file, 'journal.db-wal': log } = contents(killed);
    expect({ 'journal.db': file, 'journal.db-wal': log }).toEqual(before);
  });

  it('J19 refuses a file from an older version that it cannot lift', () => {
    const path = join(folderForTest(), 'journal.db');
    openDatabase(path, JOURNAL_DATABASE).close();
    expect(fault(() => openDatabase(path, { ...JOURNAL_DATABASE, schemaVersion: 2 })).code).toBe('olderVersion');
  });

  it('J19 takes an empty file, and a log that was not folded in yet', async () => {
    const path = join(folderForTest(), 'journal.db');
    writeFileSync(path, '');
    const journal = new SqliteJournal(path);
    const kitchenId = await journal.kitchenId();
    await journal.append(kitchenId, 0, [entryOf(1, [{ type: 'dayOpened', serviceDate: '2026-03-02' }], 1)]);
    const killed = folderForTest();
    for (const name of ['journal.db', 'journal.db-wal']) copyFileSync(join(path, '..', name), join(killed, name));
    await journal.close();
    const restarted = new SqliteJournal(join(killed, 'journal.db'));
    expect((await restarted.head(kitchenId)).sequence).toBe(1);
    await restarted.close();
  });

  it('J19 says where there is no folder, and no file to read', () => {
    const folder = folderForTest();
    const path = join(folder, 'nowhere', 'journal.db');
    expect(fault(() => new SqliteJournal(path))).toEqual({
      code: 'folderNotWritable',
      message: `There is no folder ${join(folder, 'nowhere')}.`,
    });
    expect(fault(() => new SqliteJournal(join(folder, 'journal.db'), { readOnly: true })).code).toBe('databaseMissing');
    mkdirSync(join(folder, 'journal.db'));
    expect(fault(() => new SqliteJournal(join(folder, 'journal.db'))).code).toBe('notADatabase');
  });

  it('J19 says that a folder cannot be written', () => {
    const folder = folderForTest();
    const file = join(folder, 'data');
    writeFileSync(file, '');
    for (const place of [file, join(file, 'below')]) {
      expect(fault(() => lockFolder(place))).toEqual({ code: 'folderNotWritable', message: `The data folder ${place} cannot be written.` });
    }
    // Nobody makes files in /proc, not even root (proc(5)); root alone does in a folder without the permission.
    const closed = join(folder, 'closed');
    mkdirSync(closed);
    chmodSync(closed, 0o500);
    const places = process.getuid?.() === 0 ? ['/proc/self'] : ['/proc/self', closed];
    expect(places.map((place) => fault(() => lockFolder(place)).code)).toEqual(places.map(() => 'folderNotWritable'));
  });

  it('J21 locks a folder for one holder at a time, making it where there is none', () => {
    const folder = join(folderForTest(), 'a', 'data');
    const lock = lockFolder(folder, 4711);
    expect(fault(() => lockFolder(folder))).toEqual({
      code: 'folderInUse',
      message: `The data folder ${folder} is in use by another server (process 4711).`,
    });
    lock.release();
    lock.release();
    lockFolder(folder).release();
  });
});
