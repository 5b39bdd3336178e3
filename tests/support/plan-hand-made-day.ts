import { formulaSchema, ingredientSchema, productSchema } from '../../shared/documents/formula.ts';
import { kitchenSchema } from '../../shared/documents/kitchen.ts';
import { EMPTY_STATE, type FloorState } from '../../shared/floor/state.ts';
import type { ProposedStep } from '../../shared/plan/proposed.ts';
import { idOf } from '../domain/support/ids.ts';
import type { MadeBatch } from './plan-day-threads.ts';

/** An invented house with two doughs, made so that each rule of the floor is met with nothing to spare somewhere. */

const MINUTE_MS = 60_000;
export const FOUR_MS = Date.UTC(2026, 2, 7, 4, 0, 0);

const hands = (id: string, verb: string, station: string, target: number, rest: object = {}): object => ({
  id,
  verb,
  kind: 'hands',
  station,
  minutes: { target },
  ...rest,
});
const waits = (id: string, verb: string, earliest: number, target: number, latest: number, rest: object = {}): object => ({
  id,
  verb,
  kind: 'timed',
  minutes: { earliest, target, latest },
  ...rest,
});
const bakes = (minutes: number, temperatureC: number): object => ({
  id: 'bake',
  verb: 'bake',
  kind: 'bake',
  minutes: { target: minutes, latest: minutes + 5 },
  bake: [{ minutes, temperatureC, steam: 'in' }],
});
const IN_MIXER = { claims: [{ kind: 'mixer' }] };
const IN_DECK = { claims: [{ kind: 'deck' }] };

export const KITCHEN = {
  stations: [
    { id: 'mixing', name: 'Mixing' },
    { id: 'bench', name: 'Bench' },
    { id: 'oven', name: 'Oven' },
  ],
  mixers: [
    { id: 'spiral', name: 'Spiral', kind: 'spiral', leastG: 1000, mostG: 8000, changeOverMin: 10, station: 'mixing' },
    { id: 'small', name: 'Small', kind: 'planetary', leastG: 500, mostG: 3000, station: 'mixing' },
  ],
  restPlaces: [{ id: 'shelf', name: 'Shelf', kind: 'warm-shelf', temperatureC: 27, room: 2 }],
  vessels: [
    { id: 'banneton', name: 'Banneton', kind: 'banneton', count: 8, turnRoundMin: 30 },
    { id: 'tray', name: 'Tray', kind: 'tray', count: 2, turnRoundMin: 10 },
  ],
  ovens: [
    {
      id: 'oven',
      name: 'Oven',
      decks: [
        {
          id: 'top',
          name: 'Top',
          temperatureC: 240,
          heatKPerMin: 5,
          slots: [
            { id: 't1', name: '1' },
            { id: 't2', name: '2' },
          ],
        },
        {
          id: 'low',
          name: 'Low',
          temperatureC: 240,
          heatKPerMin: 5,
          slots: [
            { id: 'l1', name: '1' },
            { id: 'l2', name: '2' },
          ],
        },
      ],
    },
  ],
};

const INGREDIENTS = [
  { id: 'flour', name: 'Flour', kind: 'flour', allergens: ['wheat'] },
  { id: 'seeds', name: 'Seeds', kind: 'seed', allergens: ['sesame'] },
  { id: 'milk', name: 'Milk', kind: 'dairy', allergens: ['milk'] },
];

