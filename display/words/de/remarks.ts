import type { Remark } from '../../../shared/book/remarks.ts';
import { unreachable } from '../../../shared/result.ts';
import type { RemarkNames } from '../en/remarks.ts';
import { numberWords } from './numbers.ts';

/** What is unusual in a formula: it is let through, somebody should look again. */
export function remarkWords(remark: Remark, names: RemarkNames): string {
  switch (remark.code) {
    case 'muchSalt':
      return `${numberWords(remark.pct)} % Salz: mehr als ${remark.mostPct} % sind ungewöhnlich`;
    case 'muchWater':
      return `${numberWords(remark.pct)} % Wasser: mehr als ${remark.mostPct} % sind ungewöhnlich`;
    case 'littleWater':
      return `${numberWords(remark.pct)} % Wasser: weniger als ${remark.leastPct} % sind ungewöhnlich`;
    case 'muchYeast':
      return `${numberWords(remark.pct)} % Hefe: mehr als ${remark.mostPct} % sind ungewöhnlich`;
    case 'doughCold':
      return `Teig mit ${names.temperature(remark.celsius)}: kälter als ${names.temperature(remark.leastC)} ist ungewöhnlich`;
    case 'doughWarm':
      return `Teig mit ${names.temperature(remark.celsius)}: wärmer als ${names.temperature(remark.mostC)} ist ungewöhnlich`;
    case 'lineOfNothing':
      return `${remark.part}: Zeile ${remark.line + 1} wiegt nichts`;
    case 'lineTwice':
      return `${remark.part}: ${names.ingredient(remark.ingredientId)} steht zweimal da`;
    case 'neverGoesIn':
      return `Kein Schritt sagt, wann ${names.formula(remark.formulaId)} hineinkommt`;
    case 'noSalt':
      return 'Es ist kein Salz darin';
    default:
      return unreachable(remark);
  }
}
