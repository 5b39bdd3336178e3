import { describe, expect, test } from 'vitest';
import { readBakehouseFile, type FileFault } from '../../shared/documents/bakehouse-file.ts';
import { pathText } from '../../shared/documents/path-text.ts';
import { harbourJson } from './support/harbour.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** Puts a value at a path of the demo file; undefined takes away what is there. */
function spoil(path: readonly (string | number)[], value: Json | undefined, json = harbourJson()): Record<string, unknown> {
  let at: unknown = json;
  for (const key of path.slice(0, -1)) at = (at as Record<string | number, unknown>)[key];
  const last = path.at(-1) ?? '';
  if (value === undefined) delete (at as Record<string | number, unknown>)[last];
  else (at as Record<string | number, unknown>)[last] = value;
  return json;
}

function faultsOf(json: unknown): readonly FileFault[] {
  const result = readBakehouseFile(json);
  return result.ok ? [] : result.fault;
}

function at(...path: (string | number)[]): (string | number)[] {
  return path;
}

const first = ['formulas', 0, 'method'] as const;

/** One thing wrong, where it is said to stand, and what is said of it. */
const SHAPE: readonly (readonly [string, (string | number)[], Json | undefined, string, RegExp])[] = [
  ['another format', at('format'), 2, 'format', /this program reads format 1/],
  ['no house', at('house'), undefined, 'house', /./],
  ['a field nobody knows', at('house', 'colour'), 'grey', 'house', /colour/],
  ['a key in capitals', at('kitchen', 'mixers', 0, 'id'), 'Spiral', 'kitchen.mixers[0].id', /lower case/],
  ['letters of three', at('formulas', 4, 'letters'), 'Che', 'formulas[4].letters', /one upper case letter/],
  ['pieces in parts', at('day', 'batches', 0, 'cuts', 0, 'pieces'), 9.5, 'day.batches[0].cuts[0].pieces', /pieces are whole/],
  ['a negative weight', at('day', 'batches', 0, 'doughG'), -1, 'day.batches[0].doughG', /./],
  ['a piece of nothing', at('products', 0, 'pieceG'), 0, 'products[0].pieceG', /more than nothing/],
  ['an empty name', at('house', 'name'), '  ', 'house.name', /cannot be empty/],
  ['a clock time that no clock shows', at('day', 'batches', 0, 'start'), { at: '24:00' }, 'day.batches[0].start.at', /HH:MM/],
  ['a start that is none', at('day', 'batches', 0, 'start'), {}, 'day.batches[0].start', /"at": "HH:MM".*"afterLoadMin"/],
  [
    'a line that is none',
    at('formulas', 0, 'parts', 0, 'items', 0),
    { g: 5 },
    'formulas[0].parts[0].items[0]',
    /"item": ingredient.*"part"/,
  ],
  ['a date that is none', at('day', 'serviceDate'), '2026-02-30', 'day.serviceDate', /./],
  ['no formulas', at('formulas'), [], 'formulas', /./],
  [
    'earliest after target',
    at(...first, 2, 'minutes'),
    { earliest: 5, target: 4 },
    'formulas[0].method[2].minutes.earliest',
    /earliest \(5 min\) must not be after target \(4 min\)/,
  ],
  [
    'latest before target',
    at(...first, 2, 'minutes'),
    { target: 4, latest: 3 },
    'formulas[0].method[2].minutes.latest',
    /latest \(3 min\) must not be before target \(4 min\)/,
  ],
  [
    'lost before late',
    at(...first, 2, 'toleranceMin'),
    { late: 5, lost: 2 },
    'formulas[0].method[2].toleranceMin.lost',
    /lost \(2 min\) must not come before late \(5 min\)/,
  ],
  ['a judged step without its check', at(...first, 2, 'check'), undefined, 'formulas[0].method[2].check', /needs the check/],
  ['a bake without phases', at('products', 0, 'way', 6, 'bake'), undefined, 'products[0].way[6].bake', /needs its phases/],
  [
    'phases that do not last as long as the bake',
    at('products', 0, 'way', 6, 'bake'),
    [{ minutes: 44 }],
    'products[0].way[6].bake',
    /phases last 44 min, the target says 45 min/,
  ],
  ['phases of a step that is no bake', at(...first, 0, 'bake'), [{ minutes: 6 }], 'formulas[0].method[0].bake', /only a bake has phases/],
];

