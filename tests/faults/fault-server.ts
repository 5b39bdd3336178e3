import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { serverArguments } from '../bench/child.ts';
import { HARBOUR } from '../bench/places.ts';
import { listensAt } from '../support/let-in.ts';

const SHIFTED_CLOCK = pathToFileURL(fileURLToPath(new URL('shifted-clock.js', import.meta.url))).href;
const ASK_EVERY_MS = 5;
/** A server that is not up after so long is counted as one that hangs. */
const START_TIMEOUT_MS = 20_000;

/** The real server in a process of its own, with a wall clock that a round may set. */
export class FaultServer {
  readonly port: number;
  readonly #process: ChildProcess;
  readonly #gone: Promise<unknown>;
  readonly #shiftFile: string;
  #said = '';

  private constructor(child: ChildProcess, port: number, shiftFile: string) {
    this.#process = child;
    this.port = port;
    this.#shiftFile = shiftFile;
    this.#gone = once(child, 'exit');
    child.stderr?.on('data', (chunk: Buffer) => (this.#said += chunk.toString('utf8')));
  }

  /** Starts it on a folder and a port, the house `pace` times faster, and waits until it answers. Throws where it does not. */
  static async started(folder: string, port: number, pace: number, shiftFolder: string): Promise<FaultServer> {
    const shiftFile = join(shiftFolder, 'shift');
    writeFileSync(shiftFile, '0');
    const args = ['--data', folder, '--port', String(port), '--pace', String(pace), '--here', '--bakehouse', HARBOUR];
    const server = new FaultServer(spawnServer(args, shiftFile), port, shiftFile);
    const endMs = performance.now() + START_TIMEOUT_MS;
    // Until its day is brought in it goes down by itself where the disk is full, and rightly so.
    while (!(await server.#hasItsDay())) {
      if (server.#process.exitCode !== null || performance.now() > endMs) {
        await server.end('SIGKILL');
        throw new Error(`the server did not come up: ${server.#said.slice(-600)}`);
      }
      await new Promise((resolve) => setTimeout(resolve, ASK_EVERY_MS));
    }
    listensAt(port, folder);
    return server;
  }

  /** How a second server on the same folder ended, and what it said. */
  static async second(folder: string, port: number, pace: number): Promise<{ readonly code: number | null; readonly said: string }> {
    const child = spawnServer(['--data', folder, '--port', String(port), '--pace', String(pace), '--here'], '');
    let said = '';
    child.stderr?.on('data', (chunk: Buffer) => (said += chunk.toString('utf8')));
    // One that is not refused goes on for ever; it is ended, and its code says so.
    const tooLong = setTimeout(() => child.kill('SIGKILL'), START_TIMEOUT_MS);
    const [code] = (await once(child, 'close')) as [number | null];
    clearTimeout(tooLong);
    return { code, said };
  }

  /** It has ended, and nobody told it to. */
  get hasDied(): boolean {
    return this.#process.exitCode !== null && !this.#process.killed;
  }

  /** What it last said of its faults. */
  get lastWords(): string {
    return this.#said.slice(-600);
  }

  /** Sets the server's wall clock so many ms off the machine's. */
  setClock(shiftMs: number): void {
    writeFileSync(this.#shiftFile, String(shiftMs));
    this.#process.kill('SIGUSR2');
  }

  /** What the process holds of the machine's memory, in MiB; needs /proc. */
  rssMiB(): number {
    const kib = /^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${this.#process.pid ?? 0}/status`, 'utf8'))?.[1];
    return Number(kib) / 1024;
  }

  async end(signal: NodeJS.Signals): Promise<void> {
    this.#process.kill(signal);
    if (this.#process.exitCode === null && this.#process.signalCode === null) await this.#gone;
  }

  async get<Body>(path: string): Promise<Body> {
    const answer = await fetch(`http://127.0.0.1:${this.port}${path}`);
    if (!answer.ok) throw new Error(`GET ${path} was answered ${answer.status}`);
    return (await answer.json()) as Body;
  }

  async #hasItsDay(): Promise<boolean> {
    try {
      const { state } = await this.get<{ state: { house: unknown } }>('/api/state');
      return state.house !== null;
    } catch {
      return false;
    }
  }
}

function spawnServer(args: readonly string[], shiftFile: string): ChildProcess {
  return spawn(process.execPath, [`--import=${SHIFTED_CLOCK}`, ...serverArguments(args)], {
    stdio: ['ignore', 'ignore', 'pipe'],
    env: { ...process.env, OVENWARD_SHIFT: shiftFile },
  });
}
