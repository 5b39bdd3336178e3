/** Named characters that recipes are written with; numbers are read whatever they are. */
const NAMED: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: ' ',
  deg: '°',
  ndash: '–',
  mdash: '—',
  frac12: '½',
  frac14: '¼',
  frac34: '¾',
};
const MOST_CODE_POINT = 0x10_ff_ff;

/** A text of a recipe as it reads: marks and named characters of HTML resolved, spaces made one. Empty for what is no text. */
export function plainText(value: unknown): string {
  if (typeof value === 'number') return String(value);
  if (typeof value !== 'string') return '';
  return decoded(value.replace(/<(?:br|\/p|\/li|\/div)\b[^>]*>/gi, '\n').replace(/<[^>]*>/g, ''))
    .replace(/[^\S\n]+/g, ' ')
    .replace(/ ?\n[ \n]*/g, '\n')
    .trim();
}

/** A text on one line, with fractions in figures: `1½` reads `1 1/2`. */
export function inFigures(text: string): string {
  return text
    .replace(/[¼½¾⅐-⅞]/g, (fraction) => ` ${fraction.normalize('NFKD').replace('\u2044', '/')} `)
    .replace(/\u2044/g, '/')
    .replace(/\s+/g, ' ')
    .trim();
}

function decoded(text: string): string {
  return text.replace(
    /&(?:#x([0-9a-f]{1,6})|#(\d{1,7})|([a-z]+\d{0,2}));/gi,
    (whole, hex: string | undefined, decimal: string | undefined, name: string | undefined) => {
      if (name !== undefined) return NAMED[name.toLowerCase()] ?? whole;
      const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16);
      return code > 0 && code <= MOST_CODE_POINT ? String.fromCodePoint(code) : whole;
    },
  );
}
