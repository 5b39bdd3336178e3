import type { ClientCommand } from '../../shared/floor/commands.ts';
import { assert } from '../../shared/result.ts';
import { HEARTBEAT_MS, PING_EVERY_MS, SILENCE_MS } from '../../shared/wire/protocol.ts';
import type { SoundReadiness, PageKind } from '../../shared/wire/up.ts';
import type { Decider } from './decider.ts';
import type { FloorLink, FloorView, SoundRequest } from './floor-link.ts';
import { HouseClockReader } from './house-clock.ts';
import { advance } from './link-core.ts';
import { newLink, type LinkEffect, type LinkInput, type LinkState } from './link-state.ts';
import { viewOf } from './link-view.ts';
import type { LocalInstant } from './local-instant.ts';
import { newId, randomShare } from './random-id.ts';
import { readDown } from './read-down.ts';
import { reconnectDelayMs, retryTapDelayMs, slowDelayMs } from './reconnect-delay.ts';
import type { TapStore } from './tap-store.ts';

/** One connection to the server. After `close` none of its handlers is called again. */
export interface LinkSocket {
  send(text: string): void;
  close(code: number, reason: string): void;
}

export interface SocketHandlers {
  readonly opened: () => void;
  readonly received: (text: string) => void;
  readonly closed: (code: number) => void;
}

/** What a page gives its link: everything that is not the same twice. */
export interface Surroundings {
  now(): LocalInstant;
  randomBytes(count: number): Uint8Array;
  openSocket(handlers: SocketHandlers): LinkSocket;
  /** Calls once after so many real milliseconds. Returns what cancels it. */
  after(delayMs: number, call: () => void): () => void;
  /** What this page can tell of a tap by itself. */
  readonly decide: Decider;
  readonly store: TapStore;
  /** Loads the page anew, unless that was just tried. */
  loadPageAgain(): void;
  /** Told whenever a connection has come through. */
  onceLive(): void;
}

/** RFC 6455: no close frame came. What a page of ours takes a silent line for. */
const GONE = 1006;

/** The link as a page holds it: `advance` with a socket, a store and timers around it. */
export class FloorClient implements FloorLink {
  readonly #around: Surroundings;
  readonly #reader = new HouseClockReader();
  readonly #listeners = new Set<() => void>();
  readonly #soundListeners = new Set<(request: SoundRequest) => void>();
  #link: LinkState;
  #view: FloorView;
  #socket: LinkSocket | null = null;
  #isClosed = false;
  #cancelReconnect: (() => void) | null = null;
  #cancelRetry: (() => void) | null = null;
  #cancelSilence: (() => void) | null = null;
  #cancelHeartbeat: (() => void) | null = null;
  #cancelClockCheck: (() => void) | null = null;

