import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { adviceForFailedInstall } from '../../server/cli/install-advice.mjs';
import { installKey, installedMatchesLock, sameKey } from '../../server/cli/install.mjs';
import { headerVersion, headersFolder } from '../../server/cli/node-headers.mjs';
import { readStamp } from '../../server/cli/stamp.mjs';
import { scratchFolder } from './scratch-folder.ts';

type Entry = { version: string; integrity: string; optional?: boolean; dev?: boolean };

function lockText(packages: Record<string, Entry>): string {
  return JSON.stringify({ lockfileVersion: 3, packages: { '': { name: 'x' }, ...packages } });
}

const LEAVEN: Entry = { version: '1.0.0', integrity: 'sha512-a' };

describe('the key of an installation', () => {
  test('depends on the content of the lock file and on nothing else of it', () => {
    expect(sameKey(installKey('{"a":1}'), installKey('{"a":1}'))).toBe(true);
    expect(sameKey(installKey('{"a":1}'), installKey('{"a":2}'))).toBe(false);
  });

  test("depends on Node's binary interface, for which better-sqlite3 is compiled", () => {
    const key = installKey('{}');
    expect(sameKey({ ...key, modules: 'another' }, key)).toBe(false);
    expect(sameKey({ ...key, arch: 'another' }, key)).toBe(false);
  });

  test('is never that of a missing or half-written stamp', () => {
    const file = join(scratchFolder(), 'stamp.json');
    expect(sameKey(readStamp(file), installKey('{}'))).toBe(false);
    writeFileSync(file, '{"lock": "');
    expect(sameKey(readStamp(file), installKey('{}'))).toBe(false);
  });
});

describe('an installation made by hand', () => {
  test('is taken as it is where it holds what the lock file asks for', () => {
    const text = lockText({ 'node_modules/leaven': LEAVEN });
    expect(installedMatchesLock(text, text)).toBe(true);
  });

  test('is not taken without its dev packages', () => {
    const wanted = lockText({ 'node_modules/leaven': LEAVEN, 'node_modules/peel': { ...LEAVEN, dev: true } });
    expect(installedMatchesLock(wanted, lockText({ 'node_modules/leaven': LEAVEN }))).toBe(false);
  });

  test('is not taken with another version or another content of a package', () => {
    const wanted = lockText({ 'node_modules/leaven': LEAVEN });
    expect(installedMatchesLock(wanted, lockText({ 'node_modules/leaven': { ...LEAVEN, version: '1.0.1' } }))).toBe(false);
    expect(installedMatchesLock(wanted, lockText({ 'node_modules/leaven': { ...LEAVEN, integrity: 'sha512-b' } }))).toBe(false);
  });

  test('may lack what is optional: most of it is for another system', () => {
    const wanted = lockText({ 'node_modules/leaven': LEAVEN, 'node_modules/fan-linux': { ...LEAVEN, optional: true } });
    expect(installedMatchesLock(wanted, lockText({ 'node_modules/leaven': LEAVEN }))).toBe(true);
  });
});

describe('the advice after a failed install', () => {
  // Lines that npm 11.19 with node-gyp 12.4 printed on a machine without Python, and on one that could not reach nodejs.org.
  const WITHOUT_PYTHON = `npm error command sh -c prebuild-install || node-gyp rebuild --release
npm error gyp ERR! configure error
npm error gyp ERR! stack Error: Could not find any Python installation to use`;
  const WITHOUT_HEADERS = `npm error command sh -c prebuild-install || node-gyp rebuild --release
npm error gyp WARN install got an error, rolling back install
npm error gyp ERR! configure error
npm error gyp ERR! stack Error: This is most likely not a problem with node-gyp or the package itself and
npm error gyp ERR! stack is related to network connectivity. In most cases you are behind a proxy or have bad`;

  test('names the compiler where better-sqlite3 could not be compiled', () => {
    const advice = adviceForFailedInstall(WITHOUT_PYTHON);
    expect(advice).toContain('apt-get install build-essential python3');
    expect(advice).not.toContain('\n');
  });

  test("names Node's headers where those could not be fetched, and then not the compiler", () => {
    const advice = adviceForFailedInstall(WITHOUT_HEADERS);
    expect(advice).toContain('npm_config_nodedir');
    expect(advice).not.toContain('build-essential');
  });

  test('does not speak of compilers after any other failure', () => {
    expect(adviceForFailedInstall('npm error code ENOTFOUND')).toBe('npm ci failed: see above.');
  });
});

describe("Node's headers", () => {
  const HEADER = '#define NODE_MAJOR_VERSION 20\n#define NODE_MINOR_VERSION 19\n#define NODE_PATCH_VERSION 5\n';

  test('state their version', () => {
    expect(headerVersion(HEADER)).toBe('20.19.5');
    expect(headerVersion('#define SOMETHING_ELSE 1')).toBe('');
  });

  test('are used where they are those of this very Node', () => {
    const folder = scratchFolder();
    const node = join(folder, 'bin/node');
    expect(headersFolder(node, '20.19.5')).toBeUndefined();
    mkdirSync(join(folder, 'include/node'), { recursive: true });
    writeFileSync(join(folder, 'include/node/node_version.h'), HEADER);
    expect(headersFolder(node, '20.19.5')).toBe(folder);
    expect(headersFolder(node, '22.1.0')).toBeUndefined();
  });
});
