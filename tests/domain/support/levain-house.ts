import { readBakehouseFile, type BakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import type { Step } from '../../../shared/documents/method.ts';
import type { Decision } from '../../../shared/floor/decide/decision.ts';
import { drawEvents } from '../../../shared/floor/decide/draw.ts';
import { feedEvents } from '../../../shared/floor/decide/feed.ts';
import type { CommandOf } from '../../../shared/floor/commands.ts';
import type { FloorEvent } from '../../../shared/floor/events.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { wayOf } from '../../../shared/floor/way.ts';
import { assert } from '../../../shared/result.ts';
import { Floor } from './floor.ts';
import { bringInCommand, OPENING_MS } from './harbour.ts';
import { idOf, SERVER_DEVICE } from './ids.ts';

export const MINUTE_MS = 60_000;

const hands = (id: string, verb: string, target: number, more: object = {}): object => ({
  id,
  verb,
  kind: 'hands',
  minutes: { target },
  ...more,
});
const MIXER = { claims: [{ kind: 'mixer' }] };

const KITCHEN = {
  stations: [{ id: 'bench', name: 'Bench' }],
  mixers: [
    { id: 'spiral', name: 'Spiral', kind: 'spiral', leastG: 1000, mostG: 80_000, station: 'bench' },
    { id: 'planetary', name: 'Planetary', kind: 'planetary', leastG: 1000, mostG: 80_000, station: 'bench' },
  ],
  restPlaces: [{ id: 'shelf', name: 'Shelf', kind: 'bench', temperatureC: 22 }],
  vessels: [{ id: 'tin', name: 'Tins', kind: 'tin', count: 40, turnRoundMin: 30 }],
  ovens: [
    {
      id: 'oven',
      name: 'Oven',
      decks: [{ id: 'deck', name: 'Deck', temperatureC: 230, slots: ['s1', 's2', 's3'].map((id) => ({ id, name: id })) }],
    },
  ],
};

const INGREDIENTS = [
  { id: 'wheat', name: 'Wheat flour', kind: 'flour', allergens: ['wheat'] },
  { id: 'water', name: 'Water', kind: 'water' },
  { id: 'salt', name: 'Salt', kind: 'salt' },
  { id: 'starter', name: 'Ripe starter', kind: 'other', allergens: ['wheat'] },
  { id: 'cheese', name: 'Fresh cheese', kind: 'dairy', allergens: ['milk'] },
  { id: 'flakes', name: 'Oat flakes', kind: 'seed', allergens: ['oats'] },
];

const LEVAIN = {
  id: 'levain',
  name: 'Levain',
  letters: 'L',
  kind: 'ferment',
  seedG: 500,
  parts: [
    {
      name: 'levain',
      items: [
        { item: 'starter', g: 1000 },
        { item: 'wheat', g: 2000 },
        { item: 'water', g: 2000 },
      ],
    },
  ],
  method: [hands('feed', 'feed', 5), { id: 'ripen', verb: 'ripen', kind: 'timed', minutes: { earliest: 360, target: 480, latest: 840 } }],
};

/** Of 18 700 g 10 000 g are flour, and 800 g more stand in the 2 000 g of levain, two fifths of which are flour. */
const COUNTRY = {
  id: 'country',
  name: 'Country',
  letters: 'C',
  takesBack: [
    { what: 'scrap', capPct: 10, ageMin: 240 },
    { what: 'trim', capPct: 10, ageMin: 240 },
    { what: 'oldBread', capPct: 5, ageMin: 1440 },
  ],
  parts: [
    {
      name: 'dough',
      role: 'dough',
      items: [
        { item: 'wheat', g: 10_000 },
        { item: 'water', g: 6500 },
        { item: 'salt', g: 200 },
        { formula: 'levain', g: 2000 },
      ],
    },
  ],
  method: [
    hands('weigh', 'weigh', 5),
    hands('add', 'add', 5, { ...MIXER, additions: [{ formula: 'levain' }] }),
    { id: 'first-speed', verb: 'firstSpeed', kind: 'judged', check: 'even', minutes: { target: 6 }, ...MIXER },
    { id: 'bulk', verb: 'bulk', kind: 'timed', minutes: { target: 60 } },
    hands('divide', 'divide', 10),
  ],
};

const PLAIN = {
  id: 'plain',
  name: 'Plain',
  letters: 'P',
  takesBack: COUNTRY.takesBack.slice(0, 2),
  parts: [
    {
      name: 'dough',
      role: 'dough',
      items: [
        { item: 'wheat', g: 10_000 },
        { item: 'water', g: 6000 },
      ],
    },
  ],
  method: COUNTRY.method.map((step) => ({ ...step, additions: [] })),
};

const FILLING = {
  id: 'filling',
  name: 'Cheese filling',
  letters: 'F',
  kind: 'prep',
  parts: [{ name: 'filling', items: [{ item: 'cheese', g: 1000 }] }],
  method: [hands('cook', 'cook', 20), { id: 'hold', verb: 'wait', kind: 'timed', minutes: { target: 30, latest: 240 }, place: 'shelf' }],
};

const SOAKER = {
  id: 'soaker',
  name: 'Oat soaker',
  letters: 'S',
  kind: 'prep',
  parts: [
    {
      name: 'soaker',
      items: [
        { item: 'flakes', g: 500 },
        { item: 'water', g: 500 },
      ],
    },
  ],
  method: [hands('mix', 'add', 2), { id: 'soak', verb: 'wait', kind: 'timed', minutes: { target: 30 } }],
};

const BUNS = {
  id: 'buns',
  name: 'Buns',
  letters: 'B',
  sidePreps: [{ formula: 'soaker', joins: 'add', readyMin: 30 }],
  parts: [
    {
      name: 'dough',
      role: 'dough',
      items: [
        { item: 'wheat', g: 6000 },
        { item: 'water', g: 3600 },
        { item: 'salt', g: 100 },
        { formula: 'soaker', g: 300 },
      ],
    },
  ],
  method: COUNTRY.method.map((step) => ('additions' in step ? { ...step, additions: [{ formula: 'soaker' }] } : step)),
};

const bakingFrom = (id: string): object[] => [
  { id: `${id}-prove`, verb: 'prove', kind: 'timed', minutes: { target: 45 } },
  hands(`${id}-load`, 'load', 2),
  { id: `${id}-bake`, verb: 'bake', kind: 'bake', minutes: { target: 30 }, bake: [{ minutes: 30 }] },
  hands(`${id}-out`, 'takeOut', 2),
  hands(`${id}-pack`, 'pack', 2),
];
const filled = (id: string, pieceG: number, gPerPiece: number): object => ({
  id,
  name: id,
  formula: 'buns',
  pieceG,
  sidePreps: [{ formula: 'filling', joins: `${id}-fill`, readyMin: 5, notBefore: 'first-speed', withinMin: 90 }],
  way: [hands(`${id}-fill`, 'fill', 10, { additions: [{ formula: 'filling', gPerPiece }] }), ...bakingFrom(id)],
});
const loaf = (id: string, formula: string): object => ({
  id,
  name: id,
  formula,
  pieceG: 880,
  bakeLossPct: 11,
  piecesPerSlot: 20,
  way: [hands(`${id}-shape`, 'shape', 10), ...bakingFrom(id)],
});

const PRODUCTS = [
  filled('bun', 80, 20),
  filled('roll', 60, 10),
  loaf('country-loaf', 'country'),
  loaf('country-round', 'country'),
  loaf('plain-loaf', 'plain'),
  { ...loaf('plain-round', 'plain'), loads: { after: 'plain-round-shape', pieces: 3 } },
];

/** What a day of the house lists: formula, minutes after the opening, grams, and pieces of products. */
export interface Listed {
  readonly formula: string;
  readonly min: number;
  readonly doughG?: number;
  readonly cuts?: readonly { readonly product: string; readonly pieces: number }[];
}

/** A small invented house with a levain pot, a dough that takes of it, a plain one, and buns with a soaker and a filling. */
export function levainFile(listed: readonly Listed[]): BakehouseFile {
  const read = readBakehouseFile({
    format: 1,
    house: { name: 'The harbour annexe', zone: 'UTC', units: { temperature: 'C', weight: 'g' }, ruleSet: 'england' },
    kitchen: KITCHEN,
    ingredients: INGREDIENTS,
    formulas: [LEVAIN, COUNTRY, PLAIN, FILLING, SOAKER, BUNS],
    products: PRODUCTS,
    day: { batches: listed.map(({ min, ...batch }) => ({ ...batch, start: { afterLoadMin: min } })) },
  });
  assert(read.ok, read.ok ? '' : JSON.stringify(read.fault, null, 2));
  return read.value;
}

/** The house with a day brought in. */
export function levainFloor(...listed: readonly Listed[]): Floor {
  const floor = new Floor();
  floor.ok(bringInCommand(levainFile(listed), OPENING_MS), { deviceId: SERVER_DEVICE });
  return floor;
}

export const POT: Listed = { formula: 'levain', min: 0, doughG: 5000 };
export const COUNTRY_20: Listed = { formula: 'country', min: 480, doughG: 18_700, cuts: [{ product: 'country-loaf', pieces: 20 }] };
export const PLAIN_20: Listed = { formula: 'plain', min: 0, doughG: 18_000, cuts: [{ product: 'plain-loaf', pieces: 20 }] };

let told = 0;

/** Folds what a decider says as one command of the phone. Returns the command's id. */
export function tell(floor: Floor, decision: Decision): string {
  assert(decision.ok, decision.ok ? '' : `refused: ${JSON.stringify(decision.fault)}`);
  told += 1;
  const commandId = idOf(3_000_000 + told);
  decision.value.forEach((event, ordinal) => floor.record(event, commandId, ordinal));
  return commandId;
}

/** What a step of a workpiece draws, as the tap that ends the step will say it. */
export function drawn(floor: Floor, tag: string, stepId: string, said: Pick<CommandOf<'finishStep'>, 'draws' | 'despite'> = {}): Decision {
  const workpiece = floor.piece(tag);
  const step = wayOf(floor.state, workpiece).find((candidate) => candidate.id === stepId);
  assert(step !== undefined, `${tag} has no step ${stepId}`);
  return drawEvents(floor.state, workpiece, step, said, floor.nowMs);
}

/** A pot is fed and ripens from now on. */
export function feedPot(floor: Floor, tag: string, feed?: CommandOf<'finishStep'>['feed']): string {
  const pot = floor.piece(tag);
  const fed = feedEvents(floor.state, pot, feed, floor.nowMs);
  assert(fed.ok, fed.ok ? '' : `refused: ${JSON.stringify(fed.fault)}`);
  const [step, ripen] = wayOf(floor.state, pot);
  assert(step !== undefined && ripen !== undefined, 'a pot is fed and ripens');
  return tell(floor, { ok: true, value: [...fed.value, ...afterFeed(pot.id, step, ripen, floor.nowMs)] });
}

function afterFeed(workpieceId: string, feed: Step, ripen: Step, atMs: number): readonly FloorEvent[] {
  const { earliest, target, latest } = ripen.minutes;
  return [
    { type: 'stepDone', workpieceId, stepId: feed.id, atMs },
    {
      type: 'stepStarted',
      workpieceId,
      stepId: ripen.id,
      atMs,
      resources: [],
      pins: {
        targetMin: target,
        ...(earliest === undefined ? {} : { earliestMin: earliest }),
        ...(latest === undefined ? {} : { latestMin: latest }),
        factor: 1,
        model: 'nominal',
        houseVersion: 1,
      },
    },
  ];
}

/** Everything that an undo has to bring back. */
export function lasting(state: FloorState): Omit<FloorState, 'sequence' | 'undo'> {
  const { sequence: _sequence, undo: _undo, ...rest } = state;
  return rest;
}

/** Grams that edges of a kind carry into a workpiece, or out of it. */
export function edgesG(
  floor: Floor,
  kind: FloorState['edges'][number]['kind'],
  end: { readonly from?: string; readonly to?: string },
): number {
  const from = end.from === undefined ? null : floor.id(end.from);
  const to = end.to === undefined ? null : floor.id(end.to);
  return floor.state.edges
    .filter((edge) => edge.kind === kind && (from === null || edge.fromId === from) && (to === null || edge.toId === to))
    .reduce((sum, edge) => sum + edge.grams, 0);
}