  constructor(page: PageKind, around: Surroundings) {
    this.#around = around;
    this.#link = newLink(
      page,
      newId((count) => around.randomBytes(count)),
      around.store.load(),
      around.decide,
    );
    this.#view = viewOf(this.#link);
    this.#connect();
    this.#beat();
    this.#checkClock();
  }

  get view(): FloorView {
    return this.#view;
  }

  nowMs(): number {
    const now = this.#around.now();
    return this.#reader.read(this.#link.clock, now.monotonicMs, now.wallMs);
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  onSound(listener: (request: SoundRequest) => void): () => void {
    this.#soundListeners.add(listener);
    return () => this.#soundListeners.delete(listener);
  }

  send(command: ClientCommand): string {
    const commandId = newId((count) => this.#around.randomBytes(count));
    this.#take({ type: 'tapped', commandId, command });
    return commandId;
  }

  sounded(request: SoundRequest): void {
    this.#take({ type: 'soundMade', request });
  }

  setSound(sound: SoundReadiness): void {
    if (sound !== this.#link.sound) this.#take({ type: 'soundSet', sound });
  }

  introduce(name: string | null, stationId: string | null): void {
    this.#take({ type: 'introduced', name, stationId });
  }

  /** The page is seen again or the network is back: connects at once instead of waiting, and asks for the time. */
  wake(): void {
    if (this.#isClosed) return;
    if (this.#socket === null) {
      // A refused page keeps its slow pace: a full house is not helped by everybody who looks at their phone.
      if (this.#link.refusedWhy === null) this.#connect();
      return;
    }
    this.#take({ type: 'clockCheckDue' });
  }

  close(): void {
    this.#isClosed = true;
    for (const cancel of [this.#cancelReconnect, this.#cancelRetry, this.#cancelSilence, this.#cancelHeartbeat, this.#cancelClockCheck])
      cancel?.();
    this.#socket?.close(1000, '');
    this.#socket = null;
  }

  #connect(): void {
    assert(this.#socket === null, 'one connection at a time');
    this.#cancelReconnect?.();
    this.#cancelReconnect = null;
    this.#socket = this.#around.openSocket({
      opened: () => this.#take({ type: 'opened' }),
      received: (text) => this.#receive(text),
      closed: (code) => this.#lost(code),
    });
    this.#listenForSilence();
  }

  #receive(text: string): void {
    this.#listenForSilence();
    const message = readDown(text);
    if (!message.ok) {
      this.#take({ type: 'unreadable', name: message.fault });
      return;
    }
    this.#take({ type: 'received', message: message.value });
    if (message.value.type === 'live') this.#around.onceLive();
  }

  #lost(code: number): void {
    this.#socket = null;
    this.#cancelSilence?.();
    this.#cancelSilence = null;
    this.#cancelRetry?.();
    this.#cancelRetry = null;
    this.#take({ type: 'closed', code });
  }

  /** A stalled connection says nothing of itself: whoever is silent for too long is taken for gone. */
  #listenForSilence(): void {
    this.#cancelSilence?.();
    this.#cancelSilence = this.#around.after(SILENCE_MS, () => this.#hangUp(GONE, 'silence'));
  }

  #hangUp(code: number, reason: string): void {
    const socket = this.#socket;
    if (socket === null) return;
    this.#socket = null;
    // 1006 cannot be sent: it is how a line is called on which nothing can.
    socket.close(code === GONE ? 1000 : code, reason);
    this.#lost(code);
  }

  #beat(): void {
    this.#cancelHeartbeat = this.#around.after(HEARTBEAT_MS, () => {
      this.#take({ type: 'heartbeatDue' });
      this.#beat();
    });
  }

  #checkClock(): void {
    this.#cancelClockCheck = this.#around.after(PING_EVERY_MS, () => {
      this.#take({ type: 'clockCheckDue' });
      this.#checkClock();
    });
  }

  #take(input: LinkInput): void {
    if (this.#isClosed) return;
    const step = advance(this.#link, input, this.#around.now());
    const isChanged = step.link !== this.#link;
    this.#link = step.link;
    if (isChanged) this.#view = viewOf(step.link);
    for (const effect of step.effects) this.#do(effect);
    if (isChanged) for (const listener of this.#listeners) listener();
  }

  #do(effect: LinkEffect): void {
    switch (effect.type) {
      case 'send':
        this.#socket?.send(JSON.stringify(effect.message));
        return;
      case 'hangUp':
        this.#hangUp(effect.code, effect.reason);
        return;
      case 'connectAgain':
        this.#connectAgain(effect.attempt, effect.isSlow);
        return;
      case 'loadPageAgain':
        this.#around.loadPageAgain();
        return;
      case 'keep':
        // Where nothing can be kept, the tap lives as long as the page: it is shown and sent all the same.
        this.#around.store.keep(effect.record);
        return;
      case 'forget':
        this.#around.store.forget(effect.commandId);
        return;
      case 'retryLater':
        this.#cancelRetry?.();
        this.#cancelRetry = this.#around.after(retryTapDelayMs(effect.retry, this.#share()), () => this.#take({ type: 'retryDue' }));
        return;
      case 'sound':
        for (const listener of this.#soundListeners) listener(effect.request);
        return;
    }
  }

  #connectAgain(attempt: number, isSlow: boolean): void {
    this.#cancelReconnect?.();
    const delayMs = isSlow ? slowDelayMs(this.#share()) : reconnectDelayMs(attempt, this.#share());
    this.#cancelReconnect = this.#around.after(delayMs, () => this.#connect());
  }

  #share(): number {
    return randomShare((count) => this.#around.randomBytes(count));
  }
}
