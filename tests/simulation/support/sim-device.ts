import { FloorClient, type LinkSocket, type SocketHandlers } from '../../../display/link/floor-client.ts';
import type { SoundRequest } from '../../../display/link/floor-link.ts';
import { tapStoreOn } from '../../../display/link/tap-store.ts';
import { decidedAtWeigh } from '../../../display/weigh/decided-at-weigh.ts';
import type { ClientCommand } from '../../../shared/floor/commands.ts';
import type { Device } from '../../../shared/wire/down.ts';
import type { SoundReadiness, UpMessage } from '../../../shared/wire/up.ts';
import { Host } from './host.ts';
import { MemoryStorage } from './memory-storage.ts';
import type { Network } from './network.ts';
import { PageWitness } from './page-witness.ts';
import type { Plant } from './plant.ts';
import type { Random } from './random.ts';
import type { TapBook, TapTruth } from './tap-book.ts';
import { checkToldTime } from './tap-time-rules.ts';
import type { Violations } from './violation.ts';
import type { VirtualTime } from './virtual-time.ts';
import type { WireWitness } from './wire-witness.ts';

export interface SimDeviceOptions {
  readonly time: VirtualTime;
  readonly random: Random;
  readonly network: Network;
  readonly device: Device;
  readonly page: 'wall' | 'phone';
  readonly wire: WireWitness;
  readonly taps: TapBook;
  readonly violations: Violations;
  readonly plant: Plant;
}

/** A phone or a wall: its clocks, its storage, and the page on it, which is the pages' own link. */
export class SimDevice {
  readonly id: string;
  readonly name: string;
  readonly page: 'wall' | 'phone';
  readonly storage = new MemoryStorage();
  readonly #options: SimDeviceOptions;
  /** How far its wall clock is from true time. */
  wallErrorMs = 0;
  sound: SoundReadiness = 'none';
  /** How often a burst it is asked for is not made: asleep, muted by the browser. */
  failsToSound = 0;
  /** Since when nothing has come between it and its sounding: in true time. */
  steadySinceMs: number;
  #host: Host;
  #load = 0;
  #client: FloorClient;
  #witness: PageWitness;

  constructor(options: SimDeviceOptions) {
    this.#options = options;
    this.id = options.device.id;
    this.name = options.device.name;
    this.page = options.page;
    this.steadySinceMs = options.time.nowMs;
    this.#host = new Host(options.time);
    this.#witness = new PageWitness(this.name, options.violations);
    this.#client = this.#open();
  }

  get client(): FloorClient {
    return this.#client;
  }

  get host(): Host {
    return this.#host;
  }

  get isLive(): boolean {
    return this.#host.isAwake && this.#client.view.connection.phase === 'live';
  }

  /** A thumb. Its tap is known before it can be sent. */
  tap(command: ClientCommand): string {
    const { time, taps } = this.#options;
    // Ids are drawn by the page, and the page sends at once: whoever watches the wire has to know the tap before.
    const pending: Omit<TapTruth, 'commandId'> = {
      deviceId: this.id,
      command,
      atMs: time.nowMs,
      load: this.#load,
      monotonicMs: this.#host.monotonicMs,
      wallMs: this.#wallMs(),
      arrivals: [],
    };
    this.#tapping = pending;
    const commandId = this.#client.send(command);
    this.#tapping = null;
    if (taps.get(commandId) === undefined && this.#client.view.refusedHere === null) taps.add({ ...pending, commandId });
    return commandId;
  }
  #tapping: Omit<TapTruth, 'commandId'> | null = null;

  /** The page is loaded again; what it had not been told for sure is in the storage. `isClean`: it says farewell to its line. */
  reload(isClean: boolean): void {
    if (isClean) this.#client.close();
    this.#host.die();
    this.#host = new Host(this.#options.time);
    this.#load += 1;
    this.#witness = new PageWitness(this.name, this.#options.violations);
    this.disturbed();
    this.#client = this.#open();
  }

  /** Somebody looks at it again. Nothing where it sleeps: then nobody can. */
  wake(): void {
    if (this.#host.isAwake) this.#client.wake();
  }

  /** Somebody touches it, or its browser thinks otherwise. Nothing while it sleeps. */
  setSound(sound: SoundReadiness): void {
    if (!this.#host.isAwake) return;
    this.sound = sound;
    this.disturbed();
    this.#client.setSound(sound);
  }

  disturbed(): void {
    this.steadySinceMs = this.#options.time.nowMs;
  }

  /** Taps that are still in its storage. */
  get storedTaps(): number {
    return this.storage.length;
  }

  #wallMs(): number {
    return Math.floor(this.#options.time.nowMs + this.wallErrorMs);
  }

  #open(): FloorClient {
    const { random } = this.#options;
    const host = this.#host;
    const client = new FloorClient(this.page, {
      now: () => ({ monotonicMs: host.monotonicMs, wallMs: this.#wallMs() }),
      randomBytes: (count) => random.bytes(count),
      openSocket: (handlers) => this.#openSocket(host, handlers),
      decide: decidedAtWeigh,
      after: (delayMs, call) => host.after(delayMs, call),
      store: this.#options.plant.store ?? tapStoreOn(this.storage, this.page),
      loadPageAgain: () => this.#options.violations.report('bug', `${this.name} loads itself again, and both are of one version`),
      onceLive: () => {},
    });
    const witness = this.#witness;
    client.subscribe(() => witness.shows(client.view.sequence));
    client.onSound((request) => this.#soundLater(host, client, request));
    if (this.sound !== 'none') client.setSound(this.sound);
    return client;
  }

  #openSocket(host: Host, handlers: SocketHandlers): LinkSocket {
    const witness = this.#witness;
    const socket = this.#options.network.connect(
      { host, deviceId: this.id },
      {
        opened: handlers.opened,
        received: (text) => {
          witness.received(text);
          handlers.received(text);
        },
        closed: (code) => {
          this.disturbed();
          handlers.closed(code);
        },
      },
    );
    return {
      send: (text) => {
        this.#checkSent(host, witness, text);
        socket.send(text);
      },
      close: (code, reason) => {
        this.disturbed();
        socket.close(code, reason);
      },
    };
  }

  #checkSent(host: Host, witness: PageWitness, text: string): void {
    const { taps, time, violations } = this.#options;
    if (text.startsWith('{"type":"ping"')) return;
    const message = JSON.parse(text) as UpMessage;
    if (message.type === 'hello') witness.greeted(message.lastSequence);
    if (message.type !== 'command') return;
    if (this.#tapping !== null && taps.get(message.commandId) === undefined) taps.add({ ...this.#tapping, commandId: message.commandId });
    const tap = taps.get(message.commandId);
    if (tap === undefined) {
      violations.report('bug', `${this.name} sends a command that no thumb gave`);
      return;
    }
    checkToldTime(
      tap,
      message.tap,
      { trueMs: time.nowMs, load: this.#load, monotonicMs: host.monotonicMs, wallMs: this.#wallMs() },
      violations,
    );
  }

  #soundLater(host: Host, client: FloorClient, request: SoundRequest): void {
    if (this.#options.random.chance(this.failsToSound)) {
      this.disturbed();
      return;
    }
    host.after(this.#options.random.between(100, 2_800), () => {
      this.#options.wire.madeSound(this.id, request.soundId);
      client.sounded(request);
    });
  }
}
