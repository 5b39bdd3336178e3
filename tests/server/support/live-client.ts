import { once } from 'node:events';
// For what it adds to FastifyInstance.
import '@fastify/websocket';
import type { FastifyInstance } from 'fastify';
import { onTestFinished } from 'vitest';
import { WebSocket } from 'ws';
import type { ClientCommand } from '../../../shared/floor/commands.ts';
import type { Outcome } from '../../../shared/floor/refusals.ts';
import { assert } from '../../../shared/result.ts';
import { downMessageSchema, type DownMessage } from '../../../shared/wire/down.ts';
import { PROTOCOL_VERSION } from '../../../shared/wire/protocol.ts';
import type { Hello, PageKind, UpMessage } from '../../../shared/wire/up.ts';
import { scatteredId } from './journal-events.ts';
import { eventLoopTurns } from './machine.ts';

type DownOf<Type extends DownMessage['type']> = Extract<DownMessage, { type: Type }>;

/** How a websocket ended. */
export interface Closing {
  readonly code: number;
  readonly reason: string;
}

let drawn = 0;

/** An id that nobody has had yet. */
export function freshId(): string {
  drawn += 1;
  return scatteredId(80_000_000 + drawn);
}

/** The token of a device in test houses, where it can be told from its id. */
export function tokenOf(deviceId: string): string {
  return deviceId.padEnd(43, 'A');
}

/** A hello as a page says it; what matters to a test comes on top. */
export function hello(given: Partial<Hello> = {}): Hello {
  return {
    type: 'hello',
    protocol: PROTOCOL_VERSION,
    page: 'phone',
    pageId: freshId(),
    kitchenId: null,
    lastSequence: 0,
    sound: 'none',
    stationId: null,
    ...given,
  };
}

/** A page's end of the websocket. Every message of the server is held against its schema. */
export class LiveClient {
  readonly messages: DownMessage[] = [];
  closing: Closing | null = null;
  readonly #socket: WebSocket;
  #fault: Error | null = null;
  #wakers: (() => void)[] = [];

  constructor(socket: WebSocket) {
    this.#socket = socket;
    socket.on('message', (data: Buffer) => {
      const read = downMessageSchema.safeParse(JSON.parse(data.toString('utf8')));
      if (read.success) this.messages.push(read.data);
      else
        this.#fault ??= new Error(
          `the server said what its schema does not know: ${data.toString('utf8').slice(0, 300)} ${read.error.message}`,
        );
      this.#wake();
    });
    socket.on('close', (code: number, reason: Buffer) => {
      this.closing = { code, reason: reason.toString('utf8') };
      this.#wake();
    });
    // The close that follows says what there is to say.
    socket.on('error', () => {});
  }

  /** Connects, by a socket where the house is listening, and within the process where it is not. */
  static async connect(
    app: FastifyInstance,
    { page = 'phone', deviceId }: { page?: PageKind; deviceId?: string } = {},
  ): Promise<LiveClient> {
    const headers = deviceId === undefined ? {} : { cookie: `ovenward-${page === 'wall' ? 'wall' : 'phone'}=${tokenOf(deviceId)}` };
    if (app.server.listening) {
      const address = app.server.address();
      assert(typeof address === 'object' && address !== null, 'the house listens on a port');
      const socket = new WebSocket(`ws://127.0.0.1:${address.port}/live?page=${page}`, { headers });
      onTestFinished(() => socket.terminate());
      await once(socket, 'open');
      return new LiveClient(socket);
    }
    let client: LiveClient | undefined;
    await app.injectWS(
      `/live?page=${page}`,
      { headers: { host: 'localhost', ...headers } },
      { onInit: (socket) => (client = new LiveClient(socket)) },
    );
    assert(client !== undefined, 'the websocket was made');
    return client;
  }

  /** Connects, says hello, and waits until it is live. */
  static async live(app: FastifyInstance, given: Partial<Hello> & { deviceId?: string } = {}): Promise<LiveClient> {
    const { deviceId, ...helloFields } = given;
    const client = await LiveClient.connect(app, { page: given.page ?? 'phone', ...(deviceId === undefined ? {} : { deviceId }) });
    client.say(hello(helloFields));
    await client.first('live');
    return client;
  }

  say(message: UpMessage): void {
    this.sayText(JSON.stringify(message));
  }

  sayText(text: string): void {
    this.#socket.send(text);
  }

  sayBytes(bytes: Uint8Array): void {
    this.#socket.send(bytes, { binary: true });
  }

  /** Gives a command as a tap of this moment, and waits for its outcome. */
  async give(command: ClientCommand, commandId = freshId()): Promise<Outcome> {
    const before = this.messages.length;
    this.say({ type: 'command', commandId, tap: { agoMonotonicMs: 0, agoWallMs: 0 }, command });
    const message = await this.#until(() => this.of('outcome', before).find((outcome) => outcome.commandId === commandId));
    return message.outcome;
  }

  /** Messages of one type, from an index on. */
  of<Type extends DownMessage['type']>(type: Type, from = 0): readonly DownOf<Type>[] {
    return this.messages.slice(from).filter((message): message is DownOf<Type> => message.type === type);
  }

  /** Waits for the first message of a type at or after an index. */
  async first<Type extends DownMessage['type']>(type: Type, from = 0): Promise<DownOf<Type>> {
    return this.#until(() => this.of(type, from)[0]);
  }

  /** Waits until the server has closed it. */
  async closed(): Promise<Closing> {
    return this.#until(() => this.closing ?? undefined);
  }

  /** Waits until something is true of what has come so far. */
  async until(isTrue: () => boolean): Promise<void> {
    await this.#until(() => (isTrue() ? true : undefined));
  }

  /** Everything that is on its way has come. Only for saying that nothing more came. */
  async quiet(): Promise<void> {
    await eventLoopTurns(30);
  }

  get deviceId(): string {
    const welcome = this.of('welcome')[0];
    assert(welcome !== undefined, 'nobody welcomed this client');
    return welcome.device.id;
  }

  /** Leaves as a page does that is closed, and waits until the house has noticed. By a socket only: within the process nothing ends. */
  async leave(hub: { readonly clientCount: number }): Promise<void> {
    const before = hub.clientCount;
    this.#socket.close();
    await this.closed();
    while (hub.clientCount === before) await eventLoopTurns(1);
    await eventLoopTurns();
  }

  async #until<Value>(look: () => Value | undefined): Promise<Value> {
    for (;;) {
      if (this.#fault !== null) throw this.#fault;
      const found = look();
      if (found !== undefined) return found;
      assert(this.closing === null, `closed while waiting: ${JSON.stringify(this.closing)}`);
      await new Promise<void>((resolve) => this.#wakers.push(resolve));
    }
  }

  #wake(): void {
    for (const waker of this.#wakers.splice(0)) waker();
  }
}
