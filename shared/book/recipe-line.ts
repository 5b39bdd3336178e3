import { accepted, refused, type Result } from '../result.ts';
import { folded } from './folded.ts';
import { inFigures } from './recipe-text.ts';

/** Why a line of a recipe is left to be read by eye. */
export type LineFault = 'noWeight' | 'range' | 'unclearNumber' | 'noName';

/** What a line says: grams of something. */
export interface RecipeLine {
  readonly g: number;
  readonly name: string;
}

/** Grams in a unit. The avoirdupois pound of 1959 is exactly 453.59237 g, an ounce a sixteenth of it. */
const GRAMS: readonly (readonly [RegExp, number])[] = [
  [/^(?:kg|kgs|kilos?|kilo(?:gram|gramm|gramme)s?)$/, 1000],
  [/^(?:g|gr|gms?|gram|grams|gramm|gramme|grammes)$/, 1],
  [/^mg$/, 0.001],
  [/^(?:lbs?|pounds?)$/, 453.592_37],
  [/^(?:oz|ounces?|unzen?|onces?)$/, 28.349_523_125],
];
/** Grams of water in a measure of volume: one a millilitre, as common practice has it. */
const WATER_GRAMS: readonly (readonly [RegExp, number])[] = [
  [/^(?:ml|milli(?:liter|litre)s?)$/, 1],
  [/^(?:cl|centi(?:liter|litre)s?)$/, 10],
  [/^(?:dl|deci(?:liter|litre)s?)$/, 100],
  [/^(?:l|liter|liters|litre|litres)$/, 1000],
];
const WATER =
  /^(?:(?:cold|cool|warm|lukewarm|tepid|hot|boiling|iced?|tap|filtered|kalt\w*|warm\w*|lauwarm\w*|kochend\w*) )*(?:water|wasser|eau)(?: (?:froide|tiede|chaude|bouillante))?$/;
const NUMBER = String.raw`\d+(?:[.,]\d+)?(?: \d+\/\d+)?|\d+\/\d+`;
const AMOUNT = new RegExp(String.raw`(?<![\d.,/])(${NUMBER})(?: ?(?:-|–|—|to|bis|à) ?(${NUMBER}))? ?(\p{L}+)\.?(?!\p{L})`, 'gu');
/** Household measures and what stands around a name without being of it. */
const AROUND = new RegExp(
  String.raw`^(?:(?:${NUMBER}) ?)?(?:(?:cups?|tbsps?|tablespoons?|tsps?|teaspoons?|el|tl|tassen?|tasses?|cuilleres?(?: a (?:soupe|cafe))?|heaped|level|about|ca|approx|circa|environ)\.? )*`,
  'iu',
);
const OF = /^(?:of|de|d'|d’|du|des) ?/i;

interface Amount {
  readonly at: number;
  readonly end: number;
  readonly g: number | null;
  readonly waterG: number | null;
  readonly isRange: boolean;
  readonly isUnclear: boolean;
  readonly isPounds: boolean;
  readonly isMetric: boolean;
}

/**
 * A line such as `500 g bread flour`, `1 1/2 lb flour`, `4 cups (480 g) flour`, `flour, 500 g`. Only weights are read, and
 * volumes of water; what is measured otherwise is not guessed at.
 */
export function readLine(text: string): Result<RecipeLine, LineFault> {
  const line = inFigures(text);
  const outside = line.replace(/\([^)]*\)/g, (inner) => ' '.repeat(inner.length));
  const name = nameIn(outside, amountsIn(outside));
  const isWater = WATER.test(folded(name));
  const found = [outside, line]
    .map((within) => amountsIn(within).filter((amount) => amount.g !== null || isWater))
    .find(({ length }) => length > 0);
  if (found === undefined) return refused('noWeight');
  const chosen = found.find(({ isMetric }) => isMetric) ?? found[0];
  if (chosen === undefined) return refused('noWeight');
  if (chosen.isRange) return refused('range');
  if (chosen.isUnclear) return refused('unclearNumber');
  if (name === '') return refused('noName');
  const g = (chosen.g ?? chosen.waterG ?? 0) + ouncesAfter(chosen, found, line);
  return accepted({ g: Math.round(g * 100) / 100, name });
}

/** `1 lb 4 oz` is one weight. */
function ouncesAfter(chosen: Amount, found: readonly Amount[], line: string): number {
  if (!chosen.isPounds) return 0;
  const next = found.find(({ at, isPounds, isMetric }) => at > chosen.at && !isPounds && !isMetric);
  return next !== undefined && /^[ ,.]*(?:and )?$/.test(line.slice(chosen.end, next.at)) ? (next.g ?? 0) : 0;
}

function amountsIn(text: string): readonly Amount[] {
  return [...text.matchAll(AMOUNT)].flatMap((match) => {
    const [whole, number = '', upTo, letters = ''] = match;
    const unit = folded(letters);
    const grams = gramsIn(GRAMS, unit);
    const waterGrams = gramsIn(WATER_GRAMS, unit);
    if (grams === null && waterGrams === null) return [];
    const value = valueOf(number);
    return {
      at: match.index,
      end: match.index + whole.length,
      g: grams === null ? null : value * grams,
      waterG: waterGrams === null ? null : value * waterGrams,
      isRange: upTo !== undefined,
      // A thousand in one country, one and three decimals in another.
      isUnclear: /^[1-9]\d{0,2}[.,]\d{3}$/.test(number) && (grams === 1 || waterGrams === 1),
      isPounds: /^(?:lbs?|pounds?)$/.test(unit),
      isMetric: !/^(?:lbs?|pounds?|oz|ounces?|unzen?|onces?)$/.test(unit),
    };
  });
}

function gramsIn(units: readonly (readonly [RegExp, number])[], unit: string): number | null {
  return units.find(([names]) => names.test(unit))?.[1] ?? null;
}

/** `1 1/2` is one and a half. */
function valueOf(number: string): number {
  return number
    .replace(',', '.')
    .split(' ')
    .reduce((sum, part) => {
      const [over = '', under] = part.split('/');
      return sum + Number(over) / (under === undefined ? 1 : Number(under));
    }, 0);
}

/** What is left of a line without its weights and what stands in brackets, up to the first comma. */
function nameIn(outside: string, amounts: readonly Amount[]): string {
  let rest = outside;
  for (const { at, end } of amounts) rest = `${rest.slice(0, at)}${' '.repeat(end - at)}${rest.slice(end)}`;
  const pieces = rest.split(/[,;:]/).map((piece) => piece.replace(/\s+/g, ' ').trim());
  const piece =
    pieces
      .map((text) => text.replace(/^[\s/|·+–—-]+|[\s/|·+–—-]+$/g, '').replace(/^(?:or|oder|ou|and|und|et) /i, ''))
      .find((text) => text !== '') ?? '';
  return piece
    .replace(AROUND, '')
    .replace(OF, '')
    .replace(/^[*•·–—-]+/, '')
    .trim();
}
