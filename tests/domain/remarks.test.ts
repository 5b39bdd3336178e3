import { describe, expect, test } from 'vitest';
import { remarkWords as german } from '../../display/words/de/remarks.ts';
import { remarkWords as english } from '../../display/words/en/remarks.ts';
import { remarkWords as french } from '../../display/words/fr/remarks.ts';
import { remarksOf, type Remark, type RemarkCode } from '../../shared/book/remarks.ts';
import { formulaFaults } from '../../shared/documents/book-faults.ts';
import type { Formula } from '../../shared/documents/formula.ts';
import { demoFile } from './support/harbour.ts';
import { DOUGH, FILLING, POT, QUAY_BOOK, QUAY_INGREDIENTS } from './support/small-book.ts';

const find = (id: string): Formula | null => [POT, FILLING].find((formula) => formula.id === id) ?? null;
const remarks = (formula: Formula): readonly Remark[] => remarksOf(formula, find, QUAY_INGREDIENTS);

/** A dough of 1000 g of flour with so many grams of the rest. */
function plain(rest: Readonly<Record<string, number>>, more: Partial<Formula> = {}): Formula {
  const items = Object.entries({ flour: 1000, ...rest }).map(([item, g]) => ({ item, g }));
  return { ...DOUGH, parts: [{ name: 'Dough', role: 'dough', items }], method: DOUGH.method.slice(2), ...more };
}

describe('R10 what only a mistake leaves is said, and let through', () => {
  test('the demo formulas and the book on the quay have nothing unusual', () => {
    const { formulas, ingredients } = demoFile();
    const inFile = (id: string): Formula | null => formulas.find((formula) => formula.id === id) ?? null;
    for (const formula of formulas) expect([formula.id, remarksOf(formula, inFile, ingredients)]).toEqual([formula.id, []]);
    for (const formula of [POT, FILLING, DOUGH]) expect(remarks(formula)).toEqual([]);
  });

  test.each<[string, Formula, readonly Remark[]]>([
    ['4.1 % salt', plain({ water: 650, salt: 41 }), [{ code: 'muchSalt', pct: 4.1, mostPct: 4 }]],
    ['4 % salt', plain({ water: 650, salt: 40 }), []],
    ['151 % water', plain({ water: 1510, salt: 20 }), [{ code: 'muchWater', pct: 151, mostPct: 150 }]],
    ['150 % water', plain({ water: 1500, salt: 20 }), []],
    ['151 % water in what is no dough', plain({ water: 1510, salt: 20 }, { kind: 'prep' }), []],
    ['34 % water', plain({ water: 340, salt: 20 }), [{ code: 'littleWater', pct: 34, leastPct: 35 }]],
    ['35 % water', plain({ water: 350, salt: 20 }), []],
    ['11 % yeast', plain({ water: 600, salt: 20, yeast: 110 }), [{ code: 'muchYeast', pct: 11, mostPct: 10 }]],
    ['10 % yeast', plain({ water: 600, salt: 20, yeast: 100 }), []],
    ['no salt', plain({ water: 600 }), [{ code: 'noSalt' }]],
    ['39 °C', plain({ water: 600, salt: 20 }, { doughC: 39 }), [{ code: 'doughWarm', celsius: 39, mostC: 38 }]],
    ['9 °C', plain({ water: 600, salt: 20 }, { doughC: 9 }), [{ code: 'doughCold', celsius: 9, leastC: 10 }]],
    ['24 °C', plain({ water: 600, salt: 20 }, { doughC: 24 }), []],
    ['a line of nothing', plain({ water: 600, salt: 20, butter: 0 }), [{ code: 'lineOfNothing', part: 'Dough', partIndex: 0, line: 3 }]],
  ])('%s', (_name, formula, expected) => {
    expect(remarks(formula)).toEqual(
      expected.map((remark) => ('pct' in remark ? { ...remark, pct: expect.closeTo(remark.pct, 9) as number } : remark)),
    );
    expect(formulaFaults(formula, QUAY_BOOK)).toEqual([]);
  });

  test('an ingredient twice in one part, and a pot that goes in at no step', () => {
    const [sponge, last] = DOUGH.parts;
    const twice = { ...DOUGH, parts: [sponge, { ...last, items: [...(last?.items ?? []), { item: 'flour', g: 5 }] }] } as Formula;
    expect(remarks(twice)).toEqual([{ code: 'lineTwice', ingredientId: 'flour', part: 'Dough', partIndex: 1 }]);
    const never = { ...DOUGH, method: DOUGH.method.map((step) => ({ ...step, additions: [] })) };
    expect(remarks(never)).toEqual([{ code: 'neverGoesIn', formulaId: 'pot' }]);
  });

  test('a filling without flour has no percentages to be unusual', () => {
    expect(remarks({ ...FILLING, parts: [{ name: 'Brine', role: 'preferment', items: [{ item: 'salt', g: 100 }] }] })).toEqual([]);
  });

  test('of what cannot be reckoned only the rest is said', () => {
    expect(remarks({ ...DOUGH, doughC: 44, parts: [{ name: 'Dough', role: 'dough', items: [{ part: 'Ghost', g: 10 }] }] })).toEqual([
      { code: 'doughWarm', celsius: 44, mostC: 38 },
    ]);
  });
});

const SAID: { readonly [Code in RemarkCode]: Extract<Remark, { code: Code }> } = {
  muchSalt: { code: 'muchSalt', pct: 5, mostPct: 4 },
  muchWater: { code: 'muchWater', pct: 170, mostPct: 150 },
  littleWater: { code: 'littleWater', pct: 20, leastPct: 35 },
  muchYeast: { code: 'muchYeast', pct: 12, mostPct: 10 },
  doughCold: { code: 'doughCold', celsius: 8, leastC: 10 },
  doughWarm: { code: 'doughWarm', celsius: 42, mostC: 38 },
  lineOfNothing: { code: 'lineOfNothing', part: 'Quay sponge', partIndex: 0, line: 6 },
  lineTwice: { code: 'lineTwice', ingredientId: 'quay-flour', part: 'Quay sponge', partIndex: 0 },
  neverGoesIn: { code: 'neverGoesIn', formulaId: 'quay' },
  noSalt: { code: 'noSalt' },
};

describe('R22 remarks have their words in every language', () => {
  const names = {
    ingredient: (id: string) => `<${id}>`,
    formula: (id: string) => `<${id}>`,
    temperature: (celsius: number) => `${celsius} K`,
  };

  test.each(Object.values(SAID))('$code', (remark) => {
    const said = [english, german, french].map((words) => words(remark, names));
    expect(new Set(said).size).toBe(3);
    const { code: _code, ...facts } = remark;
    const named = Object.entries(facts).flatMap(([key, value]) => {
      if (key === 'partIndex') return [];
      if (key === 'line') return [String(Number(value) + 1)];
      return [String(value)];
    });
    for (const text of said) for (const name of named) expect(text).toContain(name);
  });
});
