import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { onTestFinished, vi } from 'vitest';
import { WebSocket } from 'ws';
import { main } from '../../../server/cli/serve.ts';
import { assert } from '../../../shared/result.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { letIn, listensAt } from '../../support/let-in.ts';
import { hello, LiveClient } from './live-client.ts';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const SERVE = join(ROOT, '.build/js/server/cli/serve.js');
/** What the launcher does once everything is built. */
const RUN = 'const { main } = await import(process.argv[1]); process.exitCode = await main(process.argv.slice(2));';

/** How soon another process is asked again whether it has got there. */
const ASK_AGAIN_MS = 20;

/** How a process ended, and what it said. */
export interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface HttpAnswer {
  readonly status: number;
  readonly body: unknown;
}

/** Builds the server where its sources are newer, as `npm start` does. Throws with what the build said. */
export function ensureServerBuilt(): void {
  ensurePartsBuilt(['server']);
}

/** The same for any parts of the build. */
export function ensurePartsBuilt(parts: readonly ('server' | 'pages' | 'tests')[]): void {
  const build = `await (await import(${JSON.stringify(pathToFileURL(join(ROOT, 'server/cli/build.mjs')).href)})).ensureBuilt(${JSON.stringify(parts)})`;
  const { status, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', build], { encoding: 'utf8' });
  assert(status === 0, `the server could not be built: ${stderr}`);
}

/** A server with the real command line, in a process of its own that does not outlive the test. */
export class ServerProcess {
  readonly #process: ChildProcess;
  readonly #ended: Promise<Ended>;
  #stdout = '';
  #stderr = '';
  #managerCookie: string | null = null;
  #wakers: (() => void)[] = [];

  constructor(args: readonly string[], env: NodeJS.ProcessEnv = process.env) {
    const child = spawn(process.execPath, ['--input-type=module', '--eval', RUN, SERVE, ...args], {
      stdio: ['ignore', 'pipe', 'pipe'],
      env,
    });
    this.#process = child;
    child.stdout.on('data', (chunk: Buffer) => {
      this.#stdout += chunk.toString('utf8');
      for (const waker of this.#wakers.splice(0)) waker();
    });
    child.stderr.on('data', (chunk: Buffer) => (this.#stderr += chunk.toString('utf8')));
    this.#ended = once(child, 'close').then(([code, signal]) => {
      for (const waker of this.#wakers.splice(0)) waker();
      return { code: code as number | null, signal: signal as NodeJS.Signals | null, stdout: this.#stdout, stderr: this.#stderr };
    });
    onTestFinished(async () => {
      this.#process.kill('SIGKILL');
      await this.#ended;
    });
  }

  /** Starts a server and waits until it has said where it is. */
  static async started(args: readonly string[], env?: NodeJS.ProcessEnv): Promise<ServerProcess> {
    const server = new ServerProcess(args, env);
    await server.#said(/^Data {3}.*\n/m);
    listensAt(server.port, /^Data {3}(.*)$/m.exec(server.stdout)?.[1] ?? '');
    return server;
  }

  /** Starts a server that is to end by itself, and waits for that. */
  static async run(args: readonly string[], env?: NodeJS.ProcessEnv): Promise<Ended> {
    return new ServerProcess(args, env).ended();
  }

  get stdout(): string {
    return this.#stdout;
  }

  get pid(): number | undefined {
    return this.#process.pid;
  }

  get port(): number {
    return Number(/^Wall {3}http:\/\/localhost:(\d+)\/wall$/m.exec(this.#stdout)?.[1]);
  }

  ended(): Promise<Ended> {
    return this.#ended;
  }

  /** Sends a signal and waits for the end. */
  async end(signal: NodeJS.Signals): Promise<Ended> {
    this.#process.kill(signal);
    return this.#ended;
  }

  async get(path: string): Promise<HttpAnswer> {
    const answer = await fetch(`http://127.0.0.1:${this.port}${path}`);
    return { status: answer.status, body: await answer.json() };
  }

  /** A file, as a phone that manages the kitchen downloads it. */
  async download(path: string): Promise<{ readonly status: number; readonly text: string }> {
    const answer = await fetch(`http://127.0.0.1:${this.port}${path}`, { headers: { cookie: this.#manager() } });
    return { status: answer.status, text: await answer.text() };
  }

  /** As a phone that manages the kitchen. */
  async post(path: string, payload: unknown): Promise<HttpAnswer> {
    const answer = await fetch(`http://127.0.0.1:${this.port}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie: this.#manager() },
      body: JSON.stringify(payload),
    });
    return { status: answer.status, body: await answer.json() };
  }

  /** The state as the API gives it. */
  async state(): Promise<FloorState> {
    return ((await this.get('/api/state')).body as { state: FloorState }).state;
  }

  /** Waits until the journal holds a call. */
  async hasRaisedACall(): Promise<void> {
    while (Object.values((await this.state()).workpieces).every(({ call }) => call === null)) {
      await new Promise((resolve) => setTimeout(resolve, ASK_AGAIN_MS));
    }
  }

  /** A page of this server: says hello as soon as it is connected. A wall can sound. */
  connect(page: 'wall' | 'phone'): LiveClient {
    const headers = page === 'wall' ? {} : { cookie: letIn(this.port).cookie };
    const socket = new WebSocket(`ws://127.0.0.1:${this.port}/live?page=${page}`, { headers });
    onTestFinished(() => socket.terminate());
    const client = new LiveClient(socket);
    socket.once('open', () => client.say(hello({ page, sound: page === 'wall' ? 'on' : 'none' })));
    return client;
  }

  #manager(): string {
    return (this.#managerCookie ??= letIn(this.port).cookie);
  }

  async #said(pattern: RegExp): Promise<void> {
    for (;;) {
      if (pattern.test(this.#stdout)) return;
      assert(this.#process.exitCode === null && this.#process.signalCode === null, `the server ended: ${this.#stderr}`);
      await new Promise<void>((resolve) => this.#wakers.push(resolve));
    }
  }
}

/** The command line in this process: for starts that must fail, and end before they have opened anything. */
export async function runHere(args: readonly string[]): Promise<Ended> {
  const said = { stdout: '', stderr: '' };
  const spies = (['stdout', 'stderr'] as const).map((stream) =>
    vi.spyOn(process[stream], 'write').mockImplementation((text) => {
      said[stream] += String(text);
      return true;
    }),
  );
  try {
    return { code: await main(args), signal: null, ...said };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}

/**
 * Every file of a folder with the length and the SHA-256 of its bytes, to see that nothing was touched. Without SQLite's -shm files:
 * they are an index beside the log that readers write their marks into (https://www.sqlite.org/walformat.html section 2).
 */
export function bytesOf(folder: string): ReadonlyMap<string, string> {
  return new Map(
    readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isFile() && !entry.name.endsWith('-shm'))
      .map((entry) => {
        const bytes = readFileSync(join(folder, entry.name));
        return [entry.name, `${bytes.length} ${createHash('sha256').update(bytes).digest('hex')}`];
      }),
  );
}
