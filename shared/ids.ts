import { z } from 'zod';
import { assert } from './result.ts';

/** Bytes of an id: 128 random bits, so that phones can make ids with nobody to ask. */
export const ID_BYTES = 16;

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const ID_LENGTH = 22;
const ID_PATTERN = /^[A-Za-z0-9_-]{21}[AQgw]$/;

/** An id as text: base64url (RFC 4648 section 5) of 16 bytes, without padding, in its one canonical spelling. */
export const idSchema = z.string().regex(ID_PATTERN, 'an id is 22 characters of base64url');

/** A 128-bit id in its text form. */
export type Id = z.infer<typeof idSchema>;

/** Whether a text is an id in its canonical spelling. */
export function isId(text: string): boolean {
  return text.length === ID_LENGTH && ID_PATTERN.test(text);
}

/** The text form of 16 bytes. Throws on any other length. */
export function idFromBytes(bytes: Uint8Array): Id {
  assert(bytes.length === ID_BYTES, `an id has ${ID_BYTES} bytes, not ${bytes.length}`);
  let text = '';
  for (let index = 0; index < ID_BYTES; index += 3) {
    const a = bytes[index] ?? 0;
    const b = bytes[index + 1] ?? 0;
    const c = bytes[index + 2] ?? 0;
    text += ALPHABET.charAt(a >> 2) + ALPHABET.charAt(((a & 3) << 4) | (b >> 4));
    text += ALPHABET.charAt(((b & 15) << 2) | (c >> 6)) + ALPHABET.charAt(c & 63);
  }
  return text.slice(0, ID_LENGTH);
}

/** The 16 bytes of an id. Throws on text that is no id. */
export function idToBytes(id: Id): Uint8Array {
  assert(isId(id), `not an id: ${id}`);
  const bytes = new Uint8Array(ID_BYTES);
  let buffer = 0;
  let bits = 0;
  let index = 0;
  for (const character of id) {
    buffer = ((buffer << 6) | ALPHABET.indexOf(character)) & 0xffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes[index] = (buffer >> bits) & 0xff;
      index += 1;
    }
    if (index === ID_BYTES) break;
  }
  return bytes;
}

/**
 * The id of the n-th thing that a command makes. Derived, not drawn, so that the phone that shows a command's effect
 * at once and the server that decides it name the same workpiece. n from 0 to 65 535.
 */
export function derivedId(commandId: Id, n: number): Id {
  assert(Number.isInteger(n) && n >= 0 && n <= 0xffff, `derived id number out of range: ${n}`);
  const bytes = idToBytes(commandId);
  bytes[0] = (bytes[0] ?? 0) ^ 0xa5;
  bytes[14] = (bytes[14] ?? 0) ^ (n >> 8);
  bytes[15] = (bytes[15] ?? 0) ^ (n & 0xff);
  return idFromBytes(bytes);
}
