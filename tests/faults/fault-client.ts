import { randomBytes } from 'node:crypto';
import { WebSocket } from 'ws';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import { evolve } from '../../shared/floor/evolve.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';
import { EMPTY_STATE, type FloorState } from '../../shared/floor/state.ts';
import { idFromBytes } from '../../shared/ids.ts';
import { downMessageSchema, type DownMessage } from '../../shared/wire/down.ts';
import { PROTOCOL_VERSION } from '../../shared/wire/protocol.ts';
import type { UpMessage } from '../../shared/wire/up.ts';

/** A client tries again so long after its line is gone, in ms. */
const AGAIN_MS = 50;
/** A tap that the server could not keep is sent again after so long, in ms. */
const KEEP_AGAIN_MS = 100;

/** A screen or a phone: folds what it is told, keeps its taps until they are answered, and notes what was answered. */
export class FaultClient {
  readonly page: 'wall' | 'phone';
  /** What was answered to taps of this client, kept or refused for good. */
  readonly answered = new Map<string, Outcome>();
  /** What was tapped and is not answered yet. */
  readonly kept = new Map<string, ClientCommand>();
  /** Taps that the server said it could not keep, however often. */
  notKept = 0;
  reconnects = 0;
  faults: string[] = [];
  /** When the server last said that this client is live, and when it was last asked to sound, by the process's monotonic clock. */
  liveMs = Number.NaN;
  askedToSoundMs = Number.NaN;
  clock: { readonly houseMs: number; readonly realMs: number; readonly pace: number } | null = null;
  /** The server's real time when this client became live, and the state then: what was due on return. */
  onLive: ((serverRealMs: number) => void) | null = null;
  readonly #port: number;
  readonly #cookie: string;
  #socket: WebSocket | null = null;
  #state: FloorState = EMPTY_STATE;
  #kitchenId: string | null = null;
  #isLive = false;
  #isEnded = false;

  constructor(page: 'wall' | 'phone', port: number, cookie: string) {
    this.page = page;
    this.#port = port;
    this.#cookie = cookie;
  }

  get state(): FloorState {
    return this.#state;
  }

  get isLive(): boolean {
    return this.#isLive;
  }

  connect(): void {
    if (this.#isEnded) return;
    const headers = { cookie: this.#cookie };
    const socket = new WebSocket(`ws://127.0.0.1:${this.#port}/live?page=${this.page}`, { headers, perMessageDeflate: false });
    this.#socket = socket;
    this.#isLive = false;
    this.liveMs = Number.NaN;
    this.askedToSoundMs = Number.NaN;
    socket.on('open', () => this.#hello());
    socket.on('message', (data: Buffer) => {
      if (socket === this.#socket) this.#receive(data.toString('utf8'));
    });
    socket.on('error', () => {});
    socket.on('close', (code) => {
      if (socket !== this.#socket) return;
      this.#isLive = false;
      if (code === 4400 || code === 4403 || code === 4426) this.faults.push(`the server closed a client with ${code}`);
      this.reconnects += 1;
      setTimeout(() => this.connect(), AGAIN_MS);
    });
  }

  /** Taps: kept from this moment on, sent where there is a line. */
  tap(command: ClientCommand): void {
    const commandId = idFromBytes(randomBytes(16));
    this.kept.set(commandId, command);
    if (this.#isLive) this.#send({ type: 'command', commandId, tap: { agoMonotonicMs: 0, agoWallMs: 0 }, command });
  }

  /** Begins to hold nothing of the state, as a page that is loaded anew does. */
  forget(): void {
    this.#state = EMPTY_STATE;
    this.#kitchenId = null;
    this.#socket?.terminate();
  }

  /** Says that it is still there, as pages do every few seconds. */
  ping(): void {
    if (this.#isLive) this.#send({ type: 'ping', t1: 2 });
  }

  end(): void {
    this.#isEnded = true;
    this.#socket?.terminate();
  }

  #hello(): void {
    this.#send({
      type: 'hello',
      protocol: PROTOCOL_VERSION,
      page: this.page,
      pageId: idFromBytes(randomBytes(16)),
      kitchenId: this.#kitchenId,
      lastSequence: this.#state.sequence,
      sound: this.page === 'wall' ? 'on' : 'none',
      stationId: null,
    });
  }

  #receive(text: string): void {
    const read = downMessageSchema.safeParse(JSON.parse(text));
    if (!read.success) {
      this.faults.push(`the server said what its schema does not know: ${text.slice(0, 200)}`);
      return;
    }
    this.#hear(read.data);
  }

  #hear(message: DownMessage): void {
    switch (message.type) {
      case 'welcome':
        if (this.#kitchenId !== message.kitchenId) this.#state = EMPTY_STATE;
        this.#kitchenId = message.kitchenId;
        this.clock = message.clock;
        return;
      case 'snapshot':
        this.#state = message.state;
        return;
      case 'events':
        for (const event of message.events) {
          if (event.sequence <= this.#state.sequence) continue;
          // A gap: the line is at fault, and a new one asks for what is missing.
          if (event.sequence !== this.#state.sequence + 1) return this.#socket?.terminate();
          this.#state = evolve(this.#state, event);
        }
        return;
      case 'live':
        if (message.sequence > this.#state.sequence) return this.#socket?.terminate();
        this.#isLive = true;
        this.liveMs = performance.now();
        this.#send({ type: 'ping', t1: 1 });
        for (const [commandId, command] of this.kept)
          this.#send({ type: 'command', commandId, tap: { agoMonotonicMs: null, agoWallMs: 0 }, command });
        return;
      case 'pong':
        this.clock = message.clock;
        if (message.t1 === 1) this.onLive?.(message.t3);
        return;
      case 'outcome':
        this.#settle(message.commandId, message.outcome);
        return;
      case 'sound':
        this.askedToSoundMs = Number.isNaN(this.askedToSoundMs) ? performance.now() : this.askedToSoundMs;
        this.#send({ type: 'sounded', soundId: message.soundId, burst: message.burst, calls: message.calls });
        return;
      default:
        return;
    }
  }

  #settle(commandId: string, outcome: Outcome): void {
    if (!outcome.ok && outcome.refusal.code === 'notKept') {
      this.notKept += 1;
      const command = this.kept.get(commandId);
      if (command === undefined) return;
      setTimeout(() => {
        if (this.#isLive && this.kept.has(commandId))
          this.#send({ type: 'command', commandId, tap: { agoMonotonicMs: null, agoWallMs: 0 }, command });
      }, KEEP_AGAIN_MS);
      return;
    }
    const before = this.answered.get(commandId);
    if (before !== undefined && JSON.stringify(before) !== JSON.stringify(outcome))
      this.faults.push(`command ${commandId} was answered ${JSON.stringify(before)} and then ${JSON.stringify(outcome)}`);
    this.answered.set(commandId, outcome);
    this.kept.delete(commandId);
  }

  #send(message: UpMessage): void {
    if (this.#socket?.readyState === WebSocket.OPEN) this.#socket.send(JSON.stringify(message));
  }
}
