import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The repository's root folder, whatever folder the command was called from. */
export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Everything that is built, and everything that can be thrown away. */
export const BUILD = join(ROOT, '.build');

/** Where the installed packages are. */
export const MODULES = join(ROOT, 'node_modules');

/** An installed tool's executable, e.g. `tsc`. */
export function tool(/** @type {string} */ name) {
  return join(MODULES, '.bin', name);
}
