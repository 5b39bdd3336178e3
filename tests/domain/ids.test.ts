import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivedId, idFromBytes, idSchema, idToBytes, isId } from '../../shared/ids.ts';
import { idOf } from './support/ids.ts';

const bytes = fc.uint8Array({ minLength: 16, maxLength: 16 });

describe('D21 an id is 16 bytes with one spelling', () => {
  // RFC 4648 section 5 (base64url), without padding; the same bytes through Node's own base64url as second opinion.
  test('it is base64url, as RFC 4648 section 5 has it, without padding', () => {
    fc.assert(
      fc.property(bytes, (value) => {
        const id = idFromBytes(value);
        expect(id).toBe(Buffer.from(value).toString('base64url'));
        expect([...idToBytes(id)]).toEqual([...value]);
        expect(isId(id) && idSchema.safeParse(id).success).toBe(true);
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  test('the characters that differ from plain base64', () => {
    expect(idFromBytes(new Uint8Array(16).fill(0xff))).toBe('_____________________w');
    expect(idFromBytes(new Uint8Array(16).fill(0xfb))).toBe('-_v7-_v7-_v7-_v7-_v7-w');
    expect(idFromBytes(new Uint8Array(16))).toBe('AAAAAAAAAAAAAAAAAAAAAA');
  });

  test('a spelling whose spare bits are set is no id', () => {
    for (const last of 'BCDEFGHIJKLMNOPRSTUVWXYZ') expect(isId(`${'A'.repeat(21)}${last}`), last).toBe(false);
    for (const last of 'AQgw') expect(isId(`${'A'.repeat(21)}${last}`), last).toBe(true);
  });

  test.each([
    '',
    'A'.repeat(21),
    'A'.repeat(23),
    `${'A'.repeat(20)}=A`,
    `${'A'.repeat(20)}+A`,
    `${'A'.repeat(20)} A`,
    `${'A'.repeat(21)}é`,
  ])('%j is no id', (text) => {
    expect(isId(text)).toBe(false);
    expect(idSchema.safeParse(text).success).toBe(false);
    expect(() => idToBytes(text)).toThrow('not an id');
  });

  test('other lengths than 16 bytes throw', () => {
    for (const length of [0, 15, 17]) expect(() => idFromBytes(new Uint8Array(length))).toThrow('an id has 16 bytes');
  });

  test('derived ids are ids, differ from one another and from their command, and are the same every time', () => {
    const made = Array.from({ length: 300 }, (_, n) => derivedId(idOf(1), n));
    expect(new Set([idOf(1), ...made]).size).toBe(301);
    expect(made.every(isId)).toBe(true);
    expect(derivedId(idOf(1), 299)).toBe(made[299]);
  });

  test('two commands never make the same thing, unless their ids differ only where the number is', () => {
    fc.assert(
      fc.property(bytes, bytes, fc.nat(0xffff), fc.nat(0xffff), (a, b, n, m) => {
        fc.pre(Buffer.compare(a.subarray(0, 14), b.subarray(0, 14)) !== 0);
        expect(derivedId(idFromBytes(a), n)).not.toBe(derivedId(idFromBytes(b), m));
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  test('the number has its range', () => {
    expect(isId(derivedId(idOf(1), 65_535))).toBe(true);
    for (const n of [-1, 65_536, 0.5, Number.NaN]) expect(() => derivedId(idOf(1), n)).toThrow('derived id number out of range');
  });
});
