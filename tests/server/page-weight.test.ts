import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';

const PAGES = fileURLToPath(new URL('../../.build/pages', import.meta.url));
/** kB as the format of the trade writes it: a thousand bytes. */
const MOST_BYTES = 152_000;
/** The formula book is written at a desk, on the house's own cable: it may take longer, and has forms that no phone carries. */
const MOST_DESK_BYTES = 175_000;
/** With all that a page asks for once it shows the floor: panels, pictures. Nobody waits for it, and it is there before a thumb wants it. */
const MOST_LATER_BYTES = 182_000;
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
 * fonts, and nothing of other languages than its own. `withLater`: what its scripts ask for later too.
 */
function filesOf(page: string, language: string, withLater: boolean): Set<string> {
  const html = join(PAGES, page);
  const files = new Set([html]);
  const first = namesIn(html, MARKUP);
  // The script of a page only picks its language, by a dynamic import: that is the page itself, not something for later.
  const waiting = first.flatMap((path) => [path, ...(path.endsWith('.js') ? namesIn(path, LATER) : [])]);
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (files.has(path) || (IN_A_LANGUAGE.exec(path)?.[1] ?? language) !== language) continue;
    files.add(path);
    if (!path.endsWith('.js')) continue;
    waiting.push(...namesIn(path, STATIC), ...(withLater ? namesIn(path, LATER) : []));
  }
  return files;
}

const MARKUP = /(?:src|href)="([^"]+\.(?:js|css|svg))"/g;
const STATIC = /(?:from|import)\s*["'`](\.{1,2}\/[^"'`]+\.js)["'`]/g;
const LATER = /import\(\s*["'`](\.{1,2}\/[^"'`]+\.js)["'`]/g;

/** What a file names, as paths. */
function namesIn(path: string, names: RegExp): string[] {
  const inTree = (name: string): string => (name.startsWith('/') ? join(PAGES, name) : resolve(dirname(path), name));
  return [...readFileSync(path, 'utf8').matchAll(names)].map(([, name]) => inTree(name ?? ''));
}

function weigh(files: ReadonlySet<string>): { readonly total: number; readonly list: string } {
  const weights = [...files].map((path) => [path.slice(PAGES.length), gzipSync(readFileSync(path)).length] as const);
  return {
    total: weights.reduce((sum, [, bytes]) => sum + bytes, 0),
    list: weights.map(([path, bytes]) => `${bytes} ${path}`).join('\n'),
  };
}

describe('B pages stay light', () => {
  const each = builtPages().flatMap((page) => LANGUAGES.map((language) => ({ page, language })));
  test.each(each)('$page in $language takes no more over the wire than it may, fonts apart', ({ page, language }) => {
    const files = filesOf(page, language, false);
    expect([...files].some((path) => path.includes(`/assets/${language}/`))).toBe(true);
    const first = weigh(files);
    expect(first.total, first.list).toBeLessThanOrEqual(AT_A_DESK.has(page) ? MOST_DESK_BYTES : MOST_BYTES);
    const whole = weigh(filesOf(page, language, true));
    expect(whole.total, whole.list).toBeLessThanOrEqual(MOST_LATER_BYTES);
  });

  test('what comes later is told from what comes first: a phone has some of it, and no page waits for it', () => {
    const [first, whole] = [false, true].map((withLater) => filesOf('phone/index.html', 'en', withLater));
    const later = [...(whole ?? [])].filter((path) => first?.has(path) === false);
    expect(later.some((path) => path.includes('/later-parts-'))).toBe(true);
  });

  test('every script of the build belongs to a page, so that none escaped the count', () => {
    const counted = new Set(each.flatMap(({ page, language }) => [...filesOf(page, language, true)]));
    const scripts = readdirSync(join(PAGES, 'assets'), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.js'))
      .map((name) => join(PAGES, 'assets', name));
    expect(scripts.filter((path) => !counted.has(path))).toEqual([]);
  });
});
