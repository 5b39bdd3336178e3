import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT } from './project-files.ts';
import { scratchFolder } from './scratch-folder.ts';

const SETTINGS = ['.oxlintrc.json', 'shared/tsconfig.base.json', 'shared/tsconfig.json', 'server/tsconfig.json', 'display/tsconfig.json'];

/** A fault to be found, and the rule that finds it. */
const FAULTS: readonly { path: string; text: string; rule: string }[] = [
  { path: 'shared/clock.ts', text: 'export const nowMs = (): number => Date.now();', rule: 'no-restricted-properties' },
  { path: 'shared/dice.ts', text: 'export const dice = (): number => Math.random();', rule: 'no-restricted-properties' },
  { path: 'shared/wait.ts', text: 'export const wait = (): unknown => setTimeout(() => {}, 1);', rule: 'no-restricted-globals' },
  { path: 'shared/reads.ts', text: "export { readFileSync } from 'node:fs';", rule: 'no-restricted-imports' },
  { path: 'shared/upward.ts', text: "export { floor } from '../server/floor.ts';", rule: 'no-restricted-imports' },
  { path: 'server/across.ts', text: "export { wall } from '../display/wall.ts';", rule: 'no-restricted-imports' },
  { path: 'display/across.ts', text: "export { floor } from '../server/floor.ts';", rule: 'no-restricted-imports' },
  { path: 'server/default.ts', text: 'const floor = 1;\nexport default floor;', rule: 'no-default-export' },
  {
    path: 'server/floating.ts',
    text: 'async function later(): Promise<void> {}\nexport function go(): void {\n  later();\n}',
    rule: 'no-floating-promises',
  },
  {
    path: 'server/misused.ts',
    text: 'export const go = (all: number[]): void => all.forEach(async () => Promise.resolve());',
    rule: 'no-misused-promises',
  },
  {
    path: 'shared/switch.ts',
    text: "export function word(speed: 'first' | 'second'): number {\n  switch (speed) {\n    case 'first':\n      return 1;\n  }\n  return 2;\n}",
    rule: 'switch-exhaustiveness-check',
  },
  { path: 'server/any.ts', text: "export const go = (): void => JSON.parse('{}').go();", rule: 'no-unsafe-call' },
  { path: 'tests/skipped.test.ts', text: "import { test } from 'vitest';\ntest.skip('x', () => {});", rule: 'no-disabled-tests' },
  { path: 'tests/only.test.ts', text: "import { test } from 'vitest';\ntest.only('x', () => {});", rule: 'no-focused-tests' },
];

/** A linter that finds nothing may only have been told to look at nothing: that it finds what it should is tested. */
describe('the linter, with the settings of this project', () => {
  test('finds each fault by its rule, and none in code that has none', () => {
    const folder = scratchFolder();
    const put = (path: string, text: string): void => {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), text);
    };
    for (const { path, text } of FAULTS) put(path, `${text}\n`);
    put('shared/plain.ts', 'export const plain = (speed: number): number => speed + 1;\n');
    for (const path of SETTINGS) copyFileSync(join(ROOT, path), join(folder, path));
    symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'));

    const oxlint = join(ROOT, 'node_modules/.bin/oxlint');
    const { status, stdout } = spawnSync(oxlint, ['--type-aware', '--deny-warnings', '--format=unix'], { cwd: folder, encoding: 'utf8' });
    const lines = stdout.split('\n');
    const found = FAULTS.filter(({ path, rule }) => lines.some((line) => line.startsWith(`${path}:`) && line.includes(`(${rule})`)));
    expect(found.map(({ path }) => path)).toEqual(FAULTS.map(({ path }) => path));
    expect(lines.filter((line) => line.includes('plain.ts'))).toEqual([]);
    expect(status).not.toBe(0);
  });
});
