import type { Remark } from '../../../shared/book/remarks.ts';
import { unreachable } from '../../../shared/result.ts';
import type { RemarkNames } from '../en/remarks.ts';
import { numberWords } from './numbers.ts';

/** What is unusual in a formula: it is let through, somebody should look again. */
export function remarkWords(remark: Remark, names: RemarkNames): string {
  switch (remark.code) {
    case 'muchSalt':
      return `${numberWords(remark.pct)}\u00a0% de sel\u00a0: plus de ${remark.mostPct}\u00a0% est inhabituel`;
    case 'muchWater':
      return `${numberWords(remark.pct)}\u00a0% d’eau\u00a0: plus de ${remark.mostPct}\u00a0% est inhabituel`;
    case 'littleWater':
      return `${numberWords(remark.pct)}\u00a0% d’eau\u00a0: moins de ${remark.leastPct}\u00a0% est inhabituel`;
    case 'muchYeast':
      return `${numberWords(remark.pct)}\u00a0% de levure\u00a0: plus de ${remark.mostPct}\u00a0% est inhabituel`;
    case 'doughCold':
      return `Pâte à ${names.temperature(remark.celsius)}\u00a0: plus froide que ${names.temperature(remark.leastC)} est inhabituel`;
    case 'doughWarm':
      return `Pâte à ${names.temperature(remark.celsius)}\u00a0: plus chaude que ${names.temperature(remark.mostC)} est inhabituel`;
    case 'lineOfNothing':
      return `${remark.part}\u00a0: la ligne ${remark.line + 1} ne pèse rien`;
    case 'lineTwice':
      return `${remark.part}\u00a0: ${names.ingredient(remark.ingredientId)} y figure deux fois`;
    case 'neverGoesIn':
      return `Aucune étape ne dit quand ${names.formula(remark.formulaId)} entre`;
    case 'noSalt':
      return 'Il n’y a pas de sel';
    default:
      return unreachable(remark);
  }
}
