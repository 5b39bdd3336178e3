import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/**
 * The version that Node's headers state in node_version.h, e.g. `20.19.0`; '' where the text is something else.
 *
 * @param {string} headerText
 */
export function headerVersion(headerText) {
  const part = (/** @type {string} */ name) => new RegExp(`#define NODE_${name}_VERSION (\\d+)`).exec(headerText)?.[1];
  const parts = [part('MAJOR'), part('MINOR'), part('PATCH')];
  return parts.includes(undefined) ? '' : parts.join('.');
}

/**
 * The folder from which Node was installed, if the headers of this very version lie in it: better-sqlite3 then compiles without
 * fetching them. Node's own archives and most packages of it bring them along.
 *
 * @param {string} execPath Node's executable, with links resolved
 * @param {string} version Node's version, without the v
 * @returns {string | undefined}
 */
export function headersFolder(execPath, version) {
  const folder = dirname(dirname(execPath));
  try {
    return headerVersion(readFileSync(join(folder, 'include/node/node_version.h'), 'utf8')) === version ? folder : undefined;
  } catch (error) {
    const code = /** @type {NodeJS.ErrnoException} */ (error).code;
    if (code === 'ENOENT' || code === 'ENOTDIR' || code === 'EACCES') return undefined;
    throw error;
  }
}
