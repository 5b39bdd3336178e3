import { z } from 'zod';
import { clientCommandSchema, type TapTime } from '../../shared/floor/commands.ts';
import { idSchema } from '../../shared/ids.ts';
import type { LocalInstant } from './local-instant.ts';

/** Taps that one page keeps at most while the server is away. One more is refused where it is made, visibly. */
export const MAX_KEPT_TAPS = 200;

const WEEK_MS = 7 * 86_400_000;
const YEAR_MS = 366 * 86_400_000;

/** A tap as a device keeps it until it is answered. */
export const keptTapSchema = z.strictObject({
  format: z.literal(1),
  commandId: idSchema,
  command: clientCommandSchema,
  /** The kitchen on which it was made: it means nothing to another. */
  kitchenId: idSchema.nullable(),
  /** The page load in which it was made: only within it does `monotonicMs` mean something. */
  pageId: idSchema,
  monotonicMs: z.number(),
  wallMs: z.number(),
  /** House time of the thumb, as the page knew it then. */
  tapMs: z.number(),
  /** Grows from tap to tap: in this order they are sent. */
  order: z.number().int().min(0),
});
export type KeptRecord = z.infer<typeof keptTapSchema>;

/** How long ago a kept tap was, by both clocks of the page. */
export function tapTimeOf(record: KeptRecord, pageId: string, now: LocalInstant): TapTime {
  const agoMonotonicMs = Math.max(0, now.monotonicMs - record.monotonicMs);
  return {
    agoMonotonicMs: record.pageId === pageId && agoMonotonicMs <= WEEK_MS ? agoMonotonicMs : null,
    agoWallMs: Math.min(YEAR_MS, Math.max(-YEAR_MS, now.wallMs - record.wallMs)),
  };
}
