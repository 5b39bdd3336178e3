import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { onTestFinished } from 'vitest';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));

/** Makes a program for plain Node of a TypeScript file beside this one; within the project, where it finds the packages. */
export async function builtProgram(name: string): Promise<{ file: string; remove: () => void }> {
  mkdirSync(join(ROOT, '.build'), { recursive: true });
  const outDir = mkdtempSync(join(ROOT, '.build', 'test-program-'));
  const entry = fileURLToPath(new URL(`${name}.ts`, import.meta.url));
  await build({
    root: ROOT,
    configFile: false,
    logLevel: 'error',
    build: { ssr: entry, outDir, target: 'node20', rollupOptions: { output: { entryFileNames: 'program.mjs' } } },
  });
  return { file: join(outDir, 'program.mjs'), remove: () => rmSync(outDir, { recursive: true, force: true }) };
}

/** A second process and what it says. It does not outlive the test. */
export class Child {
  readonly #process: ChildProcess;
  readonly #lines: AsyncIterator<string>;
  readonly #gone: Promise<unknown>;

  constructor(file: string, args: readonly string[]) {
    const child = spawn(process.execPath, ['--expose-gc', file, ...args], { stdio: ['ignore', 'pipe', 'inherit'] });
    this.#process = child;
    this.#gone = once(child, 'exit');
    this.#lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
    onTestFinished(() => this.kill());
  }

  get pid(): number | undefined {
    return this.#process.pid;
  }

  /** The next line that it says, or null once there is no more. */
  async line(): Promise<string | null> {
    const next: IteratorResult<string, unknown> = await this.#lines.next();
    return next.done === true ? null : next.value;
  }

  /** Ends it as a power cut would: without a word. Waits until it is gone. */
  async kill(): Promise<void> {
    this.#process.kill('SIGKILL');
    await this.#gone;
  }
}
