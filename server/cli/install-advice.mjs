/** What a C++ module needs to be compiled, in the words of Debian's packages. */
const COMPILER = 'a C++ compiler, make and Python 3 (Debian: apt-get install build-essential python3)';
const HEADERS =
  "Node's headers (fetched from nodejs.org; where that cannot be reached, set npm_config_nodedir to the folder that holds include/node)";

/** What node-gyp says when it could not fetch Node's headers. */
const HEADERS_MISSING = /install got an error, rolling back install|related to network connectivity/;

/** Traces of a compile of better-sqlite3 that failed. */
const COMPILE_FAILED = /gyp ERR!|node-gyp rebuild/;

/**
 * One line that says what to do after `npm ci` failed.
 *
 * @param {string} output what npm printed
 */
export function adviceForFailedInstall(output) {
  if (!COMPILE_FAILED.test(output)) return 'npm ci failed: see above.';
  if (HEADERS_MISSING.test(output)) return `better-sqlite3 could not be compiled: it needs ${HEADERS}.`;
  return `better-sqlite3 could not be compiled: it needs ${COMPILER}, and ${HEADERS}.`;
}
