import { writeLongJournal } from './long-journal.ts';
import { inTemporaryFolder } from './places.ts';
import { lineOf, type Line } from './report.ts';

const AIM = '≤ 300 bytes';

/** How large journal.db gets, by the event, over whole demo days worked through by real commands. The same in every round: no floor. */
export async function journalSize(): Promise<readonly Line[]> {
  const bytesPerEvent = (leastEvents: number): Promise<number> =>
    inTemporaryFolder(async (folder) => {
      const { bytes, events } = await writeLongJournal(folder, leastEvents, Date.now());
      return bytes / events;
    });
  return [
    lineOf('journal.db an event, the first day with all its documents', 'bytes', AIM, [await bytesPerEvent(1)]),
    lineOf('journal.db an event, over 20 000 events', 'bytes', AIM, [await bytesPerEvent(20_000)]),
  ];
}
