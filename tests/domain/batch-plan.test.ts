import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mixerMin, planCommand } from '../../display/formulas/size-plan.ts';
import { batchPlan, mixersFor, type BatchPlan, type SizeBook } from '../../shared/book/batch-plan.ts';
import { csvOf } from '../../shared/book/csv.ts';
import { weighTable } from '../../shared/book/weigh-table.ts';
import { formulaSchema, productSchema, type Formula, type Ingredient } from '../../shared/documents/formula.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { assert } from '../../shared/result.ts';
import type { Size } from '../../shared/trade/batch-size.ts';
import { bringInCommand, demoFile, OPENING_MS, SERVICE_DATE } from './support/harbour.ts';
import { Floor } from './support/floor.ts';
import { SERVER_DEVICE } from './support/ids.ts';
import { totalsOf, type CalcItem, type CalcPart } from '../../shared/trade/formula-totals.ts';

const INGREDIENTS: Ingredient[] = [
  { id: 'bread-flour', name: 'Bread flour', kind: 'flour', allergens: ['wheat'] },
  { id: 'water', name: 'Water', kind: 'water', allergens: [] },
  { id: 'salt', name: 'Salt', kind: 'salt', allergens: [] },
  { id: 'yeast', name: 'Yeast', kind: 'yeast', allergens: [] },
];
const mixes = (id: string, ids: string[], target: number): Record<string, unknown> => ({
  id,
  verb: 'firstSpeed',
  kind: 'hands',
  minutes: { target },
  claims: [{ kind: 'mixer', ids }],
});
/** trade.md, first case: weights by wildyeastblog, "Baker's Percentage 4". */
const FORMULA: Formula = formulaSchema.parse({
  id: 'poolish-bread',
  name: 'Poolish bread',
  letters: 'P',
  handlingLossPct: 2,
  parts: [
    {
      name: 'Poolish',
      items: [
        { item: 'bread-flour', g: 468 },
        { item: 'water', g: 468 },
        { item: 'yeast', g: 0.3 },
      ],
    },
    {
      name: 'Dough',
      role: 'dough',
      items: [
        { item: 'bread-flour', g: 900 },
        { item: 'water', g: 468 },
        { item: 'yeast', g: 9 },
        { item: 'salt', g: 27 },
        { part: 'Poolish', g: 936.3 },
      ],
    },
  ],
  method: [
    mixes('mix', ['spiral', 'small'], 4),
    { id: 'rest', verb: 'stand', kind: 'timed', minutes: { target: 20 } },
    mixes('mix-2', [], 3),
  ],
});
const mixer = (id: string, leastG: number, mostG: number): Kitchen['mixers'][number] => ({
  id,
  name: id,
  kind: 'spiral',
  leastG,
  mostG,
  bowlComesOff: false,
  station: 'mixer',
});
const KITCHEN: Kitchen = {
  stations: [{ id: 'mixer', name: 'Mixer', hands: 1 }],
  mixers: [mixer('spiral', 5000, 12_000), mixer('small', 1000, 3000), mixer('other', 1, 100_000)],
  bowls: [],
  restPlaces: [{ id: 'bench', name: 'Bench', kind: 'bench', temperatureC: 22 }],
  vessels: [],
  ovens: [],
};
const BOOK: SizeBook = { formulaOf: () => null, ingredients: INGREDIENTS, kitchen: KITCHEN };
const PRODUCT = productSchema.parse({
  id: 'plain',
  name: 'Plain',
  formula: 'poolish-bread',
  pieceG: 350,
  way: [{ id: 'top', verb: 'top', kind: 'hands', minutes: { target: 1 }, additions: [{ item: 'salt', gPerPiece: 2 }] }],
});
const PIECES: Size = {
  kind: 'pieces',
  pieces: [
    { productId: 'plain', pieces: 24, pieceG: 350 },
    { productId: 'filled', pieces: 30, pieceG: 90 },
  ],
};

