import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { importsOf, layerFault } from './import-scan.ts';
import { ROOT, projectFiles } from './project-files.ts';

const CODE = /\.(ts|mts|mjs|js)$/;

function codeUnder(folder: string): readonly string[] {
  return projectFiles().filter((path) => path.startsWith(`${folder}/`) && CODE.test(path));
}

function read(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8');
}

describe('the scan of imports', () => {
  test('sees every form of them', () => {
    const text = `
      import { a } from './a.ts';
      import type { B } from "./b.ts";
      import {
        c,
      } from './c.ts';
      import './d.ts';
      export { e } from './e.ts';
      const f = await import('./f.ts');`;
    expect([...importsOf(text)].sort()).toEqual(['./a.ts', './b.ts', './c.ts', './d.ts', './e.ts', './f.ts']);
  });

  test.each([
    ['shared/floor/fold.ts', '../../server/journal.ts'],
    ['shared/floor/fold.ts', 'node:fs'],
    ['shared/floor/fold.ts', 'lit'],
    ['shared/result.ts', '../tests/x.ts'],
    ['server/live/session.ts', '../../display/clock.ts'],
    ['display/clock.ts', '../server/clock.ts'],
    ['display/wall/row.ts', '../../tests/x.ts'],
  ])('finds fault with %s importing %s', (path, imported) => {
    expect(layerFault(path, imported)).toContain(path);
  });

  test.each([
    ['shared/floor/fold.ts', '../result.ts'],
    ['shared/floor/fold.ts', 'zod'],
    ['server/live/session.ts', '../../shared/ids.ts'],
    ['server/live/session.ts', '../display-names.ts'],
    ['display/clock.ts', './server-link.ts'],
    ['tests/server/x.test.ts', '../../server/journal.ts'],
  ])('finds none with %s importing %s', (path, imported) => {
    expect(layerFault(path, imported)).toBe('');
  });
});

describe('the layers', () => {
  test.each(['shared', 'server', 'display'])('hold in %s', (layer) => {
    const imports = codeUnder(layer).flatMap((path) => importsOf(read(path)).map((imported) => ({ path, imported })));
    expect(imports.length).toBeGreaterThan(0);
    expect(imports.map(({ path, imported }) => layerFault(path, imported)).filter((fault) => fault !== '')).toEqual([]);
  });

  test('shared never asks what time it is', () => {
    const files = codeUnder('shared');
    expect(files.length).toBeGreaterThan(0);
    expect(files.filter((path) => /\bnew Date\(\s*\)|\bDate\.now\b|\bTemporal\.Now\b/.test(read(path)))).toEqual([]);
  });
});

describe('the repository', () => {
  test('SU1 pins every package to one exact version, says of each why it is there, and lets one alone run a script when it is installed', () => {
    const project = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as Record<string, Record<string, string | boolean>>;
    const guide = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
    const [, reasons = ''] = guide.split('### Why these packages');
    const packages = { ...project['dependencies'], ...project['devDependencies'] };
    expect(Object.entries(packages).filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(String(version)))).toEqual([]);
    // Types come with what they are the types of.
    const unexplained = Object.keys(packages).filter(
      (name) => !name.startsWith('@types/') && !(reasons.split('\n## ')[0] ?? '').includes(name),
    );
    expect(unexplained).toEqual([]);
    expect(project['allowScripts']).toEqual({ 'better-sqlite3': true });
  });

  test('holds at its top only what the project has agreed on', () => {
    const agreed = [
      'DEVELOPERS.md',
      'LICENSE',
      'README.md',
      'display',
      'fixtures',
      'package-lock.json',
      'package.json',
      'server',
      'shared',
      'tests',
    ];
    const allowed = new Set([...agreed, 'tsconfig.json']);
    const top = new Set(projectFiles().map((path) => path.split('/')[0] ?? ''));
    expect(top).toContain('package.json');
    expect([...top].filter((name) => !name.startsWith('.') && !allowed.has(name))).toEqual([]);
  });

  test('names no folder of the machine it was written on and no host that packages come from', () => {
    // Written in pieces, so that this file does not itself hold what it looks for.
    const workFolder = ['', 'work', ''].join('/');
    const briefFolder = ['', 'tmp', 'brief'].join('/');
    const registry = ['registry', 'packages', 'example'].join('.');
    const forbidden = new RegExp(`(?<![\\w.-])(${workFolder}|${briefFolder})|\\bregistry\\.[a-z0-9-]+\\.[a-z]{2,}`);
    expect([`cd ${workFolder}main`, `see ${briefFolder}`, `https://${registry}/x`].every((text) => forbidden.test(text))).toBe(true);
    expect(forbidden.test('server/work/plan.ts')).toBe(false);
    expect(projectFiles().filter((path) => forbidden.test(read(path)))).toEqual([]);
  });
});