const FORMULAS = [
  {
    id: 'plain',
    name: 'Plain',
    letters: 'P',
    parts: [
      {
        name: 'dough',
        role: 'dough',
        items: [
          { item: 'flour', g: 900 },
          { formula: 'sour', g: 100 },
        ],
      },
    ],
    method: [
      hands('mix', 'firstSpeed', 'mixing', 10, { ...IN_MIXER, additions: [{ formula: 'sour' }] }),
      waits('bulk', 'bulk', 30, 40, 60, { place: 'shelf' }),
      hands('divide', 'divide', 'bench', 6),
    ],
  },
  {
    id: 'seeded',
    name: 'Seeded',
    letters: 'S',
    parts: [
      {
        name: 'dough',
        role: 'dough',
        items: [
          { item: 'flour', g: 1000 },
          { item: 'seeds', g: 100 },
        ],
      },
    ],
    method: [
      hands('mix', 'firstSpeed', 'mixing', 10, IN_MIXER),
      waits('bulk', 'bulk', 30, 40, 60, { place: 'shelf' }),
      hands('divide', 'divide', 'bench', 6),
    ],
  },
  {
    id: 'sour',
    name: 'Sour',
    letters: 'O',
    kind: 'ferment',
    parts: [{ name: 'sour', items: [{ item: 'flour', g: 1000 }] }],
    method: [hands('feed', 'feed', 'mixing', 4), waits('ripen', 'ripen', 120, 180, 240)],
  },
  {
    id: 'cream',
    name: 'Cream',
    letters: 'C',
    kind: 'prep',
    parts: [{ name: 'cream', role: 'dough', items: [{ item: 'milk', g: 1000 }] }],
    method: [hands('cook', 'cook', 'bench', 10), waits('keep', 'wait', 0, 30, 50)],
  },
];

const PRODUCTS = [
  {
    id: 'loaf',
    name: 'Loaf',
    formula: 'plain',
    pieceG: 800,
    piecesPerSlot: 5,
    way: [
      hands('shape', 'shape', 'bench', 2, {
        minutesPerPiece: 0.5,
        claims: [{ kind: 'vessel', ids: ['banneton'], perPieces: 1 }],
        toleranceMin: { late: 5, lost: 20 },
      }),
      waits('prove', 'prove', 40, 50, 70),
      hands('load', 'load', 'oven', 2, IN_DECK),
      bakes(30, 240),
      hands('take-out', 'takeOut', 'oven', 2),
      waits('cool', 'cool', 30, 40, 600),
      hands('pack', 'pack', 'oven', 3),
    ],
  },
  {
    id: 'roll',
    name: 'Roll',
    formula: 'seeded',
    pieceG: 100,
    piecesPerSlot: 5,
    loads: { after: 'shape', pieces: 5 },
    sidePreps: [{ formula: 'cream', joins: 'pack', readyMin: 5, notBefore: 'shape', withinMin: 60 }],
    way: [
      hands('shape', 'shape', 'bench', 2, {
        minutesPerPiece: 0.5,
        claims: [{ kind: 'vessel', ids: ['tray'], perPieces: 5, until: 'take-out' }],
      }),
      waits('prove', 'prove', 35, 40, 60),
      hands('load', 'load', 'oven', 2, IN_DECK),
      bakes(15, 200),
      hands('take-out', 'takeOut', 'oven', 2),
      waits('cool', 'cool', 20, 30, 90),
      hands('pack', 'pack', 'oven', 3, { additions: [{ formula: 'cream', gPerPiece: 20 }] }),
    ],
  },
];

export const BATCHES: readonly MadeBatch[] = [
  { batchKey: 'seeded#1', formulaId: 'seeded', grams: 1000, cuts: [{ productId: 'roll', pieces: 10 }] },
  { batchKey: 'sour#1', formulaId: 'sour', grams: 1000, cuts: [] },
  { batchKey: 'plain#1', formulaId: 'plain', grams: 6400, cuts: [{ productId: 'loaf', pieces: 8 }] },
];

/** The state of that house, with what is ordered of it; the kitchen may be another. */
export function handMadeState(kitchen: object = KITCHEN): FloorState {
  const versions = (all: readonly { readonly id: string }[]): Record<string, number> => Object.fromEntries(all.map(({ id }) => [id, 1]));
  const order = (n: number, productId: string, pieces: number) =>
    [
      idOf(n),
      { id: idOf(n), serviceDate: '2026-03-07', readyMs: FOUR_MS + 360 * MINUTE_MS, productId, pieces, form: 'cooled', weight: 1 },
    ] as const;
  return {
    ...EMPTY_STATE,
    kitchen: { version: 1, document: kitchenSchema.parse(kitchen) },
    ingredients: { version: 1, document: INGREDIENTS.map((one) => ingredientSchema.parse(one)) },
    formulas: Object.fromEntries(FORMULAS.map((one) => [`${one.id}@1`, formulaSchema.parse(one)])),
    products: Object.fromEntries(PRODUCTS.map((one) => [`${one.id}@1`, productSchema.parse(one)])),
    formulaVersions: versions(FORMULAS),
    productVersions: versions(PRODUCTS),
    orders: Object.fromEntries([order(1, 'loaf', 8), order(2, 'roll', 10)]),
  };
}

