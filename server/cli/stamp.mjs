import { readFileSync } from 'node:fs';

/**
 * What a stamp file says, `undefined` where there is none or where a crash left half of one: the work is then done again.
 *
 * @param {string} file
 * @returns {Record<string, string> | undefined}
 */
export function readStamp(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch (error) {
    if (error instanceof SyntaxError || /** @type {NodeJS.ErrnoException} */ (error).code === 'ENOENT') return undefined;
    throw error;
  }
}
