import { createPrivateKey, createPublicKey, generateKeyPairSync, sign, verify } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FloorEvent } from '../../shared/floor/events.ts';
import { ARCHIVE_KEY_FILE, fingerprintOf, keyText, publicPem } from '../../server/archive/archive-key.ts';
import { checkArchive } from '../../server/archive/check-archive.ts';
import { Cut, isMonth, monthSpan } from '../../server/archive/month.ts';
import { main } from '../../server/cli/archive.ts';
import { canonicalJson } from '../../server/journal/canonical-json.ts';
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts';
import { entryOf, formulaEvent } from './support/journal-events.ts';
import { folderForTest } from './support/temporary-folder.ts';
import { harbour, openTestHouse } from './support/test-house.ts';

const HOUR_MS = 3_600_000;

async function archive(...args: string[]): Promise<{ exitCode: number; said: string }> {
  const lines: string[] = [];
  const exitCode = await main(args, (line) => void lines.push(line));
  return { exitCode, said: lines.join('\n') };
}

/** A data folder whose journal has two events at each of these instants; a house in Berlin comes with the first. */
async function folderOf(instants: readonly number[]): Promise<string> {
  const folder = folderForTest();
  const journal = new SqliteJournal(join(folder, 'journal.db'));
  const kitchenId = await journal.kitchenId();
  const house: FloorEvent = { type: 'houseAdopted', version: 1, house: { ...harbour().file.house, zone: 'Europe/Berlin' } };
  let sequence = 0;
  for (const [index, receivedMs] of instants.entries()) {
    const events = [index === 0 ? house : formulaEvent(index * 2), formulaEvent(index * 2 + 1)];
    ({ sequence } = await journal.append(kitchenId, sequence, [{ ...entryOf(index + 1, events, sequence + 2), receivedMs }]));
  }
  await journal.close();
  return folder;
}

interface Head {
  readonly firstSequence: number;
  readonly lastSequence: number;
  readonly hashBefore: string;
}

function linesOf(file: string): string[] {
  return readFileSync(file, 'utf8').split('\n').slice(0, -1);
}

function headOf(file: string): Head {
  return JSON.parse(linesOf(file)[0] ?? '') as Head;
}

function endOf(file: string): { hash: string; sequence: number; publicKey: string } {
  return JSON.parse(linesOf(file).at(-1) ?? '') as { hash: string; sequence: number; publicKey: string };
}

const MARCH = [
  Date.UTC(2026, 1, 28, 12),
  Date.UTC(2026, 2, 2, 3),
  Date.UTC(2026, 2, 14, 3),
  Date.UTC(2026, 2, 30, 3),
  Date.UTC(2026, 3, 4, 3),
];

/** March of a folder, archived. */
async function march(): Promise<{ folder: string; file: string }> {
  const folder = await folderOf(MARCH);
  const file = join(folderForTest(), '2026-03.jsonl');
  expect((await archive('--data', folder, '--month', '2026-03', '--to', file)).exitCode).toBe(0);
  return { folder, file };
}

function faultOf(text: string | Uint8Array): string | null {
  const checked = checkArchive(typeof text === 'string' ? Buffer.from(text) : text);
  return checked.ok ? null : checked.fault;
}

