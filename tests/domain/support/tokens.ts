import { readFileSync } from 'node:fs';
import { assert } from '../../../shared/result.ts';

/** The looks of the pages. */
export const LOOKS = ['day', 'night'] as const;
export type Look = (typeof LOOKS)[number];

const TEXT = readFileSync(new URL('../../../display/tokens.css', import.meta.url), 'utf8').replace(/\/\*[\s\S]*?\*\//g, '');

/** The tokens of a look by their names without dashes, as `display/tokens.css` has them: by night, the night's over the day's. */
export function tokensOf(look: Look): ReadonlyMap<string, string> {
  const day = declarations(':root');
  return look === 'day' ? day : new Map([...day, ...declarations(":root[data-look='night']")]);
}

/** A token's value, that of another where it stands for one. Throws where there is none of that name. */
export function token(look: Look, name: string): string {
  const value = tokensOf(look).get(name);
  assert(value !== undefined, `tokens.css has no --${name}`);
  const other = /^var\(--([a-z0-9-]+)\)$/.exec(value)?.[1];
  return other === undefined ? value : token(look, other);
}

function declarations(selector: string): ReadonlyMap<string, string> {
  const start = TEXT.indexOf(`${selector} {`);
  assert(start >= 0, `tokens.css has no ${selector}`);
  const block = TEXT.slice(start, TEXT.indexOf('}', start));
  return new Map([...block.matchAll(/--([a-z0-9-]+):\s*([^;]+);/g)].map(([, name = '', value = '']) => [name, value.trim()]));
}