type Row = readonly [place: string, stepId: string, fromMin: number, toMin: number, resources?: readonly string[]];

/** A plan of that day in which everything is right: minutes after four. */
const ROWS: readonly Row[] = [
  ['sour#1', 'feed', -160, -156, ['station mixing']],
  ['sour#1', 'ripen', -156, 20],
  ['seeded#1', 'mix', 0, 10, ['station mixing', 'mixer spiral']],
  ['seeded#1', 'bulk', 10, 40, ['restPlace shelf']],
  ['seeded#1', 'divide', 40, 46, ['station bench']],
  ['seeded#1', 'shape', 46, 53, ['station bench']],
  ['seeded#1 0', 'prove', 53, 93],
  ['seeded#1 0', 'load', 93, 95, ['station oven', 'deck top']],
  ['seeded#1 0', 'bake', 95, 110, ['deck top']],
  ['seeded#1 0', 'take-out', 110, 112, ['station oven', 'deck top']],
  ['seeded#1 0', 'cool', 112, 142],
  ['seeded#1 0', 'pack', 142, 145, ['station oven']],
  ['seeded#1 1', 'prove', 53, 95],
  ['seeded#1 1', 'load', 95, 97, ['station oven', 'deck top']],
  ['seeded#1 1', 'bake', 97, 112, ['deck top']],
  ['seeded#1 1', 'take-out', 112, 114, ['station oven', 'deck top']],
  ['seeded#1 1', 'cool', 114, 145],
  ['seeded#1 1', 'pack', 145, 148, ['station oven']],
  ['cream>seeded#1', 'cook', 100, 110, ['station bench']],
  ['cream>seeded#1', 'keep', 110, 145],
  ['plain#1', 'mix', 20, 30, ['station mixing', 'mixer spiral']],
  ['plain#1', 'bulk', 30, 70, ['restPlace shelf']],
  ['plain#1', 'divide', 70, 76, ['station bench']],
  ['plain#1', 'shape', 76, 82, ['station bench', 'vessel banneton']],
  ['plain#1', 'prove', 82, 122],
  ['plain#1', 'load', 122, 124, ['station oven', 'deck top']],
  ['plain#1', 'bake', 124, 154, ['deck top']],
  ['plain#1', 'take-out', 154, 156, ['station oven', 'deck top']],
  ['plain#1', 'cool', 156, 196],
  ['plain#1', 'pack', 196, 199, ['station oven']],
];

/** That plan; `changed` gives other minutes and things to steps by their place and id, null leaves one out. */
export function handMadePlan(
  changed: Readonly<Record<string, readonly [fromMin: number, toMin: number, resources?: readonly string[]] | null>> = {},
): ProposedStep[] {
  return ROWS.flatMap(([place, stepId, fromMin, toMin, resources = []]) => {
    const other = changed[`${place} ${stepId}`];
    if (other === null) return [];
    const [from, to, things = resources] = other ?? [fromMin, toMin];
    const [batchKey = '', load] = place.split(' ');
    return [
      {
        batchKey,
        ...(load === undefined ? {} : { load: Number(load) }),
        stepId,
        plannedStartMs: FOUR_MS + from * MINUTE_MS,
        plannedEndMs: FOUR_MS + to * MINUTE_MS,
        resources: things.map((thing) => {
          const [kind, id = ''] = thing.split(' ');
          return { kind: kind as ProposedStep['resources'][number]['kind'], id };
        }),
      },
    ];
  });
}
