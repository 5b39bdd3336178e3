import { open } from 'node:fs/promises';

/** A file onto the disk, or a folder's own entries: a rename in it then outlives a power cut, or a stick that is pulled. */
export async function flush(path: string): Promise<void> {
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
