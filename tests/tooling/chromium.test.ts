import { describe, expect, test } from 'vitest';
import { chromiumCandidates, findChromium, planForMissingChromium } from '../../server/cli/chromium.mjs';

const ENV = { PATH: '/first:/second' };

function runsFrom(...paths: readonly string[]): (path: string) => Promise<boolean> {
  return (path) => Promise.resolve(paths.includes(path));
}

describe('the search for Chromium', () => {
  test('takes the first on the PATH that runs, chromium before its other names', async () => {
    expect(await findChromium(ENV, runsFrom('/first/google-chrome', '/second/chromium'))).toBe('/second/chromium');
    expect(await findChromium(ENV, runsFrom('/first/google-chrome'))).toBe('/first/google-chrome');
  });

  test('looks at the usual places after the PATH', async () => {
    expect(await findChromium({ PATH: '' }, runsFrom('/usr/bin/chromium'))).toBe('/usr/bin/chromium');
    expect(await findChromium(ENV, runsFrom('/usr/bin/chromium', '/first/chromium'))).toBe('/first/chromium');
  });

  test('takes the one in CHROMIUM_PATH and no other', async () => {
    const env = { ...ENV, CHROMIUM_PATH: '/my/chromium' };
    expect(await findChromium(env, runsFrom('/my/chromium', '/first/chromium'))).toBe('/my/chromium');
    expect(await findChromium(env, runsFrom('/first/chromium'))).toBeUndefined();
  });

  test('passes over an empty CHROMIUM_PATH and empty folders in the PATH', () => {
    expect(chromiumCandidates({ CHROMIUM_PATH: '', PATH: ':/first:' })[0]).toBe('/first/chromium');
    expect(chromiumCandidates({ PATH: ':' }).every((path) => path.startsWith('/'))).toBe(true);
  });

  test('finds nothing where nothing runs', async () => {
    expect(await findChromium(ENV, runsFrom())).toBeUndefined();
  });
});

describe('a missing Chromium', () => {
  test('is installed by root where there is apt-get', () => {
    expect(planForMissingChromium({ named: '', uid: 0, hasAptGet: true })).toEqual({ kind: 'install' });
  });

  test('makes anybody else fail with the command to run', () => {
    const plan = planForMissingChromium({ named: '', uid: 1000, hasAptGet: true });
    expect(plan).toEqual({ kind: 'fail', message: expect.stringContaining('sudo sh -c') as unknown });
  });

  test('makes the tests fail where there is no apt-get, root or not', () => {
    for (const uid of [0, 1000, undefined]) {
      const plan = planForMissingChromium({ named: '', uid, hasAptGet: false });
      expect(plan).toEqual({ kind: 'fail', message: expect.stringContaining('CHROMIUM_PATH=') as unknown });
    }
  });

  test('at CHROMIUM_PATH is told, and no other one installed', () => {
    const plan = planForMissingChromium({ named: '/my/chromium', uid: 0, hasAptGet: true });
    expect(plan).toEqual({ kind: 'fail', message: 'CHROMIUM_PATH is /my/chromium, and no Chromium runs from there.' });
  });
});
