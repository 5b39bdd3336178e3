import { NO_STORE } from '../../../display/link/tap-store.ts';
import type { Journal, JournalEntry, JournalHead } from '../../../server/journal/journal.ts';
import type { Peer } from '../../../server/live/peer.ts';
import type { EventOf, RecordedEvent } from '../../../shared/floor/events.ts';
import type { Outcome } from '../../../shared/floor/refusals.ts';
import type { Host } from './host.ts';
import type { Plant } from './plant.ts';

const HOUR_MS = 3_600_000;

/** A journal that keeps its promises but for one. */
class FaultyJournal implements Journal {
  protected readonly journal: Journal;

  constructor(journal: Journal) {
    this.journal = journal;
  }

  kitchenId(): Promise<string> {
    return this.journal.kitchenId();
  }

  head(kitchenId: string): Promise<JournalHead> {
    return this.journal.head(kitchenId);
  }

  append(kitchenId: string, expectedSequence: number, group: readonly JournalEntry[]): Promise<JournalHead> {
    return this.journal.append(kitchenId, expectedSequence, group);
  }

  read(kitchenId: string, afterSequence: number, limit: number): Promise<readonly RecordedEvent[]> {
    return this.journal.read(kitchenId, afterSequence, limit);
  }

  outcomeOf(kitchenId: string, commandId: string): Promise<Outcome | null> {
    return this.journal.outcomeOf(kitchenId, commandId);
  }

  hashAt(kitchenId: string, sequence: number): Promise<string | null> {
    return this.journal.hashAt(kitchenId, sequence);
  }

  close(): Promise<void> {
    return this.journal.close();
  }
}

/** Says that it has kept a group, and keeps it a moment later. */
class HastyJournal extends FaultyJournal {
  readonly #host: Host;

  constructor(journal: Journal, host: Host) {
    super(journal);
    this.#host = host;
  }

  override async append(kitchenId: string, expectedSequence: number, group: readonly JournalEntry[]): Promise<JournalHead> {
    // Not before there is a page to hear of it.
    if (this.#host.monotonicMs < 10_000) return super.append(kitchenId, expectedSequence, group);
    this.#host.after(20, () => void super.append(kitchenId, expectedSequence, group));
    return { kitchenId, sequence: expectedSequence, hash: '' };
  }
}

/** Keeps something else than it was given. */
class ChangingJournal extends FaultyJournal {
  readonly #change: (group: readonly JournalEntry[]) => readonly JournalEntry[];

  constructor(journal: Journal, change: (group: readonly JournalEntry[]) => readonly JournalEntry[]) {
    super(journal);
    this.#change = change;
  }

