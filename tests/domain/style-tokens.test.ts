import { readdirSync, readFileSync } from 'node:fs';
import { colorsNamed } from 'culori';
import { describe, expect, test } from 'vitest';
import { LOOKS, token, tokensOf } from './support/tokens.ts';

const DISPLAY = new URL('../../display/', import.meta.url);
const TOKENS = 'tokens.css';

/** A declaration of a style sheet, with where it stands. */
interface Declaration {
  readonly path: string;
  readonly property: string;
  readonly value: string;
}

const paths = readdirSync(DISPLAY, { recursive: true, encoding: 'utf8' }).filter((path) => /\.(ts|css|html)$/.test(path));
const read = (path: string): string => readFileSync(new URL(path, DISPLAY), 'utf8');

/** The style sheets of a file: a `.css` file as it is, of an element's file what stands in its css templates. */
function sheetsOf(path: string, text: string): readonly string[] {
  if (path.endsWith('.css')) return [text];
  return [...text.matchAll(/\bcss`([^`]*)`/g)].map(([, sheet = '']) => sheet);
}

function declarationsIn(path: string, sheet: string): readonly Declaration[] {
  const bare = sheet.replace(/\/\*[\s\S]*?\*\//g, '').replace(/@import[^;]*;/g, '');
  return [...bare.matchAll(/(?<=[{;}]|^)\s*([a-z0-9-]+)\s*:\s*([^;{}]+);/g)].map(([, property = '', value = '']) => ({
    path,
    property,
    value: value.trim(),
  }));
}

function declarationsOf(path: string): readonly Declaration[] {
  return sheetsOf(path, read(path)).flatMap((sheet) => declarationsIn(path, sheet));
}

const COLOUR_FUNCTION = /#[0-9a-f]{3,8}\b|\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch|color|color-mix|light-dark)\(/i;
/** CSS Color 4's named colours, as culori lists them; words of our own tokens (`--paper`) do not count. */
const NAMED = new RegExp(`(?<![-\\w])(?:${Object.keys(colorsNamed).join('|')})(?![-\\w])`, 'i');
/** What takes a colour: names that are also words of layout stand elsewhere. */
const TAKES_COLOUR = /color|background|border|outline|shadow|fill|stroke|decoration|caret|column-rule/;

function isOwnColour({ property, value }: Declaration): boolean {
  return COLOUR_FUNCTION.test(value) || (TAKES_COLOUR.test(property) && NAMED.test(value));
}

function isOwnWeight({ property, value }: Declaration): boolean {
  if (property === 'font-weight') return !/^(?:inherit|var\(--weight-[a-z]+\))$/.test(value);
  return property === 'font' && value !== 'inherit';
}

const said = ({ path, property, value }: Declaration): string => `${path} ${property}: ${value}`;
const all = paths.filter((path) => path !== TOKENS).flatMap(declarationsOf);

describe('L3 colours and weights come from the tokens', () => {
  test('the scan finds what it is for', () => {
    const sheet =
      'a { color: #123; background: rgb(1 2 3); border: 1px solid Tomato; font-weight: 600; font: 12px serif; fill: var(--red-ish); }';
    const found = declarationsIn('x', sheet);
    expect(found.filter(isOwnColour).map(({ property }) => property)).toEqual(['color', 'background', 'border']);
    expect(found.filter(isOwnWeight).map(({ property }) => property)).toEqual(['font-weight', 'font']);
    expect(sheetsOf('a.ts', 'static styles = css`b { margin: 0; }`;')).toEqual(['b { margin: 0; }']);
    expect(all.length).toBeGreaterThan(500);
  });

  test('no page and no element has a colour of its own', () => {
    expect(all.filter(isOwnColour).map(said)).toEqual([]);
  });

  test('no page and no element has a weight of its own', () => {
    expect(all.filter(isOwnWeight).map(said)).toEqual([]);
  });

  test('sizes of text are the tokens of phone and desk, the computed ones of the wall, or shares of those', () => {
    const sizes = all.filter(({ property }) => property === 'font-size');
    expect(sizes.length).toBeGreaterThan(80);
    expect(
      sizes
        .filter(({ value }) => /\d(?:px|pt|rem|cm|mm|vw|vh)\b|(?<![-\w])(?:x*-?small|medium|x*-?large|smaller|larger)(?![-\w])/.test(value))
        .map(said),
    ).toEqual([]);
  });

  test('what is asked for by name is a token, or set by the page that computes it', () => {
    const asked = new Set(all.flatMap(({ value }) => [...value.matchAll(/var\(--([a-z0-9-]+)/g)].map(([, name = '']) => name)));
    const computed = new Set([
      ...paths
        .filter((path) => path.endsWith('.ts'))
        .flatMap((path) => [...read(path).matchAll(/'--([a-z0-9-]+)'/g)].map(([, name = '']) => name)),
      ...all.filter(({ property }) => property.startsWith('--')).map(({ property }) => property.slice(2)),
    ]);
    const tokens = tokensOf('day');
    expect([...asked].filter((name) => !tokens.has(name) && !computed.has(name))).toEqual([]);
  });

  test('every token is asked for', () => {
    const text = paths.map(read).join('\n');
    expect([...tokensOf('day').keys()].filter((name) => !text.includes(`var(--${name})`))).toEqual([]);
  });

  test("a phone's frame is of the paper's colour", () => {
    const frames = paths
      .filter((path) => path.endsWith('.html'))
      .flatMap((path) => [...read(path).matchAll(/theme-color" content="([^"]+)"/g)]);
    expect(frames.length).toBeGreaterThan(0);
    for (const [, colour] of frames) expect(colour).toBe(token('day', 'paper'));
  });

  test('the night gives every colour that it changes a name that the day has', () => {
    expect([...tokensOf('night').keys()].filter((name) => !tokensOf('day').has(name))).toEqual([]);
    expect(LOOKS.map((look) => token(look, 'paper'))).toHaveLength(new Set(LOOKS.map((look) => token(look, 'paper'))).size);
  });
});
