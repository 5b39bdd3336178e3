import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { assert } from '../../shared/result.ts';

/** The repository's root; this file runs from .build/js/tests/bench. */
export const ROOT = fileURLToPath(new URL('../../../../', import.meta.url));
export const SERVE = fileURLToPath(new URL('../../server/cli/serve.js', import.meta.url));
export const FLOOR_SERVER = fileURLToPath(new URL('floor-server.js', import.meta.url));
export const DEMO = join(ROOT, 'fixtures/harbour.json');
export const HARBOUR = join(ROOT, 'fixtures/harbour-plain.json');

/** Runs something with an empty folder, which goes with it. */
export async function inTemporaryFolder<Value>(run: (folder: string) => Promise<Value>): Promise<Value> {
  const folder = mkdtempSync(join(tmpdir(), 'ovenward-bench-'));
  try {
    return await run(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A port of the loopback address that nobody uses at this moment. */
export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      assert(typeof address === 'object' && address !== null, 'a port was given');
      probe.close(() => resolve(address.port));
    });
  });
}
