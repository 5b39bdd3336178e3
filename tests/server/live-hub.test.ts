import { pino } from 'pino';
import { describe, expect, it } from 'vitest';
import { CLOSE, MAX_BACKLOG_BYTES, MAX_CLIENTS, SILENCE_MS } from '../../shared/wire/protocol.ts';
import { NOBODY_JOINS, type AccessRole } from '../../shared/wire/joining.ts';
import { HouseClock } from '../../server/clock/house-clock.ts';
import { RealTime } from '../../server/clock/real-time.ts';
import { Floor } from '../../server/floor/floor.ts';
import { emptyMemoryDisk, MemoryJournal } from '../../server/journal/memory-journal.ts';
import { LiveHub } from '../../server/live/live-hub.ts';
import type { Peer } from '../../server/live/peer.ts';
import { EMPTY_STATE } from '../../shared/floor/state.ts';
import { idOf } from './support/journal-events.ts';
import { freshId, hello } from './support/live-client.ts';
import { eventLoopTurns, Machine, MORNING_MS } from './support/machine.ts';

/** The other end of a websocket, as slow as a test likes. */
class FakePeer implements Peer {
  readonly sent: string[] = [];
  backlogBytes = 0;
  closing: { readonly code: number; readonly reason: string } | null = null;

  send(text: string): void {
    this.sent.push(text);
  }

  close(code: number, reason: string): void {
    this.closing ??= { code, reason };
  }

  types(): readonly unknown[] {
    return this.sent.map((text) => (JSON.parse(text) as { type: unknown }).type);
  }
}

const KITCHEN = idOf(1);

function hubOnMemory(role: AccessRole | null = 'manage') {
  const machine = new Machine();
  const clock = new HouseClock(new RealTime(machine), { houseMs: MORNING_MS, realMs: MORNING_MS, pace: 1 });
  const log = pino({ level: 'silent' });
  const journal = new MemoryJournal(emptyMemoryDisk(KITCHEN));
  const floor = new Floor({ kitchenId: KITCHEN, journal, state: EMPTY_STATE, clock, log, defer: (run) => setImmediate(run) });
  const devices = { all: () => [], introduce: () => null, touch: () => {} };
  const hub = new LiveHub(
    {
      floor,
      clock,
      devices,
      addresses: [],
      log,
      joining: () => NOBODY_JOINS,
      areBackupsLate: () => false,
      onSounded: () => {},
      onSoundOutletChanged: () => {},
    },
    [],
  );
  const live = (deviceId = freshId()) => {
    const peer = new FakePeer();
    const connection = hub.connect(peer, { id: deviceId, name: 'phone', stationId: null }, role, 'phone');
    connection?.receive(JSON.stringify(hello()));
    return { peer, connection };
  };
  const makeEvent = async (): Promise<void> => {
    await floor.submit({
      commandId: freshId(),
      deviceId: idOf(2),
      stationId: null,
      tap: null,
      command: { type: 'noteClockJump', byMs: 1 },
    });
    await eventLoopTurns(2);
  };
  return { machine, floor, hub, live, makeEvent };
}

describe('a client that cannot keep up', () => {
  it('W22 is dropped with 4408 once more than the limit waits for it, and the others get their events', async () => {
    const { hub, live, makeEvent } = hubOnMemory();
    const slow = live();
    const quick = live();
    slow.peer.backlogBytes = MAX_BACKLOG_BYTES;
    await makeEvent();
    expect(slow.peer.closing).toBeNull();
    expect(slow.peer.types().at(-1)).toBe('events');
    slow.peer.backlogBytes = MAX_BACKLOG_BYTES + 1;
    await makeEvent();
    expect(slow.peer.closing).toEqual({ code: CLOSE.tooSlow, reason: 'too far behind' });
    expect(CLOSE.tooSlow).toBe(4408);
    expect(slow.peer.types().filter((type) => type === 'events')).toHaveLength(1);
    expect(quick.peer.types().filter((type) => type === 'events')).toHaveLength(2);
    expect(hub.clientCount).toBe(1);
    // What it had still to say is not heard any more.
    slow.connection?.receive(JSON.stringify({ type: 'ping', t1: 1 }));
    expect(slow.peer.types()).not.toContain('pong');
    slow.connection?.closed();
    expect(hub.clientCount).toBe(1);
  });

  it('W23 or says nothing for too long is let go with 4406; whoever says anything stays', () => {
    const { hub, live, machine } = hubOnMemory();
    const silent = live();
    const heard = live();
    const greeting = new FakePeer();
    hub.connect(greeting, { id: freshId(), name: 'phone', stationId: null }, 'manage', 'phone');
    machine.passUnnoticed(SILENCE_MS);
    heard.connection?.receive(JSON.stringify({ type: 'ping', t1: 1 }));
    hub.sweep();
    expect(hub.clientCount).toBe(3);
    machine.passUnnoticed(1);
    hub.sweep();
    expect(silent.peer.closing).toEqual({ code: CLOSE.silent, reason: 'silent for 15000 ms' });
    expect(greeting.closing).toEqual(silent.peer.closing);
    expect(heard.peer.closing).toBeNull();
    expect(CLOSE.silent).toBe(4406);
    expect(hub.clientCount).toBe(1);
  });

  it('W24 or comes when there is no room is sent away with 4429, and let in when somebody has left', () => {
    const { live } = hubOnMemory();
    const clients = Array.from({ length: MAX_CLIENTS }, () => live());
    const late = live();
    expect(late.connection).toBeNull();
    expect(late.peer.closing).toEqual({ code: CLOSE.full, reason: 'no more than 400 clients' });
    expect(CLOSE.full).toBe(4429);
    expect(late.peer.sent).toEqual([]);
    clients[7]?.connection?.closed();
    expect(live().connection).not.toBeNull();
  });
});

