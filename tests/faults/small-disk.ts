import { spawnSync } from 'node:child_process';
import { rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Of the small disk; a round's journal, snapshot and backup take a few of it. */
const SIZE_MIB = 64;

/** A disk of its own that is small enough to be filled: a tmpfs, where this user may mount one. */
export class SmallDisk {
  readonly folder: string;
  readonly #filler: string;

  private constructor(folder: string) {
    this.folder = folder;
    this.#filler = join(folder, 'filler');
  }

  /** Null where mounting is not allowed here. */
  static mounted(folder: string): SmallDisk | null {
    const { status } = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${SIZE_MIB}m`, 'tmpfs', folder]);
    return status === 0 ? new SmallDisk(folder) : null;
  }

  /** Takes all room that is left, save so many bytes. */
  fill(leftBytes = 0): void {
    const { bavail, bsize } = statfsSync(this.folder);
    const bytes = Math.max(0, bavail * bsize - leftBytes);
    try {
      writeFileSync(this.#filler, Buffer.alloc(bytes));
    } catch (error) {
      // What fits is there: full is full.
      if (!(error instanceof Error && 'code' in error && error.code === 'ENOSPC')) throw error;
    }
  }

  /** Gives the room back. */
  free(): void {
    rmSync(this.#filler, { force: true });
  }

  unmount(): void {
    spawnSync('umount', [this.folder]);
  }
}
