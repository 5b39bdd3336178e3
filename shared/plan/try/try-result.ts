import { z } from 'zod';
import { idSchema } from '../../ids.ts';

/** How the real lengths of a kind of step lie about its planned ones. */
export const spreadSchema = z.strictObject({
  kind: z.enum(['hands', 'judged', 'rest', 'bake']),
  /** How many times the planned length they are on average: 1.1 is ten per cent longer. */
  mean: z.number().min(0.1).max(3),
  /** Their standard deviation over that average: 0.15 is fifteen per cent. */
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
  /** What the latest orders of late runs waited for: its share of their lateness, the greatest first. `dough` is what no resource holds back. */
  resources: z.array(z.strictObject({ kind: z.string(), id: z.string(), share: z.number().min(0).max(1) })),
  /** Share of the runs in which some dough waited longer than it may. */
  spoilShare: z.number().min(0).max(1),
  spreads: z.array(spreadSchema),
});
export type TryResult = z.infer<typeof tryResultSchema>;
