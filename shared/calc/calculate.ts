import { refused, type Result } from '../result.ts';
import type { CalcFault } from '../trade/calc-part.ts';
import { calcCooling } from './calc-cooling.ts';
import { calcCore } from './calc-core.ts';
import { calcFormula } from './calc-formula.ts';
import { calcHeat } from './calc-heat.ts';
import { calcRest } from './calc-rest.ts';
import { calcWater } from './calc-water.ts';

const SUMS: ReadonlyMap<string, (body: unknown) => Result<object, CalcFault>> = new Map([
  ['formula', calcFormula],
  ['water', calcWater],
  ['heat', calcHeat],
  ['rest', calcRest],
  ['core', calcCore],
  ['cooling', calcCooling],
]);

/**
 * One of the trade's sums by its name, as the command line and the api give it: SI inside and outside. Refused with a code, the
 * field, and words, where the name is unknown or the body is not what that sum takes.
 */
export function calculate(name: string, body: unknown): Result<object, CalcFault> {
  const sum = SUMS.get(name);
  if (sum === undefined) return refused({ code: 'nameUnknown', field: 'name', message: `one of: ${[...SUMS.keys()].join(', ')}` });
  return sum(body);
}
