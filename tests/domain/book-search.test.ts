import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BookEntry, BookIndex } from '../../shared/book/book-api.ts';
import { foundIn, searchRows, type BookQuery } from '../../shared/book/book-search.ts';
import { folded } from '../../shared/book/folded.ts';

const entry = (id: string, name: string, letters: string, more: Partial<BookEntry> = {}): BookEntry => ({
  id,
  name,
  letters,
  kind: 'dough',
  version: 1,
  isArchived: false,
  atMs: null,
  hydrationPct: 68,
  ingredientIds: ['wheat-flour', 'water'],
  products: [],
  ...more,
});
const BOOK: BookIndex = {
  entries: [
    entry('rye', 'Seeded rye', 'R', {
      ingredientIds: ['rye-flour', 'linseed'],
      products: [{ id: 'rye-tin', name: 'Rye in tins', version: 1 }],
    }),
    entry('country', 'Country sourdough', 'C'),
    entry('creme', 'Crème pâtissière', 'Cp', { kind: 'prep', ingredientIds: ['milk'] }),
    entry('straw', 'Stroh-Weißbrot', 'S', { isArchived: true }),
    entry('boats', 'Boats of rye', 'B'),
  ],
  ingredients: [
    { id: 'wheat-flour', name: 'Wheat flour', kind: 'flour', allergens: ['wheat'] },
    { id: 'rye-flour', name: 'Rye flour', kind: 'flour', allergens: ['rye'] },
    { id: 'linseed', name: 'Linseed', kind: 'seed', allergens: [] },
    { id: 'milk', name: 'Whole milk', kind: 'dairy', allergens: ['milk'] },
  ],
  ingredientsVersion: 1,
};
const ROWS = searchRows(BOOK);
const found = (text: string, more: Partial<BookQuery> = {}): string[] =>
  foundIn(ROWS, { text, kind: null, isArchived: false, ...more }).map(({ id }) => id);

describe('N21 the book is found as one types', () => {
  test('by name, letters, ingredient and product, words in any order and in part', () => {
    expect(found('rye')).toEqual(['boats', 'rye']);
    expect(found('sourdough country')).toEqual(['country']);
    expect(found('linse')).toEqual(['rye']);
    expect(found('tins')).toEqual(['rye']);
    expect(found('wheat flour')).toEqual(['boats', 'country']);
    expect(found('flour tins')).toEqual(['rye']);
    expect(found('nothing')).toEqual([]);
  });

  test('accents, case and ligatures do not matter', () => {
    expect(found('creme patissiere')).toEqual(['creme']);
    expect(found('CRÈME')).toEqual(['creme']);
    expect(found('weissbrot', { isArchived: true })).toEqual(['straw']);
    // Unicode Standard Annex 15, NFKD: ﬁ is f and i, Å is A with a ring.
    expect(folded('ﬁne Ångström Œuf')).toBe('fine angstrom oeuf');
  });

  test('letters come first, then names that begin so, then names, then what is in them; else by name', () => {
    expect(found('c')).toEqual(['country', 'creme']);
    expect(found('r')).toEqual(['rye', 'boats', 'country', 'creme']);
    expect(found('b')).toEqual(['boats']);
    expect(found('s')[0]).toBe('rye');
    expect(found('')).toEqual(['boats', 'country', 'creme', 'rye']);
  });

  test('a kind alone, and what is put away apart', () => {
    expect(found('', { kind: 'prep' })).toEqual(['creme']);
    expect(found('', { isArchived: true })).toEqual(['straw']);
    expect(found('stroh')).toEqual([]);
  });

  test('a longer search never finds more, and finds the same whatever the order and the case of its words', () => {
    const word = fc.constantFrom('rye', 'Flour', 'whe', 'C', 'seed', 'ö', 'tin', '');
    fc.assert(
      fc.property(fc.array(word, { maxLength: 4 }), word, (words, more) => {
        const all = new Set(found(words.join(' ')));
        for (const id of found([...words, more].join(' '))) expect(all).toContain(id);
        const turned = [...words].reverse().join('  ').toUpperCase();
        expect(new Set(found(turned))).toEqual(all);
      }),
    );
  });
});
