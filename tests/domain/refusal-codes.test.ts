import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { refusalSchema } from '../../shared/floor/refusals.ts';

const DECIDE = new URL('../../shared/floor/decide/', import.meta.url);
const HERE = new URL('./', import.meta.url);

/** Given by the server around the deciders: who may do what, and whether the journal could keep it. */
const BY_THE_SERVER = ['forbidden', 'notKept'];

function codesIn(folder: URL, pattern: RegExp, files = readdirSync(folder)): string[] {
  const text = files
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(new URL(name, folder), 'utf8'))
    .join('\n');
  return [...new Set([...text.matchAll(pattern)].map((match) => match[1] ?? ''))].sort();
}

const inTheShape = refusalSchema.options.map((option) => option.shape.code.value).sort();

describe('D25 every refusal has a code of its own, in the shape, given by a decider, and held by a test', () => {
  test('what the deciders give stands in the shape', () => {
    expect(codesIn(DECIDE, /code: '(\w+)'/g)).toEqual(inTheShape.filter((code) => !BY_THE_SERVER.includes(code)));
  });

  test('each of them is expected by a test here', () => {
    const tests = readdirSync(HERE).filter((name) => name.endsWith('.test.ts') && name !== 'refusal-codes.test.ts');
    expect(codesIn(HERE, /code: '(\w+)'/g, tests)).toEqual(
      expect.arrayContaining(inTheShape.filter((code) => !BY_THE_SERVER.includes(code))),
    );
  });
});
