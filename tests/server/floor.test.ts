import { pino } from 'pino';
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../shared/floor/refusals.ts';
import { EMPTY_STATE } from '../../shared/floor/state.ts';
import { evolveAll } from '../../shared/floor/evolve.ts';
import { Floor, type Submission } from '../../server/floor/floor.ts';
import { JournalError, type Journal, type JournalEntry } from '../../server/journal/journal.ts';
import { emptyMemoryDisk, MemoryJournal } from '../../server/journal/memory-journal.ts';
import { SlowJournal, type AppendFault } from '../../server/journal/slow-journal.ts';
import { DEVICE_ID, idOf, START_MS } from './support/journal-events.ts';
import { eventLoopTurns } from './support/machine.ts';

const KITCHEN = idOf(77);

/** A command of the house's own that always makes one event. */
function anchor(n: number): Submission {
  const command = { type: 'anchorClock', houseMs: START_MS + n, realMs: START_MS, pace: 1 } as const;
  return { commandId: idOf(n), deviceId: DEVICE_ID, stationId: null, tap: null, command };
}

function jump(n: number, byMs: number): Submission {
  return { ...anchor(n), command: { type: 'noteClockJump', byMs } };
}

/** A burst that was sounded, which is kept whatever has become of its call. */
function sounded(n: number): Submission {
  const call = { workpieceId: idOf(900), stepId: 'prove', level: 'call' } as const;
  return { ...anchor(n), command: { type: 'noteSounded', burst: 'call', calls: [call] } };
}

/** A tap that is always refused, and kept as refused. */
function refusedTap(n: number): Submission {
  return {
    commandId: idOf(n),
    deviceId: DEVICE_ID,
    stationId: null,
    tap: { agoMonotonicMs: 0, agoWallMs: 0 },
    command: { type: 'hearAllCalls' },
  };
}

interface Told {
  readonly floor: Floor;
  /** What happened, in order. */
  readonly order: string[];
  readonly groups: (readonly JournalEntry[])[];
  readonly journal: Journal;
  /** Lines of the log, read back. */
  readonly logged: unknown[];
  /** What the next append, and only that, comes to; held until `release` where it is held. */
  fault: AppendFault;
  release: () => void;
  hold(): void;
  submit(submission: Submission): Promise<Outcome>;
}

function floorOnMemory(nowMs = (): number => START_MS): Told {
  const order: string[] = [];
  const groups: (readonly JournalEntry[])[] = [];
  const logged: unknown[] = [];
  const memory = new MemoryJournal(emptyMemoryDisk(KITCHEN));
  let held: Promise<void> | null = null;
  const slow = new SlowJournal(memory, {
    delay: async (moment) => {
      order.push(moment);
      if (moment === 'beforeAppend' && held !== null) await held;
    },
    fault: (moment) => {
      if (moment !== 'beforeAppend') return null;
      const { fault } = told;
      told.fault = null;
      return fault;
    },
  });
  const journal: Journal = Object.assign(Object.create(slow) as Journal, {
    append: (kitchenId: string, expected: number, group: readonly JournalEntry[]) => {
      groups.push(group);
      return SlowJournal.prototype.append.call(slow, kitchenId, expected, group);
    },
    head: (kitchenId: string) => slow.head(kitchenId),
    read: (kitchenId: string, after: number, limit: number) => slow.read(kitchenId, after, limit),
    outcomeOf: (kitchenId: string, commandId: string) => slow.outcomeOf(kitchenId, commandId),
  });
  const floor = new Floor({
    kitchenId: KITCHEN,
    journal,
    state: EMPTY_STATE,
    clock: { nowMs, pace: 1 },
    log: pino({ level: 'warn' }, { write: (line) => logged.push(JSON.parse(line)) }),
    defer: (run) => setImmediate(run),
  });
  floor.onCommitted(({ events }) => order.push(`published ${events.map(({ sequence }) => sequence).join(',')}`));
  const told: Told = {
    floor,
    order,
    groups,
    journal,
    logged,
    fault: null,
    release: () => {},
    hold: () => {
      held = new Promise((resolve) => {
        told.release = () => {
          held = null;
          resolve();
        };
      });
    },
    submit: async (submission) => {
      const outcome = await floor.submit(submission);
      order.push(`answered ${outcome.ok ? outcome.sequence : outcome.refusal.code}`);
      return outcome;
    },
  };
  return told;
}

