import { z } from 'zod';
import { refused, type Result } from '../result.ts';
import type { CalcFault } from '../trade/calc-part.ts';
import { iceFor, requiredWaterByBaseC, requiredWaterByFrictionC, requiredWaterC } from '../trade/water-temperature.ts';
import { finite, readBody } from './read-body.ts';

/** Temperatures of one dough at most. */
const MOST = 1000;
/** A tap that is colder than the required temperature by less than this is cold enough: floating point is to blame. Kelvin. */
const TOLERANCE_K = 1e-9;

const temperature = z.number();
const common = {
  temperaturesC: z.array(temperature).max(MOST),
  waterG: z.number().min(0).exactOptional(),
  tapC: temperature.exactOptional(),
  iceC: temperature.max(0).exactOptional(),
};
const riseSchema = z.strictObject({ desiredDoughC: temperature, riseK: z.number(), ...common });
const frictionSchema = z.strictObject({ desiredDoughC: temperature, frictionC: z.number(), ...common });
const baseSchema = z.strictObject({ baseC: temperature, ...common });
type Common = Pick<z.output<typeof baseSchema>, 'temperaturesC' | 'waterG' | 'tapC' | 'iceC'>;

const FORMS = ['riseK', 'frictionC', 'baseC'];

/** The water's temperature for a dough's, and its ice where the tap's temperature and the recipe's water are given. */
export function calcWater(body: unknown): Result<object, CalcFault> {
  const forms = typeof body === 'object' && body !== null ? FORMS.filter((key) => Object.hasOwn(body, key)) : ['riseK'];
  if (forms.length !== 1)
    return refused({ code: 'notExactlyOne', field: forms[1] ?? 'riseK', message: 'exactly one of riseK, frictionC, baseC' });
  switch (forms[0]) {
    case 'frictionC':
      return reckoned(readBody(frictionSchema, body), requiredWaterByFrictionC);
    case 'baseC':
      return reckoned(readBody(baseSchema, body), requiredWaterByBaseC);
    default:
      return reckoned(readBody(riseSchema, body), requiredWaterC);
  }
}

function reckoned<Body extends Common>(read: Result<Body, CalcFault>, required: (body: Body) => number): Result<object, CalcFault> {
  if (!read.ok) return read;
  if (read.value.temperaturesC.length === 0)
    return refused({ code: 'noTemperatures', field: 'temperaturesC', message: 'at least one temperature beside the water’s' });
  return withIce(required(read.value), read.value);
}

function withIce(requiredC: number, { waterG, tapC, iceC = 0 }: Common): Result<object, CalcFault> {
  const isWarmNeeded = tapC === undefined || requiredC > tapC + TOLERANCE_K;
  if (waterG === undefined || isWarmNeeded) return finite({ requiredC, reachable: true });
  const { iceG, tapWaterG, isReachable } = iceFor({ waterG, tapC, requiredC, iceC });
  return finite({ requiredC, iceG, tapWaterG, reachable: isReachable });
}
