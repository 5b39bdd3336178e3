import { z } from 'zod';
import { accepted, refused, type Result } from '../result.ts';
import { ruleSetSchema } from '../documents/house.ts';
import type { CalcFault } from '../trade/calc-part.ts';
import { coolingForecast } from '../trade/cooling-curve.ts';
import { RULE_SETS } from '../trade/holding-rules.ts';
import { finite, readBody } from './read-body.ts';

const bodySchema = z.strictObject({ startC: z.number(), ambientC: z.number(), tauMin: z.number().positive(), ruleSet: ruleSetSchema });

/** Whether food that cools by itself gets through a rule set's cooling in time. */
export function calcCooling(body: unknown): Result<object, CalcFault> {
  const read = readBody(bodySchema, body);
  if (!read.ok) return read;
  const { ruleSet, ...curve } = read.value;
  const rule = RULE_SETS[ruleSet].cooling;
  if (rule === null) return refused({ code: 'noCoolingFigures', field: 'ruleSet', message: withoutFigures(ruleSet) });
  const forecast = coolingForecast(curve, rule);
  const faulty = forecast.steps.map(({ takesMin }) => finite({ takesMin })).find(({ ok }) => !ok);
  if (faulty !== undefined) return faulty;
  const steps = forecast.steps.map(({ fromC, toC, limitMin, takesMin, passes }) => ({ fromC, toC, limitMin, takesMin, pass: passes }));
  return accepted({ pass: forecast.passes, steps });
}

function withoutFigures(ruleSet: keyof typeof RULE_SETS): string {
  const others = Object.values(RULE_SETS).flatMap(({ name, cooling }) => (cooling === null ? [] : [name]));
  return `${ruleSet} asks for cooling as quickly as possible and names no minutes to reckon with; one of: ${others.join(', ')}`;
}
