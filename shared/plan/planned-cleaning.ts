import { z } from 'zod';
import { instantMsSchema, keySchema } from '../documents/names.ts';
import { resourceSchema } from '../floor/events.ts';

/** When a cleaning of the kitchen's is to be done by a plan, and what it takes out of use; hands too. */
export const plannedCleaningSchema = z.strictObject({
  cleaningId: keySchema,
  plannedStartMs: instantMsSchema,
  plannedEndMs: instantMsSchema,
  resources: z.array(resourceSchema),
});
export type PlannedCleaning = z.infer<typeof plannedCleaningSchema>;
