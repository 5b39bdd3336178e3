import { createHash } from 'node:crypto';
import * as fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { EVENT_VERSION, type FloorEvent, type RecordedEvent } from '../../../shared/floor/events.ts';
import type { Outcome } from '../../../shared/floor/refusals.ts';
import { JournalError, type Journal, type JournalEntry, type JournalHead } from '../../../server/journal/journal.ts';
import { floorEvents } from './journal-arbitraries.ts';
import { childId, DEVICE_ID, entryOf, formulaEvent, idOf, tapEvents } from './journal-events.ts';

/** A journal that can be closed and opened again on what it has kept. */
export interface JournalUnderTest {
  open(): Promise<Journal>;
  cleanUp(): Promise<void>;
}

const LIMIT = 10_000;

/** The promises that every journal keeps, whatever it keeps its events on. */
export function journalContract(name: string, prepare: () => Promise<JournalUnderTest>): void {
  describe(`${name} keeps the journal's contract`, () => {
    let place: JournalUnderTest;
    let journal: Journal;
    let kitchenId: string;

    beforeEach(async () => {
      place = await prepare();
      journal = await place.open();
      kitchenId = await journal.kitchenId();
    });

    afterEach(async () => {
      await journal.close();
      await place.cleanUp();
    });

    async function reopen(): Promise<void> {
      await journal.close();
      journal = await place.open();
    }

    async function everything(): Promise<{ head: JournalHead; events: readonly RecordedEvent[] }> {
      return { head: await journal.head(kitchenId), events: await journal.read(kitchenId, 0, LIMIT) };
    }

    it('J1 gives its kitchen an id on first use and the same one ever after', async () => {
      expect(kitchenId).toMatch(/^[A-Za-z0-9_-]{22}$/);
      expect(await journal.kitchenId()).toBe(kitchenId);
      await reopen();
      expect(await journal.kitchenId()).toBe(kitchenId);
    });

    it('J2 is empty at first: sequence 0 and a hash of zeros', async () => {
      expect(await journal.head(kitchenId)).toEqual({ kitchenId, sequence: 0, hash: '0'.repeat(64) });
      expect(await journal.read(kitchenId, 0, LIMIT)).toEqual([]);
      expect(await journal.hashAt(kitchenId, 0)).toBeNull();
    });

    it('J2 numbers events from 1 without a gap, over commands and groups, ordinals from 0 in each command', async () => {
      await journal.append(kitchenId, 0, [
        entryOf(1, tapEvents(idOf(100), 5), 2),
        entryOf(2, [], 0),
        entryOf(3, tapEvents(idOf(101), 6), 4),
      ]);
      const head = await journal.append(kitchenId, 4, [entryOf(4, [formulaEvent()], 5)]);
      expect(head.sequence).toBe(5);
      expect((await journal.read(kitchenId, 0, LIMIT)).map(({ sequence, commandId, ordinal }) => [sequence, commandId, ordinal])).toEqual([
        [1, idOf(1), 0],
        [2, idOf(1), 1],
        [3, idOf(3), 0],
        [4, idOf(3), 1],
        [5, idOf(4), 0],
      ]);
    });

    it('J3 reads what follows a sequence number, oldest first, at most as much as asked for', async () => {
      await journal.append(
        kitchenId,
        0,
        [1, 2, 3].map((n) => entryOf(n, tapEvents(idOf(100 + n), n), n * 2)),
      );
      const sequences = async (after: number, limit: number): Promise<number[]> =>
        (await journal.read(kitchenId, after, limit)).map(({ sequence }) => sequence);
      expect(await sequences(0, 2)).toEqual([1, 2]);
      expect(await sequences(2, 3)).toEqual([3, 4, 5]);
      expect(await sequences(5, 3)).toEqual([6]);
      expect(await sequences(6, 3)).toEqual([]);
      expect(await sequences(600, 3)).toEqual([]);
      expect(await sequences(0, 0)).toEqual([]);
    });

    it('J3 gives back what was appended, documents too, after closing and opening as before', async () => {
      const events: FloorEvent[] = [...tapEvents(idOf(7), 123), formulaEvent(), { type: 'clockJumped', byMs: -3_600_000, atMs: 8.64e15 }];
      await journal.append(kitchenId, 0, [entryOf(1, events, events.length)]);
      const expected = events.map((event, ordinal) => ({ sequence: ordinal + 1, commandId: idOf(1), ordinal, deviceId: DEVICE_ID, event }));
      const before = await everything();
      expect(before.events).toStrictEqual(expected);
      await reopen();
      expect(await everything()).toStrictEqual(before);
    });

    it('J3 gives back any list of events exactly', async () => {
      let commands = 0;
      await fc.assert(
        fc.asyncProperty(fc.array(fc.array(floorEvents, { maxLength: 4 }), { minLength: 1, maxLength: 5 }), async (lists) => {
          const { sequence } = await journal.head(kitchenId);
          const group = lists.map((events) => entryOf((commands += 1), events, 1));
          const head = await journal.append(kitchenId, sequence, group);
          const kept = await journal.read(kitchenId, sequence, LIMIT);
          expect(kept.map(({ event }) => event)).toStrictEqual(lists.flat());
          expect(head.sequence).toBe(sequence + lists.flat().length);
        }),
        { seed: 20_260_302, numRuns: 60 },
      );
    });

    it('J3 keeps what an event was when it was appended, whatever is done to the object afterwards', async () => {
      const event: FloorEvent = { type: 'moreTimeGiven', workpieceId: idOf(1), stepId: 'bulk', atMs: 1, minutes: 5 };
      await journal.append(kitchenId, 0, [entryOf(1, [event], 1)]);
      event.minutes = 99;
      expect((await journal.read(kitchenId, 0, 1))[0]?.event).toMatchObject({ minutes: 5 });
    });

    it('J4 refuses a group that begins elsewhere than the journal ends, and keeps nothing of it', async () => {
      await journal.append(kitchenId, 0, [entryOf(1, tapEvents(idOf(100), 5), 2)]);
      const before = await everything();
      for (const wrong of [0, 1, 3]) {
        await expect(journal.append(kitchenId, wrong, [entryOf(2, tapEvents(idOf(100), 6), 4)])).rejects.toMatchObject({
          code: 'sequenceConflict',
        });
      }
      expect(await everything()).toStrictEqual(before);
      expect(await journal.outcomeOf(kitchenId, idOf(2))).toBeNull();
    });

    it('J5 refuses a command id that it knows, with or without events, and keeps nothing of the group', async () => {
      await journal.append(kitchenId, 0, [entryOf(1, tapEvents(idOf(100), 5), 2), entryOf(2, [], 0)]);
      const before = await everything();
      for (const known of [1, 2]) {
        const group = [entryOf(3, tapEvents(idOf(103), 6), 4), entryOf(known, tapEvents(idOf(100), 6), 6)];
        await expect(journal.append(kitchenId, 2, group)).rejects.toMatchObject({ name: 'JournalError', code: 'commandRepeated' });
      }
      expect(await everything()).toStrictEqual(before);
      expect(await journal.outcomeOf(kitchenId, idOf(3))).toBeNull();
      expect((await journal.append(kitchenId, 2, [entryOf(3, tapEvents(idOf(103), 6), 4)])).sequence).toBe(4);
    });

    it('J5 refuses a group that holds one command twice', async () => {
      const group = [entryOf(1, tapEvents(idOf(100), 5), 2), entryOf(1, [], 0)];
      await expect(journal.append(kitchenId, 0, group)).rejects.toBeInstanceOf(JournalError);
      expect((await journal.head(kitchenId)).sequence).toBe(0);
    });

    it('J6 keeps the outcome of every command, refusals too, exactly and for ever', async () => {
      const outcomes: Outcome[] = [
        { ok: true, sequence: 2, undoable: true },
        { ok: true, sequence: 4, undoable: false },
        { ok: true, sequence: 3, undoable: true },
        {
          ok: false,
          refusal: {
            code: 'stepAlreadyDone',
            tag: 'C1b·2',
            stepId: 'shape',
            atMs: 1_772_000_000_000,
            deviceId: idOf(8),
            stationId: 'bench',
            skipped: false,
          },
        },
        { ok: false, refusal: { code: 'forbidden' } },
        { ok: true, sequence: 6, undoable: true },
      ];
      const eventsOf = (n: number): FloorEvent[] => (n < 3 ? tapEvents(childId(1, n), n) : []);
      await journal.append(
        kitchenId,
        0,
        outcomes.map((outcome, n) => entryOf(n, eventsOf(n), 0, outcome)),
      );
      const kept = (): Promise<(Outcome | null)[]> => Promise.all(outcomes.map((_, n) => journal.outcomeOf(kitchenId, idOf(n))));
      expect(await kept()).toStrictEqual(outcomes);
      expect(await journal.outcomeOf(kitchenId, idOf(77))).toBeNull();
      await reopen();
      expect(await kept()).toStrictEqual(outcomes);
    });

    it('J7 makes each hash of the hash before and the event in canonical JSON', async () => {
      const events: FloorEvent[] = [
        { type: 'moreTimeGiven', workpieceId: idOf(1), stepId: 'bulk', atMs: 1, minutes: 5 },
        { type: 'stepSkipped', workpieceId: idOf(1), stepId: 'fold-2', atMs: 2, reason: 'zu fest — "genug"' },
      ];
      const entry = entryOf(4, events, 2);
      await journal.append(kitchenId, 0, [entry]);
      // Written out by hand, so that it is the definition and not our own code that is held against the journal.
      const texts = [
        `{"atMs":1,"minutes":5,"stepId":"bulk","type":"moreTimeGiven","workpieceId":"${idOf(1)}"}`,
        `{"atMs":2,"reason":"zu fest — \\"genug\\"","stepId":"fold-2","type":"stepSkipped","workpieceId":"${idOf(1)}"}`,
      ];
      let hash = Buffer.alloc(32);
      for (const [index, text] of texts.entries()) {
        const link = `[${index + 1},"${kitchenId}","${entry.commandId}",${index},"${DEVICE_ID}",${entry.receivedMs},${EVENT_VERSION},${text}]`;
        hash = createHash('sha256').update(hash).update(link, 'utf8').digest();
        expect(await journal.hashAt(kitchenId, index + 1)).toBe(hash.toString('hex'));
      }
      expect(await journal.head(kitchenId)).toEqual({ kitchenId, sequence: 2, hash: hash.toString('hex') });
      expect(await journal.hashAt(kitchenId, 3)).toBeNull();
    });

    it('J8 keeps nothing of a group in which anything cannot be kept, and goes on', async () => {
      await journal.append(kitchenId, 0, [entryOf(1, tapEvents(idOf(100), 5), 2)]);
      const before = await everything();
      const impossible: FloorEvent = { type: 'clockJumped', byMs: Number.NaN, atMs: 1 };
      const group: JournalEntry[] = [entryOf(2, [{ type: 'dayOpened', serviceDate: '2026-03-03' }], 3), entryOf(3, [impossible], 4)];
      await expect(journal.append(kitchenId, 2, group)).rejects.toThrow('JSON cannot say');
      expect(await everything()).toStrictEqual(before);
      expect(await journal.outcomeOf(kitchenId, idOf(2))).toBeNull();
      // The names of the group that was dropped are none of the next one's.
      const next: FloorEvent[] = [{ type: 'dayOpened', serviceDate: '2026-03-04' }, ...tapEvents(idOf(555), 7, 'scald', 'shape')];
      await journal.append(kitchenId, 2, [entryOf(4, next, 5)]);
      await reopen();
      expect((await journal.read(kitchenId, 2, LIMIT)).map(({ event }) => event)).toStrictEqual(next);
    });

    it('J8 takes an empty group for what it is', async () => {
      expect(await journal.append(kitchenId, 0, [])).toEqual({ kitchenId, sequence: 0, hash: '0'.repeat(64) });
      await expect(journal.append(kitchenId, 1, [])).rejects.toMatchObject({ code: 'sequenceConflict' });
    });

    it('J9 throws on what only a bug can ask for: another kitchen, no id, a broken instant, a closed journal', async () => {
      const good = entryOf(1, [], 0);
      await expect(journal.head(idOf(666))).rejects.toThrow('knows no kitchen');
      await expect(journal.append(idOf(666), 0, [good])).rejects.toThrow('knows no kitchen');
      await expect(journal.append(kitchenId, 0, [{ ...good, commandId: 'tap 1' }])).rejects.toThrow('no command id');
      await expect(journal.append(kitchenId, 0, [{ ...good, deviceId: '' }])).rejects.toThrow('no device id');
      await expect(journal.append(kitchenId, 0, [{ ...good, receivedMs: 0.5 }])).rejects.toThrow('whole milliseconds');
      await journal.close();
      await expect(journal.head(kitchenId)).rejects.toThrow(/is closed|is not open/);
      await expect(journal.append(kitchenId, 0, [good])).rejects.toThrow(/is closed|is not open/);
    });
  });
}
