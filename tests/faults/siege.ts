import { connect, type Socket } from 'node:net';
import { join } from 'node:path';
import { freePort, inTemporaryFolder } from '../bench/places.ts';
import { letIn } from '../support/let-in.ts';
import { FaultClient } from './fault-client.ts';
import { FaultServer } from './fault-server.ts';

/** Sockets that are opened and say nothing, so many at once at most. */
const IDLE_SOCKETS = 10_000;
const AT_ONCE = 200;
/** Sockets on which a request trickles in, a byte every so many ms. */
const SLOW_SOCKETS = 50;
const BYTE_EVERY_MS = 500;
/** Node looks every 5 s, and gives a head 10 s and a whole request 30 s: by then all of them are gone. */
const SLOW_GONE_MS = 45_000;
const TAP_EVERY_MS = 100;
/** A tap under siege is answered within so long, in ms. */
const MOST_ANSWER_MS = 1000;

/** What the siege did and found. */
export interface SiegeResult {
  readonly idleSockets: number;
  /** Told 503 and closed. */
  readonly refused: number;
  /** Held open, as many as one address may. */
  readonly held: number;
  /** Neither told nor held: reset without a word. */
  readonly unsaid: number;
  readonly slowSockets: number;
  readonly slowEnded: number;
  readonly slowestEndedMs: number;
  readonly taps: number;
  readonly worstAnswerMs: number;
  readonly rssGrowthMiB: number;
  readonly violations: readonly string[];
}

/** `npm run -s faults -- --siege`: idle sockets by the thousand and requests that trickle in, while a phone goes on tapping. */
export function runSiege(): Promise<SiegeResult> {
  return inTemporaryFolder(async (folder) => {
    const port = await freePort();
    const server = await FaultServer.started(join(folder, 'house'), port, 1, folder);
    const phone = new FaultClient('phone', port, letIn(port).cookie);
    phone.connect();
    while (!phone.isLive) await pause(10);
    const rssBefore = server.rssMiB();
    const taps = new Taps(phone);
    const sockets: Socket[] = [];
    try {
      const slow = Array.from({ length: SLOW_SOCKETS }, (_, index) => slowSocket(port, index % 2 === 0));
      const answers = { refused: 0, held: 0, unsaid: 0 };
      for (let opened = 0; opened < IDLE_SOCKETS; opened += AT_ONCE) {
        const batch = await Promise.all(Array.from({ length: AT_ONCE }, () => idleSocket(port, sockets)));
        for (const answer of batch) answers[answer] += 1;
      }
      const ended = await Promise.all(slow);
      const { count, worstMs } = await taps.stop();
      const violations = [
        ...(answers.unsaid > 0 ? [`${answers.unsaid} sockets were closed without a word`] : []),
        ...(answers.refused === 0 ? ['no socket was refused'] : []),
        ...(ended.some((ms) => ms === null) ? [`${ended.filter((ms) => ms === null).length} slow requests were never ended`] : []),
        ...(worstMs > MOST_ANSWER_MS ? [`a tap was answered after ${Math.round(worstMs)} ms`] : []),
        ...(phone.kept.size > 0 ? [`${phone.kept.size} taps were never answered`] : []),
        ...phone.faults,
      ];
      return {
        idleSockets: IDLE_SOCKETS,
        ...answers,
        slowSockets: SLOW_SOCKETS,
        slowEnded: ended.filter((ms) => ms !== null).length,
        slowestEndedMs: Math.round(Math.max(...ended.map((ms) => ms ?? 0))),
        taps: count,
        worstAnswerMs: Math.round(worstMs),
        rssGrowthMiB: Math.round(server.rssMiB() - rssBefore),
        violations,
      };
    } finally {
      for (const socket of sockets) socket.destroy();
      phone.end();
      await server.end('SIGKILL');
    }
  });
}

/** A phone that goes on tapping, and how long the slowest answer took. */
class Taps {
  readonly #phone: FaultClient;
  readonly #timer: NodeJS.Timeout;
  #count = 0;
  #worstMs = 0;

  constructor(phone: FaultClient) {
    this.#phone = phone;
    this.#timer = setInterval(() => void this.#tap(), TAP_EVERY_MS);
  }

  async stop(): Promise<{ readonly count: number; readonly worstMs: number }> {
    clearInterval(this.#timer);
    await pause(MOST_ANSWER_MS);
    return { count: this.#count, worstMs: this.#worstMs };
  }

  async #tap(): Promise<void> {
    const startMs = performance.now();
    const before = this.#phone.answered.size;
    this.#count += 1;
    this.#phone.tap({ type: 'hearAllCalls' });
    while (this.#phone.answered.size === before) await pause(2);
    this.#worstMs = Math.max(this.#worstMs, performance.now() - startMs);
  }
}

/** Opens a socket that says nothing, and waits for what comes of it. */
function idleSocket(port: number, held: Socket[]): Promise<'refused' | 'held' | 'unsaid'> {
  return new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1');
    let said = '';
    const timer = setTimeout(() => {
      held.push(socket);
      resolve('held');
    }, 300);
    socket.on('data', (chunk: Buffer) => (said += chunk.toString('utf8')));
    socket.on('error', () => {});
    socket.on('close', () => {
      clearTimeout(timer);
      resolve(said.startsWith('HTTP/1.1 503') ? 'refused' : 'unsaid');
    });
  });
}

/** Sends a request byte by byte, its head or its body: ms until the server ends it, null where it does not. */
function slowSocket(port: number, isHead: boolean): Promise<number | null> {
  return new Promise((resolve) => {
    const startMs = performance.now();
    const socket = connect(port, '127.0.0.1');
    socket.on('error', () => {});
    socket.on('connect', () =>
      socket.write(
        isHead
          ? 'GET /api/access HTTP/1.1\r\nHost: localhost\r\nX-Slow: '
          : 'POST /api/join HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 100000\r\n\r\n{"code":"',
      ),
    );
    const trickle = setInterval(() => socket.writable && socket.write('1'), BYTE_EVERY_MS);
    const giveUp = setTimeout(() => {
      clearInterval(trickle);
      socket.destroy();
      resolve(null);
    }, SLOW_GONE_MS);
    socket.resume();
    socket.on('close', () => {
      clearInterval(trickle);
      clearTimeout(giveUp);
      resolve(performance.now() - startMs < SLOW_GONE_MS ? performance.now() - startMs : null);
    });
  });
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
