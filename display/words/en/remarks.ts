import type { Remark } from '../../../shared/book/remarks.ts';
import { unreachable } from '../../../shared/result.ts';
import { numberWords } from './numbers.ts';

/** The names that a remark is told with, and the house's way to write a temperature. */
export interface RemarkNames {
  readonly ingredient: (id: string) => string;
  readonly formula: (id: string) => string;
  readonly temperature: (celsius: number) => string;
}

/** What is unusual in a formula: it is let through, somebody should look again. */
export function remarkWords(remark: Remark, names: RemarkNames): string {
  switch (remark.code) {
    case 'muchSalt':
      return `${numberWords(remark.pct)} % salt: more than ${remark.mostPct} % is unusual`;
    case 'muchWater':
      return `${numberWords(remark.pct)} % water: more than ${remark.mostPct} % is unusual`;
    case 'littleWater':
      return `${numberWords(remark.pct)} % water: less than ${remark.leastPct} % is unusual`;
    case 'muchYeast':
      return `${numberWords(remark.pct)} % yeast: more than ${remark.mostPct} % is unusual`;
    case 'doughCold':
      return `Dough at ${names.temperature(remark.celsius)}: colder than ${names.temperature(remark.leastC)} is unusual`;
    case 'doughWarm':
      return `Dough at ${names.temperature(remark.celsius)}: warmer than ${names.temperature(remark.mostC)} is unusual`;
    case 'lineOfNothing':
      return `${remark.part}: line ${remark.line + 1} weighs nothing`;
    case 'lineTwice':
      return `${remark.part}: ${names.ingredient(remark.ingredientId)} stands there twice`;
    case 'neverGoesIn':
      return `No step says when ${names.formula(remark.formulaId)} goes in`;
    case 'noSalt':
      return 'There is no salt in it';
    default:
      return unreachable(remark);
  }
}
