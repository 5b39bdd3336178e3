import { createServer, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { WebSocket, WebSocketServer, type RawData } from 'ws';
import type { Random } from '../simulation/support/random.ts';

/** What the network does to messages at present. */
export interface Weather {
  /** Each message waits up to so long, in ms; their order stays. */
  delayMs: number;
  /** The share of messages that change places with the one after. */
  swapped: number;
  /** The share of messages of clients that come twice. */
  doubled: number;
}

const FINE: Weather = { delayMs: 0, swapped: 0, doubled: 0 };
/** A message that waits for the next one to change places with, and none comes, goes on after so long, in ms. */
const ALONE_MS = 40;

/** A websocket proxy between clients and the server that cuts, delays, reorders and doubles. */
export class FaultProxy {
  readonly #http: Server;
  readonly #sockets = new WebSocketServer({ noServer: true });
  readonly #random: Random;
  readonly #pairs = new Set<{ readonly client: WebSocket; readonly upstream: WebSocket }>();
  readonly #serverPort: () => number;
  weather: Weather = { ...FINE };
  /** To see that a lost tap is found: every so many commands one is swallowed, and acknowledged in the server's name. */
  forgesEvery = 0;
  #commands = 0;

  constructor(serverPort: () => number, random: Random) {
    this.#serverPort = serverPort;
    this.#random = random;
    this.#http = createServer((_request, response) => response.writeHead(426).end());
    this.#http.on('upgrade', (request: IncomingMessage, socket, head) => {
      const headers = request.headers.cookie === undefined ? {} : { cookie: request.headers.cookie };
      const upstream = new WebSocket(`ws://127.0.0.1:${this.#serverPort()}${request.url ?? ''}`, { headers, perMessageDeflate: false });
      // A server that is away looks to a client like a line that is cut.
      upstream.on('error', () => socket.destroy());
      upstream.once('open', () => this.#sockets.handleUpgrade(request, socket, head, (client) => this.#join(client, upstream)));
    });
  }

  async listen(): Promise<number> {
    await new Promise<void>((resolve) => this.#http.listen(0, '127.0.0.1', resolve));
    return (this.#http.address() as AddressInfo).port;
  }

  /** Cuts a share of the lines, without a word of farewell. */
  cut(share: number): void {
    for (const { client, upstream } of this.#pairs) {
      if (!this.#random.chance(share)) continue;
      client.terminate();
      upstream.terminate();
    }
  }

  clearUp(): void {
    this.weather = { ...FINE };
  }

  async close(): Promise<void> {
    this.cut(1);
    this.#http.closeAllConnections();
    await new Promise((resolve) => this.#http.close(resolve));
  }

  #join(client: WebSocket, upstream: WebSocket): void {
    const pair = { client, upstream };
    this.#pairs.add(pair);
    this.#pass(upstream, client, false);
    this.#pass(client, upstream, true);
    const end = (code: number, reason: Buffer, other: WebSocket): void => {
      this.#pairs.delete(pair);
      if (other.readyState !== WebSocket.OPEN) return;
      // 1006 and its like are never sent (RFC 6455 section 7.4.1): such a line was cut.
      if (code === 1000 || code >= 3000) other.close(code, reason);
      else other.terminate();
    };
    client.on('close', (code, reason) => end(code, reason, upstream));
    upstream.on('close', (code, reason) => end(code, reason, client));
    client.on('error', () => upstream.terminate());
  }

  #isForged(text: string, client: WebSocket): boolean {
    if (this.forgesEvery === 0 || !text.startsWith('{"type":"command"')) return false;
    this.#commands += 1;
    if (this.#commands % this.forgesEvery !== 0) return false;
    const { commandId } = JSON.parse(text) as { commandId: string };
    client.send(JSON.stringify({ type: 'outcome', commandId, outcome: { ok: true, sequence: 1, undoable: false } }));
    return true;
  }

  #pass(from: WebSocket, to: WebSocket, isUp: boolean): void {
    let waiting: string | null = null;
    let lastAtMs = 0;
    let isFirst = true;
    const send = (text: string): void => {
      const { delayMs } = this.weather;
      if (delayMs === 0 && lastAtMs <= performance.now()) {
        if (to.readyState === WebSocket.OPEN) to.send(text);
        return;
      }
      // Never before the one that was sent before it.
      lastAtMs = Math.max(lastAtMs, performance.now() + this.#random.share() * delayMs);
      setTimeout(() => to.readyState === WebSocket.OPEN && to.send(text), lastAtMs - performance.now());
    };
    from.on('message', (data: RawData) => {
      const text = (data as Buffer).toString('utf8');
      if (isUp && this.#isForged(text, from)) return;
      const held = waiting;
      waiting = null;
      // What is said first stays first: a line that swaps greetings is no line.
      const maySwap = !isFirst;
      isFirst = false;
      if (held === null && maySwap && this.#random.chance(this.weather.swapped)) {
        waiting = text;
        setTimeout(() => {
          if (waiting !== text) return;
          waiting = null;
          send(text);
        }, ALONE_MS);
        return;
      }
      send(text);
      if (held !== null) send(held);
      if (isUp && text.startsWith('{"type":"command"') && this.#random.chance(this.weather.doubled)) send(text);
    });
  }
}