const MEANING: typeof SHAPE = [
  ['a mixer at no station', at('kitchen', 'mixers', 0, 'station'), 'cellar', 'kitchen.mixers[0].station', /no station "cellar"/],
  [
    'a mixer whose least is more than its most',
    at('kitchen', 'mixers', 0, 'leastG'),
    50_000,
    'kitchen.mixers[0].leastG',
    /more than the most/,
  ],
  ['a bowl for no mixer', at('kitchen', 'bowls', 0, 'fits', 0), 'fork', 'kitchen.bowls[0].fits[0]', /no mixer "fork"/],
  ['two stations with one id', at('kitchen', 'stations', 1, 'id'), 'mixer', 'kitchen.stations[1].id', /"mixer" is used twice/],
  [
    'two slots with one id',
    at('kitchen', 'ovens', 0, 'decks', 1, 'slots', 0, 'id'),
    'top-left',
    'kitchen.ovens[0].decks[1].slots[0].id',
    /already used at kitchen\.ovens\[0\]\.decks\[0\]\.slots\[0\]\.id/,
  ],
  ['two formulas with one id', at('formulas', 1, 'id'), 'country', 'formulas[1].id', /"country" is used twice/],
  [
    'two formulas with the same letters',
    at('formulas', 1, 'letters'),
    'C',
    'formulas[1].letters',
    /"C" already belongs to formula "country"/,
  ],
  [
    'an ingredient that is not listed',
    at('formulas', 0, 'parts', 0, 'items', 0, 'item'),
    'spelt',
    'formulas[0].parts[0].items[0].item',
    /no ingredient "spelt"/,
  ],
  [
    'a part that stands nowhere before',
    at('formulas', 0, 'parts', 1, 'items', 4, 'part'),
    'Poolish',
    'formulas[0].parts[1].items[4].part',
    /"Poolish" is not a part that stands before/,
  ],
  [
    'a part that goes into nothing',
    at('formulas', 0, 'parts', 1, 'items', 4),
    { item: 'water', g: 1 },
    'formulas[0].parts[0].name',
    /"Liquid levain" goes into nothing/,
  ],
  ['two parts with one name', at('formulas', 1, 'parts', 1, 'name'), 'Rye sour', 'formulas[1].parts[1].name', /used twice/],
  [
    'a part taken twice',
    at('formulas', 1, 'parts', 2, 'items', 4, 'part'),
    'Rye sour',
    'formulas[1].parts[2].items[4].part',
    /already taken/,
  ],
  ['two steps with one id', at(...first, 1, 'id'), 'weigh', 'formulas[0].method[1].id', /"weigh" is used twice/],
  ['a step at no station', at(...first, 0, 'station'), 'cellar', 'formulas[0].method[0].station', /no station "cellar"/],
  ['a rest in no place', at(...first, 7, 'place'), 'cellar', 'formulas[0].method[7].place', /no rest place "cellar"/],
  [
    'an addition that is not listed',
    at(...first, 4, 'additions', 0, 'item'),
    'spelt',
    'formulas[0].method[4].additions[0].item',
    /no ingredient "spelt"/,
  ],
  [
    'a claim on what is not there',
    at(...first, 2, 'claims', 0, 'ids', 0),
    'fork',
    'formulas[0].method[2].claims[0].ids[0]',
    /no mixer "fork"/,
  ],
  [
    'a link to a step ahead',
    at(...first, 0, 'after'),
    [{ step: 'divide' }],
    'formulas[0].method[0].after[0].step',
    /"divide" is not a step that stands before/,
  ],
  [
    'a bake that nothing takes out',
    at('products', 0, 'way'),
    [{ id: 'bake', verb: 'bake', kind: 'bake', minutes: { target: 1 }, bake: [{ minutes: 1 }] }],
    'products[0].way[0].kind',
    /a bake cannot be the last step/,
  ],
  ['a product of no formula', at('products', 0, 'formula'), 'ghost', 'products[0].formula', /no formula "ghost"/],
  [
    'a way that repeats a step of the method',
    at('products', 0, 'way', 0, 'id'),
    'weigh',
    'products[0].way[0].id',
    /"weigh" is already a step of formula "country"/,
  ],
  ['a batch of no formula', at('day', 'batches', 0, 'formula'), 'ghost', 'day.batches[0].formula', /no formula "ghost"/],
  ['a cut for no product', at('day', 'batches', 0, 'cuts', 0, 'product'), 'ghost', 'day.batches[0].cuts[0].product', /no product "ghost"/],
  [
    'a cut for another formula’s product',
    at('day', 'batches', 0, 'cuts', 0, 'product'),
    'rye-tin',
    'day.batches[0].cuts[0].product',
    /made of formula "rye", not "country"/,
  ],
  ['a dough without cuts', at('day', 'batches', 0, 'cuts'), [], 'day.batches[0].cuts', /at least one cut/],
  [
    'cuts that need more than there is',
    at('day', 'batches', 0, 'doughG'),
    8999,
    'day.batches[0].doughG',
    /the cuts need 9000 g, the batch has 8999 g/,
  ],
];

