import type { LinkSocket, SocketHandlers } from '../../../display/link/floor-client.ts';
import type { Connection } from '../../../server/live/live-hub.ts';
import type { Peer } from '../../../server/live/peer.ts';
import type { Host } from './host.ts';
import type { Random } from './random.ts';
import type { VirtualTime } from './virtual-time.ts';

/** RFC 6455 section 7.1.5: no close frame came. */
const NO_CLOSE_FRAME = 1006;
/** Until a device that cannot reach its server is told so. Real time. */
const UNREACHABLE_MS = 3_000;

/** What a device connects to: whoever listens at the time. */
export interface Listener {
  readonly host: Host;
  accept(peer: Peer, deviceId: string): Connection | null;
}

/** Who connects. */
export interface Caller {
  readonly host: Host;
  readonly deviceId: string;
}

/** How a line comes to its end. */
export type Break =
  /** Both ends are told at once, what is under way is lost. */
  | 'cut'
  /** The page is told at once; what it has sent still arrives, and the server is told later. */
  | 'pageFirst'
  /** Nothing arrives any more, nobody is told: each end has to notice by the silence. */
  | 'stalled'
  /** As stalled, but what the page sends still arrives. */
  | 'deafPage';

/** What passes on the lines, for whoever watches. */
export interface LineWatch {
  toPage(deviceId: string, text: string): void;
  arrived(deviceId: string, line: number, text: string): void;
}

interface Line {
  readonly number: number;
  readonly caller: Caller;
  readonly handlers: SocketHandlers;
  readonly listener: Listener;
  readonly latencyMs: number;
  connection: Connection | null;
  isOpenAtPage: boolean;
  isOpenAtServer: boolean;
  carriesUp: boolean;
  carriesDown: boolean;
  lastUpMs: number;
  lastDownMs: number;
  backlogBytes: number;
}

/**
 * The house's network. Messages of one line arrive in their order, late by chance; lines know nothing of one another. What is
 * under way when a line breaks may be lost, or arrive after the page has given the line up.
 */
export class Network {
  readonly #time: VirtualTime;
  readonly #random: Random;
  readonly #watch: LineWatch;
  readonly #lines = new Set<Line>();
  readonly #unreachable = new Set<string>();
  #opened = 0;
  listener: Listener | null = null;
  /** How often a message is held up for seconds. */
  holdUps = 0.01;
  /** Whether what pages say arrives twice. The first word on a line does not: it would be another line. */
  doublesUp = false;
  doubled = 0;

  constructor(time: VirtualTime, random: Random, watch: LineWatch) {
    this.#time = time;
    this.#random = random;
    this.#watch = watch;
  }

