import { readFileSync } from 'node:fs';
import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { DayProblem } from '../../shared/plan/day/problem.ts';
import { smallDay } from './plan-small-day.ts';

/** Small days and what is best for each, as `prove-small-days.mjs` had it proved. */
export const provedDaysSchema = z.strictObject({
  solver: z.string(),
  days: z.array(
    z.strictObject({
      seed: z.number().int(),
      batchCount: z.number().int(),
      /** Of the problem: another one has another optimum. */
      digest: z.string(),
      optimum: z.number(),
      /** A plan that costs just that. */
      startsS: z.array(z.number().int()),
      options: z.array(z.number().int()),
    }),
  ),
});
export type ProvedDays = z.infer<typeof provedDaysSchema>;
export type ProvedDay = ProvedDays['days'][number];

/** The days with their problems. Throws where the file is not right or a problem is no longer the one that was solved. */
export function provedDays(): { readonly solver: string; readonly days: readonly (ProvedDay & { readonly problem: DayProblem })[] } {
  const file = provedDaysSchema.parse(JSON.parse(readFileSync(new URL('small-days.json', import.meta.url), 'utf8')));
  const days = file.days.map((day) => {
    const problem = smallDay(day.seed, day.batchCount);
    if (digestOf(problem) !== day.digest)
      throw new Error(`small day ${day.seed} of ${day.batchCount} is another than was proved: prove it anew`);
    return { ...day, problem };
  });
  return { solver: file.solver, days };
}

/** Where the best costs next to nothing, a share of it says little: then a share of a minute late. */
const NEXT_TO_NOTHING = 100;

/** By what share a plan costs more than the proved best. */
export function gapOf(total: number, optimum: number): number {
  return (total - optimum) / Math.max(optimum, NEXT_TO_NOTHING);
}

/** What tells two problems apart. */
export function digestOf(problem: DayProblem): string {
  return createHash('sha256').update(JSON.stringify(problem)).digest('hex').slice(0, 16);
}
