import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** An empty folder outside the project. Whoever asks removes it. */
export function temporaryFolder(): string {
  return mkdtempSync(join(tmpdir(), 'ovenward-'));
}

/** An empty folder that goes with the test that asked for it. */
export function folderForTest(): string {
  const folder = temporaryFolder();
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
