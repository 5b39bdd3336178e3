import { decidedOnFloor } from '../../../display/link/decider.ts';
import { FloorClient, type LinkSocket, type SocketHandlers, type Surroundings } from '../../../display/link/floor-client.ts';
import type { KeptRecord } from '../../../display/link/kept-tap.ts';
import type { TapStore } from '../../../display/link/tap-store.ts';
import { tapInstant } from '../../../shared/floor/tap-time.ts';
import type { CallLevel } from '../../../shared/floor/events.ts';
import type { Outcome } from '../../../shared/floor/refusals.ts';
import { assert } from '../../../shared/result.ts';
import type { DownMessage } from '../../../shared/wire/down.ts';
import { PROTOCOL_VERSION } from '../../../shared/wire/protocol.ts';
import { upMessageSchema, type UpMessage } from '../../../shared/wire/up.ts';
import { Floor } from './floor.ts';
import { idOf, PHONE } from './ids.ts';

/** True time, which nobody in the world but the tests knows. It moves only when it is told to, and calls what has come due. */
export class World {
  realMs = Date.UTC(2026, 2, 7, 3, 0, 0);
  private timers: { atMs: number; call: () => void }[] = [];

  after(delayMs: number, call: () => void): () => void {
    const timer = { atMs: this.realMs + delayMs, call };
    this.timers.push(timer);
    return () => {
      this.timers = this.timers.filter((other) => other !== timer);
    };
  }

  pass(ms: number): void {
    const untilMs = this.realMs + ms;
    for (;;) {
      const next = this.timers.filter((timer) => timer.atMs <= untilMs).sort((a, b) => a.atMs - b.atMs)[0];
      if (next === undefined) break;
      this.timers = this.timers.filter((timer) => timer !== next);
      this.realMs = next.atMs;
      next.call();
    }
    this.realMs = untilMs;
  }
}

/** A connection as the server holds it. */
export interface Line {
  readonly handlers: SocketHandlers;
  readonly heard: UpMessage[];
  isOpen: boolean;
}

/** A server on a floor of its own: answers at once, unless told to hold its tongue or to be away. */
export class House {
  readonly floor = Floor.harbour();
  readonly lines: Line[] = [];
  readonly outcomes = new Map<string, Outcome>();
  readonly applied: string[] = [];
  readonly anchor: { houseMs: number; realMs: number; pace: number };
  readonly world: World;
  kitchenId = idOf(7_000);
  isAway = false;
  isMute = false;
  cannotKeep = false;
  refuseWith: number | null = null;
  protocol = PROTOCOL_VERSION;
  /** Outcome first, as the real one does; the other way round to see that the order does not matter. */
  tellsEventsFirst = false;

  constructor(world: World, pace = 1) {
    this.world = world;
    this.anchor = { houseMs: this.floor.nowMs, realMs: world.realMs, pace };
  }

  get nowMs(): number {
    return Math.round(this.anchor.houseMs + this.anchor.pace * (this.world.realMs - this.anchor.realMs));
  }

  get line(): Line {
    const line = this.lines.at(-1);
    assert(line !== undefined, 'nobody ever connected');
    return line;
  }

  connect(handlers: SocketHandlers): LinkSocket {
    const line: Line = { handlers, heard: [], isOpen: true };
    this.lines.push(line);
    this.world.after(1, () => {
      if (!line.isOpen) return;
      if (this.isAway || this.refuseWith !== null) this.drop(line, this.refuseWith ?? 1006);
      else handlers.opened();
    });
    return {
      send: (text) => {
        const message = upMessageSchema.parse(JSON.parse(text));
        line.heard.push(message);
        if (line.isOpen && !this.isMute) this.answer(line, message);
      },
      close: () => {
        line.isOpen = false;
      },
    };
  }

  /** The connection breaks, or is closed with a code. */
  drop(line = this.line, code = 1006): void {
    if (!line.isOpen) return;
    line.isOpen = false;
    line.handlers.closed(code);
  }

  say(message: DownMessage, line = this.line): void {
    if (line.isOpen) line.handlers.received(JSON.stringify(message));
  }

  /** Another device's tap: decided here, told to everybody. */
  tapElsewhere(give: (floor: Floor) => void): void {
    this.floor.nowMs = Math.max(this.floor.nowMs, this.nowMs);
    const from = this.floor.recorded.length;
    give(this.floor);
    this.publish(from);
  }

  publish(from: number): void {
    const events = this.floor.recorded.slice(from);
    if (events.length > 0 && !this.isMute) for (const line of this.lines) this.say({ type: 'events', events }, line);
  }

  private answer(line: Line, message: UpMessage): void {
    switch (message.type) {
      case 'hello':
        this.greet(line, message);
        return;
      case 'ping':
        this.say({ type: 'pong', t1: message.t1, t2: this.world.realMs, t3: this.world.realMs, clock: this.anchor }, line);
        return;
      case 'command':
        this.take(line, message);
        return;
      default:
        return;
    }
  }

