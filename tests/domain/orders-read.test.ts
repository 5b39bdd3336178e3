import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ORDER_COLUMNS as ENGLISH } from '../../display/words/en/day.ts';
import { ORDER_COLUMNS as GERMAN } from '../../display/words/de/day.ts';
import { ORDER_COLUMNS as FRENCH } from '../../display/words/fr/day.ts';
import { csvOf } from '../../shared/csv.ts';
import { MOST_ORDERS, orderSchema } from '../../shared/documents/order.ts';
import { clockTimeIn, dateIn, lengthMinIn, piecesIn } from '../../shared/plan/orders/order-cells.ts';
import { delimitedRows } from '../../shared/plan/orders/delimited-rows.ts';
import { headingsIn, ORDER_FIELDS } from '../../shared/plan/orders/order-columns.ts';
import { readOrders, type LineFault, type OrdersContext, type ReadOrders } from '../../shared/plan/orders/read-orders.ts';
import { zonedInstantMs } from '../../display/parts/zoned-instant.ts';

const PRODUCTS = [
  { id: 'country-loaf', name: 'Country loaf' },
  { id: 'milk-buns', name: 'Milk buns' },
  { id: 'custard-buns', name: 'Custard-filled buns' },
  { id: 'petit-pain', name: 'Petit pain beurré' },
];
const CONTEXT: OrdersContext = {
  products: PRODUCTS,
  serviceDate: '2026-03-07',
  firstDate: '2026-03-06',
  instantMs: (date, minute) => zonedInstantMs(date, minute, 'Europe/Paris'),
};

const read = (text: string, context: Partial<OrdersContext> = {}): ReadOrders => readOrders(text, { ...CONTEXT, ...context });
const places = (faults: readonly LineFault[]): unknown[] => faults.map(({ code, line, column }) => [code, line, column]);

describe('I1 orders are read from what a spreadsheet copies and from CSV files', () => {
  test('tabs, commas and semicolons say the same, with headings of any of the three languages or none', () => {
    const rows = (delimiter: string, head: string[]): string =>
      [head, ['Milk buns', '24', '06:30', 'hot'], ['country-loaf', '12', '7:15', '']]
        .filter((row) => row.length > 0)
        .map((row) => row.join(delimiter))
        .join('\r\n');
    const texts = [
      rows('\t', []),
      rows(',', []),
      rows(';', []),
      rows('\t', ['Product', 'Pieces', 'Ready by', 'Cooled or hot']),
      rows(';', ['Produkt', 'Stück', 'Fertig bis', 'Kalt oder heiß']),
      rows(',', ['Produit', 'Pièces', 'Prêt pour', 'Froid ou chaud']),
    ];
    const [first, ...others] = texts.map((text) => read(text));
    expect(first?.faults).toEqual([]);
    expect(first?.orders.map(({ order }) => order)).toEqual([
      // The clocks of Paris are an hour ahead of UTC in March.
      { productId: 'milk-buns', pieces: 24, readyMs: Date.UTC(2026, 2, 7, 5, 30), form: 'hot', weight: 1 },
      { productId: 'country-loaf', pieces: 12, readyMs: Date.UTC(2026, 2, 7, 6, 15), form: 'cooled', weight: 1 },
    ]);
    for (const other of others) expect(other.orders.map(({ order }) => order)).toEqual(first?.orders.map(({ order }) => order));
  });

  test('the headings that the page itself writes are read in every language, and mean what they say', () => {
    for (const columns of [ENGLISH, GERMAN, FRENCH]) expect(headingsIn(ORDER_FIELDS.map((field) => columns[field]))).toEqual(ORDER_FIELDS);
  });

  test('columns stand in any order; units in brackets and columns that nobody needs do no harm, and are named', () => {
    const { orders, faults, unread } = read(
      'For whom\tFresh (min)\tPrice\tTime\tPieces\tProduct\tImportance\tLoading\tDate\nMarket stall\t1h30\t3,40\t6.30\t1 200 pcs\tPETIT PAIN BEURRE\t3\t20 min\t8.3.2026',
    );
    expect(faults).toEqual([]);
    expect(unread).toEqual(['Price']);
    expect(orders).toEqual([
      {
        line: 2,
        serviceDate: '2026-03-08',
        order: {
          productId: 'petit-pain',
          pieces: 1200,
          readyMs: Date.UTC(2026, 2, 8, 5, 30),
          form: 'cooled',
          weight: 3,
          freshMin: 90,
          loadingMin: 20,
          label: 'Market stall',
        },
      },
    ]);
  });

  test('whatever is written by RFC 4180 is read as it was written', () => {
    const label = fc.string({ minLength: 1, maxLength: 40 }).filter((text) => text.trim() === text && !/^[=+\-@＝＋－＠']/u.test(text));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...PRODUCTS), fc.integer({ min: 1, max: 9999 }), label), { minLength: 1, maxLength: 8 }),
        (wanted) => {
          const rows = wanted.map(([product, pieces, whom]) => [product.name, pieces, '06:00', 'hot', '', '', whom, 1]);
          const { orders, faults } = read(csvOf([ORDER_FIELDS.map((field) => ENGLISH[field]), ...rows]));
          expect(faults).toEqual([]);
          expect(orders.map(({ order }) => [order.productId, order.pieces, order.label])).toEqual(
            wanted.map(([product, pieces, whom]) => [product.id, pieces, whom]),
          );
        },
      ),
      { numRuns: 60, seed: 4 },
    );
  });

  // RFC 4180, section 2, rules 1, 2, 5, 6 and 7.
  test.each([
    [
      'aaa,bbb\r\nzzz,yyy\r\n',
      [
        ['aaa', 'bbb'],
        ['zzz', 'yyy'],
      ],
    ],
    [
      'aaa,bbb\r\nzzz,yyy',
      [
        ['aaa', 'bbb'],
        ['zzz', 'yyy'],
      ],
    ],
    [
      '"aaa","b""bb"\r\nzzz,yyy',
      [
        ['aaa', 'b"bb'],
        ['zzz', 'yyy'],
      ],
    ],
    ['"aaa","b\r\nbb","c,c"', [['aaa', 'b\r\nbb', 'c,c']]],
  ])('rows as RFC 4180 has them: %j', (text, cells) => {
    expect(delimitedRows(text).map((row) => row.cells)).toEqual(cells);
  });

  test('lines are counted as an editor counts them: through quotes, blank lines and every kind of line break', () => {
    expect(delimitedRows('\uFEFFa,"x\ny"\r\n\r\n,,\rb,c\nd').map(({ line }) => line)).toEqual([1, 5, 6]);
  });
});

