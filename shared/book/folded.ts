/** Letters that Unicode gives no decomposition, as they are typed without them. */
const SPELT_OUT: Readonly<Record<string, string>> = { ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', ł: 'l', đ: 'd', ð: 'd', þ: 'th', ı: 'i' };

/**
 * A text as it is searched and compared: compatibility letters resolved, accents taken off, lower case, everything that is
 * neither letter nor digit one space.
 */
export function folded(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ßæœøłđðþı]/g, (letter) => SPELT_OUT[letter] ?? letter)
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