  override append(kitchenId: string, expectedSequence: number, group: readonly JournalEntry[]): Promise<JournalHead> {
    return super.append(kitchenId, expectedSequence, this.#change(group));
  }
}

/** Knows no command again. */
class ForgetfulJournal extends FaultyJournal {
  override async outcomeOf(): Promise<null> {
    return null;
  }
}

/** Reads all but the last event. */
class ShortJournal extends FaultyJournal {
  override async read(kitchenId: string, afterSequence: number, limit: number): Promise<readonly RecordedEvent[]> {
    const events = await super.read(kitchenId, afterSequence, limit);
    return events.slice(0, -1);
  }
}

function changing(change: (group: readonly JournalEntry[]) => readonly JournalEntry[]): Plant {
  return { journal: (journal) => new ChangingJournal(journal, change) };
}

function changingEach(change: (entry: JournalEntry) => JournalEntry): Plant {
  return changing((group) => group.map(change));
}

/** A peer that says something else than it was told to; null says nothing. */
function saying(say: (text: string) => readonly string[]): Plant {
  return {
    peer: (peer) => ({
      send: (text) => {
        for (const said of say(text)) peer.send(said);
      },
      get backlogBytes() {
        return peer.backlogBytes;
      },
      close: (code, reason) => peer.close(code, reason),
    }),
  };
}

function isOf(type: string, text: string): boolean {
  return text.startsWith(`{"type":"${type}",`);
}

/** Publishes and acknowledges before the disk has it. */
export function hasty(): Plant {
  return { journal: (journal, host) => new HastyJournal(journal, host) };
}

/** Acknowledges refusals and does not keep them. */
export function dropsRefusals(): Plant {
  return changing((group) => group.filter((entry) => entry.outcome.ok));
}

/** Acknowledges taps and keeps nothing of them but that they were. */
export function dropsEvents(): Plant {
  return changingEach((entry) => (entry.events.some((event) => event.type === 'moreTimeGiven') ? { ...entry, events: [] } : entry));
}

/** Has forgotten every outcome when it starts again: a tap that is sent again counts again. */
export function countsTwice(): Plant {
  return {
    journal: (journal) => new ForgetfulJournal(journal),
    boot: (disk) => {
      disk.outcomes = new Map();
    },
  };
}

/** Answers a repeat otherwise than the first time. */
export function answersAnew(): Plant {
  let answers = 0;
  return saying((text) => {
    if (!isOf('outcome', text)) return [text];
    answers += 1;
    return [answers % 2 === 0 ? text.replace('"undoable":true', '"undoable":false') : text];
  });
}

/** Starts from less than its journal has. */
export function startsShort(): Plant {
  return { journal: (journal) => new ShortJournal(journal) };
}

/** Pages keep nothing over a reload. */
export function keepsNoTaps(): Plant {
  return { store: NO_STORE };
}

/** Decides by a clock that is two minutes fast. */
export function runsFast(): Plant {
  return { floorAheadMs: 120_000 };
}

/** Does not look whether the clock was set or the machine slept. */
export function ignoresClock(): Plant {
  return { noticesJumps: false };
}

export function raisesNothing(): Plant {
  return { raisesCalls: false };
}

/** Raises every call twice. */
export function raisesTwice(): Plant {
  return changingEach((entry) =>
    entry.events[0]?.type === 'callRaised' ? { ...entry, events: [entry.events[0], entry.events[0]] } : entry,
  );
}

/** Moves the floor by less than the clock was set. */
export function jumpsShort(): Plant {
  return changingEach((entry) => ({
    ...entry,
    events: entry.events.map((event) =>
      event.type === 'clockJumped' ? { ...event, byMs: event.byMs - Math.sign(event.byMs) * 60_000 } : event,
    ),
  }));
}

/** Asks two devices for every burst. */
export function soundsTwice(): Plant {
  const peers = new Set<Peer>();
  return {
    peer: (peer) => {
      peers.add(peer);
      return {
        send: (text) => {
          peer.send(text);
          if (isOf('sound', text)) for (const other of peers) if (other !== peer) other.send(text);
        },
        get backlogBytes() {
          return peer.backlogBytes;
        },
        close: (code, reason) => {
          peers.delete(peer);
          peer.close(code, reason);
        },
      };
    },
  };
}

/** Takes every order for given, and gives none. */
export function soundsNothing(): Plant {
  return { order: () => 'nobody' };
}

/** Asks for each burst again at once, as if nobody were sounding it. */
export function ordersTwice(): Plant {
  return {
    order: (asked, give) => {
      const deviceId = give(asked);
      give({ ...asked, soundId: asked.soundId.replace(/^./, asked.soundId.startsWith('A') ? 'B' : 'A') });
      return deviceId;
    },
  };
}

/** Asks for the day's test of the loudspeakers with every call. */
export function testsOften(): Plant {
  return changing((group) => {
    const raised = group.flatMap((entry) => entry.events).find((event) => event.type === 'callRaised');
    const first = group[0];
    if (raised?.type !== 'callRaised' || first === undefined) return group;
    const test = { type: 'soundTestAsked' as const, why: 'daily' as const, atMs: raised.atMs };
    const asked: JournalEntry = {
      ...first,
      commandId: first.commandId.replace(/^./, first.commandId.startsWith('A') ? 'B' : 'A'),
      events: [test, test],
    };
    return [...group, asked];
  });
}

/** Notes a burst that nobody was asked for. */
export function notesSilence(): Plant {
  return changing((group) => {
    const raised = group.flatMap((entry) => entry.events).find((event) => event.type === 'callRaised');
    const first = group[0];
    if (raised?.type !== 'callRaised' || first === undefined) return group;
    const { workpieceId, stepId, level, atMs } = raised;
    const sounded: JournalEntry = {
      ...first,
      commandId: first.commandId.replace(/^./, first.commandId.startsWith('A') ? 'B' : 'A'),
      events: [{ type: 'callSounded', burst: level, calls: [{ workpieceId, stepId, level }], atMs }],
    };
    return [...group, sounded];
  });
}

/** Lets the second thumb on a step have its effect too. */
export function bothCount(): Plant {
  const done = new Map<string, EventOf<'stepDone'>>();
  return changingEach((entry) => {
    for (const event of entry.events) if (event.type === 'stepDone') done.set(event.stepId, event);
    const first =
      !entry.outcome.ok && entry.outcome.refusal.code === 'stepAlreadyDone' ? done.get(entry.outcome.refusal.stepId ?? '') : undefined;
    return first === undefined ? entry : { ...entry, events: [{ ...first, atMs: entry.receivedMs }] };
  });
}

/** Tells the second thumb that it was first itself. */
export function tellsWrongFirst(): Plant {
  return changingEach((entry) => {
    if (entry.outcome.ok || entry.outcome.refusal.code !== 'stepAlreadyDone') return entry;
    return { ...entry, outcome: { ok: false, refusal: { ...entry.outcome.refusal, atMs: entry.receivedMs + 1 } } };
  });
}

/** Takes every tap as if it had been an hour before. */
export function tapsEarly(): Plant {
  return changingEach((entry) => ({
    ...entry,
    events: entry.events.map((event) => (event.type === 'stepDone' ? { ...event, atMs: event.atMs - HOUR_MS } : event)),
  }));
}

/** Takes every tap as if it had been at its arrival. */
export function tapsLate(): Plant {
  return changingEach((entry) => ({
    ...entry,
    events: entry.events.map((event) => (event.type === 'stepDone' ? { ...event, atMs: entry.receivedMs } : event)),
  }));
}

/** Leaves out now and then what happened. */
export function skipsEvents(): Plant {
  let told = 0;
  return saying((text) => {
    if (isOf('events', text)) told += 1;
    return isOf('events', text) && told % 9 === 0 ? [] : [text];
  });
}

/** Tells now and then twice what happened. */
export function tellsTwice(): Plant {
  return saying((text) => (isOf('events', text) ? [text, text] : [text]));
}

/** Tells pages a clock that is five seconds fast. */
export function tellsWrongTime(): Plant {
  return saying((text) => {
    if (!isOf('pong', text)) return [text];
    const pong = JSON.parse(text) as { t2: number; t3: number };
    return [JSON.stringify({ ...pong, t2: pong.t2 + 5_000, t3: pong.t3 + 5_000 })];
  });
}

/** Tells pages of another amount of time than the journal has. */
export function tellsOtherMinutes(): Plant {
  return saying((text) => [isOf('events', text) ? text.replace(/"minutes":[125]\b/, '"minutes":60') : text]);
}