function planned(size: Size, mixerId: string | null = null, formula = FORMULA): BatchPlan {
  const plan = batchPlan(size, formula, mixerId, BOOK);
  assert(plan.ok, 'it can be made');
  return plan.value;
}
const faultOf = (size: Size, mixerId: string | null = null): unknown => {
  const plan = batchPlan(size, FORMULA, mixerId, BOOK);
  return plan.ok ? null : plan.fault;
};

describe('N22 a size is made in batches that the mixer takes', () => {
  test('dough, flour, and pieces of several products with the handling loss', () => {
    expect(planned({ kind: 'dough', doughG: 6000 }).doughG).toBe(6000);
    // trade.md: 900 g and 468 g of flour make 2 340.3 g of dough.
    expect(planned({ kind: 'flour', flourG: 1368 }, 'small').doughG).toBeCloseTo(2340.3, 9);
    // calc.md: pieces × pieceG ÷ (1 − lossPct/100).
    const { doughG, batches, mixer: taken } = planned(PIECES);
    expect(doughG).toBeCloseTo((24 * 350 + 30 * 90) / 0.98, 9);
    expect(batches).toHaveLength(1);
    expect(taken?.id).toBe('spiral');
  });

  test('mixers are those that the method names, or any where it only asks for one, or none', () => {
    expect(mixersFor(FORMULA, KITCHEN).map(({ id }) => id)).toEqual(['spiral', 'small']);
    const any = { ...FORMULA, method: FORMULA.method.slice(2) };
    expect(mixersFor(any, KITCHEN)).toHaveLength(3);
    const none = { ...FORMULA, method: FORMULA.method.slice(1, 2) };
    expect(mixersFor(none, KITCHEN)).toEqual([]);
    expect(planned({ kind: 'dough', doughG: 50 }, null, none)).toMatchObject({ mixer: null, batches: [{ doughG: 50 }] });
  });

  test('what one bowl does not take is split evenly, in the mixer that needs fewest; what no number of batches makes is told', () => {
    expect(planned({ kind: 'dough', doughG: 26_000 })).toMatchObject({ mixer: { id: 'spiral' }, batches: [{}, {}, {}] });
    expect(planned({ kind: 'dough', doughG: 4000 })).toMatchObject({
      mixer: { id: 'small' },
      batches: [{ doughG: 2000 }, { doughG: 2000 }],
    });
    expect(faultOf({ kind: 'dough', doughG: 4000 }, 'spiral')).toMatchObject({ code: 'belowLeast', mixer: { id: 'spiral' } });
    const narrow: SizeBook = { ...BOOK, kitchen: { ...KITCHEN, mixers: [mixer('spiral', 8000, 9000)] } };
    const between = batchPlan({ kind: 'dough', doughG: 10_000 }, FORMULA, null, narrow);
    expect(between).toMatchObject({ ok: false, fault: { code: 'betweenLoads', fromG: 9000, toG: 16_000 } });
    const big: Size = { kind: 'pieces', pieces: [{ productId: 'plain', pieces: 3, pieceG: 5500 }] };
    expect(batchPlan(big, FORMULA, null, narrow)).toMatchObject({ ok: false, fault: { code: 'piecesUneven' } });
    expect(faultOf({ kind: 'dough', doughG: 0 })).toEqual({ code: 'nothing' });
    expect(faultOf({ kind: 'dough', doughG: 1e12 })).toEqual({ code: 'tooMuch' });
    expect(batchPlan({ kind: 'flour', flourG: 10 }, FORMULA, null, { ...BOOK, ingredients: [] })).toEqual({
      ok: false,
      fault: { code: 'noFlour' },
    });
  });

  test('whatever the pieces: none is lost or cut, every batch is within the load and the batches are alike', () => {
    const count = fc.integer({ min: 0, max: 400 });
    fc.assert(
      fc.property(count, count, (plain, filled) => {
        const size: Size = {
          kind: 'pieces',
          pieces: [
            { productId: 'plain', pieces: plain, pieceG: 350 },
            { productId: 'filled', pieces: filled, pieceG: 90 },
          ],
        };
        const plan = batchPlan(size, FORMULA, 'spiral', BOOK);
        if (!plan.ok) return;
        const { batches, doughG } = plan.value;
        const sum = (id: string): number =>
          batches.flatMap(({ pieces }) => pieces).reduce((all, each) => all + (each.productId === id ? each.pieces : 0), 0);
        expect([sum('plain'), sum('filled')]).toEqual([plain, filled]);
        for (const batch of batches) {
          expect(batch.doughG).toBeGreaterThanOrEqual(5000 - 1e-6);
          expect(batch.doughG).toBeLessThanOrEqual(12_000 + 1e-6);
          for (const { pieces } of batch.pieces) expect(Number.isInteger(pieces)).toBe(true);
        }
        const weights = batches.map((batch) => batch.doughG);
        expect(weights.reduce((all, each) => all + each, 0)).toBeCloseTo(doughG, 6);
        expect(Math.max(...weights) - Math.min(...weights)).toBeLessThanOrEqual((350 + 90) / 0.98 + 1e-6);
      }),
    );
  });

  test('on a day’s list: a batch after another, cut into what was said, or into whole pieces of one product', () => {
    const times = { serviceDate: '2026-05-02', firstMs: 1_000_000, everyMin: mixerMin(FORMULA.method) };
    // 4, 20 and 3 minutes from the first step with a mixer to the last, up to the next five.
    expect(times.everyMin).toBe(30);
    const command = planCommand(planned({ kind: 'dough', doughG: 20_000 }), FORMULA, PRODUCT, times);
    expect(command.batches.map(({ plannedStartMs, grams, cuts }) => [plannedStartMs, grams, cuts])).toEqual([
      [1_000_000, 10_000, [{ productId: 'plain', pieces: 28, grams: 9800 }]],
      [2_800_000, 10_000, [{ productId: 'plain', pieces: 28, grams: 9800 }]],
    ]);
    const [batch] = planCommand(planned(PIECES), FORMULA, null, times).batches;
    expect(batch?.cuts).toEqual([
      { productId: 'plain', pieces: 24, grams: 8400 },
      { productId: 'filled', pieces: 30, grams: 2700 },
    ]);
    expect(batch?.grams).toBe(11_326.6);
  });
});

