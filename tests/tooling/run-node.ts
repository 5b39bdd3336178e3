import { spawn } from 'node:child_process';

/** How a child process ended and what it printed. */
export type Ended = { readonly exitCode: number | null; readonly stdout: string; readonly stderr: string };

/**
 * Runs Node to its end.
 *
 * @param args Node's arguments
 * @param onStdout told everything printed on stdout so far, each time there is more; it may signal the process by its id
 */
export function runNode(args: readonly string[], onStdout?: (soFar: string, pid: number) => void): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    let stdout = '';
    let stderr = '';
    child.stdout.on('data', (chunk: Buffer) => {
      stdout += chunk.toString('utf8');
      if (child.pid !== undefined) onStdout?.(stdout, child.pid);
    });
    child.stderr.on('data', (chunk: Buffer) => {
      stderr += chunk.toString('utf8');
    });
    child.on('error', reject);
    child.on('close', (exitCode) => resolve({ exitCode, stdout, stderr }));
  });
}

/** The address of one of the launcher's modules, to be imported by a program given to Node as text. */
export function launcherModule(name: string): string {
  return new URL(`../../server/cli/${name}`, import.meta.url).href;
}
