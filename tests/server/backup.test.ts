import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { BackupKeeper } from '../../server/backup/backup-keeper.ts';
import { BACKUP_FILE, backupName, backupsIn, toBeThinned, type Backup } from '../../server/backup/backup-folder.ts';
import { BackupError, checkedCopy, makeBackup } from '../../server/backup/make-backup.ts';
import { main as restore } from '../../server/cli/restore.ts';
import { openHouse } from '../../server/main/house.ts';
import { Machine } from './support/machine.ts';
import { startRecordsHere } from './support/records-here.ts';
import { folderForTest } from './support/temporary-folder.ts';
import { openTestHouse, type TestHouse } from './support/test-house.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const NOW_MS = Date.UTC(2026, 2, 7, 12, 0, 0);

async function putBack(...args: string[]): Promise<{ exitCode: number; lines: readonly string[] }> {
  const lines: string[] = [];
  const exitCode = await restore(args, (line) => void lines.push(line), NOW_MS);
  return { exitCode, lines };
}

/** A house that has gone on for a little, and a backup of it. */
async function backedUp(): Promise<{ house: TestHouse; into: string; backup: Backup }> {
  const house = await openTestHouse();
  const into = join(folderForTest(), 'stick');
  return { house, into, backup: await makeBackup(house.folder, into, NOW_MS) };
}

async function weighOut({ house, workpiece }: TestHouse, tag: string): Promise<void> {
  const outcome = await house.floor.submit({
    commandId: Buffer.from(tag.padEnd(16, '-')).toString('base64url').slice(0, 22),
    deviceId: house.floor.kitchenId,
    stationId: null,
    tap: null,
    command: { type: 'startStep', workpieceId: workpiece(tag).id, stepId: 'weigh' },
  });
  expect(outcome.ok).toBe(true);
}

describe('BK1 a backup is made while the server writes, and is looked at before it counts', () => {
  it('has every event that was kept when it was begun, with its hash, and the devices', async () => {
    const { house, into, backup } = await backedUp();
    expect(backup).toMatchObject({ kitchenId: house.house.floor.kitchenId, sequence: house.house.floor.state.sequence, madeMs: NOW_MS });
    expect(readdirSync(backup.folder).sort()).toEqual([BACKUP_FILE, 'devices.db', 'journal.db']);
    expect(await checkedCopy(backup.folder)).toMatchObject({ sequence: backup.sequence, hash: backup.hash });
    expect(backupsIn(into)).toEqual([backup]);
    // The floor went on all the same, and so does the next one.
    await weighOut(house, 'C1');
    const next = await makeBackup(house.folder, into, NOW_MS + 1000);
    expect(next.sequence).toBeGreaterThan(backup.sequence);
    // One an hour is kept: the newer of the two.
    expect(backupsIn(into).map(({ folder }) => folder)).toEqual([next.folder]);
  });

  it('a copy with an event that is not what was kept counts for nothing, and what is half made is cleared away', async () => {
    const { house, into, backup } = await backedUp();
    const copy = new Database(join(backup.folder, 'journal.db'));
    copy.pragma('ignore_check_constraints = ON');
    expect(copy.prepare('UPDATE commands SET received_ms = received_ms + 1 WHERE number = 2').run().changes).toBe(1);
    copy.close();
    await expect(checkedCopy(backup.folder)).rejects.toThrow(BackupError);
    mkdirSync(join(into, `${backupName(NOW_MS - 5)}.unfinished`));
    writeFileSync(join(backup.folder, BACKUP_FILE), '{ "format": 1');
    expect(backupsIn(into)).toEqual([]);
    await makeBackup(house.folder, into, NOW_MS + HOUR_MS);
    expect(readdirSync(into).filter((name) => name.endsWith('.unfinished'))).toEqual([]);
    expect(backupsIn(into)).toHaveLength(1);
  });
});