describe('N22 what the panel plans, the house takes', () => {
  test('every product of the demo house in fifty pieces, and every dough by its weight, with a handling loss', () => {
    const { formulas, products, ingredients, kitchen } = demoFile();
    const book: SizeBook = { formulaOf: (id) => formulas.find((formula) => formula.id === id) ?? null, ingredients, kitchen };
    for (const product of products) {
      const formula = book.formulaOf(product.formula);
      assert(formula !== null, 'every product has its formula');
      for (const size of [
        { kind: 'pieces', pieces: [{ productId: product.id, pieces: 50, pieceG: product.pieceG }] },
        { kind: 'dough', doughG: 6543.21 },
      ] as const satisfies Size[]) {
        const plan = batchPlan(size, { ...formula, handlingLossPct: 1.7 }, null, book);
        assert(plan.ok, `${product.id} can be made`);
        const floor = new Floor();
        floor.ok(bringInCommand(demoFile(), floor.nowMs), { deviceId: SERVER_DEVICE });
        const times = { serviceDate: SERVICE_DATE, firstMs: OPENING_MS + 3_600_000, everyMin: 20 };
        floor.ok(planCommand(plan.value, { ...formula, handlingLossPct: 1.7 }, product, times));
      }
    }
  });
});

const SCALES = { bench: 5, fine: 0.1 };
const TABLE_BOOK = { formulaOf: () => null, ingredients: INGREDIENTS, products: [PRODUCT], scales: SCALES };

