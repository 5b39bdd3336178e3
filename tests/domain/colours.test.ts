import {
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  converter,
  formatHex,
  wcagContrast,
  type Rgb,
} from 'culori';
import { describe, expect, test } from 'vitest';
import { assert } from '../../shared/result.ts';
import { LOOKS, token, type Look } from './support/tokens.ts';

/** WCAG 2.2, 1.4.6 (contrast, enhanced) and 1.4.11 (non-text contrast). */
const TEXT_CONTRAST = 7;
const SYMBOL_CONTRAST = 3;
/** Our own measure; two colours 15 apart are not taken for one another at a glance. */
const LEAST_DIFFERENCE = 15;

const ROLES = ['running', 'call', 'late', 'lost'] as const;
const PAIRS = ROLES.flatMap((a, index) => ROLES.slice(index + 1).map((b) => [a, b] as const));

/** What is written on what: every pair that an element uses. */
const TEXTS: readonly (readonly [text: string, ground: string])[] = [
  ...['paper', 'field', 'floor', 'pressed', 'chosen'].flatMap((ground) => [['ink', ground] as const, ['ink-soft', ground] as const]),
  ['ink', 'rest'],
  ['ink', 'line'],
  ['paper', 'ink'],
  ['paper', 'block'],
  ['on-role', 'late'],
];

const SYMBOLS: readonly (readonly [symbol: string, ground: string])[] = [
  ...['running', 'call', 'lost', 'block', 'ink', 'line-strong'].map((symbol) => [symbol, 'paper'] as const),
  // The focus ring beside what is written into, and on the drawing of the kitchen.
  ['call', 'field'],
  ['call', 'floor'],
  ['call', 'pressed'],
  ['lost', 'pressed'],
  // The cry on the octagon.
  ['paper', 'lost'],
];

