import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { adviceForFailedInstall } from './install-advice.mjs';
import { withLauncherLock } from './launcher-lock.mjs';
import { headersFolder } from './node-headers.mjs';
import { MODULES, ROOT } from './places.mjs';
import { runTool } from './run-tool.mjs';
import { LaunchFault, say } from './say.mjs';
import { readStamp } from './stamp.mjs';

const LOCK_FILE = join(ROOT, 'package-lock.json');
const INSTALLED = join(MODULES, '.package-lock.json');
const STAMP = join(MODULES, '.ovenward-installed.json');

/** How many of npm's last lines are shown when it fails. */
const TAIL_LINES = 40;

/**
 * What an installation was made from. Besides the lock file, whose content counts and not its age, it is the binary interface of Node:
 * better-sqlite3 is compiled against it.
 *
 * @typedef {{ lock: string, modules: string, platform: string, arch: string }} InstallKey
 */

/**
 * The key of what would be installed now.
 *
 * @param {string} lockText the content of package-lock.json
 * @returns {InstallKey}
 */
export function installKey(lockText) {
  const lock = createHash('sha256').update(lockText).digest('hex');
  return { lock, modules: process.versions.modules, platform: process.platform, arch: process.arch };
}

/** Whether two keys say the same. */
export function sameKey(/** @type {Partial<InstallKey> | undefined} */ a, /** @type {InstallKey} */ b) {
  return a !== undefined && a.lock === b.lock && a.modules === b.modules && a.platform === b.platform && a.arch === b.arch;
}

/**
 * Whether what npm says it has installed is what the lock file asks for, dev packages included. Optional packages may be missing: most
 * are for another system.
 *
 * @param {string} lockText package-lock.json
 * @param {string} installedText node_modules/.package-lock.json, npm's own list of what is there
 */
export function installedMatchesLock(lockText, installedText) {
  const wanted = JSON.parse(lockText).packages ?? {};
  const installed = JSON.parse(installedText).packages ?? {};
  return Object.entries(wanted).every(([path, entry]) => {
    if (path === '') return true;
    const there = installed[path];
    if (there === undefined) return entry.optional === true || entry.devOptional === true;
    return there.version === entry.version && there.integrity === entry.integrity;
  });
}

/**
 * Installs what the lock file asks for, unless it is there. Throws a LaunchFault where that fails.
 *
 * @param {(line: string) => void} [tell] told what is being waited for
 */
export async function ensureInstalled(tell = say) {
  if (isStamped()) return;
  await withLauncherLock(async () => {
    // Somebody else may have installed while this process waited.
    if (isStamped()) return;
    const key = installKey(readFileSync(LOCK_FILE, 'utf8'));
    if (wasInstalledByHand() && (await nativeModuleLoads()).exitCode === 0) {
      writeFileSync(STAMP, JSON.stringify(key));
      return;
    }
    tell('installing packages (a minute or two on a first start)…');
    await install();
    writeFileSync(STAMP, JSON.stringify(key));
  }, tell);
}

function isStamped() {
  return existsSync(INSTALLED) && sameKey(readStamp(STAMP), installKey(readFileSync(LOCK_FILE, 'utf8')));
}

function wasInstalledByHand() {
  return existsSync(INSTALLED) && installedMatchesLock(readFileSync(LOCK_FILE, 'utf8'), readFileSync(INSTALLED, 'utf8'));
}

async function install() {
  // --include=dev outranks NODE_ENV=production and omit=dev; --loglevel outranks the silence of `npm run -s` around us, which would
  // hide why an install failed.
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=warn'];
  const npm = npmProgram();
  const { exitCode, output } = await runTool(npm.file, [...npm.args, ...args], { cwd: ROOT, env: installEnvironment() });
  if (exitCode !== 0) throw new LaunchFault(adviceForFailedInstall(output), tail(output));
  const loaded = await nativeModuleLoads();
  if (loaded.exitCode !== 0) {
    const reason = 'The packages were installed, but better-sqlite3 does not load: were its install scripts allowed to run?';
    throw new LaunchFault(`${reason} Try: npm rebuild better-sqlite3`, tail(loaded.output));
  }
}

/** Our own environment, with Node's headers for node-gyp where they are at hand and nobody has named others. */
function installEnvironment() {
  const folder = headersFolder(process.execPath, process.versions.node);
  return folder === undefined ? process.env : { npm_config_nodedir: folder, ...process.env };
}

/** The npm that started us, run by the same Node; else the one on the PATH. */
function npmProgram() {
  const script = process.env['npm_execpath'] ?? '';
  return basename(script) === 'npm-cli.js' ? { file: process.execPath, args: [script] } : { file: 'npm', args: [] };
}

/** Tries better-sqlite3 in a process of its own: a binary made for another Node may take the process down with it. */
function nativeModuleLoads() {
  const program = "new (require('better-sqlite3'))(':memory:').close()";
  return runTool(process.execPath, ['-e', program], { cwd: ROOT });
}

function tail(/** @type {string} */ output) {
  return output.trimEnd().split('\n').slice(-TAIL_LINES).join('\n');
}
