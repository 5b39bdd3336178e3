import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { refusalSchema } from '../../shared/floor/refusals.ts';
import { CLOSE } from '../../shared/wire/protocol.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** The codes of the catalogue under a heading of DEVELOPERS.md: each row of its table begins with "| `code` |". */
function documented(heading: string): readonly string[] {
  const text = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
  const [, section] = text.split(`\n### ${heading}\n`);
  if (section === undefined) throw new Error(`DEVELOPERS.md has no heading "### ${heading}"`);
  const [ownRows = ''] = section.split(/\n#{1,3} /);
  return [...ownRows.matchAll(/^\| `([^`]+)` \|/gm)].map(([, code]) => code ?? '');
}

/** The members of a union of text literals, by its name, as they stand in a source file. */
function literalsOf(file: string, typeName: string): readonly string[] {
  const text = readFileSync(join(ROOT, file), 'utf8');
  const declaration = new RegExp(`export type ${typeName} =([^;]+);`).exec(text)?.[1] ?? '';
  return [...declaration.matchAll(/'(\w+)'/g)].map(([, code]) => code ?? '');
}

/** Every source file of the server. */
function serverSources(): string {
  return readdirSync(join(ROOT, 'server'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(join(ROOT, 'server', name), 'utf8'))
    .join('\n');
}

/** Every test. */
function testSources(): string {
  return readdirSync(join(ROOT, 'tests'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(join(ROOT, 'tests', name), 'utf8'))
    .join('\n');
}

const CATALOGUES: readonly (readonly [string, () => readonly string[]])[] = [
  ['Refusals', () => refusalSchema.options.map((option) => option.shape.code.value)],
  ['Problems', () => literalsOf('server/http/problem.ts', 'ProblemCode')],
  ['Opening faults', () => literalsOf('server/journal/open-error.ts', 'OpenErrorCode')],
  ['Close codes', () => Object.values(CLOSE).map(String)],
];

describe('the error catalogue of DEVELOPERS.md', () => {
  it.each(CATALOGUES)('H15 lists under "%s" every code that the code has, once, and no other', (heading, codes) => {
    const inCode = [...codes()].sort();
    expect(inCode.length).toBeGreaterThan(3);
    expect([...documented(heading)].sort()).toEqual(inCode);
  });

  it('H15 names for every item of the security standard rules whose tests there are', () => {
    const text = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
    const [, section = ''] = text.split('\n### OWASP ASVS 5.0.0, level 2\n');
    const rows = [...(section.split(/\n#{1,3} /)[0] ?? '').matchAll(/^\| (\d[^|]+) \|[^|]+\| ([^|]+) \|$/gm)];
    expect(rows.length).toBeGreaterThan(35);
    const titles = testSources();
    const missing = rows.flatMap(([, item = '', rules = '']) =>
      rules
        .split(', ')
        .filter((rule) => !new RegExp(`['"\`]${rule}(?![0-9])`).test(titles))
        .map((rule) => `${item}: ${rule}`),
    );
    expect(missing).toEqual([]);
  });

  it('H15 holds no problem and no opening fault that nothing in the server says', () => {
    const sources = serverSources();
    for (const code of literalsOf('server/http/problem.ts', 'ProblemCode'))
      expect(sources, code).toMatch(new RegExp(`sendProblem\\([^)]*'${code}'`));
    for (const code of literalsOf('server/journal/open-error.ts', 'OpenErrorCode'))
      expect(sources, code).toMatch(new RegExp(`new OpenError\\(\\s*'${code}'`));
    for (const name of Object.keys(CLOSE)) expect(sources, name).toContain(`CLOSE.${name}`);
  });
});
