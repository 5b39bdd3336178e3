import { once } from 'node:events';
import { WebSocket } from 'ws';
import { idFromBytes } from '../../shared/ids.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import { PROTOCOL_VERSION } from '../../shared/wire/protocol.ts';
import type { Hello, UpMessage } from '../../shared/wire/up.ts';
import { randomBytes } from 'node:crypto';
import { letIn } from '../support/let-in.ts';

const EVENTS = '{"type":"events"';
const OUTCOME = '{"type":"outcome"';
const LIVE = '{"type":"live"';

export function newId(): string {
  return idFromBytes(randomBytes(16));
}

/** One page's end of a websocket. It takes messages by how they begin: reading them would measure the reader. */
export class Page {
  readonly socket: WebSocket;
  onEvents: () => void = () => {};
  onOutcome: (text: string) => void = () => {};
  /** The last events and the last outcome, as they came. */
  lastEvents = '';
  lastOutcome = '';
  isLost = false;
  #onLive: () => void = () => {};

  constructor(port: number, path: string, headers: Readonly<Record<string, string>> = {}) {
    this.socket = new WebSocket(`ws://127.0.0.1:${port}${path}`, { perMessageDeflate: false, headers: { ...headers } });
    this.socket.on('message', (data: Buffer) => {
      const text = data.toString('utf8');
      if (text.startsWith(EVENTS)) {
        this.lastEvents = text;
        this.onEvents();
      } else if (text.startsWith(OUTCOME)) {
        this.lastOutcome = text;
        this.onOutcome(text);
      } else if (text.startsWith(LIVE)) {
        this.#onLive();
      }
    });
    this.socket.on('close', () => (this.isLost = true));
  }

  /** Says hello and waits until it is live. */
  static async live(port: number, page: 'wall' | 'phone'): Promise<Page> {
    const client = new Page(port, `/live?page=${page}`, { cookie: letIn(port, page).cookie });
    await once(client.socket, 'open');
    const live = new Promise<void>((resolve) => (client.#onLive = resolve));
    const hello: Hello = {
      type: 'hello',
      protocol: PROTOCOL_VERSION,
      page,
      pageId: newId(),
      kitchenId: null,
      lastSequence: 0,
      sound: 'none',
      stationId: null,
    };
    client.say(hello);
    await live;
    return client;
  }

  /** Connects to the floor's server, which knows no hello. */
  static async bare(port: number): Promise<Page> {
    const client = new Page(port, '/');
    await once(client.socket, 'open');
    return client;
  }

  say(message: UpMessage): void {
    this.socket.send(JSON.stringify(message));
  }

  /** Says that it is still there, as pages do every few seconds. */
  ping(): void {
    this.say({ type: 'ping', t1: performance.now() });
  }

  /** Says a tap; its id. */
  tap(command: ClientCommand): string {
    const commandId = newId();
    this.say({ type: 'command', commandId, tap: { agoMonotonicMs: 0, agoWallMs: 0 }, command });
    return commandId;
  }

  end(): void {
    this.socket.terminate();
  }
}

/** Opens so many pages, a few at a time. */
export async function openPages(count: number, open: () => Promise<Page>): Promise<readonly Page[]> {
  const pages: Page[] = [];
  while (pages.length < count) {
    const some = Math.min(20, count - pages.length);
    pages.push(...(await Promise.all(Array.from({ length: some }, open))));
  }
  return pages;
}
