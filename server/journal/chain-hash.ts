import { createHash } from 'node:crypto';
import { assert } from '../../shared/result.ts';
import { canonicalJson } from './canonical-json.ts';

/** Bytes of a SHA-256 hash (FIPS 180-4). */
export const HASH_BYTES = 32;
/** What the first event's hash covers in place of a hash before it. */
export const ZERO_HASH: Uint8Array = new Uint8Array(HASH_BYTES);

/** What the hash of one event covers, beside the hash before it. */
export interface ChainLink {
  readonly sequence: number;
  readonly kitchenId: string;
  readonly commandId: string;
  readonly ordinal: number;
  readonly deviceId: string;
  readonly receivedMs: number;
  /** Version of the event's shape as it was kept, before any upcaster. */
  readonly version: number;
  readonly event: unknown;
}

/**
 * SHA-256 over the hash before (32 bytes) and the link as canonical JSON. It covers what was said, not how it is stored, so
 * that damage to any table that the event is put together from changes it. `eventText` is the event as canonical JSON, where
 * it is at hand: a day's plan is long.
 */
export function chainHash(previous: Uint8Array, link: ChainLink, eventText: string = canonicalJson(link.event)): Uint8Array {
  assert(previous.length === HASH_BYTES, `a hash has ${HASH_BYTES} bytes, not ${previous.length}`);
  const { sequence, kitchenId, commandId, ordinal, deviceId, receivedMs, version } = link;
  const before = canonicalJson([sequence, kitchenId, commandId, ordinal, deviceId, receivedMs, version]);
  const text = `${before.slice(0, -1)},${eventText}]`;
  return createHash('sha256').update(previous).update(text, 'utf8').digest();
}

/** A hash as lower-case hex. */
export function hashText(hash: Uint8Array): string {
  return Buffer.from(hash.buffer, hash.byteOffset, hash.byteLength).toString('hex');
}
