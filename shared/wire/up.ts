import { z } from 'zod';
import { keySchema, nameSchema } from '../documents/names.ts';
import { callKeySchema, callLevelSchema } from '../floor/events.ts';
import { clientCommandSchema, tapTimeSchema } from '../floor/commands.ts';
import { idSchema } from '../ids.ts';
import { pageKindSchema } from './page-kind.ts';

/** Whether a page can sound: `waiting` until somebody touches it. */
export const soundReadinessSchema = z.enum(['on', 'waiting', 'none']);
export type SoundReadiness = z.infer<typeof soundReadinessSchema>;

export { pageKindSchema, type PageKind } from './page-kind.ts';

export const helloSchema = z.strictObject({
  type: z.literal('hello'),
  protocol: z.number().int(),
  page: pageKindSchema,
  /** Made anew whenever the page loads. */
  pageId: idSchema,
  /** Whose journal the page holds, and up to where; null and 0 where it holds nothing. */
  kitchenId: idSchema.nullable(),
  lastSequence: z.number().int().min(0),
  sound: soundReadinessSchema,
  stationId: keySchema.nullable(),
});
export const commandMessageSchema = z.strictObject({
  type: z.literal('command'),
  commandId: idSchema,
  tap: tapTimeSchema,
  command: clientCommandSchema,
});
/** RFC 5905's t1, by the client's own clock. */
export const pingSchema = z.strictObject({ type: z.literal('ping'), t1: z.number() });
export const soundChangedSchema = z.strictObject({ type: z.literal('soundChanged'), sound: soundReadinessSchema });
export const soundedSchema = z.strictObject({
  type: z.literal('sounded'),
  soundId: idSchema,
  burst: callLevelSchema,
  calls: z.array(callKeySchema).max(200),
});
/** Where this device stands, and what it is called. */
export const introduceSchema = z.strictObject({
  type: z.literal('introduce'),
  name: nameSchema.nullable(),
  stationId: keySchema.nullable(),
});

/** Everything that a client may say. */
export const upMessageSchema = z.discriminatedUnion('type', [
  helloSchema,
  commandMessageSchema,
  pingSchema,
  soundChangedSchema,
  soundedSchema,
  introduceSchema,
]);
export type UpMessage = z.infer<typeof upMessageSchema>;
export type Hello = z.infer<typeof helloSchema>;