describe('RX5 a month of the journal is one signed file', () => {
  it('with every event of the month, its hash, the hash before, and a key that is made once', async () => {
    const { folder, file } = await march();
    expect(linesOf(file)).toHaveLength(8);
    expect(headOf(file)).toMatchObject({ month: '2026-03', zone: 'Europe/Berlin', firstSequence: 3, lastSequence: 8 });
    const journal = new SqliteJournal(join(folder, 'journal.db'), { readOnly: true });
    const kitchenId = await journal.kitchenId();
    expect(headOf(file).hashBefore).toBe(await journal.hashAt(kitchenId, 2));
    expect(endOf(file)).toMatchObject({ sequence: 8, hash: await journal.hashAt(kitchenId, 8) });
    await journal.close();
    const keyFile = join(folder, ARCHIVE_KEY_FILE);
    expect(statSync(keyFile).mode & 0o777).toBe(0o600);
    const key = createPrivateKey(readFileSync(keyFile));
    expect(readFileSync(`${file}.pem`, 'utf8')).toBe(publicPem(key));
    // Anybody's Ed25519 says the same of the bytes before the last line.
    const bytes = readFileSync(file);
    const body = bytes.subarray(0, bytes.lastIndexOf('\n', bytes.length - 2) + 1);
    const { signature } = JSON.parse(linesOf(file).at(-1) ?? '') as { signature: string };
    expect(verify(null, body, createPublicKey(readFileSync(`${file}.pem`)), Buffer.from(signature, 'base64url'))).toBe(true);
    const again = join(folderForTest(), 'again.jsonl');
    const { said } = await archive('--data', folder, '--month', '2026-03', '--to', again);
    expect(said).toContain(`2026-03 (Europe/Berlin), events 3 to 8, head ${endOf(file).hash}. Key ${fingerprintOf(key)}.`);
    expect(readFileSync(again)).toEqual(bytes);
    expect(readdirSync(folder).filter((name) => name.includes('archive'))).toEqual([ARCHIVE_KEY_FILE]);
  });

  it('one command says that it is whole, by which key, and whether the journal has the same', async () => {
    const { folder, file } = await march();
    const whole = await archive('--verify', file);
    expect(whole).toMatchObject({ exitCode: 0, said: expect.stringContaining('Whole, and signed by ') as string });
    const compared = await archive('--verify', file, '--key', `${file}.pem`, '--data', folder);
    expect(compared).toMatchObject({ exitCode: 0, said: expect.stringContaining('by that key; the journal has the same.') as string });
    const other = await folderOf(MARCH);
    expect(await archive('--verify', file, '--data', other)).toEqual({ exitCode: 1, said: `${file} is of another kitchen than ${other}.` });
    const truncated = join(folderForTest(), 'data');
    mkdirSync(truncated);
    copyFileSync(join(folder, 'journal.db'), join(truncated, 'journal.db'));
    const database = new Database(join(truncated, 'journal.db'));
    database.exec('DELETE FROM events WHERE sequence > 6');
    database.close();
    expect((await archive('--verify', file, '--data', truncated)).said).toBe(
      `${file} is whole, but the journal in ${truncated} has no event 7.`,
    );
  });

  it('months follow each other: where one ends the next begins, whatever clocks said in between', async () => {
    // A battery that was empty, and a year that was mistyped for a minute.
    const odd = [
      ...MARCH.slice(0, 3),
      Date.UTC(1970, 0, 1),
      Date.UTC(2031, 5, 1),
      Date.UTC(2026, 2, 29, 3),
      ...MARCH.slice(3),
      Date.UTC(2026, 4, 2),
    ];
    const folder = await folderOf(odd);
    const into = folderForTest();
    let before = { last: 0, hash: '0'.repeat(64) };
    for (const month of ['2025-12', '2026-01', '2026-02', '2026-03', '2026-04', '2026-05', '2026-06']) {
      const file = join(into, month);
      expect((await archive('--data', folder, '--month', month, '--to', file)).exitCode).toBe(0);
      expect((await archive('--verify', file, '--data', folder)).exitCode).toBe(0);
      const { firstSequence, lastSequence, hashBefore } = headOf(file);
      expect([firstSequence, hashBefore]).toEqual([before.last + 1, before.hash]);
      before = { last: lastSequence, hash: endOf(file).hash };
      if (month === '2026-03') expect([firstSequence, lastSequence]).toEqual([3, 14]);
    }
    expect(before.last).toBe(odd.length * 2);
  });

  it('a month is the house’s own, the hour that a clock was set forward left out, and the one it was set back twice in it', () => {
    expect(monthSpan('2026-03', 'Europe/Berlin')).toEqual({ fromMs: Date.UTC(2026, 1, 28, 23), toMs: Date.UTC(2026, 2, 31, 22) });
    const hours = (month: string, zone: string): number => (monthSpan(month, zone).toMs - monthSpan(month, zone).fromMs) / HOUR_MS;
    expect([hours('2026-03', 'Europe/Berlin'), hours('2026-10', 'Europe/Berlin'), hours('2026-12', 'Europe/Berlin')]).toEqual([
      743, 745, 744,
    ]);
    expect(monthSpan('2026-12', 'UTC').toMs).toBe(Date.UTC(2027, 0, 1));
    expect(['2026-3', '2026-13', '2026-00', '26-03', '2026-03-01'].filter(isMonth)).toEqual([]);
  });

  it('an event at the last moment of such a month is in it, the next one is not', async () => {
    const { toMs } = monthSpan('2026-03', 'Europe/Berlin');
    const folder = await folderOf([toMs - HOUR_MS, toMs - 1, toMs, toMs + HOUR_MS]);
    const file = join(folderForTest(), 'march');
    await archive('--data', folder, '--month', '2026-03', '--to', file);
    expect(headOf(file)).toMatchObject({ firstSequence: 1, lastSequence: 4 });
  });

  it('the cut between two months never goes back as months go on', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(20)), fc.nat(22), fc.nat(22), (instants, one, other) => {
        const before = (instant: number): number => {
          const cut = new Cut(instant);
          for (const each of instants) cut.take(each);
          return cut.before;
        };
        const [early, late] = [Math.min(one, other), Math.max(one, other)];
        expect(before(early)).toBeLessThanOrEqual(before(late));
        const inOrder = [...instants].sort((a, b) => a - b);
        const cut = new Cut(one);
        for (const each of inOrder) cut.take(each);
        expect(cut.before).toBe(inOrder.filter((each) => each < one).length);
      }),
    );
  });

  it('of a folder that a server is running on, which goes on', async () => {
    const house = await openTestHouse();
    const month = new Date(house.machine.wallMs()).toISOString().slice(0, 7);
    const file = join(folderForTest(), 'now');
    const written = await archive('--data', house.folder, '--month', month, '--to', file);
    expect(written.said).toContain('Nothing is kept after it yet');
    expect(endOf(file).sequence).toBe(house.house.floor.state.sequence);
    expect((await archive('--verify', file, '--key', `${file}.pem`, '--data', house.folder)).exitCode).toBe(0);
  });
});

