/**
 * Advance widths of Atkinson Hyperlegible Next at weight 700 with tabular figures, in thousandths of an em, measured in
 * Chromium; a browser test holds them against the font. Lighter weights are narrower, so that no text is wider than
 * said here.
 */
const ADVANCES: Readonly<Record<number, string>> = {
  210: "'",
  254: '|¦',
  259: 'j',
  272: '.:;,’',
  294: '·`´¹¸',
  303: 'iìíîı!¡',
  313: ' \u00a0ï',
  318: 'l',
  344: '()[]',
  376: 'frt-',
  407: '{}"ª°_²º³¯',
  438: 'IÌÍÎÏ•/\\¨',
  510: 'zscç¢*–',
  540: 'yýÿvx×~¿¶',
  555: 'Laàáâãäåk?§',
  563: 'Jeèéêë',
  571: 'Fuùúûühnñ<>',
  577: 'oòóôõöøµ',
  597: 'gbdpþqEÈÉÊË+÷−^ð¤',
  621: 'TSZß$=±¬',
  632: 'PÞ0123456789',
  650: 'BVRYÝ£¥«»',
  678: 'CÇKAÀÁÂÃÄÅ',
  701: 'XUÙÚÛÜDH',
  718: 'NÑGÐ',
  747: 'wOÒÓÔÕÖØ&',
  781: 'Q#@…©®',
  882: 'Mmæ—¼½',
  890: 'W',
  1024: 'œÆ%¾Œ',
};

/** For what the table does not have. */
const OTHER_ADVANCE = 1000;

const advanceOf = new Map<string, number>();
for (const [advance, characters] of Object.entries(ADVANCES)) {
  for (const character of characters) advanceOf.set(character, Number(advance));
}

/** An upper bound of a text's width at a font size, in px. Pure, so that a layout can be decided without a browser. */
export function textWidthPx(text: string, sizePx: number): number {
  let thousandths = 0;
  for (const character of text) thousandths += advanceOf.get(character) ?? OTHER_ADVANCE;
  return (thousandths / 1000) * sizePx;
}

/** Of a text that is cut at a word, at least this share of what would fit is kept; a longer word is cut within. */
const LEAST_KEPT = 0.55;

/** The text, or as much of it as fits with an ellipsis behind, cut at a word where that leaves enough of it. */
export function fittingText(text: string, sizePx: number, widthPx: number): string {
  if (textWidthPx(text, sizePx) <= widthPx) return text;
  const characters = Array.from(text);
  let count = characters.length;
  while (count > 1 && textWidthPx(`${characters.slice(0, count).join('')}…`, sizePx) > widthPx) count -= 1;
  const kept = characters.slice(0, count).join('');
  return `${characters[count] === ' ' ? kept.trimEnd() : cutAtWord(kept)}…`;
}

function cutAtWord(kept: string): string {
  const space = kept.lastIndexOf(' ');
  if (space < kept.length * LEAST_KEPT) return kept.trimEnd();
  return kept.slice(0, space).replace(/[\s,;:·+×–-]+$/u, '');
}