describe('I2 every fault is named by line and column, and nothing is lost', () => {
  test('the good lines are orders, the others stay under their headings as they were', () => {
    const lines = [
      'Product;Pieces;Ready by;For whom',
      'Milk buns;24;06:30;Shop',
      'Milk rolls;12;06:30;Shop',
      '',
      'Country loaf;a dozen;25:00;Van',
      'Custard;6;7:00;"Stall; north"',
      'Country loaf;;7:00;',
      'Country loaf;8;7:00;;extra',
    ];
    const { orders, faults, faultyText } = read(lines.join('\n'));
    expect(orders).toHaveLength(1);
    expect(places(faults)).toEqual([
      ['productUnknown', 3, 1],
      ['notPieces', 5, 2],
      ['notClockTime', 5, 3],
      ['productUnknown', 6, 1],
      ['missing', 7, null],
      ['extraCell', 8, 5],
    ]);
    expect(faults.map(({ text }) => text)).toEqual(['Milk rolls', 'a dozen', '25:00', 'Custard', '', 'extra']);
    expect(faults[3]?.near).toBe('Custard-filled buns');
    expect(faultyText).toBe([lines[0], lines[2], ...lines.slice(4)].join('\n'));
    // What was put right is read the next time.
    expect(read(faultyText.replace('Milk rolls', 'Milk buns')).orders).toHaveLength(1);
  });

  test('each cell that cannot be read has its own fault', () => {
    const long = 'x'.repeat(61);
    const { faults } = read(
      `milk-buns\t24\t6:30\tlukewarm\tsoon\tlater\t${long}\t10\t2026-02-30\nmilk-buns\t24\t6:30\t\t\t\t\t\t2026-03-05`,
    );
    expect(places(faults)).toEqual([
      ['notForm', 1, 4],
      ['notMinutes', 1, 5],
      ['notMinutes', 1, 6],
      ['labelTooLong', 1, 7],
      ['notWeight', 1, 8],
      ['notDate', 1, 9],
      ['dateOver', 2, 9],
    ]);
  });

  test('a heading that is missing or stands twice is told once, and the whole text stays', () => {
    const text = 'Product,Fresh,Pieces,Pieces\nMilk buns,60,24,24\n';
    const { orders, faults, faultyText } = read(text);
    expect([orders, places(faults), faultyText]).toEqual([
      [],
      [
        ['columnMissing', 1, null],
        ['columnTwice', 1, 4],
      ],
      text,
    ]);
    expect(faults[0]?.field).toBe('readyAt');
  });

  test('quotes that do not end swallow no other line', () => {
    const { orders, faults, faultyText } = read('milk-buns,24,6:30,,,,"Shop\ncountry-loaf,12,7:00\nmilk-buns,6,"7:00"x');
    expect(orders.map(({ order }) => order.productId)).toEqual(['country-loaf']);
    expect(places(faults)).toEqual([
      ['quote', 1, 7],
      ['quote', 3, 3],
    ]);
    expect(faultyText).toBe('milk-buns,24,6:30,,,,"Shop\nmilk-buns,6,"7:00"x');
  });

  test('two products of one name are told apart by their keys only', () => {
    const products = [...PRODUCTS, { id: 'milk-buns-large', name: 'Milk Buns' }];
    const { orders, faults } = read('milk buns,24,6:30\nmilk-buns-large,24,6:30', { products });
    expect(orders.map(({ order }) => order.productId)).toEqual(['milk-buns-large']);
    expect(places(faults)).toEqual([['productTwice', 1, 1]]);
  });

  test('a day takes no more orders than it may; what is over stays in the text', () => {
    const lines = Array.from({ length: MOST_ORDERS + 2 }, (_line, index) => `milk-buns,${index + 1},6:30`);
    const { orders, faults, faultyText } = read(lines.join('\n'));
    expect(orders).toHaveLength(MOST_ORDERS);
    expect(places(faults)).toEqual([
      ['tooMany', MOST_ORDERS + 1, null],
      ['tooMany', MOST_ORDERS + 2, null],
    ]);
    expect(faultyText).toBe(lines.slice(MOST_ORDERS).join('\n'));
  });

  test('whatever is pasted, it does not fail, every order is one, and every written line is an order or stays', () => {
    const cell = fc.oneof(
      fc.string(),
      fc.constantFrom('milk-buns', '24', '6:30', 'hot', '"', '"a"b', '\t', ';', 'Product', 'Pieces', '2026-03-08'),
    );
    fc.assert(
      fc.property(fc.array(fc.array(cell, { maxLength: 10 }), { maxLength: 8 }), fc.constantFrom('\t', ',', ';'), (rows, delimiter) => {
        const text = rows.map((row) => row.join(delimiter)).join('\n');
        const { orders, faults, faultyText } = read(text);
        for (const { order, serviceDate } of orders)
          expect(orderSchema.omit({ id: true }).safeParse({ ...order, serviceDate }).success).toBe(true);
        expect(faultyText === '').toBe(faults.length === 0);
        const written = delimitedRows(text);
        const kept = delimitedRows(faultyText);
        const isHeaded = written[0] !== undefined && headingsIn(written[0].cells) !== null;
        const headedLines = isHeaded ? 1 : 0;
        if (faults.length > 0 && faults.every(({ code }) => code !== 'columnMissing' && code !== 'columnTwice'))
          expect(orders.length + kept.length).toBe(written.length);
        else if (faults.length === 0) expect(orders.length).toBe(Math.max(0, written.length - headedLines));
      }),
      { numRuns: 150, seed: 11 },
    );
  });
});

