import { z } from 'zod';
import { idSchema } from '../../ids.ts';

/** By what a played day's lengths spread: coefficient of variation of a step's real length over its planned one. */
export const spreadSchema = z.strictObject({
  kind: z.enum(['hands', 'judged', 'rest', 'bake']),
  /** As a share of the planned length: 0.15 is fifteen per cent. */
  spread: z.number().min(0).max(2),
  /** Steps of this house that it was learned from; 0: it is assumed. */
  learnedFrom: z.number().int().min(0),
});
export type Spread = z.infer<typeof spreadSchema>;

/** What came of playing a day many times. */
export const tryResultSchema = z.strictObject({
  runs: z.number().int().min(1),
  orders: z.array(
    z.strictObject({
      orderId: idSchema,
      /** Share of the runs in which it was late by more than a minute. */
      lateShare: z.number().min(0).max(1),
      /** Of the runs in which it was late. */
      medianLateMin: z.number().min(0),
      /** Nine runs of ten are not later than this. */
      p90LateMin: z.number().min(0),
    }),
  ),
  /** What late orders waited for: its share of all lateness, the greatest first. `dough` is what no resource holds back. */
  resources: z.array(z.strictObject({ kind: z.string(), id: z.string(), share: z.number().min(0).max(1) })),
  /** Share of the runs in which some dough waited longer than it may. */
  spoilShare: z.number().min(0).max(1),
  spreads: z.array(spreadSchema),
});
export type TryResult = z.infer<typeof tryResultSchema>;
