/** A count and the word behind it, "+6 more", as the two columns in which it is written; all of it the word where it has no count. */
export function countAndWord(text: string): { readonly count: string; readonly word: string } {
  const found = /^([+\d]+)\s+(.*)$/u.exec(text);
  return found === null ? { count: '', word: text } : { count: found[1] ?? '', word: found[2] ?? '' };
}
