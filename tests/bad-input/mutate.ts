import type { Random } from '../simulation/support/random.ts';

/** Values that have been somebody's undoing, for whatever field. */
const NASTY: readonly unknown[] = [
  null,
  true,
  -1,
  0,
  -0,
  1e308,
  -1e308,
  Number.MAX_SAFE_INTEGER + 2,
  0.1,
  '',
  ' ',
  '\u0000',
  '\ud800',
  '‮',
  '🥖'.repeat(200),
  "'; DROP TABLE events; --",
  '=1+1',
  '../../etc/passwd',
  '__proto__',
  'constructor',
  'x'.repeat(5000),
  'NaN',
  '2026-02-30',
  '9999999999999999999999',
  [],
  {},
  [[[[[[[[]]]]]]]],
  { toString: 1 },
  { __proto__: null, length: -1 },
];

/** A copy of something that JSON can say, spoilt in one place or a few. */
export function mutated(value: unknown, random: Random): unknown {
  let spoilt = value;
  for (let times = random.pick([1, 1, 1, 2, 5]); times > 0; times -= 1) spoilt = spoiltOnce(spoilt, random);
  return spoilt;
}

function spoiltOnce(value: unknown, random: Random): unknown {
  if (typeof value !== 'object' || value === null || random.chance(0.15)) return spoiltWhole(value, random);
  if (Array.isArray(value)) return spoiltList(value, random);
  const keys = Object.keys(value);
  if (keys.length === 0 || random.chance(0.1))
    return { ...value, [random.pick(['extra', 'type', 'constructor', '', '🥐'])]: random.pick(NASTY) };
  const key = random.pick(keys);
  const record = value as Readonly<Record<string, unknown>>;
  if (random.chance(0.15)) return Object.fromEntries(Object.entries(record).filter(([own]) => own !== key));
  if (random.chance(0.1))
    return Object.fromEntries(
      Object.entries(record).map(([own, part]) => [own === key ? `${own}${random.pick(['', ' ', 's'])}x` : own, part]),
    );
  return { ...record, [key]: spoiltOnce(record[key], random) };
}

function spoiltList(list: readonly unknown[], random: Random): unknown {
  if (list.length === 0 || random.chance(0.2)) return [...list, random.pick(NASTY)];
  const at = random.whole(0, list.length - 1);
  if (random.chance(0.15)) return list.filter((_, index) => index !== at);
  if (random.chance(0.1)) return [...list, ...Array<unknown>(random.whole(1, 300)).fill(list[at])];
  return list.map((part, index) => (index === at ? spoiltOnce(part, random) : part));
}

function spoiltWhole(value: unknown, random: Random): unknown {
  if (typeof value === 'number' && random.chance(0.5)) return random.pick([value + 0.5, -value, value * 1e9, value + 1, String(value)]);
  if (typeof value === 'string' && value !== '' && random.chance(0.5)) {
    const at = random.whole(0, value.length - 1);
    return random.pick([
      value.slice(at),
      value.slice(0, at) + value.slice(at + 1),
      value + value,
      value.toUpperCase(),
      `${value} `,
      value.slice(0, at) + random.pick(['\u0000', '"', '\\', 'é', '%00', '/']) + value.slice(at),
    ]);
  }
  return random.pick(NASTY);
}

/** A text that is no longer quite what it was. */
export function mutatedText(text: string, random: Random): string {
  const at = random.whole(0, text.length);
  const to = Math.min(text.length, at + random.whole(0, 40));
  return random.pick([
    text.slice(0, at),
    text.slice(0, at) + text.slice(to),
    text.slice(0, at) + text.slice(at, to).repeat(3) + text.slice(to),
    text.slice(0, at) + String.fromCharCode(random.whole(0, 0xffff)) + text.slice(at),
    `${text}${text}`,
    `${'['.repeat(random.whole(1, 2000))}${text}`,
    text.replaceAll('"', "'"),
    Buffer.from(random.bytes(random.whole(0, 200))).toString('latin1'),
  ]);
}
