import { z } from 'zod';
import { refused, type Result } from '../result.ts';
import type { CalcFault, CalcItem } from '../trade/calc-part.ts';
import { totalsOf, type CalcScale } from '../trade/formula-totals.ts';
import { chosen, isRecord } from './chosen.ts';
import { readBody } from './read-body.ts';

/** Parts, and lines of a part, at most. */
const MOST = 1000;

const name = z.string().min(1).max(MOST);
const g = z.number().min(0);
const partTakenSchema = z.strictObject({ part: name, g });
const ingredientSchema = z.strictObject({
  item: name,
  kind: z.enum(['flour', 'water', 'salt', 'yeast', 'fat', 'sugar', 'egg', 'dairy', 'seed', 'other']),
  g,
  waterPct: z.number().min(0).max(100).exactOptional(),
});
const lineSchema = chosen<CalcItem>((value) => ('part' in value ? partTakenSchema : ingredientSchema));

const doughSchema = z.strictObject({ doughG: z.number() });
const flourSchema = z.strictObject({ flourG: z.number() });
const piecesSchema = z.strictObject({ pieces: z.number(), pieceG: z.number(), lossPct: z.number().exactOptional() });
const scaleSchema = chosen<CalcScale>((value) => {
  if ('flourG' in value) return flourSchema;
  return 'pieces' in value || 'pieceG' in value ? piecesSchema : doughSchema;
});
const SCALES = ['doughG', 'flourG', 'pieces'];

const bodySchema = z.strictObject({
  parts: z
    .array(z.strictObject({ name, role: z.enum(['preferment', 'soaker', 'dough']).exactOptional(), items: z.array(lineSchema).max(MOST) }))
    .max(MOST),
  scale: scaleSchema.exactOptional(),
});

/** The totals of a formula, its parts scaled to what the dough needs. */
export function calcFormula(body: unknown): Result<object, CalcFault> {
  if (scaleCount(body) > 1) return refused({ code: 'moreThanOneScale', field: 'scale', message: 'one of doughG, flourG, pieces' });
  const read = readBody(bodySchema, body);
  return read.ok ? totalsOf(read.value.parts, read.value.scale) : read;
}

function scaleCount(body: unknown): number {
  const scale: unknown = isRecord(body) ? body['scale'] : undefined;
  return isRecord(scale) ? SCALES.filter((key) => Object.hasOwn(scale, key)).length : 0;
}
