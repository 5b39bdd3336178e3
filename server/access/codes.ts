import { timingSafeEqual } from 'node:crypto';
import { ID_BYTES, idFromBytes } from '../../shared/ids.ts';

/** Draws random bytes; `randomBytes` of node:crypto outside of tests. */
export type RandomBytes = (length: number) => Uint8Array;

/** Crockford's 32 characters: no I, L, O or U, so that nothing is mistaken when it is read off a screen and typed. */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
/** Characters of a console code: 50 bits. */
const CONSOLE_CHARACTERS = 10;
const DIGITS = 6;
const BYTE_VALUES = 256;

/** A code for the server's console: ten characters in two halves, 50 random bits. */
export function consoleCode(randomBytes: RandomBytes): string {
  const characters = [...randomBytes(CONSOLE_CHARACTERS)].map((byte) => ALPHABET[byte % ALPHABET.length] ?? '');
  return `${characters.slice(0, 5).join('')}-${characters.slice(5).join('')}`;
}

/** Six random digits, each as likely as the others. */
export function sixDigits(randomBytes: RandomBytes): string {
  // The last whole multiple of ten below 256: a byte at or above it would make the low digits likelier.
  const evenly = BYTE_VALUES - (BYTE_VALUES % 10);
  let digits = '';
  while (digits.length < DIGITS) {
    for (const byte of randomBytes(DIGITS)) if (byte < evenly && digits.length < DIGITS) digits += String(byte % 10);
  }
  return digits;
}

/** A ticket for the wall's picture: 128 random bits in base64url (RFC 4648 section 5). */
export function freshTicket(randomBytes: RandomBytes): string {
  return idFromBytes(randomBytes(ID_BYTES));
}

/** A code as it is compared: without what people put in between, and with the look-alikes as one. */
export function plainCode(typed: string): string {
  return typed
    .toUpperCase()
    .replaceAll(/[\s\-–—.]/g, '')
    .replaceAll('O', '0')
    .replaceAll(/[IL]/g, '1');
}

/** Whether two secrets are the same, in a time that tells nothing of where they differ. Their lengths are no secret. */
export function isSameSecret(a: string, b: string): boolean {
  const [left, right] = [Buffer.from(a, 'utf8'), Buffer.from(b, 'utf8')];
  return left.length === right.length && timingSafeEqual(left, right);
}
