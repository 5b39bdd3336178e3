import type { Overall } from '../../shared/book/overall.ts';
import type { House } from '../../shared/documents/house.ts';
import { weightText } from '../parts/weight-text.ts';
import { TOTALS } from '../words/formulas.ts';
import { shownNumber } from './weight-typed.ts';

/** One figure of a whole formula, as it is shown. */
export interface FigureRow {
  readonly key: 'hydration' | 'salt' | 'yeast' | 'prefermented' | 'sum' | 'doughYield' | 'flour' | 'weight';
  readonly words: string;
  readonly figure: string;
  readonly unit: string;
}

/** The figures of a whole formula in the house's units; without flour its weight alone. */
export function figureRows(overall: Overall, units: House['units']): readonly FigureRow[] {
  const row = (key: FigureRow['key'], value: number | null, decimals: number, unit = ' %'): readonly FigureRow[] =>
    value === null ? [] : [{ key, words: TOTALS[key], figure: shownNumber(value, decimals), unit }];
  const weight = (key: 'flour' | 'weight', g: number): FigureRow => ({ key, words: TOTALS[key], figure: weightText(g, units), unit: '' });
  return [
    ...row('hydration', overall.hydrationPct, 1),
    ...row('salt', overall.saltPct, 2),
    // A levain's dough has none of the baker's yeast, and no line that says so.
    ...row('yeast', overall.yeastPct === 0 ? null : overall.yeastPct, 3),
    ...row('prefermented', overall.prefermentedFlourPct, 1),
    ...row('sum', overall.sumPct, 1),
    ...row('doughYield', overall.doughYield, 1, ''),
    ...(overall.flourG > 0 ? [weight('flour', overall.flourG)] : []),
    weight('weight', overall.doughG),
  ];
}
