import { z } from 'zod';
import { piecesSchema } from '../documents/names.ts';
import { idSchema } from '../ids.ts';

/** What is tried otherwise than it was ordered, before anything is kept. */
export const tentativeChangeSchema = z.discriminatedUnion('kind', [
  /** The order may be ready so many minutes later. */
  z.strictObject({ kind: z.literal('readyLater'), orderId: idSchema, minutes: z.number().int().min(1).max(1440) }),
  /** Only so many pieces of it. */
  z.strictObject({ kind: z.literal('fewerPieces'), orderId: idSchema, pieces: piecesSchema }),
  z.strictObject({ kind: z.literal('leaveOut'), orderId: idSchema }),
]);
export type TentativeChange = z.infer<typeof tentativeChangeSchema>;
