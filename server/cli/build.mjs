import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { withLauncherLock } from './launcher-lock.mjs';
import { BUILD, ROOT, tool } from './places.mjs';
import { runTool } from './run-tool.mjs';
import { LaunchFault, say } from './say.mjs';
import { readStamp } from './stamp.mjs';
import { judgeBuild, listSources, stampOf } from './sources.mjs';

const TYPESCRIPT = ['.ts', '.json'];
const SHARED = { path: 'shared', endings: TYPESCRIPT };
const SERVER = { path: 'server', endings: TYPESCRIPT };
// The pictures are made from the pages, not the other way round.
const DISPLAY = { path: 'display', except: ['display/pictures'] };
const SETTINGS = ['package.json', 'package-lock.json', 'tsconfig.json'];

/**
 * What can be built, each part with its own stamp in .build: from which files, into which folders, and by which tools.
 *
 * @typedef {{ sources: Parameters<typeof listSources>[1], output: string, run: () => Promise<void> }} Part
 * @type {Readonly<Record<'server' | 'pages' | 'tests', Part>>}
 */
const PARTS = {
  server: {
    sources: { folders: [SHARED, SERVER], files: SETTINGS },
    output: 'js/server',
    run: () => runOrFail('tsc', ['-b', 'server']),
  },
  pages: {
    sources: { folders: [SHARED, DISPLAY], files: SETTINGS },
    output: 'pages',
    // NODE_ENV chooses between the development and the production form of packages; what people start is always the latter.
    run: async () => {
      const build = ['build', '--config', 'display/vite.config.ts'];
      const environment = { ...process.env, NODE_ENV: 'production' };
      await runOrFail('vite', build, environment);
      // The records are built apart, into the same folder: see the settings.
      await runOrFail('vite', [...build, '--mode', 'records'], environment);
    },
  },
  // The programs of tests/ that commands run: benches and pictures. The tests themselves are run from their sources.
  tests: {
    sources: { folders: [SHARED, SERVER, { path: 'tests', endings: TYPESCRIPT }], files: SETTINGS },
    output: 'js/tests',
    run: () => runOrFail('tsc', ['-b', 'tests/tsconfig.programs.json']),
  },
};

/** @typedef {keyof typeof PARTS} PartName */

/**
 * Builds those of the parts whose sources are not the ones they were built from. Throws a LaunchFault where a tool fails.
 *
 * @param {readonly PartName[]} names
 * @param {(line: string) => void} [tell] told what is being waited for
 */
export async function ensureBuilt(names, tell = say) {
  if (staleParts(names).length === 0) return;
  await withLauncherLock(async () => {
    // Somebody else may have built while this process waited.
    const stale = staleParts(names);
    if (stale.length === 0) return;
    tell('building…');
    // tsc writes shared and server for both parts that need it: one after the other. The pages are vite's own and go beside it.
    await settleAll([buildInOrder(stale.filter((name) => name !== 'pages')), buildInOrder(stale.filter((name) => name === 'pages'))]);
  }, tell);
}

/**
 * The whole check of types: the projects of tsconfig.json, display and tests included, and this launcher's own.
 *
 * @returns {Promise<string>} what tsc said about faults, '' if there are none
 */
export function checkTypes() {
  return withLauncherLock(async () => {
    const { exitCode, output } = await runTool(tool('tsc'), ['-b', '.', 'server/cli'], { cwd: ROOT });
    if (exitCode === 0) return '';
    return output === '' ? `tsc ended with exit code ${exitCode}` : output;
  });
}

/** @param {readonly PartName[]} names */
function staleParts(names) {
  return names.filter((name) => judge(name).judgement !== 'fresh');
}

function judge(/** @type {PartName} */ name) {
  const part = PARTS[name];
  const now = stampOf(listSources(ROOT, part.sources));
  const built = existsSync(join(BUILD, part.output)) ? readStamp(stampFile(name)) : undefined;
  return { now, judgement: judgeBuild(built, now) };
}

/** @param {readonly PartName[]} names */
async function buildInOrder(names) {
  for (const name of names) await build(name);
}

async function build(/** @type {PartName} */ name) {
  // The stamp is of the sources as they were before: what is edited during the build is built the next time.
  const { now, judgement } = judge(name);
  rmSync(stampFile(name), { force: true });
  if (judgement === 'wipe') wipe(name);
  await PARTS[name].run();
  mkdirSync(BUILD, { recursive: true });
  writeFileSync(stampFile(name), JSON.stringify(now));
}

/** Removes a part's output; with that of tsc also its notes on what it has already written, or it would not write it again. */
function wipe(/** @type {PartName} */ name) {
  rmSync(join(BUILD, PARTS[name].output), { recursive: true, force: true });
  if (name === 'pages') return;
  rmSync(join(BUILD, 'js/shared'), { recursive: true, force: true });
  for (const project of ['shared', 'server', 'tests']) rmSync(join(BUILD, `js/${project}.tsbuildinfo`), { force: true });
}

function stampFile(/** @type {string} */ name) {
  return join(BUILD, `${name}.stamp.json`);
}

/** @param {string} name @param {readonly string[]} args @param {NodeJS.ProcessEnv} [env] */
async function runOrFail(name, args, env = process.env) {
  const { exitCode, output } = await runTool(tool(name), args, { cwd: ROOT, env });
  if (exitCode !== 0) throw new LaunchFault(`The build failed: ${name} ${args.join(' ')}`, output.trimEnd());
}

/** Waits for all, then throws the first fault: a tool that is still writing must not outlive the lock. */
async function settleAll(/** @type {readonly Promise<void>[]} */ promises) {
  for (const result of await Promise.allSettled(promises)) {
    if (result.status === 'rejected') throw result.reason;
  }
}