describe('RX4 the newest backup has a copy of the records', () => {
  /** A house with records, which have taken in what there is. */
  async function withRecords(): Promise<TestHouse> {
    const house = await openTestHouse({ startRecordsThread: startRecordsHere });
    expect((await house.house.app.inject('/api/records/batches')).statusCode).toBe(200);
    return house;
  }

  it('any reader of SQLite opens it and reads the tables for others, where nothing can be written', async () => {
    const house = await withRecords();
    const into = join(folderForTest(), 'stick');
    const backup = await makeBackup(house.folder, into, NOW_MS);
    expect(readdirSync(backup.folder).sort()).toEqual([BACKUP_FILE, 'devices.db', 'journal.db', 'records.db']);
    const copy = new Database(join(backup.folder, 'records.db'), { readonly: true, fileMustExist: true });
    const tags = copy.prepare('SELECT tag FROM batches ORDER BY tag').pluck().all();
    expect(tags).toEqual(
      Object.values(house.house.floor.state.workpieces)
        .map(({ tag }) => tag)
        .sort(),
    );
    copy.close();
    // The next one has it, and the one before no longer: one copy is enough.
    await weighOut(house, 'C1');
    const next = await makeBackup(house.folder, into, NOW_MS + 2 * HOUR_MS);
    expect(backupsIn(into)).toHaveLength(2);
    expect([next, backup].map(({ folder }) => existsSync(join(folder, 'records.db')))).toEqual([true, false]);
  });

  it('records that are damaged, another journal’s or none at all are left out, and the backup is made', async () => {
    const [house, other] = [await withRecords(), await withRecords()];
    await Promise.all([house.close(), other.close()]);
    const path = join(house.folder, 'records.db');
    const spoils = [
      () => writeFileSync(path, 'no database, but longer than five hundred and twelve bytes, which is the least. '.repeat(20)),
      () => writeFileSync(path, readFileSync(path).fill(7, 8192)),
      () => writeFileSync(path, readFileSync(join(other.folder, 'records.db'))),
      () => rmSync(path),
    ];
    const whole = readFileSync(path);
    for (const spoil of spoils) {
      writeFileSync(path, whole);
      spoil();
      const backup = await makeBackup(house.folder, folderForTest(), NOW_MS);
      expect(readdirSync(backup.folder).sort()).toEqual([BACKUP_FILE, 'devices.db', 'journal.db']);
    }
  });

  it('restoring puts back what the house has kept; its records are made anew', async () => {
    const house = await withRecords();
    const backup = await makeBackup(house.folder, join(folderForTest(), 'stick'), NOW_MS);
    const fresh = join(folderForTest(), 'new');
    expect((await putBack('--from', backup.folder, '--data', fresh)).exitCode).toBe(0);
    expect(existsSync(join(fresh, 'records.db'))).toBe(false);
    const again = await openTestHouse({ folder: fresh, startRecordsThread: startRecordsHere });
    const batches = async ({ house: { app } }: TestHouse): Promise<unknown> =>
      (await app.inject('/api/records/batches')).json<{ answer: unknown }>().answer;
    expect(await batches(again)).toEqual(await batches(house));
  });
});

describe('BK2 old ones are thinned', () => {
  it('one an hour for a day, one a day for thirty, the newest for ever', () => {
    const backups = Array.from({ length: 40 * 48 }, (_, index): Backup => {
      const madeMs = NOW_MS - index * (HOUR_MS / 2);
      return { format: 1, kitchenId: 'A'.repeat(22), sequence: 1, hash: '', madeMs, folder: backupName(madeMs) };
    });
    const gone = new Set(toBeThinned(backups, NOW_MS).map(({ folder }) => folder));
    const kept = backups.filter(({ folder }) => !gone.has(folder));
    const ages = kept.map(({ madeMs }) => NOW_MS - madeMs);
    expect(ages.filter((ageMs) => ageMs < DAY_MS)).toHaveLength(25);
    expect(ages.filter((ageMs) => ageMs >= DAY_MS).length).toBeGreaterThanOrEqual(29);
    expect(Math.max(...ages)).toBeLessThan(30 * DAY_MS);
    expect(toBeThinned(backups.slice(-1), NOW_MS)).toEqual([]);
  });
});

describe('BK3 a house makes one every hour, and says how that goes', () => {
  it('the first a minute after it began, one that failed again after five minutes, late after two hours', async () => {
    const machine = new Machine();
    const into = folderForTest();
    const made: number[] = [];
    let fault: Error | null = null;
    const keeper = new BackupKeeper(
      into,
      async (nowMs) => {
        if (fault !== null) throw fault;
        made.push(nowMs);
        const backup: Backup = {
          format: 1,
          kitchenId: 'A'.repeat(22),
          sequence: 7,
          hash: 'h',
          madeMs: nowMs,
          folder: join(into, backupName(nowMs)),
        };
        mkdirSync(backup.folder);
        const { folder: _folder, ...facts } = backup;
        writeFileSync(join(backup.folder, BACKUP_FILE), JSON.stringify(facts));
        return backup;
      },
      machine,
      () => machine.wallMs(),
      { warn: () => {} },
    );
    const startMs = machine.wallMs();
    await machine.pass(60_000);
    expect(made).toEqual([startMs + 60_000]);
    expect(keeper.status()).toMatchObject({ last: { madeMs: startMs + 60_000, sequence: 7 }, fault: null, isLate: false, kept: 1 });
    fault = new Error('no space left on device');
    await machine.pass(HOUR_MS);
    expect(keeper.status()).toMatchObject({ fault: 'no space left on device', isLate: false });
    await machine.pass(2 * HOUR_MS);
    expect(keeper.status().isLate).toBe(true);
    fault = null;
    await machine.pass(5 * 60_000);
    expect(keeper.status()).toMatchObject({ fault: null, isLate: false, kept: 2 });
    await keeper.stop();
    await machine.pass(3 * HOUR_MS);
    expect(made).toHaveLength(2);
  });
});

