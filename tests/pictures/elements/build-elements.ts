import { writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { buildHarness } from '../../browser/harness/build-harness.ts';
import { serveFolder } from '../../browser/harness/serve-folder.ts';
import { stageScenes } from './stage-scenes.ts';

/** Builds the page of elements with what it shows, and serves it. `address` is the page's, to be given a query. */
export async function serveElements(): Promise<{ readonly address: string; close(): Promise<void> }> {
  const { folder, page } = await buildHarness('elements', 'tests/pictures/elements/index.html');
  await writeFile(join(folder, dirname(page), 'scenes.json'), JSON.stringify(stageScenes()));
  const { origin, close } = await serveFolder(folder);
  return { address: origin + page, close };
}