describe('I3 times, lengths, counts and dates as people write them', () => {
  test.each([
    ['6:30', '06:30'],
    ['06:30', '06:30'],
    ['6.30', '06:30'],
    ['6h30', '06:30'],
    ['06:30:00', '06:30'],
    ['6:30 PM', '18:30'],
    ['12:05 am', '00:05'],
    ['6 Uhr', '06:00'],
    ['18', '18:00'],
    ['0:00', '00:00'],
    ['24:00', null],
    ['6:60', null],
    ['0.2708', null],
    ['13:00 pm', null],
    ['', null],
  ])('the clock time %j is %j', (text, clockTime) => {
    expect(clockTimeIn(text)).toBe(clockTime);
  });

  test.each([
    ['90', 90],
    ['90 min', 90],
    ['1:30', 90],
    ['1h30', 90],
    ['2 h', 120],
    ['1,5 h', 90],
    ['1,5', null],
    ['soon', null],
    ['20000', null],
  ])('the length %j is %j minutes', (text, minutes) => {
    expect(lengthMinIn(text)).toBe(minutes);
  });

  test.each([
    ['24', 24],
    ['1 200', 1200],
    ['1\u202f200 pièces', 1200],
    ['24 Stück', 24],
    ['0', null],
    ['2.5', null],
    ['1.200', null],
    ['-4', null],
    ['100001', null],
  ])('the count %j is %j', (text, pieces) => {
    expect(piecesIn(text)).toBe(pieces);
  });

  test.each([
    ['2026-03-08', '2026-03-08'],
    ['8.3.2026', '2026-03-08'],
    ['08/03/2026', '2026-03-08'],
    ['2026-02-29', null],
    ['31.4.2026', null],
    ['tomorrow', null],
  ])('the date %j is %j', (text, date) => {
    expect(dateIn(text)).toBe(date);
  });
});
