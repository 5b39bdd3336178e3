import type { Formula, Product } from '../../shared/documents/formula.ts';
import type { Mixer } from '../../shared/documents/kitchen.ts';
import { fromG, toG } from '../../shared/trade/units.ts';
import { doughMeasure, numberField, plainMeasure, type Field, type Measure, type Units } from '../desk/field.ts';
import { loadText } from '../parts/weight-text.ts';
import { SIZE } from '../words/book.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { lineUnit } from './weight-typed.ts';

const MOST_G = 10_000_000;
const MOST_PIECES = 100_000;
const MOST_PIECE_G = 100_000;

/** A field for a whole weight of dough or of flour. */
export function wholeField(key: 'doughG' | 'flourG', units: Units): Field {
  return numberField(key, key === 'doughG' ? SIZE.doughWeight : SIZE.flourWeight, doughMeasure(units), 0, MOST_G, 'optional');
}

/** Fields of a product: how many, of how much dough, how heavy when baked. */
export function pieceFields({ id }: Product, units: Units): readonly [Field, Field, Field] {
  return [
    numberField(`pieces ${id}`, SIZE.pieces, plainMeasure(), 0, MOST_PIECES, 'optional'),
    numberField(`pieceG ${id}`, SIZE.dough, pieceMeasure(units), 1, MOST_PIECE_G, 'optional'),
    numberField(`bakedG ${id}`, SIZE.baked, pieceMeasure(units), 1, MOST_PIECE_G, 'optional'),
  ];
}

/** A field for the mixer, where there is a choice. */
export function mixerField(mixers: readonly Mixer[], units: Units): Field {
  const named = mixers.map(({ id, name, leastG, mostG }) => [id, SIZE.mixerLoad(name, loadText(leastG, units), loadText(mostG, units))]);
  return {
    key: 'mixerId',
    label: SIZE.mixer,
    kind: 'one',
    options: Object.fromEntries([['', SIZE.anyMixer], ...named]) as Record<string, string>,
  };
}

/** Ways in which a formula's size can be said: pieces only where something is cut from it. */
export function modesOf(formula: Formula, products: readonly Product[]): readonly ('pieces' | 'dough' | 'flour')[] {
  const byPieces = products.length > 0 ? (['pieces'] as const) : [];
  return formula.kind === 'dough' ? [...byPieces, 'dough', 'flour'] : [...byPieces, 'dough'];
}

/** The weight of a piece: grams, or ounces. */
function pieceMeasure(units: Units): Measure {
  const unit = lineUnit(units);
  const digits = unit === 'g' ? 1 : 2;
  return {
    unit: unit === 'g' ? UNITS.grams : unit,
    shown: (grams) => Number(fromG(grams, unit).toFixed(digits)),
    stored: (typed) => Number(toG(typed, unit).toFixed(2)),
  };
}
