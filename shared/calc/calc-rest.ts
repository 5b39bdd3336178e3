import { z } from 'zod';
import { refused, type Result } from '../result.ts';
import type { CalcFault } from '../trade/calc-part.ts';
import { doughCourse, type DoughCourse } from '../trade/dough-course.ts';
import type { RateModel } from '../trade/rate-model.ts';
import { ripeAt, RIPENESS_CAP_MIN } from '../trade/ripeness-progress.ts';
import { rateCurve, type RateFault } from '../trade/ripeness-rate.ts';
import { chosen } from './chosen.ts';
import { finite, readBody } from './read-body.ts';

const MIN_PER_DAY = 24 * 60;

const kindSchema = z.object({ kind: z.enum(['perKelvin', 'q10', 'cardinal']) }).transform((): RateModel => z.NEVER);
const perKelvinSchema = z.strictObject({ kind: z.literal('perKelvin'), rate: z.number().min(0) });
const q10Schema = z.strictObject({ kind: z.literal('q10'), q10: z.number().positive() });
const cardinalSchema = z.strictObject({ kind: z.literal('cardinal'), minC: z.number(), optC: z.number(), maxC: z.number() });
const modelSchema = chosen<RateModel>(({ kind }) => {
  if (kind === 'perKelvin') return perKelvinSchema;
  if (kind === 'q10') return q10Schema;
  return kind === 'cardinal' ? cardinalSchema : kindSchema;
});

const bodySchema = z.strictObject({
  nominalMin: z.number().min(0),
  referenceC: z.number(),
  doughC: z.number(),
  ambientC: z.number().exactOptional(),
  tauMin: z.number().positive().exactOptional(),
  model: modelSchema,
  selfHeatKPerH: z.number().exactOptional(),
});
type RestBody = z.output<typeof bodySchema>;

/** How long a rest takes whose dough drifts to the air about it. */
export function calcRest(body: unknown): Result<object, CalcFault> {
  const read = readBody(bodySchema, body);
  if (!read.ok) return read;
  const { ambientC, tauMin, model, referenceC } = read.value;
  if (ambientC !== undefined && tauMin === undefined)
    return refused({ code: 'fieldMissing', field: 'tauMin', message: 'missing: how fast the dough goes to ambientC' });
  const curve = rateCurve(model, referenceC);
  if (!curve.ok) return refused(modelFault(curve.fault));
  const { atMin } = ripeAt(courseOf(read.value), curve.value, 0, read.value.nominalMin);
  if (atMin !== null) return finite({ minutes: atMin });
  return finite({ minutes: null, reason: `not ripe within ${RIPENESS_CAP_MIN / MIN_PER_DAY} days` });
}

/** Without its air's temperature a dough keeps its own, whatever the time constant. */
function courseOf({ doughC, ambientC, tauMin = 1, selfHeatKPerH = 0 }: RestBody): DoughCourse {
  return doughCourse({ startC: doughC, stays: [{ fromMin: 0, ambientC: ambientC ?? null, tauMin, selfHeatKPerH }], readings: [] });
}

function modelFault(fault: RateFault): CalcFault {
  switch (fault) {
    case 'cardinalsOutOfOrder':
      return { code: 'outOfRange', field: 'model.optC', message: 'above minC, below maxC, and at least halfway from minC to maxC' };
    case 'noGrowthAtReference':
      return { code: 'outOfRange', field: 'referenceC', message: 'a temperature at which the model grows: above minC and below maxC' };
  }
}