describe('N23 one batch is weighed out to the divisions of the scales', () => {
  test('every line is its share of the dough, salt and yeast within half a division, flour and water within one', () => {
    const parts = FORMULA.parts.map((part): CalcPart => ({
      ...part,
      items: part.items.flatMap((line): CalcItem[] => {
        if ('item' in line) return [{ ...line, kind: INGREDIENTS.find(({ id }) => id === line.item)?.kind ?? 'other' }];
        return 'part' in line ? [line] : [];
      }),
    }));
    fc.assert(
      fc.property(fc.double({ min: 300, max: 100_000, noNaN: true }), (doughG) => {
        const table = weighTable(FORMULA, doughG, [], TABLE_BOOK);
        const exact = totalsOf(parts, { doughG });
        assert(exact.ok, 'the formula can be scaled');
        for (const [at, part] of table.parts.entries()) {
          for (const [index, line] of part.lines.entries()) {
            const wanted = exact.value.parts[at]?.items[index];
            const isFree = line.of.kind === 'item' && ['bread-flour', 'water'].includes(line.of.id);
            expect(Math.abs(line.g - (wanted?.g ?? 0))).toBeLessThanOrEqual((isFree ? 1 : 0.5) * line.divisionG + 1e-6);
            expect(line.pct).toBeCloseTo(wanted?.pct ?? 0, 6);
            expect(Math.abs(line.g / line.divisionG - Math.round(line.g / line.divisionG))).toBeLessThan(1e-6);
          }
        }
      }),
    );
  });

  test('what goes in later or is held back is told at its line; what goes on top by the piece apart from the dough', () => {
    const [mix, rest, again] = FORMULA.method;
    assert(mix !== undefined && rest !== undefined && again !== undefined, 'three steps');
    const addition = { heldBack: false };
    const method = [
      mix,
      { ...rest, additions: [{ ...addition, item: 'salt' }] },
      { ...again, additions: [{ item: 'water', pct: 3, heldBack: true }] },
    ];
    const table = weighTable({ ...FORMULA, method }, 2340.3, [{ productId: 'plain', pieces: 24, pieceG: 350 }], TABLE_BOOK);
    const lines = table.parts[1]?.lines ?? [];
    expect(lines.find(({ of }) => of.kind === 'item' && of.id === 'salt')?.later).toEqual([
      { verb: 'stand', g: 27, divisionG: 0.1, isHeldBack: false },
    ]);
    // Three per cent of 1 368 g of flour.
    expect(lines.find(({ of }) => of.kind === 'item' && of.id === 'water')?.later).toEqual([
      { verb: 'firstSpeed', g: 41, divisionG: 0.1, isHeldBack: true },
    ]);
    expect(table.onTop).toEqual([{ of: { kind: 'item', id: 'salt' }, productId: 'plain', verb: 'top', pieces: 24, eachG: 2, g: 48 }]);
  });

  test('the file is comma-separated values by RFC 4180, and no text in it is a formula to a spreadsheet', () => {
    // RFC 4180, 2: lines end in CRLF; commas, quotes and line breaks stand in quotes (6), a quote is doubled (7).
    expect(
      csvOf([
        ['aaa', 'b\r\nbb', 'ccc'],
        ['aaa', 'b"bb', 'c,c'],
        [1.5, '', 'zzz'],
      ]),
    ).toBe('aaa,"b\r\nbb",ccc\r\naaa,"b""bb","c,c"\r\n1.5,,zzz\r\n');
    // Cells that a spreadsheet would run (OWASP, "CSV Injection", from memory).
    expect(csvOf([['=1+1', '+a', '-a', '@a', '-5', -5]])).toBe("'=1+1,'+a,'-a,'@a,-5,-5\r\n");
    const texts = fc.array(
      fc.array(
        fc.string().filter((text) => !/^[=+\-@\t\r]/.test(text)),
        { minLength: 2, maxLength: 2 },
      ),
      { minLength: 1 },
    );
    fc.assert(
      fc.property(texts, (rows) => {
        expect(readCsv(csvOf(rows))).toEqual(rows);
      }),
    );
  });
});

/** Reads comma-separated values by the grammar of RFC 4180, 2. */
function readCsv(text: string): string[][] {
  const field = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/gy;
  const rows: string[][] = [[]];
  for (let match = field.exec(text); match !== null; match = field.exec(text)) {
    rows.at(-1)?.push((match[1] ?? match[2] ?? '').replaceAll('""', '"'));
    if (match[3] === '\r\n') rows.push([]);
    if (field.lastIndex === text.length) break;
  }
  return rows.slice(0, -1);
}