describe('RX6 whatever is changed in an archive is noticed', () => {
  it('any byte, by any of its bits', async () => {
    const { folder, file } = await march();
    const bytes = readFileSync(file);
    fc.assert(
      fc.property(fc.nat(bytes.length - 1), fc.nat(7), (position, bit) => {
        const spoilt = Uint8Array.from(bytes);
        spoilt[position] = (spoilt[position] ?? 0) ^ (1 << bit);
        expect(faultOf(spoilt)).not.toBeNull();
      }),
      { numRuns: 200 },
    );
    // Of a month without events every bit can be tried: hash, key and signature have several spellings each.
    const quiet = join(folderForTest(), 'quiet');
    await archive('--data', folder, '--month', '2026-06', '--to', quiet);
    const all = readFileSync(quiet);
    expect(faultOf(all)).toBeNull();
    for (let position = 0; position < all.length; position += 1) {
      for (let bit = 0; bit < 8; bit += 1) {
        const spoilt = Uint8Array.from(all);
        spoilt[position] = (spoilt[position] ?? 0) ^ (1 << bit);
        expect(faultOf(spoilt) === null, `bit ${bit} of byte ${position}`).toBe(false);
      }
    }
  });

  it('an event left out, put in another place, or changed: by its line and number', async () => {
    const { file } = await march();
    const lines = linesOf(file);
    const written = (changed: readonly string[]): string => changed.map((line) => `${line}\n`).join('');
    expect(faultOf(written(lines))).toBeNull();
    expect(faultOf(written(lines.toSpliced(3, 1)))).toBe('Line 4, which should be event 5, is event 6.');
    expect(faultOf(written(lines.toSpliced(2, 2, lines[3] ?? '', lines[2] ?? '')))).toBe('Line 3, which should be event 4, is event 5.');
    const event = JSON.parse(lines[4] ?? '') as { receivedMs: number };
    const later = canonicalJson({ ...event, receivedMs: event.receivedMs + 1 });
    expect(faultOf(written(lines.toSpliced(4, 1, later)))).toBe('Line 5, which should be event 6, is not what was kept.');
    expect(faultOf(written(lines.toSpliced(4, 1, JSON.stringify({ b: 1 }))))).toBe(
      'Line 5, which should be event 6, is not as it was written.',
    );
    // The same said in another spelling is not what was signed.
    expect(faultOf(written(lines.toSpliced(4, 1, (lines[4] ?? '').replace(':', ': '))))).toContain('is not as it was written');
  });

  it('lines added or taken away at either end', async () => {
    const { file } = await march();
    const text = readFileSync(file, 'utf8');
    const lines = linesOf(file);
    for (const spoilt of [
      `${text}\n`,
      `${text}${lines.at(-1)}\n`,
      `${text}{}\n`,
      `\n${text}`,
      `\uFEFF${text}`,
      text.slice(0, -1),
      `${lines.slice(0, -1).join('\n')}\n`,
      `${lines.slice(1).join('\n')}\n`,
      `${lines[0]}\n${lines.at(-1)}\n`,
      '',
      '\n',
    ])
      expect(faultOf(spoilt), JSON.stringify(spoilt.slice(0, 40))).not.toBeNull();
  });

  it('signed anew by another key: whole in itself, and told apart by the key that the house gave', async () => {
    const { file } = await march();
    const bytes = readFileSync(file);
    const last = linesOf(file).at(-1) ?? '';
    const body = bytes.subarray(0, bytes.length - Buffer.byteLength(last) - 1);
    const { privateKey, publicKey } = generateKeyPairSync('ed25519');
    const end = {
      ...(JSON.parse(last) as object),
      publicKey: keyText(publicKey),
      signature: sign(null, body, privateKey).toString('base64url'),
    };
    const forged = join(folderForTest(), 'forged');
    writeFileSync(forged, Buffer.concat([body, Buffer.from(`${canonicalJson(end)}\n`)]));
    expect((await archive('--verify', forged)).said).toContain(`signed by ${fingerprintOf(publicKey)}: compare it`);
    const told = await archive('--verify', forged, '--key', `${file}.pem`);
    expect(told).toMatchObject({ exitCode: 1, said: expect.stringContaining('it is signed by another key') as string });
    // Its key with the house's signature.
    const mixed = { ...(JSON.parse(last) as object), publicKey: keyText(publicKey) };
    expect(faultOf(Buffer.concat([body, Buffer.from(`${canonicalJson(mixed)}\n`)]))).toContain('The signature is not one of these lines');
  });

  it('a journal that is damaged itself is not archived', async () => {
    const folder = await folderOf(MARCH);
    const database = new Database(join(folder, 'journal.db'));
    expect(database.prepare('UPDATE commands SET received_ms = received_ms + 1 WHERE number = 3').run().changes).toBe(1);
    database.close();
    const file = join(folderForTest(), 'march');
    const told = await archive('--data', folder, '--month', '2026-03', '--to', file);
    expect(told).toEqual({
      exitCode: 1,
      said: expect.stringContaining('Line 4, which should be event 5, is not what was kept.') as string,
    });
    expect(existsSync(file)).toBe(false);
  });

  it('what cannot be understood, is not there or is there already is told so', async () => {
    const { folder, file } = await march();
    for (const args of [
      [],
      ['--data', folder],
      ['--data', folder, '--month', 'March', '--to', 'x'],
      ['--verify', file, '--month', '2026-03'],
      ['--what'],
      ['--data', folder, '--month', '2026-03', '--to', 'x', '--key', 'y'],
    ])
      expect(await archive(...args)).toMatchObject({ exitCode: 2, said: expect.stringContaining('Usage: archive') as string });
    expect(await archive('--data', folder, '--month', '2026-03', '--to', file)).toMatchObject({ exitCode: 1 });
    expect(await archive('--data', folderForTest(), '--month', '2026-03', '--to', `${file}2`)).toMatchObject({ exitCode: 1 });
    expect(await archive('--verify', `${file}2`)).toEqual({ exitCode: 1, said: `There is no ${file}2.` });
    writeFileSync(`${file}3.pem`, 'no key');
    expect(await archive('--verify', file, '--key', `${file}3.pem`)).toEqual({ exitCode: 1, said: `${file}3.pem is no key.` });
    expect((await archive('--data', folder, '--month', '2026-04', '--to', join(folder, 'nowhere', 'x'))).said).toContain(
      'cannot be written',
    );
  });
});