/** An error as whoever reads the log needs it: what it says, and where it came from. */
function asLogged({ message }: Pick<Error, 'message'>): unknown {
  return expect.objectContaining({ message, stack: expect.stringContaining(message) as string });
}

describe('the one writer', () => {
  it('F1 appends, then acknowledges, then publishes', async () => {
    const told = floorOnMemory();
    await told.submit(anchor(1));
    await eventLoopTurns();
    expect(told.order).toEqual(['beforeAppend', 'afterAppend', 'answered 1', 'published 1']);
  });

  it('F1 shows no state and gives no answer before the append is through', async () => {
    const told = floorOnMemory();
    told.hold();
    const answer = told.submit(anchor(1));
    await eventLoopTurns();
    expect(told.order).toEqual(['beforeAppend']);
    expect(told.floor.state.sequence).toBe(0);
    expect((await told.journal.head(KITCHEN)).sequence).toBe(0);
    told.release();
    await answer;
    expect(told.floor.state.sequence).toBe(1);
  });

  it('F2 appends commands that come together as one group, each decided on what those before it did, and publishes them as one', async () => {
    const told = floorOnMemory();
    const outcomes = await Promise.all(Array.from({ length: 50 }, (_, n) => told.submit(anchor(n + 1))));
    await eventLoopTurns();
    expect(told.groups.map((group) => group.length)).toEqual([50]);
    expect(outcomes.map((outcome) => (outcome.ok ? outcome.sequence : null))).toEqual(Array.from({ length: 50 }, (_, n) => n + 1));
    expect(told.order.filter((entry) => entry.startsWith('published'))).toHaveLength(1);
  });

  it('F2 gathers what comes while it writes into the next group, and writes no more than 500 at once', async () => {
    const told = floorOnMemory();
    told.hold();
    const first = told.submit(anchor(1));
    await eventLoopTurns();
    const rest = Array.from({ length: 700 }, (_, n) => told.submit(anchor(n + 2)));
    await eventLoopTurns();
    told.release();
    await Promise.all([first, ...rest]);
    expect(told.groups.map((group) => group.length)).toEqual([1, 500, 200]);
    expect(told.floor.state.sequence).toBe(701);
  });

  it.each([
    ['diskFull', new JournalError('diskFull', 'The disk is full.'), 'diskFull'],
    ['anything else', new JournalError('journalFailed', 'The disk does not answer.'), 'journalFailed'],
  ] as const)(
    'F3 refuses the whole group with notKept where the append failed (%s), changes nothing, publishes nothing, and goes on with the next',
    async (_what, error, cause) => {
      const told = floorOnMemory();
      await told.submit(anchor(1));
      const before = told.floor.state;
      told.fault = error;
      const refused = await Promise.all([told.submit(anchor(2)), told.submit(refusedTap(3)), told.submit(anchor(4))]);
      await eventLoopTurns();
      for (const outcome of refused) expect(outcome).toEqual({ ok: false, refusal: { code: 'notKept', cause } });
      expect(told.floor.state).toBe(before);
      expect(told.floor.isWritable).toBe(false);
      expect(told.logged).toEqual([expect.objectContaining({ commands: 3, err: asLogged(error) })]);
      expect(told.order.filter((entry) => entry.startsWith('published'))).toEqual(['published 1']);
      // The same command again is decided anew: nothing was kept of it.
      expect(await told.submit(anchor(4))).toMatchObject({ ok: true, sequence: 2 });
      expect(told.floor.isWritable).toBe(true);
      expect(await told.submit(refusedTap(3))).toEqual({ ok: false, refusal: { code: 'nothingCalls' } });
      expect(told.floor.state).toEqual(evolveAll(EMPTY_STATE, await told.journal.read(KITCHEN, 0, 100)));
    },
  );

  it('F3 still gives a known command its first outcome in a group that failed', async () => {
    const told = floorOnMemory();
    const first = await told.submit(anchor(1));
    told.fault = new JournalError('journalFailed', 'The disk does not answer.');
    const [again, fresh] = await Promise.all([told.submit(anchor(1)), told.submit(anchor(2))]);
    expect(again).toEqual(first);
    expect(fresh).toMatchObject({ ok: false, refusal: { code: 'notKept' } });
  });

  it('F4 gives the same id the same answer, from memory or from the journal, and decides it once', async () => {
    const told = floorOnMemory();
    const first = await told.submit(anchor(1));
    const refusal = await told.submit(refusedTap(2));
    const other = new Floor({
      kitchenId: KITCHEN,
      journal: told.journal,
      state: told.floor.state,
      clock: { nowMs: () => START_MS, pace: 1 },
      log: pino({ level: 'silent' }),
      defer: (run) => setImmediate(run),
    });
    for (const floor of [told.floor, other]) {
      expect(await floor.submit(anchor(1))).toEqual(first);
      expect(await floor.submit(refusedTap(2))).toEqual(refusal);
    }
    expect((await told.journal.head(KITCHEN)).sequence).toBe(1);
    expect(told.groups).toHaveLength(2);
  });

  it('F4 refuses a command of which the journal cannot say whether it knows it, and takes it when it can again', async () => {
    const told = floorOnMemory();
    let isReadable = false;
    const { outcomeOf } = told.journal;
    told.journal.outcomeOf = async (kitchenId, commandId) => {
      if (!isReadable) throw new JournalError('journalFailed', 'The disk does not answer.');
      return outcomeOf(kitchenId, commandId);
    };
    expect(await told.submit(anchor(1))).toEqual({ ok: false, refusal: { code: 'notKept', cause: 'journalFailed' } });
    expect(told.floor.isWritable).toBe(false);
    expect(told.logged).toEqual([expect.objectContaining({ commandId: idOf(1), err: asLogged({ message: 'The disk does not answer.' }) })]);
    isReadable = true;
    expect(await told.submit(anchor(1))).toMatchObject({ ok: true, sequence: 1 });
    expect(told.floor.isWritable).toBe(true);
  });

  it('F5 keeps the outcome of a refused tap, and nothing of what the house itself no longer has to say', async () => {
    const told = floorOnMemory();
    await told.submit(refusedTap(1));
    const outdated: Submission = {
      ...anchor(2),
      command: { type: 'raiseCall', workpieceId: idOf(3), stepId: 'prove', level: 'call' },
    };
    expect(await told.submit(outdated)).toEqual({ ok: false, refusal: { code: 'callOutdated' } });
    expect(await told.journal.outcomeOf(KITCHEN, idOf(1))).toEqual({ ok: false, refusal: { code: 'nothingCalls' } });
    expect(await told.journal.outcomeOf(KITCHEN, idOf(2))).toBeNull();
    expect(told.groups).toHaveLength(1);
  });

  it('F7 ends a group with a jump of the clock: what came after it is decided by the clock that has followed', async () => {
    let nowMs = START_MS;
    const told = floorOnMemory(() => nowMs);
    const jumped = told.submit(jump(2, 3_600_000)).then(() => (nowMs += 3_600_000));
    const outcomes = await Promise.all([told.submit(anchor(1)), jumped, told.submit(sounded(3)), told.submit(sounded(4))]);
    expect(outcomes).toHaveLength(4);
    expect(told.groups.map((group) => group.map(({ commandId }) => commandId))).toEqual([[idOf(2)], [idOf(1), idOf(3), idOf(4)]]);
    const events = (await told.journal.read(KITCHEN, 0, 10)).map(({ event }) => event);
    expect(events).toMatchObject([
      { type: 'clockJumped', atMs: START_MS },
      { type: 'clockAnchored' },
      { type: 'callSounded', atMs: START_MS + 3_600_000 },
      { type: 'callSounded', atMs: START_MS + 3_600_000 },
    ]);
  });

  it('F6 is settled once nothing waits and nothing is being written', async () => {
    const told = floorOnMemory();
    await told.floor.settled();
    told.hold();
    const answer = told.submit(anchor(1));
    const settled = told.floor.settled().then(() => told.order.push('settled'));
    await eventLoopTurns();
    expect(told.order).toEqual(['beforeAppend']);
    told.release();
    await Promise.all([answer, settled]);
    expect(told.order.at(-1)).toBe('settled');
    expect(told.order).toContain('published 1');
  });
});
