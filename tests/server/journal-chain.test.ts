import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { beforeEach, describe, expect, it } from 'vitest';
import { main } from '../../server/cli/verify.ts';
import { JournalError, type JournalHead } from '../../server/journal/journal.ts';
import { OpenError } from '../../server/journal/open-error.ts';
import { writeSnapshot } from '../../server/journal/snapshot-file.ts';
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts';
import { EMPTY_STATE } from '../../shared/floor/state.ts';
import { dayOfEntries, entryOf, formulaEvent } from './support/journal-events.ts';
import { folderForTest } from './support/temporary-folder.ts';

const EVENTS = 71;

let folder: string;
let path: string;
let head: JournalHead;

/** A journal of 71 events, closed: a document, then forty commands of a day. */
beforeEach(async () => {
  folder = folderForTest();
  path = join(folder, 'journal.db');
  const journal = new SqliteJournal(path, { randomBytes: () => new Uint8Array(16).fill(7) });
  const kitchenId = await journal.kitchenId();
  await journal.append(kitchenId, 0, [entryOf(1, [formulaEvent()], 1)]);
  head = await journal.append(kitchenId, 1, dayOfEntries(40, 1));
  await journal.close();
});

function damage(sql: string): void {
  const database = new Database(path);
  database.pragma('foreign_keys = OFF');
  database.pragma('ignore_check_constraints = ON');
  expect(database.prepare(sql).run().changes).toBe(1);
  database.close();
}

async function firstBroken(from?: number, to?: number): Promise<number | null> {
  const journal = new SqliteJournal(path, { readOnly: true });
  try {
    return await journal.verifyChain(head.kitchenId, from, to);
  } finally {
    await journal.close();
  }
}

async function verify(...args: string[]): Promise<{ exitCode: number; lines: string[] }> {
  const lines: string[] = [];
  const exitCode = await main(args, (line) => void lines.push(line));
  return { exitCode, lines };
}

