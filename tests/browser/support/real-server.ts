import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { listensAt } from '../../support/let-in.ts';
import { INSECURE_HOST } from './insecure-host.ts';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));

/** The server as a user starts it, in a process of its own. */
export interface RealServer {
  readonly port: number;
  /** The code of its console; null where some device manages the kitchen. */
  readonly code: string | null;
  /** SIGKILL: the power goes. */
  kill(): Promise<void>;
  /** SIGINT: somebody presses Ctrl-C. Resolves with the exit code. */
  stop(): Promise<number | null>;
}

/**
 * Starts the server by its launcher and waits until it says where it listens. A folder without a journal gets the day with
 * doughs only, unless told otherwise; one that has a day goes on with it.
 */
export async function startServer(
  dataFolder: string,
  port: number,
  pace: number,
  bakehouse = 'fixtures/harbour-plain.json',
  more: readonly string[] = ['--here', '--name', INSECURE_HOST],
): Promise<RealServer> {
  const args = ['serve', '--data', dataFolder, '--port', String(port), '--pace', String(pace), ...more];
  if (!existsSync(join(dataFolder, 'journal.db'))) args.push('--bakehouse', bakehouse);
  const child = spawn(process.execPath, ['server/cli/launch.mjs', ...args], { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] });
  const { port: listening, code } = await whatItSays(child);
  listensAt(listening, dataFolder);
  return {
    port: listening,
    code,
    kill: async () => {
      const exited = once(child, 'exit');
      child.kill('SIGKILL');
      await exited;
    },
    stop: async () => {
      if (child.exitCode !== null || child.signalCode !== null) return child.exitCode;
      const exited = once(child, 'exit');
      child.kill('SIGINT');
      await exited;
      return child.exitCode;
    },
  };
}

function whatItSays(child: ChildProcess): Promise<{ readonly port: number; readonly code: string | null }> {
  return new Promise((resolve, reject) => {
    let said = '';
    const hear = (chunk: Buffer): void => {
      said += chunk.toString('utf8');
      const found = /^Wall\s+http:\/\/localhost:(\d+)\/wall$/m.exec(said);
      // Its folder is the last thing that it says.
      if (found?.[1] !== undefined && /^Data\s.*\n/m.test(said))
        resolve({ port: Number(found[1]), code: /^Code\s+(\S+)/m.exec(said)?.[1] ?? null });
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.once('exit', (code) => reject(new Error(`the server ended with ${String(code)} before it listened:\n${said}`)));
  });
}