  connect(caller: Caller, handlers: SocketHandlers): LinkSocket {
    const latencyMs = this.#random.between(1, 40);
    const { listener } = this;
    const away: LinkSocket = { send: () => {}, close: () => {} };
    let isWanted = true;
    if (listener === null || this.#unreachable.has(caller.deviceId) || !listener.host.isAlive) {
      const refusedMs = listener === null ? latencyMs : UNREACHABLE_MS;
      caller.host.after(refusedMs, () => {
        if (isWanted) handlers.closed(NO_CLOSE_FRAME);
      });
      return { ...away, close: () => (isWanted = false) };
    }
    this.#opened += 1;
    const line: Line = {
      number: this.#opened,
      caller,
      handlers,
      listener,
      latencyMs,
      connection: null,
      isOpenAtPage: true,
      isOpenAtServer: true,
      carriesUp: true,
      carriesDown: true,
      lastUpMs: 0,
      lastDownMs: 0,
      backlogBytes: 0,
    };
    this.#lines.add(line);
    this.#up(line, 0, () => {
      line.connection = listener.accept(this.#peerOf(line), caller.deviceId);
      if (line.connection !== null) this.#down(line, 0, () => handlers.opened());
    });
    return {
      send: (text) => this.#sendUp(line, text),
      close: () => {
        line.isOpenAtPage = false;
        this.#tellServer(line);
      },
    };
  }

  /** Breaks what lines a device has. */
  break(deviceId: string, how: Break): void {
    for (const line of this.#lines) if (line.caller.deviceId === deviceId) this.#break(line, how);
  }

  /** A device is out of reach, or in reach again. */
  setReach(deviceId: string, isReachable: boolean): void {
    if (isReachable) this.#unreachable.delete(deviceId);
    else this.#unreachable.add(deviceId);
  }

  isReachable(deviceId: string): boolean {
    return !this.#unreachable.has(deviceId);
  }

  /** The server's process is gone. What it had sent may still arrive; not every page is told that there is nobody any more. */
  serverDied(host: Host): void {
    for (const line of this.#lines) {
      if (line.listener.host !== host) continue;
      line.isOpenAtServer = false;
      line.carriesUp = false;
      const how = this.#random.weighted<'farewell' | 'cut' | 'stalled'>([
        ['farewell', 6],
        ['cut', 3],
        ['stalled', 1],
      ]);
      if (how === 'farewell') this.#tellPage(line, NO_CLOSE_FRAME);
      if (how === 'cut') this.#break(line, 'cut');
      if (how === 'stalled') line.carriesDown = false;
    }
  }

  #peerOf(line: Line): Peer {
    return {
      send: (text) => {
        if (!line.isOpenAtServer || !line.listener.host.isAlive) return;
        line.backlogBytes += text.length;
        this.#down(line, this.#delayMs(line), () => {
          line.backlogBytes -= text.length;
          line.handlers.received(text);
        });
        // Last: whoever watches may have the server die of it, and this word is out.
        this.#watch.toPage(line.caller.deviceId, text);
      },
      get backlogBytes() {
        return line.backlogBytes;
      },
      close: (code) => {
        if (!line.isOpenAtServer || !line.listener.host.isAlive) return;
        line.isOpenAtServer = false;
        this.#tellPage(line, code);
      },
    };
  }

  #sendUp(line: Line, text: string): void {
    if (!line.isOpenAtPage) return;
    const isHello = text.startsWith('{"type":"hello"');
    const times = this.doublesUp && !isHello ? 2 : 1;
    if (times === 2) this.doubled += 1;
    for (let time = 0; time < times; time += 1) {
      this.#up(line, this.#delayMs(line), () => {
        this.#watch.arrived(line.caller.deviceId, line.number, text);
        line.connection?.receive(text);
      });
    }
  }

  #break(line: Line, how: Break): void {
    switch (how) {
      case 'cut':
        line.carriesUp = false;
        line.carriesDown = false;
        this.#closedAtPage(line, NO_CLOSE_FRAME);
        this.#time.after(this.#random.between(0, 2_000), () => this.#closedAtServer(line));
        return;
      case 'pageFirst':
        line.carriesDown = false;
        this.#closedAtPage(line, NO_CLOSE_FRAME);
        this.#tellServer(line);
        return;
      case 'stalled':
        line.carriesUp = false;
        line.carriesDown = false;
        return;
      case 'deafPage':
        line.carriesDown = false;
        return;
    }
  }

  /** After what is under way to it. */
  #tellServer(line: Line): void {
    if (!line.carriesUp) return;
    this.#up(line, this.#delayMs(line) + this.#random.wait(500), () => this.#closedAtServer(line));
  }

  #tellPage(line: Line, code: number): void {
    this.#down(line, this.#delayMs(line), () => this.#closedAtPage(line, code));
  }

  #closedAtServer(line: Line): void {
    if (!line.isOpenAtServer) return;
    line.isOpenAtServer = false;
    line.listener.host.arrive(() => line.connection?.closed());
    this.#forget(line);
  }

  #closedAtPage(line: Line, code: number): void {
    if (!line.isOpenAtPage) return;
    line.isOpenAtPage = false;
    line.caller.host.arrive(() => line.handlers.closed(code));
    this.#forget(line);
  }

  #forget(line: Line): void {
    if (!line.isOpenAtPage && !line.isOpenAtServer) this.#lines.delete(line);
  }

  #up(line: Line, delayMs: number, run: () => void): void {
    line.lastUpMs = Math.max(line.lastUpMs, this.#time.nowMs + line.latencyMs + delayMs);
    this.#time.at(line.lastUpMs, () => {
      if (!line.carriesUp) return;
      line.listener.host.arrive(() => {
        if (line.isOpenAtServer) run();
      });
    });
  }

  #down(line: Line, delayMs: number, run: () => void): void {
    line.lastDownMs = Math.max(line.lastDownMs, this.#time.nowMs + line.latencyMs + delayMs);
    this.#time.at(line.lastDownMs, () => {
      if (!line.carriesDown) return;
      // A page that has slept over it may have given the line up meanwhile.
      line.caller.host.arrive(() => {
        if (line.isOpenAtPage) run();
      });
    });
  }

  #delayMs(line: Line): number {
    if (this.#random.chance(this.holdUps)) return this.#random.between(500, 4_000);
    return this.#random.wait(line.latencyMs / 4);
  }
}
