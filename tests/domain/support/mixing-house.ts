import { readBakehouseFile, type BakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import type { WeighLine, WeighOut } from '../../../shared/floor/weigh-out.ts';
import { weighOutOf } from '../../../shared/floor/weigh-out.ts';
import { assert } from '../../../shared/result.ts';
import { Floor } from './floor.ts';
import { bringInCommand, OPENING_MS } from './harbour.ts';
import { SERVER_DEVICE } from './ids.ts';
import type { Listed } from './levain-house.ts';

const SPIRAL = { claims: [{ kind: 'mixer', ids: ['spiral'] }] };
const hands = (id: string, verb: string, more: object = {}): object => ({ id, verb, kind: 'hands', minutes: { target: 2 }, ...more });
const speed = (id: string, verb: string, claims: object): object => ({
  id,
  verb,
  kind: 'judged',
  check: 'even',
  minutes: { target: 4 },
  ...claims,
});
const bulk = { id: 'bulk', verb: 'bulk', kind: 'timed', minutes: { target: 90 }, place: 'bench' };

const method = (claims: object): object[] => [
  hands('weigh', 'weigh'),
  speed('first-speed', 'firstSpeed', claims),
  speed('second-speed', 'secondSpeed', claims),
  hands('turn-out', 'turnOut', claims),
  bulk,
  hands('divide', 'divide'),
];

const KITCHEN = {
  stations: [{ id: 'mixer', name: 'Mixer' }],
  mixers: [
    { id: 'spiral', name: 'Spiral', kind: 'spiral', leastG: 1000, mostG: 60_000, station: 'mixer' },
    { id: 'fork', name: 'Fork', kind: 'fork', leastG: 1000, mostG: 60_000, riseK: 2, station: 'mixer' },
  ],
  restPlaces: [
    { id: 'bench', name: 'Bench', kind: 'bench', temperatureC: 22 },
    { id: 'cold', name: 'Cold room', kind: 'cold-room', temperatureC: 6 },
  ],
  ovens: [],
};

const INGREDIENTS = [
  { id: 'wheat', name: 'Wheat flour', kind: 'flour', allergens: ['wheat'] },
  { id: 'water', name: 'Water', kind: 'water' },
  { id: 'salt', name: 'Salt', kind: 'salt' },
  { id: 'yeast', name: 'Fresh yeast', kind: 'yeast', yeastForm: 'fresh' },
  { id: 'butter', name: 'Butter', kind: 'fat', waterPct: 16, allergens: ['milk'] },
  { id: 'milk', name: 'Milk', kind: 'dairy', waterPct: 88, allergens: ['milk'] },
  { id: 'oats', name: 'Oat flakes', kind: 'seed', allergens: ['oats'] },
];

/**
 * All of a poolish in a dough: inputs of "Baker's Percentage 4", wildyeastblog, as trade.md cites them (flour 900, water 468,
 * yeast 9, salt 27, poolish 468, 468 and 0.3).
 */
const POOLISH_LOAF = {
  id: 'poolish-loaf',
  name: 'Poolish loaf',
  letters: 'P',
  doughC: 26,
  parts: [
    {
      name: 'Poolish',
      items: [
        { item: 'wheat', g: 468 },
        { item: 'water', g: 468 },
        { item: 'yeast', g: 0.3 },
      ],
    },
    {
      name: 'Dough',
      role: 'dough',
      items: [
        { item: 'wheat', g: 900 },
        { item: 'water', g: 468 },
        { item: 'yeast', g: 9 },
        { item: 'salt', g: 27 },
        { part: 'Poolish', g: 936.3 },
      ],
    },
  ],
  method: method(SPIRAL),
};

/** Flour and water alone, as in the heat balance of trade.md: 10 kg of flour and 6.5 kg of water to 25 °C. */
const PLAIN = {
  id: 'plain',
  name: 'Plain',
  letters: 'A',
  doughC: 25,
  parts: [
    {
      name: 'Dough',
      role: 'dough',
      items: [
        { item: 'wheat', g: 1000 },
        { item: 'water', g: 650 },
      ],
    },
  ],
  method: method(SPIRAL),
};

/** 1400 flour, 840 water, 140 starter, 28 salt: Kleinwächter, The Sourdough Framework, as trade.md cites it. */
const STARTER_LOAF = {
  ...PLAIN,
  id: 'starter-loaf',
  name: 'Starter loaf',
  letters: 'S',
  parts: [
    {
      name: 'Dough',
      role: 'dough',
      items: [
        { item: 'wheat', g: 1400 },
        { item: 'water', g: 840 },
        { formula: 'levain', g: 140 },
        { item: 'salt', g: 28 },
      ],
    },
  ],
  method: [hands('weigh', 'weigh'), hands('fill-bowl', 'add', { additions: [{ formula: 'levain' }] }), ...method(SPIRAL).slice(1)],
};

/** Everything that goes in later: a soaker, salt, butter in two portions, water kept back. */
const RICH = {
  id: 'rich',
  name: 'Rich loaf',
  letters: 'R',
  doughC: 26,
  takesBack: [{ what: 'scrap', capPct: 20, ageMin: 600 }],
  parts: [
    {
      name: 'Soaker',
      role: 'soaker',
      items: [
        { item: 'oats', g: 100 },
        { item: 'water', g: 100 },
      ],
    },
    {
      name: 'Dough',
      role: 'dough',
      items: [
        { item: 'wheat', g: 1000 },
        { item: 'water', g: 560 },
        { formula: 'levain', g: 200 },
        { item: 'butter', g: 196 },
        { item: 'salt', g: 20 },
        { part: 'Soaker', g: 200 },
      ],
    },
  ],
  method: [
    hands('weigh', 'weigh'),
    hands('fill-bowl', 'add', { ...SPIRAL, additions: [{ formula: 'levain' }] }),
    speed('first-speed', 'firstSpeed', SPIRAL),
    hands('salt', 'add', { ...SPIRAL, additions: [{ item: 'salt' }, { item: 'water', pct: 3, heldBack: true }] }),
    speed('second-speed', 'secondSpeed', SPIRAL),
    hands('butter-1', 'add', { ...SPIRAL, additions: [{ item: 'butter', pct: 10 }] }),
    hands('butter-2', 'add', { ...SPIRAL, additions: [{ item: 'butter', pct: 8 }, { item: 'oats' }] }),
    speed('last-speed', 'secondSpeed', SPIRAL),
    hands('turn-out', 'turnOut', SPIRAL),
    bulk,
    hands('divide', 'divide'),
  ],
};

/** One part of seed to four of flour and five of water. */
const LEVAIN = {
  id: 'levain',
  name: 'Levain',
  letters: 'L',
  kind: 'ferment',
  doughC: 27,
  seedG: 100,
  parts: [
    {
      name: 'Levain',
      items: [
        { item: 'wheat', g: 400 },
        { item: 'water', g: 500 },
        { seed: true, g: 100 },
      ],
    },
  ],
  method: [
    hands('feed', 'feed'),
    { id: 'ripen', verb: 'ripen', kind: 'timed', minutes: { earliest: 60, target: 480, latest: 900 }, place: 'cold' },
  ],
};

/** Milk is what is poured. */
const BUNS = {
  ...PLAIN,
  id: 'buns',
  name: 'Milk buns',
  letters: 'B',
  parts: [
    {
      name: 'Dough',
      role: 'dough',
      items: [
        { item: 'wheat', g: 1000 },
        { item: 'milk', g: 600 },
      ],
    },
  ],
  method: method({ claims: [{ kind: 'mixer', ids: ['fork'] }] }),
};

const way = (id: string): object[] => [
  hands(`${id}-shape`, 'shape'),
  { id: `${id}-prove`, verb: 'prove', kind: 'timed', minutes: { target: 45 } },
  hands(`${id}-pack`, 'pack'),
];
const product = (id: string, formula: string, pieceG: number): object => ({ id, name: id, formula, pieceG, way: way(id) });
const PRODUCTS = [
  product('loaf', 'poolish-loaf', 350),
  product('round', 'poolish-loaf', 90),
  product('batard', 'plain', 500),
  product('tin', 'rich', 1000),
  product('boule', 'starter-loaf', 1200),
  product('bun', 'buns', 70),
];

/** A day of the house with a poolish dough, a plain one, a rich one, milk buns and a levain pot, as its parsed JSON. */
export function mixingJson(listed: readonly Listed[]): Record<string, unknown> {
  return {
    format: 1,
    house: { name: 'The harbour annexe', zone: 'UTC', units: { temperature: 'C', weight: 'g' }, ruleSet: 'england' },
    kitchen: KITCHEN,
    ingredients: INGREDIENTS,
    formulas: [LEVAIN, POOLISH_LOAF, PLAIN, STARTER_LOAF, RICH, BUNS],
    products: PRODUCTS,
    day: { batches: listed.map(({ min, ...batch }) => ({ ...batch, start: { afterLoadMin: min } })) },
  };
}

function fileOf(json: Record<string, unknown>): BakehouseFile {
  const read = readBakehouseFile(json);
  assert(read.ok, read.ok ? '' : JSON.stringify(read.fault, null, 2));
  return read.value;
}

/** The house with a day brought in. */
export function mixingFloor(...listed: readonly Listed[]): Floor {
  return changedFloor(() => {}, ...listed);
}

/** The house as its documents are changed before they are brought in. */
export function changedFloor(change: (file: BakehouseFile) => void, ...listed: readonly Listed[]): Floor {
  const file = fileOf(mixingJson(listed));
  change(file);
  const floor = new Floor();
  floor.ok(bringInCommand(file, OPENING_MS), { deviceId: SERVER_DEVICE });
  return floor;
}

/** The spiral warms doughs by so many kelvin, and these doughs are to become so warm. */
export function warming(riseK: number, doughC: number): (file: BakehouseFile) => void {
  return ({ kitchen, formulas }) => {
    for (const mixer of kitchen.mixers) if (mixer.id === 'spiral') mixer.riseK = riseK;
    for (const formula of formulas) if (formula.kind === 'dough') formula.doughC = doughC;
  };
}

const cut = (product: string, pieces: number): { product: string; pieces: number } => ({ product, pieces });
export const POOLISH_5: Listed = { formula: 'poolish-loaf', min: 0, doughG: 11_701.5, cuts: [cut('loaf', 24), cut('round', 30)] };
export const PLAIN_10: Listed = { formula: 'plain', min: 0, doughG: 16_500, cuts: [cut('batard', 30)] };
export const STARTER_1: Listed = { formula: 'starter-loaf', min: 0, doughG: 2408, cuts: [cut('boule', 2)] };
export const RICH_10: Listed = { formula: 'rich', min: 0, doughG: 21_760, cuts: [cut('tin', 20)] };
export const BUNS_10: Listed = { formula: 'buns', min: 0, doughG: 16_000, cuts: [cut('bun', 200)] };
export const LEVAIN_POT: Listed = { formula: 'levain', min: 0, doughG: 5000 };

/** What is weighed out for a tag. */
export function weighOut(floor: Floor, tag: string): WeighOut {
  const found = weighOutOf(floor.state, floor.piece(tag));
  assert(found !== null, `nothing is weighed out for ${tag}`);
  return found;
}

/** One line of it, by its id. */
export function line(floor: Floor, tag: string, lineId: string): WeighLine {
  const found = weighOut(floor, tag)
    .parts.flatMap((part) => part.lines)
    .find((one) => one.id === lineId);
  assert(found !== undefined, `${tag} has no line ${lineId}`);
  return found;
}

/** Every line as `name grams`, part by part. */
export function asShown(found: WeighOut): readonly (readonly string[])[] {
  return found.parts.map((part) => part.lines.map((one) => `${one.name} ${one.grams}`));
}