describe('BK4 a backup is put back by one command, which loses nothing without a word', () => {
  it('over a folder that is gone, damaged, or older; what was there is kept aside', async () => {
    const { house, into, backup } = await backedUp();
    const { folder } = house;
    await house.close();
    truncateSync(join(folder, 'journal.db'), 5000);
    const { exitCode, lines } = await putBack('--from', into, '--data', folder);
    expect(lines[0]).toBe(`${folder} is as it was at ${new Date(NOW_MS).toISOString()}, event ${backup.sequence}.`);
    expect(exitCode).toBe(0);
    const aside = join(folder, `before-restore-${backupName(NOW_MS)}`);
    expect(readFileSync(join(aside, 'journal.db'))).toHaveLength(5000);
    const again = await openTestHouse({ folder, isEmpty: true });
    expect(again.house.floor.state.sequence).toBeGreaterThanOrEqual(backup.sequence);
    const fresh = join(folderForTest(), 'new');
    expect((await putBack('--from', backup.folder, '--data', fresh)).exitCode).toBe(0);
    expect(existsSync(join(fresh, 'journal.db'))).toBe(true);
  });

  it('refused over a newer journal and over another kitchen’s, unless it is said; refused while a server runs', async () => {
    const { house, into, backup } = await backedUp();
    await weighOut(house, 'C1');
    const { sequence } = house.house.floor.state;
    const { folder } = house;
    expect(await putBack('--from', into, '--data', folder)).toMatchObject({ exitCode: 1, lines: [expect.stringContaining('in use')] });
    await house.close();
    const before = readFileSync(join(folder, 'journal.db'));
    const refusal = await putBack('--from', into, '--data', folder);
    expect(refusal.exitCode).toBe(1);
    expect(refusal.lines[0]).toContain(`${sequence - backup.sequence} events would be lost`);
    expect(readFileSync(join(folder, 'journal.db'))).toEqual(before);
    expect((await putBack('--from', into, '--data', folder, '--over-newer')).exitCode).toBe(0);
    const other = await openTestHouse();
    const otherFolder = other.folder;
    await other.close();
    expect((await putBack('--from', into, '--data', otherFolder)).lines[0]).toContain('another kitchen');
  });

  it('a backup that is not what it says, none at all, and a command line that is none', async () => {
    const { into, backup } = await backedUp();
    const facts = JSON.parse(readFileSync(join(backup.folder, BACKUP_FILE), 'utf8')) as object;
    writeFileSync(join(backup.folder, BACKUP_FILE), JSON.stringify({ ...facts, sequence: backup.sequence + 3 }));
    expect((await putBack('--from', into, '--data', folderForTest())).lines[0]).toContain('is not what it says of itself');
    expect(await putBack('--from', folderForTest(), '--data', folderForTest())).toMatchObject({ exitCode: 1 });
    expect((await putBack('--from', into)).exitCode).toBe(2);
    expect((await putBack('--sideways')).exitCode).toBe(2);
  });
});

describe('BK5 a damaged file is told before anything is done with it', () => {
  it('a page of the journal overwritten: refused by name, the file left as it is', async () => {
    const house = await openTestHouse();
    const { folder } = house;
    await house.close();
    rmSync(join(folder, 'snapshot.bin'), { force: true });
    const path = join(folder, 'journal.db');
    const bytes = readFileSync(path);
    bytes.fill(0xff, 4096, 8192);
    writeFileSync(path, bytes);
    await expect(
      openHouse({ dataFolder: folder, pace: 1, log: house.house.app.log as never, pagesFolder: null, addresses: [] }),
    ).rejects.toMatchObject({ code: 'databaseDamaged', message: expect.stringContaining('journal.db') as string });
    expect(readFileSync(path)).toEqual(bytes);
  });
});
