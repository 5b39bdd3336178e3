import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';

const PAGES = fileURLToPath(new URL('../../.build/pages', import.meta.url));
/** kB as the format of the trade writes it: a thousand bytes. */
const MOST_BYTES = 150_000;
/** The formula book is written at a desk, on the house's own cable: it may take longer, and has forms that no phone carries. */
const MOST_DESK_BYTES = 175_000;
const AT_A_DESK: ReadonlySet<string> = new Set(['formulas/index.html']);

/** Every page that the build made, by its path. */
function builtPages(): string[] {
  return readdirSync(PAGES, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.html'))
    .sort();
}

/** Of each page every language is built, and a browser loads one. */
const LANGUAGES = ['en', 'de', 'fr'];
const IN_A_LANGUAGE = new RegExp(`/assets/(${LANGUAGES.join('|')})/`);

/**
 * The page itself, and what its browser loads before anything shows: scripts with all that they import, style sheets, pictures. Not the
 * fonts, and nothing of other languages than its own.
 */
function filesOf(page: string, language: string): Set<string> {
  const files = new Set<string>();
  const waiting = [join(PAGES, page)];
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (files.has(path) || (IN_A_LANGUAGE.exec(path)?.[1] ?? language) !== language) continue;
    files.add(path);
    waiting.push(...namedIn(path));
  }
  return files;
}

function namedIn(path: string): string[] {
  const text = readFileSync(path, 'utf8');
  const inTree = (name: string): string => (name.startsWith('/') ? join(PAGES, name) : resolve(dirname(path), name));
  if (path.endsWith('.html')) return [...text.matchAll(/(?:src|href)="([^"]+\.(?:js|css|svg))"/g)].map(([, name]) => inTree(name ?? ''));
  // Static and dynamic imports alike: what is loaded later counts too.
  if (path.endsWith('.js'))
    return [...text.matchAll(/(?:from|import|import\()\s*["'`](\.{1,2}\/[^"'`]+\.js)["'`]/g)].map(([, name]) => inTree(name ?? ''));
  return [];
}

describe('B pages stay light', () => {
  const each = builtPages().flatMap((page) => LANGUAGES.map((language) => ({ page, language })));
  test.each(each)('$page in $language takes no more over the wire than it may, fonts apart', ({ page, language }) => {
    const files = [...filesOf(page, language)];
    expect(files.some((path) => path.includes(`/assets/${language}/`))).toBe(true);
    const weights = files.map((path) => [path.slice(PAGES.length), gzipSync(readFileSync(path)).length] as const);
    const total = weights.reduce((sum, [, bytes]) => sum + bytes, 0);
    expect(total, weights.map(([path, bytes]) => `${bytes} ${path}`).join('\n')).toBeLessThanOrEqual(
      AT_A_DESK.has(page) ? MOST_DESK_BYTES : MOST_BYTES,
    );
  });

  test('every script of the build belongs to a page, so that none escaped the count', () => {
    const counted = new Set(each.flatMap(({ page, language }) => [...filesOf(page, language)]));
    const scripts = readdirSync(join(PAGES, 'assets'), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.js'))
      .map((name) => join(PAGES, 'assets', name));
    expect(scripts.filter((path) => !counted.has(path))).toEqual([]);
  });
});
