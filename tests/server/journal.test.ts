import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { JournalError } from '../../server/journal/journal.ts';
import { emptyMemoryDisk, MemoryJournal } from '../../server/journal/memory-journal.ts';
import { SlowJournal, type AppendFault, type AppendMoment } from '../../server/journal/slow-journal.ts';
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts';
import { ThreadedJournal } from '../../server/journal/threaded-journal.ts';
import { journalContract } from './support/journal-contract.ts';
import { entryOf, idOf, tapEvents } from './support/journal-events.ts';
import { startJournalHere } from './support/journal-here.ts';
import { temporaryFolder } from './support/temporary-folder.ts';

journalContract('the journal in memory', async () => {
  const disk = emptyMemoryDisk(idOf(1));
  return { open: async () => new MemoryJournal(disk), cleanUp: async () => {} };
});

journalContract('the journal in SQLite', async () => {
  const folder = temporaryFolder();
  return {
    open: async () => new SqliteJournal(join(folder, 'journal.db')),
    cleanUp: async () => rmSync(folder, { recursive: true }),
  };
});

for (const [name, longValues] of [
  ['the journal with everything on a thread', 0],
  // Some of what the contract appends is longer than this, some is not.
  ['the journal with what is long on a thread', 60],
] as const) {
  journalContract(name, async () => {
    const folder = temporaryFolder();
    const path = join(folder, 'journal.db');
    return {
      open: async () => new ThreadedJournal(new SqliteJournal(path), path, startJournalHere, longValues),
      cleanUp: async () => rmSync(folder, { recursive: true }),
    };
  });
}

journalContract('the slow journal', async () => {
  const disk = emptyMemoryDisk(idOf(1));
  return {
    open: async () => new SlowJournal(new MemoryJournal(disk), { delay: () => setImmediate() }),
    cleanUp: async () => {},
  };
});

describe('the slow journal', () => {
  const entry = entryOf(1, tapEvents(idOf(100), 5), 2);
  const kitchenId = idOf(1);

  function failing(at: AppendMoment, fault: AppendFault): SlowJournal {
    return new SlowJournal(new MemoryJournal(emptyMemoryDisk(kitchenId)), {
      delay: async () => {},
      fault: (moment) => (moment === at ? fault : null),
    });
  }

  it('J10 keeps nothing where it fails before the append', async () => {
    const journal = failing('beforeAppend', new JournalError('diskFull', 'The disk is full.'));
    await expect(journal.append(kitchenId, 0, [entry])).rejects.toMatchObject({ code: 'diskFull' });
    expect((await journal.head(kitchenId)).sequence).toBe(0);
  });

  it('J10 has kept the group where it fails after the append', async () => {
    const journal = failing('afterAppend', new JournalError('journalFailed', 'The answer was lost.'));
    await expect(journal.append(kitchenId, 0, [entry])).rejects.toMatchObject({ code: 'journalFailed' });
    expect((await journal.head(kitchenId)).sequence).toBe(2);
    expect(await journal.outcomeOf(kitchenId, entry.commandId)).toEqual(entry.outcome);
  });

  it.each([
    ['beforeAppend', 0],
    ['afterAppend', 2],
  ] as const)('J10 never answers where the process would have died %s', async (moment, sequence) => {
    const journal = failing(moment, 'noAnswer');
    let isAnswered = false;
    const settle = (): void => {
      isAnswered = true;
    };
    void journal.append(kitchenId, 0, [entry]).then(settle, settle);
    await setImmediate();
    await setImmediate();
    expect(isAnswered).toBe(false);
    expect((await journal.head(kitchenId)).sequence).toBe(sequence);
  });

  it('J10 waits before and after, in this order', async () => {
    const seen: string[] = [];
    const inner = new MemoryJournal(emptyMemoryDisk(kitchenId));
    const journal = new SlowJournal(inner, {
      delay: async (moment) => void seen.push(`${moment} at ${(await inner.head(kitchenId)).sequence}`),
    });
    await journal.append(kitchenId, 0, [entry]);
    expect(seen).toEqual(['beforeAppend at 0', 'afterAppend at 2']);
  });
});
