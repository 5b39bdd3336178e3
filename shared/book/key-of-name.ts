import { folded } from './folded.ts';

const KEY_CHARACTERS = 40;

/** A key made of a name, with a number behind where it is taken. `fallback` (a key) is for names without a Latin letter. */
export function keyOfName(name: string, fallback: string, taken: (key: string) => boolean): string {
  const made = folded(name)
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+/, '')
    .slice(0, KEY_CHARACTERS)
    .replace(/-+$/, '');
  const base = made === '' ? fallback : made;
  if (!taken(base)) return base;
  for (let number = 2; ; number += 1) {
    const numbered = `${base.slice(0, KEY_CHARACTERS - 1 - String(number).length)}-${number}`;
    if (!taken(numbered)) return numbered;
  }
}
