import { z } from 'zod';
import { idSchema } from '../../shared/ids.ts';

// A month of the journal as one file: lines of canonical JSON, each with its newline. The first says whose month it is and with which hash it
// begins, then come its events with all that their hashes cover (chain-hash.ts), then the head with a signature over every byte before its line.

const hashSchema = z.string().regex(/^[0-9a-f]{64}$/);
const sequenceSchema = z.number().int().min(0);

/** The first line. A month without events has its `lastSequence` one below its `firstSequence`. */
export const archiveHeadSchema = z.strictObject({
  line: z.literal('ovenward-archive'),
  format: z.literal(1),
  kitchenId: idSchema,
  month: z.string(),
  /** The house's zone, in which the month is one, and its first instant and the first one after it. */
  zone: z.string(),
  fromMs: z.number().int(),
  toMs: z.number().int(),
  firstSequence: sequenceSchema.min(1),
  lastSequence: sequenceSchema,
  /** Of the event before the first; 64 zeros where there is none. */
  hashBefore: hashSchema,
});
export type ArchiveHead = z.infer<typeof archiveHeadSchema>;

/** A line for each event: what its hash covers beside the kitchen and the hash before, and the hash. */
export const archiveEventSchema = z.strictObject({
  sequence: sequenceSchema.min(1),
  commandId: z.string(),
  ordinal: z.number().int().min(0),
  deviceId: z.string(),
  receivedMs: z.number().int(),
  version: z.number().int(),
  event: z.unknown(),
  hash: hashSchema,
});
export type ArchiveEvent = z.infer<typeof archiveEventSchema>;

/** The last line. Key and signature (Ed25519, RFC 8032) are their bytes as base64url. */
export const archiveEndSchema = z.strictObject({
  line: z.literal('head'),
  sequence: sequenceSchema,
  hash: hashSchema,
  publicKey: z.string(),
  signature: z.string(),
});
export type ArchiveEnd = z.infer<typeof archiveEndSchema>;

/** The largest archive that is written or read, in bytes: it is signed, and so held, as a whole. */
export const MOST_ARCHIVE_BYTES = 1024 ** 3;
