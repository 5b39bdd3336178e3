import { z } from 'zod';
import { instantMsSchema, keySchema } from '../documents/names.ts';
import { plannedStepSchema, resourceSchema } from '../floor/events.ts';

/**
 * What a step of a day that is only tried points at: a batch of it by its formula and number (`country#1`), a prep by the
 * batch that it goes into (`custard>milk-buns#1`), or a workpiece that is on the floor by its id.
 */
export const batchKeySchema = z.string().min(1).max(120);

/** A planned step before its batch has an id. */
export const proposedStepSchema = z.strictObject({
  batchKey: batchKeySchema,
  cut: plannedStepSchema.shape.cut,
  load: plannedStepSchema.shape.load,
  stepId: keySchema,
  plannedStartMs: instantMsSchema,
  plannedEndMs: instantMsSchema,
  resources: z.array(resourceSchema),
});
export type ProposedStep = z.infer<typeof proposedStepSchema>;
