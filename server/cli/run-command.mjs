import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureBuilt } from './build.mjs';
import { ensureChromium } from './chromium.mjs';
import { ensureInstalled } from './install.mjs';
import { BUILD, ROOT } from './places.mjs';
import { LaunchFault, say, sayNothing } from './say.mjs';

/**
 * A command: the module whose `main(args)` it is, the parts that have to be built before, whether it drives a browser, and whether
 * its streams are its own: then nobody is told of an installation or a build unless it fails.
 *
 * @typedef {{ module: string, parts: readonly ('server' | 'pages' | 'tests')[], needsChromium?: boolean, ownsStreams?: boolean }} Command
 * @type {ReadonlyMap<string, Command>}
 */
const COMMANDS = new Map([
  ['serve', { module: join(BUILD, 'js/server/cli/serve.js'), parts: ['server', 'pages'] }],
  ['verify', { module: join(BUILD, 'js/server/cli/verify.js'), parts: ['server'] }],
  ['restore', { module: join(BUILD, 'js/server/cli/restore.js'), parts: ['server'] }],
  ['rebuild', { module: join(BUILD, 'js/server/cli/rebuild.js'), parts: ['server'] }],
  ['archive', { module: join(BUILD, 'js/server/cli/archive.js'), parts: ['server'] }],
  ['invent', { module: join(BUILD, 'js/server/cli/invent.js'), parts: ['server'], ownsStreams: true }],
  ['calc', { module: join(BUILD, 'js/server/cli/calc.js'), parts: ['server'], ownsStreams: true }],
  ['plan-bench', { module: join(BUILD, 'js/server/cli/plan-bench.js'), parts: ['server'], ownsStreams: true }],
  // The tests build what they need themselves, as stages whose faults are reported like any other.
  ['test', { module: join(ROOT, 'server/cli/test.mjs'), parts: [] }],
  ['bench', { module: join(BUILD, 'js/tests/bench/main.js'), parts: ['server', 'pages', 'tests'] }],
  ['bad-input', { module: join(BUILD, 'js/tests/bad-input/main.js'), parts: ['server', 'pages', 'tests'], ownsStreams: true }],
  ['faults', { module: join(BUILD, 'js/tests/faults/main.js'), parts: ['server', 'tests'], ownsStreams: true }],
  ['pictures', { module: join(BUILD, 'js/tests/pictures/main.js'), parts: ['server', 'pages', 'tests'], needsChromium: true }],
]);

/** Exit code of a command line that cannot be understood, as shells use it. */
const USAGE = 2;

/**
 * Installs and builds what the named command needs, then runs it in this process.
 *
 * @param {readonly string[]} args the command's name and its arguments
 * @returns {Promise<number>} the exit code
 */
export async function runCommand([name = '', ...args]) {
  const command = COMMANDS.get(name);
  if (command === undefined) {
    say(`There is no command "${name}". The commands are: ${[...COMMANDS.keys()].join(', ')}.`);
    return USAGE;
  }
  try {
    const tell = command.ownsStreams === true ? sayNothing : say;
    await ensureInstalled(tell);
    await ensureBuilt(command.parts, tell);
    if (command.needsChromium === true) process.env['CHROMIUM_PATH'] = await ensureChromium();
    if (!existsSync(command.module)) throw new LaunchFault(`The command "${name}" has no program: ${command.module} is missing.`);
  } catch (fault) {
    if (!(fault instanceof LaunchFault)) throw fault;
    if (fault.details !== '') say(fault.details);
    say(fault.message);
    return 1;
  }
  const { main } = await import(pathToFileURL(command.module).href);
  return main(args);
}
