import { posix } from 'node:path';

const FROM = /\b(?:import|export)\b[^'"`;]*?\bfrom\s*['"]([^'"]+)['"]/g;
const BARE = /\bimport\s*['"]([^'"]+)['"]/g;
const DYNAMIC = /\bimport\s*\(\s*['"]([^'"]+)['"]/g;

/** What a file imports, in the words of its import statements: static, for effect, and dynamic with a fixed name. */
export function importsOf(text: string): readonly string[] {
  return [FROM, BARE, DYNAMIC].flatMap((pattern) => [...text.matchAll(pattern)].map((match) => match[1] ?? ''));
}

/**
 * What is wrong with an import by the rule of the layers: shared imports zod and itself, server and display never each other, and
 * nobody but the tests imports the tests. '' where nothing is.
 *
 * @param path the importing file, from the repository's root
 * @param imported what it imports, as written
 */
export function layerFault(path: string, imported: string): string {
  const from = path.split('/')[0] ?? '';
  const isRelative = imported.startsWith('.');
  const target = isRelative ? posix.join(posix.dirname(path), imported) : imported;
  const to = isRelative ? (target.split('/')[0] ?? '') : '';
  if (from === 'shared' && (isRelative ? to !== 'shared' : imported !== 'zod'))
    return `${path} imports ${imported}: shared imports only zod and shared`;
  if (from === 'server' && (to === 'display' || to === 'tests')) return `${path} imports ${imported}: server imports shared, never ${to}`;
  if (from === 'display' && (to === 'server' || to === 'tests')) return `${path} imports ${imported}: display imports shared, never ${to}`;
  return '';
}
