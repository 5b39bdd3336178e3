import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { emptyMemoryDisk, MemoryJournal } from '../../server/journal/memory-journal.ts';
import { readSnapshot, readSnapshotHead, writeSnapshot, type Snapshot } from '../../server/journal/snapshot-file.ts';
import { EMPTY_STATE, STATE_VERSION } from '../../shared/floor/state.ts';
import { entryOf, idOf, tapEvents } from './support/journal-events.ts';
import { folderForTest } from './support/temporary-folder.ts';

const kitchenId = idOf(1);
let folder: string;
let path: string;
let journal: MemoryJournal;
let snapshot: Snapshot;

beforeEach(async () => {
  folder = folderForTest();
  path = join(folder, 'snapshot.json');
  journal = new MemoryJournal(emptyMemoryDisk(kitchenId));
  const head = await journal.append(kitchenId, 0, [entryOf(1, tapEvents(idOf(100), 5), 2)]);
  await journal.append(kitchenId, 2, [entryOf(2, tapEvents(idOf(101), 5), 4)]);
  snapshot = { ...head, state: { ...EMPTY_STATE, sequence: 2, serviceDate: '2026-03-02', deckC: { 'deck-2': 240.5, '7': 1 } } };
});

describe('the snapshot', () => {
  it('J22 is read back as it was written, and nothing else is left in the folder', async () => {
    await writeSnapshot(path, snapshot);
    expect(await readSnapshot(path, journal, kitchenId)).toEqual({ ok: true, value: snapshot });
    expect(await readSnapshotHead(path)).toEqual({ kitchenId, sequence: 2, hash: snapshot.hash });
    expect(readdirSync(folder)).toEqual(['snapshot.json']);
  });

  it('J22 takes the place of the one before as a whole', async () => {
    await writeSnapshot(path, { ...snapshot, state: { ...snapshot.state, serviceDate: '2026-03-01' } });
    await writeSnapshot(path, snapshot);
    expect(await readSnapshot(path, journal, kitchenId)).toEqual({ ok: true, value: snapshot });
  });

  it('J22 leaves the one before where it cannot be written', async () => {
    await writeSnapshot(path, snapshot);
    mkdirSync(`${path}.tmp`);
    await expect(writeSnapshot(path, { ...snapshot, state: { ...snapshot.state, serviceDate: null } })).rejects.toThrow('EISDIR');
    expect(await readSnapshot(path, journal, kitchenId)).toEqual({ ok: true, value: snapshot });
  });

  it('J22 is not believed where it is absent', async () => {
    expect(await readSnapshot(path, journal, kitchenId)).toEqual({ ok: false, fault: 'absent' });
    expect(await readSnapshotHead(path)).toBeNull();
  });

  it('J22 is not believed where it is torn, wherever it was torn', async () => {
    await writeSnapshot(path, snapshot);
    const text = readFileSync(path, 'utf8');
    for (let length = 0; length < text.length - 1; length += 7) {
      writeFileSync(path, text.slice(0, length));
      expect(await readSnapshot(path, journal, kitchenId)).toEqual({ ok: false, fault: 'torn' });
    }
    writeFileSync(path, text.replace('240.5', '241.5'));
    expect(await readSnapshot(path, journal, kitchenId)).toEqual({ ok: false, fault: 'torn' });
    writeFileSync(path, text.replace('"sequence":2,"hash"', '"sequence":3,"hash"'));
    expect(await readSnapshot(path, journal, kitchenId)).toEqual({ ok: false, fault: 'torn' });
  });

  it('J22 is not believed where it is of another version of the state or of another kitchen', async () => {
    await writeSnapshot(path, snapshot);
    expect(await readSnapshot(path, journal, kitchenId, STATE_VERSION + 1)).toEqual({ ok: false, fault: 'otherStateVersion' });
    expect(await readSnapshot(path, journal, idOf(2))).toEqual({ ok: false, fault: 'otherKitchen' });
  });

  it('J22 is not believed where the journal has another event at its end, or none', async () => {
    await writeSnapshot(path, snapshot);
    const other = new MemoryJournal(emptyMemoryDisk(kitchenId));
    expect(await readSnapshot(path, other, kitchenId)).toEqual({ ok: false, fault: 'journalDisagrees' });
    await other.append(kitchenId, 0, [entryOf(1, tapEvents(idOf(100), 6), 2)]);
    expect(await readSnapshot(path, other, kitchenId)).toEqual({ ok: false, fault: 'journalDisagrees' });
  });

  it('J22 throws where its state is not the one of its sequence number', async () => {
    await expect(writeSnapshot(path, { ...snapshot, sequence: 4 })).rejects.toThrow('assertion failed');
    expect(readdirSync(folder)).toEqual([]);
  });
});