/** WCAG 2.2's relative luminance, written out from its definition. */
function luminance(hex: string): number {
  const { r, g, b } = rgbOf(hex);
  const [red = 0, green = 0, blue = 0] = [r, g, b].map((share) => (share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(a: string, b: string): number {
  const [x, y] = [luminance(a), luminance(b)];
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
}

function rgbOf(hex: string): Rgb {
  const rgb = converter('rgb')(hex);
  assert(rgb !== undefined, `${hex} is no colour`);
  return rgb;
}

type Eye = (color: Rgb) => Rgb;

const clamped = ({ r, g, b }: Rgb): Rgb => {
  const within = (share: number): number => Math.min(1, Math.max(0, share));
  return { mode: 'rgb', r: within(r), g: within(g), b: within(b) };
};

/** The library puts its matrices on the values as a screen takes them; the same matrices on linear light are the other reading of the paper. */
function onLight(eye: Eye): Eye {
  return (color) => {
    const { r, g, b } = converter('lrgb')(color);
    return converter('rgb')({ ...clamped(eye({ mode: 'rgb', r, g, b })), mode: 'lrgb' });
  };
}

/** Machado, Oliveira and Fernandes 2009, severity 1.0, by culori. */
const DEFICIENCIES = {
  protan: filterDeficiencyProt(1),
  deutan: filterDeficiencyDeuter(1),
  tritan: filterDeficiencyTrit(1),
} as const satisfies Record<string, Eye>;

const EYES: readonly (readonly [string, Eye])[] = [
  ['everybody', (color) => color],
  ...Object.entries(DEFICIENCIES).flatMap(([name, eye]): (readonly [string, Eye])[] => [
    [name, eye],
    [`${name} (on light)`, onLight(eye)],
  ]),
];

describe('L1 the library that measures colours is right', () => {
  // Pairs of Lab values with their ΔE00, from the test data of Sharma, Wu and Dalal 2005 (from memory).
  test.each([
    [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
    [[50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
    [[50, 2.8361, -74.02], [50, 0, -82.7485], 3.4412],
    [[50, -1.3802, -84.2814], [50, 0, -82.7485], 1],
    [[50, 0, 0], [50, -1, 2], 2.3669],
    [[50, 2.49, -0.001], [50, -2.49, 0.0009], 7.1792],
    [[50, 2.5, 0], [73, 25, -18], 27.1492],
    [[50, 2.5, 0], [61, -5, 29], 22.8977],
    [[50, 2.5, 0], [56, -27, -3], 31.903],
    [[50, 2.5, 0], [58, 24, 15], 19.4535],
    [[6.7747, -0.2908, -2.4247], [5.8714, -0.0985, -2.2286], 0.6377],
  ] as const)('%j and %j are %f apart', ([l1, a1, b1], [l2, a2, b2], expected) => {
    const difference = differenceCiede2000()({ mode: 'lab65', l: l1, a: a1, b: b1 }, { mode: 'lab65', l: l2, a: a2, b: b2 });
    expect(difference).toBeCloseTo(expected, 4);
  });

  // The matrices of the paper's tables for severity 1.0 (from memory), row by row.
  test.each([
    ['protan', [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998]],
    ['deutan', [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881]],
    ['tritan', [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039]],
  ] as const)('%s sees as the published matrix says', (name, [rr, rg, rb, gr, gg, gb, br, bg, bb]) => {
    const [r, g, b] = [0.25, 0.5, 0.75];
    const seen = DEFICIENCIES[name]({ mode: 'rgb', r, g, b });
    expect(seen.r).toBeCloseTo(rr * r + rg * g + rb * b, 5);
    expect(seen.g).toBeCloseTo(gr * r + gg * g + gb * b, 5);
    expect(seen.b).toBeCloseTo(br * r + bg * g + bb * b, 5);
  });

  test('its contrast is that of the definition', () => {
    // WCAG's own ends of the scale.
    expect(contrast('#ffffff', '#000000')).toBeCloseTo(21, 10);
    expect(contrast('#777777', '#777777')).toBe(1);
    for (const look of LOOKS) {
      for (const [a, b] of TEXTS)
        expect(contrast(token(look, a), token(look, b))).toBeCloseTo(wcagContrast(token(look, a), token(look, b)), 2);
    }
  });
});

describe.each(LOOKS)('L2 by %s', (look: Look) => {
  test.each(TEXTS)('--%s is legible on --%s', (text, ground) => {
    expect(contrast(token(look, text), token(look, ground))).toBeGreaterThanOrEqual(TEXT_CONTRAST);
  });

  test.each(SYMBOLS)('--%s stands out from --%s', (symbol, ground) => {
    expect(contrast(token(look, symbol), token(look, ground))).toBeGreaterThanOrEqual(SYMBOL_CONTRAST);
  });

  test('what is late stands out from the paper by itself or by its outline', () => {
    const byItself = contrast(token(look, 'late'), token(look, 'paper'));
    const byOutline = contrast(token(look, 'late-outline'), token(look, 'paper'));
    expect(Math.max(byItself, byOutline)).toBeGreaterThanOrEqual(TEXT_CONTRAST);
    if (byItself < SYMBOL_CONTRAST)
      expect(contrast(token(look, 'late-outline'), token(look, 'late'))).toBeGreaterThanOrEqual(SYMBOL_CONTRAST);
  });

  test.each(EYES)('each role stands out from the paper to %s, by itself or by its outline', (_name, eye) => {
    const seen = (name: string): string => formatHex(eye(rgbOf(token(look, name))));
    const faint = ROLES.map((role) => {
      const lines = role === 'late' || role === 'lost' ? [role, `${role}-outline`] : [role];
      return { role, contrast: Math.max(...lines.map((line) => contrast(seen(line), seen('paper')))) };
    }).filter((found) => found.contrast < SYMBOL_CONTRAST);
    expect(faint).toEqual([]);
  });

  test.each(EYES)('the four roles are told apart by %s', (_name, eye) => {
    const difference = differenceCiede2000();
    const close = PAIRS.map(([a, b]) => ({
      pair: `${a}, ${b}`,
      apart: difference(eye(rgbOf(token(look, a))), eye(rgbOf(token(look, b)))),
    })).filter(({ apart }) => apart < LEAST_DIFFERENCE);
    expect(close).toEqual([]);
  });
});
