import { ID_BYTES, idFromBytes, type Id } from '../../shared/ids.ts';

/** Random bytes from the browser. `getRandomValues` is there without a secure context, `randomUUID` is not. */
export function randomBytes(count: number): Uint8Array {
  return crypto.getRandomValues(new Uint8Array(count));
}

/** A new id from random bytes. */
export function newId(random: (count: number) => Uint8Array): Id {
  return idFromBytes(random(ID_BYTES));
}

/** A number in [0, 1) from random bytes, for jitter. */
export function randomShare(random: (count: number) => Uint8Array): number {
  const bytes = random(4);
  return (bytes[0] ?? 0) / 2 ** 8 + (bytes[1] ?? 0) / 2 ** 16 + (bytes[2] ?? 0) / 2 ** 24;
}