describe('the chain of hashes', () => {
  it('J17 is whole in a journal that nobody damaged', async () => {
    expect(head.sequence).toBe(EVENTS);
    expect(await firstBroken()).toBeNull();
    expect(await firstBroken(30, 50)).toBeNull();
  });

  const body = '(SELECT body FROM events WHERE sequence = 40)';
  it.each([
    [
      'the body of an event',
      `UPDATE events SET body = CAST(substr(${body}, 1, length(${body}) - 1) || x'00' AS BLOB) WHERE sequence = 40`,
      40,
    ],
    ['a body that is no body', "UPDATE events SET body = x'c1' WHERE sequence = 40", 40],
    ['a hash', 'UPDATE events SET hash = zeroblob(32) WHERE sequence = 40', 40],
    ['the version of an event', 'UPDATE events SET version = 3 WHERE sequence = 40', 40],
    ['the order within a command', 'UPDATE events SET ordinal = 17 WHERE sequence = 40', 40],
    ['which command an event belongs to', 'UPDATE events SET command = 1, ordinal = 17 WHERE sequence = 40', 40],
    ['an event that is gone', 'DELETE FROM events WHERE sequence = 40', 40],
    ['the last event that is numbered on', `UPDATE events SET sequence = 100 WHERE sequence = ${EVENTS}`, EVENTS],
    ['when a command was received', 'UPDATE commands SET received_ms = received_ms + 1 WHERE number = 2', 2],
    ['a command id', 'UPDATE commands SET id = zeroblob(16) WHERE number = 2', 2],
    ['a command that is gone', 'DELETE FROM commands WHERE number = 3', 3],
    ['whose device a command came from', 'UPDATE commands SET device = (SELECT device FROM commands WHERE number = 3) WHERE number = 2', 2],
    ['a text in the table of names', "UPDATE names SET value = 'levain' WHERE value = 'Levain'", 1],
    ['a text that later events use', "UPDATE names SET value = 'callHeart' WHERE value = 'callHeard'", 4],
    ['a name that is gone', "DELETE FROM names WHERE value = 'callHeard'", 4],
    [
      'an id in the table of names',
      'UPDATE names SET value = zeroblob(16) WHERE number = (SELECT device FROM commands WHERE number = 3)',
      3,
    ],
    [
      'the keys of an object',
      `UPDATE names SET value = '["atMs","level","stepId","type","workpieceTag"]' WHERE value = '["atMs","level","stepId","type","workpieceId"]'`,
      4,
    ],
    ['a name of a kind that is none', "UPDATE names SET kind = 9 WHERE value = 'callHeard'", 4],
    ['the id of the kitchen', 'UPDATE kitchens SET id = zeroblob(16)', 1],
  ])('J17 finds damage to %s', async (_what, sql, sequence) => {
    damage(sql);
    if (sql.includes('kitchens')) head = { ...head, kitchenId: 'AAAAAAAAAAAAAAAAAAAAAA' };
    expect(await firstBroken()).toBe(sequence);
  });

  it('J17 looks only at the part that it is asked about', async () => {
    damage('UPDATE commands SET received_ms = 0 WHERE number = 2');
    expect(await firstBroken(2, 2)).toBe(2);
    expect(await firstBroken(3, EVENTS)).toBeNull();
    damage('DELETE FROM events WHERE sequence = 40');
    expect(await firstBroken(41)).toBe(40);
  });

  it('J17 notices every flipped bit that changes what is read', async () => {
    const whole = readFileSync(path);
    const read = async (): Promise<string> => {
      const journal = new SqliteJournal(path, { readOnly: true });
      try {
        return JSON.stringify([await journal.verifyChain(head.kitchenId, 1, EVENTS), await journal.read(head.kitchenId, 0, 1000)]);
      } finally {
        await journal.close();
      }
    };
    const expected = await read();
    const isNamed = (fault: unknown): boolean => fault instanceof JournalError || fault instanceof OpenError;
    let noticed = 0;
    const overlooked: string[] = [];
    // A stride that shares no factor with the file's bits falls on every kind of page.
    for (let flip = 0; flip < 100; flip += 1) {
      const bit = (flip * 1_000_003 + 12_345) % (whole.length * 8);
      const damaged = Buffer.from(whole);
      damaged[bit >> 3] = (damaged[bit >> 3] ?? 0) ^ (1 << (bit & 7));
      writeFileSync(path, damaged);
      const found = await read().catch((error: unknown) => (isNamed(error) ? 'refused' : String(error)));
      if (found === 'refused' || /^\[\d/.test(found)) noticed += 1;
      else if (found !== expected) overlooked.push(`bit ${bit}: ${found}`);
    }
    expect(overlooked).toEqual([]);
    expect(noticed).toBeGreaterThan(10);
  });
});

describe('the command line that verifies', () => {
  it('J18 says the last sequence number and its hash', async () => {
    expect(await verify('--data', folder)).toEqual({ exitCode: 0, lines: [`sequence ${EVENTS}, head ${head.hash}: every hash agrees.`] });
  });

  it('J18 says the first broken sequence number, exit 1', async () => {
    damage('DELETE FROM events WHERE sequence = 40');
    const { exitCode, lines } = await verify('--data', folder);
    expect(exitCode).toBe(1);
    expect(lines).toEqual([`Broken at sequence 40 of ${EVENTS}: the event is not what was kept.`]);
  });

  it('J18 notices an end that was cut off, by the head that the snapshot keeps', async () => {
    await writeSnapshot(join(folder, 'snapshot.json'), { ...head, state: { ...EMPTY_STATE, sequence: EVENTS } });
    expect((await verify('--data', folder)).exitCode).toBe(0);
    damage(`DELETE FROM events WHERE sequence = ${EVENTS}`);
    expect(await verify('--data', folder)).toEqual({
      exitCode: 1,
      lines: [`Broken at sequence ${EVENTS}: the snapshot knows events up to ${EVENTS}.`],
    });
  });

  it('J18 changes nothing, and may run beside the server', async () => {
    const before = readFileSync(path);
    await verify('--data', folder);
    expect(readFileSync(path).equals(before)).toBe(true);
    const server = new SqliteJournal(path);
    const { sequence } = await server.append(head.kitchenId, EVENTS, [
      entryOf(2, [{ type: 'dayOpened', serviceDate: '2026-03-02' }], EVENTS + 1),
    ]);
    const { exitCode, lines } = await verify('--data', folder);
    await server.close();
    expect(exitCode).toBe(0);
    expect(lines[0]).toContain(`sequence ${sequence},`);
  });

  it('J18 says what is wrong where there is nothing to verify', async () => {
    const empty = folderForTest();
    expect(await verify('--data', empty)).toEqual({ exitCode: 1, lines: [`There is no ${join(empty, 'journal.db')}.`] });
    writeFileSync(join(empty, 'journal.db'), 'flour, water, salt\n');
    expect(await verify('--data', empty)).toEqual({ exitCode: 1, lines: [`${join(empty, 'journal.db')} is not a database.`] });
    copyFileSync(path, join(empty, 'journal.db'));
    expect((await verify('--data', empty)).exitCode).toBe(0);
    for (const args of [[], ['--date', folder], ['--data']]) expect((await verify(...args)).exitCode).toBe(2);
  });

  it('J18 takes a journal in which nothing is kept yet for whole', async () => {
    const fresh = folderForTest();
    await new SqliteJournal(join(fresh, 'journal.db')).close();
    expect(await verify('--data', fresh)).toEqual({ exitCode: 0, lines: [`sequence 0, head ${'0'.repeat(64)}: nothing is kept yet.`] });
  });
});