describe('a device with a role', () => {
  it('W25 that may not be here is sent away with 4403 before it hears a word', () => {
    const { hub, live } = hubOnMemory(null);
    const { peer, connection } = live();
    expect(connection).toBeNull();
    expect(peer.closing).toEqual({ code: CLOSE.forbidden, reason: 'this device may not be here' });
    expect(CLOSE.forbidden).toBe(4403);
    expect(peer.sent).toEqual([]);
    expect(hub.clientCount).toBe(0);
  });

  it('W25 that may only look is refused what changes a dough, and the refusal is not kept', async () => {
    const { floor, live, hub } = hubOnMemory('look');
    const { peer, connection } = live();
    const commandId = freshId();
    const command = {
      type: 'command',
      commandId,
      tap: { agoMonotonicMs: 0, agoWallMs: 0 },
      command: { type: 'finishStep', workpieceId: freshId(), stepId: 'weigh' },
    };
    connection?.receive(JSON.stringify(command));
    await eventLoopTurns();
    expect(JSON.parse(peer.sent.at(-1) ?? '')).toEqual({
      type: 'outcome',
      commandId,
      outcome: { ok: false, refusal: { code: 'forbidden' } },
    });
    expect(floor.state.sequence).toBe(0);
    // With another role the same tap is looked at anew: the refusal was not kept.
    const acting = new FakePeer();
    const again = hub.connect(acting, { id: freshId(), name: 'phone', stationId: null }, 'act', 'phone');
    again?.receive(JSON.stringify(hello()));
    again?.receive(JSON.stringify(command));
    await eventLoopTurns();
    expect(JSON.parse(acting.sent.at(-1) ?? '')).toMatchObject({
      commandId,
      outcome: { ok: false, refusal: { code: 'workpieceUnknown' } },
    });
  });

  it('W25 whose role is changed is closed with 4409 on every socket at once, and with 4403 where it is shut out; what it still says is not heard', async () => {
    const { floor, hub, live } = hubOnMemory();
    const deviceId = freshId();
    const [first, second, other] = [live(deviceId), live(deviceId), live()];
    hub.accessChanged(deviceId, 'look');
    expect([first.peer.closing, second.peer.closing, other.peer.closing]).toEqual([
      { code: CLOSE.accessChanged, reason: 'what this device may do was changed' },
      { code: CLOSE.accessChanged, reason: 'what this device may do was changed' },
      null,
    ]);
    expect(CLOSE.accessChanged).toBe(4409);
    const third = live(deviceId);
    hub.accessChanged(deviceId, null);
    expect(third.peer.closing).toEqual({ code: CLOSE.forbidden, reason: 'this device was shut out' });
    const said = third.peer.sent.length;
    third.connection?.receive(
      JSON.stringify({
        type: 'command',
        commandId: freshId(),
        tap: { agoMonotonicMs: 0, agoWallMs: 0 },
        command: { type: 'askSoundTest' },
      }),
    );
    await eventLoopTurns();
    expect([third.peer.sent.length, floor.state.sequence, hub.clientCount]).toEqual([said, 0, 1]);
  });
});
