import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { FloorEvent } from '../../shared/floor/events.ts';
import type { FromJournalThread, ToJournalThread } from '../../server/journal/journal-messages.ts';
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts';
import type { JournalEars, StartJournalThread } from '../../server/journal/start-journal-thread.ts';
import { ThreadedJournal } from '../../server/journal/threaded-journal.ts';
import { entryOf, idOf, tapEvents } from './support/journal-events.ts';
import { startJournalHere } from './support/journal-here.ts';
import { eventLoopTurns } from './support/machine.ts';
import { folderForTest } from './support/temporary-folder.ts';

/** A day's plan of so many steps. */
function planOf(steps: number): FloorEvent {
  const starts = Array.from({ length: steps }, (_, n) => ({
    workpieceId: idOf(n % 40),
    stepId: 'shape',
    plannedStartMs: n * 60_000,
    plannedEndMs: n * 60_000 + 1,
    resources: [{ kind: 'station' as const, id: 'bench' }],
  }));
  return { type: 'planAdopted', planId: idOf(7), isWhole: true, starts, moved: [], warnings: [], atMs: 1 };
}

const TAP = entryOf(1, tapEvents(idOf(100), 5), 2);

interface Opened {
  readonly journal: ThreadedJournal;
  readonly kitchenId: string;
  /** What the thread was told. */
  readonly told: ToJournalThread[];
}

async function opened(start: StartJournalThread): Promise<Opened> {
  const path = join(folderForTest(), 'journal.db');
  const told: ToJournalThread[] = [];
  const listening: StartJournalThread = (where, ears) => {
    const port = start(where, ears);
    return { ...port, say: (message) => (told.push(message), port.say(message)) };
  };
  const journal = new ThreadedJournal(new SqliteJournal(path), path, listening);
  onTestFinished(() => journal.close());
  return { journal, kitchenId: await journal.kitchenId(), told };
}

describe('a journal with a thread for what is long', () => {
  it('J20 gives a day’s plan to the thread and a tap not, in the order in which they came, in one chain', async () => {
    const { journal, kitchenId, told } = await opened(startJournalHere);
    const plan = entryOf(2, [planOf(500)], 3);
    const [first, second, third] = await Promise.all([
      journal.append(kitchenId, 0, [TAP]),
      journal.append(kitchenId, 2, [plan]),
      journal.append(kitchenId, 3, [entryOf(3, tapEvents(idOf(101), 6), 5)]),
    ]);
    expect([first.sequence, second.sequence, third.sequence]).toEqual([2, 3, 5]);
    expect(told).toMatchObject([{ type: 'append', expectedSequence: 2 }]);
    expect((await journal.read(kitchenId, 2, 1)).map(({ event }) => event)).toEqual(plan.events);
    expect(await journal.outcomeOf(kitchenId, plan.commandId)).toEqual(plan.outcome);
    expect(await journal.head(kitchenId)).toEqual(third);
  });

  it('J20 refuses what the thread refuses, and goes on', async () => {
    const { journal, kitchenId } = await opened(startJournalHere);
    const plan = entryOf(2, [planOf(500)], 1);
    await expect(journal.append(kitchenId, 7, [plan])).rejects.toMatchObject({ name: 'JournalError', code: 'sequenceConflict' });
    expect((await journal.append(kitchenId, 0, [plan])).sequence).toBe(1);
    await expect(journal.append(kitchenId, 1, [plan])).rejects.toMatchObject({ name: 'JournalError', code: 'commandRepeated' });
    expect((await journal.append(kitchenId, 1, [entryOf(3, tapEvents(idOf(101), 6), 3)])).sequence).toBe(3);
  });

  it('J20 a bug in the thread, or its end, is no refusal: it is thrown', async () => {
    let ears: JournalEars | null = null;
    let answer: ((callId: number) => FromJournalThread) | null = (callId) => ({ type: 'broken', callId, message: 'a bug', stack: 'there' });
    const { journal, kitchenId } = await opened((_path, own) => {
      ears = own;
      return {
        say: (message) => {
          if (message.type === 'append' && answer !== null) own.hear(answer(message.callId));
        },
        stop: async () => {},
      };
    });
    const plan = entryOf(2, [planOf(500)], 1);
    await expect(journal.append(kitchenId, 0, [plan])).rejects.toMatchObject({ name: 'Error', message: 'a bug', stack: 'there' });
    answer = null;
    const waiting = journal.append(kitchenId, 0, [plan]).catch((error: unknown) => error);
    await eventLoopTurns();
    (ears as JournalEars | null)?.died(new Error('out of memory'));
    expect(await waiting).toMatchObject({ name: 'Error', message: 'out of memory' });
  });
});
