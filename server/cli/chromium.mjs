import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { ROOT } from './places.mjs';
import { runTool } from './run-tool.mjs';
import { LaunchFault, say } from './say.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** Where the browser also stands when it is not on the PATH. */
const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/lib/chromium/chromium',
  '/usr/local/bin/chromium',
  '/snap/bin/chromium',
  '/opt/google/chrome/chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

const DEBIAN_INSTALL = 'apt-get update && apt-get install -y --no-install-recommends chromium';

/**
 * The paths at which Chromium may be, best first. A CHROMIUM_PATH is the only candidate: who names a browser wants that one.
 *
 * @param {NodeJS.ProcessEnv} env
 * @returns {string[]}
 */
export function chromiumCandidates(env) {
  const named = env['CHROMIUM_PATH'] ?? '';
  if (named !== '') return [named];
  const folders = (env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '');
  const onPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...new Set([...onPath, ...USUAL_PLACES])];
}

/**
 * The first candidate that runs.
 *
 * @param {NodeJS.ProcessEnv} env
 * @param {(path: string) => Promise<boolean>} runs whether the program at that path is there and starts
 * @returns {Promise<string | undefined>}
 */
export async function findChromium(env, runs) {
  for (const path of chromiumCandidates(env)) {
    if (await runs(path)) return path;
  }
  return undefined;
}

/**
 * What to do where no Chromium was found: install Debian's where that is allowed, else fail with what to run.
 *
 * @param {{ named: string, uid: number | undefined, hasAptGet: boolean }} here `named` is CHROMIUM_PATH, '' if not set
 * @returns {{ kind: 'install' } | { kind: 'fail', message: string }}
 */
export function planForMissingChromium({ named, uid, hasAptGet }) {
  if (named !== '') return { kind: 'fail', message: `CHROMIUM_PATH is ${named}, and no Chromium runs from there.` };
  if (hasAptGet && uid === 0) return { kind: 'install' };
  if (hasAptGet) return { kind: 'fail', message: `The browser tests need Chromium. Run: sudo sh -c '${DEBIAN_INSTALL}'` };
  return { kind: 'fail', message: 'The browser tests need Chromium. Install it, then run: CHROMIUM_PATH=/path/to/chromium npm test' };
}

/**
 * The path of a Chromium that runs, installed if need be. Throws a LaunchFault with the one command to run where there is none.
 *
 * @returns {Promise<string>}
 */
export async function ensureChromium() {
  const found = await findChromium(process.env, startsAsChromium);
  if (found !== undefined) return found;
  const hasAptGet = existsSync('/usr/bin/apt-get');
  const plan = planForMissingChromium({ named: process.env['CHROMIUM_PATH'] ?? '', uid: process.getuid?.(), hasAptGet });
  if (plan.kind === 'fail') throw new LaunchFault(plan.message);
  say('installing Chromium for the browser tests (apt-get, a minute or two)…');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const { exitCode, output } = await runTool('sh', ['-c', DEBIAN_INSTALL], { cwd: ROOT, env });
  const installed = await findChromium(process.env, startsAsChromium);
  if (installed !== undefined) return installed;
  const reason = exitCode === 0 ? 'apt-get installed a package named chromium, but no Chromium runs.' : 'Chromium could not be installed.';
  throw new LaunchFault(`${reason} Install it by hand, then run: CHROMIUM_PATH=/path/to/chromium npm test`, output.trimEnd());
}

/** Asks for the version: a name alone may be a stub that only says where to get the real one. */
async function startsAsChromium(/** @type {string} */ path) {
  if (!existsSync(path)) return false;
  const { exitCode, output } = await runTool(path, ['--version'], { cwd: ROOT });
  return exitCode === 0 && /\bChrom(e|ium)\b.* \d+\./.test(output);
}
