import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { get } from 'node:http';
import { assert } from '../../shared/result.ts';
import { listensAt } from '../support/let-in.ts';
import { SERVE } from './places.ts';

/** How often a starting server is asked whether it is there, and for how long at most. */
const ASK_EVERY_MS = 2;
const START_TIMEOUT_MS = 60_000;

/** What the launcher does once everything is built. */
const RUN = 'const { main } = await import(process.argv[1]); process.exitCode = await main(process.argv.slice(2));';

/** A process of this bench's own. */
export interface Child {
  readonly pid: number;
  /** Ends it and waits until it is gone. */
  end(signal: NodeJS.Signals): Promise<void>;
}

/** Starts Node with some arguments. Its faults are shown, what it says is not. */
export function startNode(args: readonly string[]): Child {
  const child = spawn(process.execPath, [...args], { stdio: ['ignore', 'ignore', 'inherit'] });
  return asChild(child);
}

/** The server's command line, without the launcher. */
export function serverArguments(args: readonly string[]): readonly string[] {
  return ['--input-type=module', '--eval', RUN, SERVE, ...args];
}

/** Starts the server on a folder and a port and waits until it answers. */
export async function startServer(folder: string, port: number, more: readonly string[] = []): Promise<Child> {
  const child = startNode(serverArguments(['--data', folder, '--port', String(port), ...more]));
  await answering(port, child);
  listensAt(port, folder);
  return child;
}

/** Waits until GET /health is 200. */
export async function answering(port: number, child: Child): Promise<void> {
  const endMs = performance.now() + START_TIMEOUT_MS;
  while (!(await isHealthy(port))) {
    if (performance.now() > endMs) {
      await child.end('SIGKILL');
      throw new Error(`no server answered on port ${port} within ${START_TIMEOUT_MS} ms`);
    }
    await new Promise((resolve) => setTimeout(resolve, ASK_EVERY_MS));
  }
}

/** How long a Node program takes from its start to its end, in ms. It must end with 0. */
export async function timeToEnd(args: readonly string[]): Promise<number> {
  const startMs = performance.now();
  const child = spawn(process.execPath, [...args], { stdio: ['ignore', 'ignore', 'inherit'] });
  const [code] = (await once(child, 'exit')) as [number | null];
  assert(code === 0, `the floor's program ended with ${code}`);
  return performance.now() - startMs;
}

function isHealthy(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const request = get({ port, host: '127.0.0.1', path: '/health', agent: false }, (answer) => {
      answer.resume();
      resolve(answer.statusCode === 200);
    });
    request.on('error', () => resolve(false));
  });
}

function asChild(child: ChildProcess): Child {
  const { pid } = child;
  assert(pid !== undefined, 'the process was started');
  const gone = once(child, 'exit');
  const atExit = (): void => void child.kill('SIGKILL');
  process.on('exit', atExit);
  return {
    pid,
    end: async (signal) => {
      child.kill(signal);
      await gone;
      process.off('exit', atExit);
    },
  };
}
