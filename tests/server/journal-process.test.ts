import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lockFolder } from '../../server/journal/folder-lock.ts';
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts';
import { builtProgram, Child } from './support/journal-child.ts';
import { folderForTest } from './support/temporary-folder.ts';

let program: Awaited<ReturnType<typeof builtProgram>>;

beforeAll(async () => {
  program = await builtProgram('journal-writer');
});
afterAll(() => program.remove());

describe('a journal whose process is killed', () => {
  // kill -9 leaves what the operating system has taken over; a cut of the power itself cannot be tried here.
  it('J1 has kept every event that was acknowledged, every time', async () => {
    const folder = folderForTest();
    let kept = 0;
    for (const lines of [1, 40, 77]) {
      const child = new Child(program.file, [folder]);
      expect(await child.line()).toBe(`from ${kept}`);
      let acknowledged = 0;
      for (let line = 0; line < lines; line += 1) acknowledged = Number(await child.line());
      await child.kill();
      // What it said before it was killed and nobody had read yet.
      for (let line = await child.line(); line !== null; line = await child.line()) acknowledged = Number(line);
      const journal = new SqliteJournal(join(folder, 'journal.db'));
      const kitchenId = await journal.kitchenId();
      const { sequence } = await journal.head(kitchenId);
      expect(acknowledged).toBeGreaterThan(kept);
      expect(sequence).toBeGreaterThanOrEqual(acknowledged);
      expect(await journal.verifyChain(kitchenId)).toBeNull();
      const last = (await journal.read(kitchenId, sequence - 1, 1))[0];
      expect(await journal.outcomeOf(kitchenId, last?.commandId ?? '')).toMatchObject({ ok: true, sequence });
      await journal.close();
      kept = sequence;
    }
  });

  it('J21 holds its folder against other processes, and no longer than it lives', async () => {
    const folder = folderForTest();
    const child = new Child(program.file, [folder]);
    expect(await child.line()).toBe('from 0');
    expect(() => lockFolder(folder)).toThrow(`is in use by another server (process ${child.pid}).`);
    await child.kill();
    const lock = lockFolder(folder);
    lock.release();
  });
});
