import { mkdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { judgeBuild, listSources, stampOf } from '../../server/cli/sources.mjs';
import { scratchFolder } from './scratch-folder.ts';

const WHAT = {
  folders: [
    { path: 'shared', endings: ['.ts'] },
    { path: 'display', except: ['display/pictures'] },
  ],
  files: ['package.json', 'absent.json'],
};

function project(): string {
  const root = scratchFolder();
  mkdirSync(join(root, 'shared/plan'), { recursive: true });
  mkdirSync(join(root, 'display/node_modules'), { recursive: true });
  mkdirSync(join(root, 'display/pictures'));
  for (const path of ['shared/a.ts', 'shared/plan/b.ts', 'shared/notes.md', 'display/page.html', 'package.json']) {
    writeFileSync(join(root, path), path);
    utimesSync(join(root, path), 1_000, 1_000);
  }
  return root;
}

function stamp(root: string): ReturnType<typeof stampOf> {
  return stampOf(listSources(root, WHAT));
}

describe('the sources of a build', () => {
  test('are the files with the endings asked for, below the folders named, and the single files that are there', () => {
    const paths = listSources(project(), WHAT).map((file) => file.path);
    expect(paths).toEqual(['display/page.html', 'package.json', 'shared/a.ts', 'shared/plan/b.ts']);
  });

  test("are neither hidden files, editors' drafts, packages nor what is excepted", () => {
    const root = project();
    const before = stamp(root);
    for (const path of ['display/.page.html.swp', 'display/page.html~', 'display/node_modules/x.js', 'display/pictures/wall.png'])
      writeFileSync(join(root, path), '');
    expect(stamp(root)).toEqual(before);
  });
});

describe('a build', () => {
  test('is made from an empty folder where there is no stamp, or half of one', () => {
    const now = stamp(project());
    expect(judgeBuild(undefined, now)).toBe('wipe');
    expect(judgeBuild({}, now)).toBe('wipe');
  });

  test('is fresh while nothing changes', () => {
    const root = project();
    expect(judgeBuild(stamp(root), stamp(root))).toBe('fresh');
  });

  test('is stale after an edit', () => {
    const root = project();
    const built = stamp(root);
    writeFileSync(join(root, 'shared/a.ts'), 'changed');
    expect(judgeBuild(built, stamp(root))).toBe('stale');
  });

  test('is stale when an older version of a file of the same size is put back', () => {
    const root = project();
    const built = stamp(root);
    utimesSync(join(root, 'shared/a.ts'), 500, 500);
    expect(judgeBuild(built, stamp(root))).toBe('stale');
  });

  test('is made from an empty folder after a file is gone, new or has another name', () => {
    const root = project();
    const built = stamp(root);
    writeFileSync(join(root, 'shared/new.ts'), '');
    expect(judgeBuild(built, stamp(root))).toBe('wipe');
    rmSync(join(root, 'shared/new.ts'));
    expect(judgeBuild(built, stamp(root))).toBe('fresh');
    rmSync(join(root, 'shared/plan/b.ts'));
    expect(judgeBuild(built, stamp(root))).toBe('wipe');
  });
});