  private greet(line: Line, hello: Extract<UpMessage, { type: 'hello' }>): void {
    const device = { id: PHONE, name: 'Phone 1', stationId: null };
    this.say(
      { type: 'welcome', protocol: this.protocol, kitchenId: this.kitchenId, device, clock: this.anchor, devices: [device], addresses: [] },
      line,
    );
    const missing = this.floor.recorded.slice(hello.lastSequence);
    if (hello.kitchenId !== this.kitchenId)
      this.say({ type: 'snapshot', sequence: this.floor.state.sequence, state: this.floor.state }, line);
    else if (missing.length > 0) this.say({ type: 'events', events: missing }, line);
    this.say({ type: 'live', sequence: this.floor.state.sequence }, line);
  }

  private take(line: Line, message: Extract<UpMessage, { type: 'command' }>): void {
    const before = this.outcomes.get(message.commandId);
    if (before !== undefined) {
      this.say({ type: 'outcome', commandId: message.commandId, outcome: before }, line);
      return;
    }
    if (this.cannotKeep) {
      this.say(
        { type: 'outcome', commandId: message.commandId, outcome: { ok: false, refusal: { code: 'notKept', cause: 'diskFull' } } },
        line,
      );
      return;
    }
    this.floor.nowMs = Math.max(this.floor.nowMs, this.nowMs);
    const from = this.floor.recorded.length;
    const { tapMs, uncertain } = tapInstant(message.tap, this.floor.nowMs, this.anchor.pace);
    const { decision } = this.floor.give(message.command, {
      commandId: message.commandId,
      deviceId: PHONE,
      tapMs,
      tapUncertain: uncertain,
    });
    const outcome: Outcome = decision.ok
      ? { ok: true, sequence: this.floor.state.sequence, undoable: message.command.type !== 'undoCommand' }
      : { ok: false, refusal: decision.fault };
    this.outcomes.set(message.commandId, outcome);
    if (decision.ok) this.applied.push(message.commandId);
    const tell = (): void => this.say({ type: 'outcome', commandId: message.commandId, outcome }, line);
    if (!this.tellsEventsFirst) tell();
    this.publish(from);
    if (this.tellsEventsFirst) tell();
  }
}

/** Somebody's phone: its clocks, its storage, and the page on it. */
export class Phone {
  readonly world: World;
  readonly house: House;
  readonly stored = new Map<string, KeptRecord>();
  /** How wrong its wall clock is. */
  wallErrorMs = 0;
  private bootMs: number;
  private drawn = 0;
  loads = 0;
  client: FloorClient;

  constructor(world: World, house: House) {
    this.world = world;
    this.house = house;
    this.bootMs = world.realMs;
    this.client = this.load();
  }

  /** Loads the page again: its monotonic clock begins anew, what is stored stays. */
  reload(): void {
    this.client.close();
    this.bootMs = this.world.realMs;
    this.client = this.load();
  }

  private load(): FloorClient {
    const { world, house, stored } = this;
    const store: TapStore = {
      load: () => [...stored.values()].sort((a, b) => a.order - b.order),
      keep: (record) => {
        stored.set(record.commandId, record);
        return true;
      },
      forget: (commandId) => stored.delete(commandId),
    };
    const around: Surroundings = {
      now: () => ({ monotonicMs: world.realMs - this.bootMs, wallMs: world.realMs + this.wallErrorMs }),
      randomBytes: (count) => {
        this.drawn += 1;
        return new Uint8Array(count).map((_, index) => (this.drawn * 31 + index * 7) % 251);
      },
      openSocket: (handlers) => house.connect(handlers),
      decide: decidedOnFloor,
      after: (delayMs, call) => world.after(delayMs, call),
      store,
      loadPageAgain: () => {
        this.loads += 1;
      },
      onceLive: () => undefined,
    };
    return new FloorClient('phone', around);
  }

  /** Says a step done, of the dough with a tag. */
  finish(tag: string, stepId: string): string {
    const { state } = this.client.view;
    assert(state !== null, 'the phone knows nothing yet');
    const workpiece = Object.values(state.workpieces).find((candidate) => candidate.tag === tag);
    assert(workpiece !== undefined, `the phone knows no ${tag}`);
    return this.client.send({ type: 'finishStep', workpieceId: workpiece.id, stepId });
  }

  /** What the phone shows of a step. */
  statusOf(tag: string, stepId: string): string | null {
    const workpiece = Object.values(this.client.view.state?.workpieces ?? {}).find((candidate) => candidate.tag === tag);
    return workpiece?.steps[stepId]?.status ?? null;
  }
}

/** A phone that has come through to its house. */
export function connectedPhone(pace = 1): { world: World; house: House; phone: Phone } {
  const world = new World();
  const house = new House(world, pace);
  const phone = new Phone(world, house);
  world.pass(10);
  return { world, house, phone };
}

export function callOf(workpieceId: string, stepId: string, level: CallLevel): { workpieceId: string; stepId: string; level: CallLevel } {
  return { workpieceId, stepId, level };
}
