import { z } from 'zod';
import { refused, type Result } from '../result.ts';
import type { CalcFault } from '../trade/calc-part.ts';
import { waterForBalanceC } from '../trade/heat-balance.ts';
import { finite, readBody } from './read-body.ts';

/** Parts of one dough at most. */
const MOST = 1000;

const weight = z.number().min(0);
const bodySchema = z.strictObject({
  targetC: z.number(),
  parts: z.array(z.strictObject({ g: weight, kJPerKgK: z.number().min(0), tempC: z.number() })).max(MOST),
  waterG: weight,
  riseK: z.number(),
  flourG: weight,
  hydrationKJPerKg: z.number().min(0),
});

/** The water's temperature by the balance of heat. */
export function calcHeat(body: unknown): Result<object, CalcFault> {
  const read = readBody(bodySchema, body);
  if (!read.ok) return read;
  if (read.value.parts.length === 0) return refused({ code: 'noParts', field: 'parts', message: 'there are no parts' });
  if (read.value.waterG === 0) return refused({ code: 'noWater', field: 'waterG', message: 'there is no water' });
  return finite({ waterC: waterForBalanceC(read.value) });
}