describe('D20 every fault of a bakehouse file is listed, with its path', () => {
  test.each([...SHAPE, ...MEANING])('%s', (_name, path, value, faultPath, message) => {
    const faults = faultsOf(spoil(path, value));
    expect(faults.map((fault) => fault.path)).toContain(faultPath);
    expect(faults.find((fault) => fault.path === faultPath)?.message).toMatch(message);
  });

  test('several at once, of shape', () => {
    const json = harbourJson();
    for (const [, path, value] of SHAPE.slice(3, 8)) spoil(path, value, json);
    expect(
      faultsOf(json)
        .map((fault) => fault.path)
        .sort(),
    ).toEqual(
      SHAPE.slice(3, 8)
        .map(([, , , faultPath]) => faultPath)
        .sort(),
    );
  });

  test('several at once, of meaning', () => {
    const json = harbourJson();
    const wrong = MEANING.filter(([name]) =>
      ['a mixer at no station', 'a rest in no place', 'an addition that is not listed', 'a cut for no product'].includes(name),
    );
    for (const [, path, value] of wrong) spoil(path, value, json);
    expect(
      faultsOf(json)
        .map((fault) => fault.path)
        .sort(),
    ).toEqual(wrong.map(([, , , faultPath]) => faultPath).sort());
  });

  test('two cuts of a formula that does not end in a divide', () => {
    const json = spoil(['formulas', 2, 'method', 8, 'verb'], 'scale');
    expect(faultsOf(json)).toEqual([
      {
        path: 'day.batches[2].cuts',
        message: expect.stringMatching(/must end its method with a divide/) as string,
        facts: { code: 'divideNotLast', formula: 'milk-buns' },
      },
    ]);
  });

  test('two cuts of a formula that divides before its end too', () => {
    const json = spoil(['formulas', 2, 'method', 7, 'verb'], 'divide');
    expect(faultsOf(json)).toEqual([
      {
        path: 'day.batches[2].cuts',
        message: expect.stringMatching(/must divide once only/) as string,
        facts: { code: 'divideTwice', formula: 'milk-buns' },
      },
    ]);
  });

  test('a batch of a prep without a weight', () => {
    const json = spoil(['formulas', 1, 'kind'], 'prep');
    spoil(['day', 'batches', 1], { formula: 'rye', start: { at: '04:30' } }, json);
    expect(faultsOf(json)).toEqual([{ path: 'day.batches[1].doughG', message: expect.stringMatching(/say how much/) as string }]);
  });

  test.each([[null], [7], ['file'], [[]]])('%j is no bakehouse file at all', (value) => {
    expect(faultsOf(value).map((fault) => fault.path)).toEqual(['(the whole file)']);
  });

  test('a start by the clock of an evening before is read', () => {
    const result = readBakehouseFile(spoil(['day', 'batches', 0, 'start'], { at: '22:15', daysBefore: 1 }));
    expect(result.ok && result.value.day.batches[0]?.start).toEqual({ at: '22:15', daysBefore: 1 });
  });

  test('paths are written as people read them', () => {
    expect([pathText(['a', 0, 'b', 'c', 12]), pathText([]), pathText([3])]).toEqual(['a[0].b.c[12]', '(the whole file)', '[3]']);
  });
});
