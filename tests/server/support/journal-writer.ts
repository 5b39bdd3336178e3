import { writeSync } from 'node:fs';
import { join } from 'node:path';
import { lockFolder } from '../../../server/journal/folder-lock.ts';
import { SqliteJournal } from '../../../server/journal/sqlite-journal.ts';
import { dayOfEntries } from './journal-events.ts';

// A server of nothing but a journal: takes the folder, and appends command after command until it is killed. It says each
// sequence number once it has been told that it is kept.
const folder = process.argv[2] ?? '';
lockFolder(folder);
// Nobody here holds on to the lock: it must not go with the garbage.
globalThis.gc?.();
const journal = new SqliteJournal(join(folder, 'journal.db'));
const kitchenId = await journal.kitchenId();
let { sequence } = await journal.head(kitchenId);
writeSync(1, `from ${sequence}\n`);
for (;;) {
  for (const entry of dayOfEntries(200, sequence)) {
    ({ sequence } = await journal.append(kitchenId, sequence, [entry]));
    writeSync(1, `${sequence}\n`);
  }
}
