import type { BookContext } from '../../../shared/documents/book-lookup.ts';
import { formulaSchema, ingredientSchema, productSchema, type Formula, type Product } from '../../../shared/documents/formula.ts';
import { kitchenSchema, type Kitchen } from '../../../shared/documents/kitchen.ts';
import type { z } from 'zod';

/** A small invented kitchen on the quay. */
export const QUAY_KITCHEN: Kitchen = kitchenSchema.parse({
  stations: [{ id: 'mixing', name: 'Mixing' }],
  mixers: [{ id: 'spiral', name: 'Spiral', kind: 'spiral', leastG: 2000, mostG: 20_000, station: 'mixing' }],
  restPlaces: [{ id: 'bench', name: 'Bench', kind: 'bench', temperatureC: 22 }],
  vessels: [{ id: 'tin', name: 'Tins', kind: 'tin', count: 30 }],
  ovens: [{ id: 'oven', name: 'Oven', decks: [{ id: 'top', name: 'Top', temperatureC: 240, slots: [{ id: 'left', name: 'Left' }] }] }],
});

export const QUAY_INGREDIENTS = [
  { id: 'flour', name: 'Flour', kind: 'flour', allergens: ['wheat'] },
  { id: 'water', name: 'Water', kind: 'water' },
  { id: 'salt', name: 'Salt', kind: 'salt' },
  { id: 'yeast', name: 'Yeast', kind: 'yeast', yeastForm: 'fresh' },
  { id: 'butter', name: 'Butter', kind: 'fat', allergens: ['milk'] },
].map((ingredient) => ingredientSchema.parse(ingredient));

/** A pot that is made with what was kept back of it. */
export const POT = formulaOf({
  id: 'pot',
  name: 'Pot',
  letters: 'P',
  kind: 'ferment',
  seedG: 100,
  parts: [
    {
      name: 'Pot',
      items: [
        { item: 'flour', g: 500 },
        { item: 'water', g: 500 },
        { seed: true, g: 100 },
      ],
    },
  ],
  method: [{ id: 'feed', verb: 'feed', kind: 'hands', minutes: { target: 5 } }],
});

/** A filling without any flour. */
export const FILLING = formulaOf({
  id: 'filling',
  name: 'Filling',
  letters: 'F',
  kind: 'prep',
  parts: [{ name: 'Filling', items: [{ item: 'butter', g: 400 }] }],
  method: [{ id: 'stir', verb: 'cook', kind: 'hands', minutes: { target: 10 } }],
});

/** A dough with a sponge, some of the pot, salt that goes in late and water that is held back. */
export const DOUGH = formulaOf({
  id: 'dough',
  name: 'Dough',
  letters: 'D',
  parts: [
    {
      name: 'Sponge',
      items: [
        { item: 'flour', g: 1000 },
        { item: 'water', g: 1000 },
        { item: 'yeast', g: 10 },
      ],
    },
    {
      name: 'Dough',
      items: [
        { item: 'flour', g: 4000 },
        { item: 'water', g: 2000 },
        { item: 'salt', g: 105 },
        { part: 'Sponge', g: 2010 },
        { formula: 'pot', g: 500 },
      ],
    },
  ],
  takesBack: [{ what: 'scrap', capPct: 10, ageMin: 60 }],
  method: [
    { id: 'weigh', verb: 'weigh', kind: 'hands', station: 'mixing', minutes: { target: 5 }, additions: [{ formula: 'pot' }] },
    {
      id: 'mix',
      verb: 'firstSpeed',
      kind: 'timed',
      minutes: { target: 6 },
      claims: [{ kind: 'mixer', ids: ['spiral'] }],
      additions: [{ item: 'salt' }, { item: 'water', pct: 3, heldBack: true }],
    },
    { id: 'bulk', verb: 'bulk', kind: 'timed', place: 'bench', minutes: { target: 60 } },
    { id: 'divide', verb: 'divide', kind: 'hands', minutes: { target: 10 } },
  ],
});

/** Filled loaves of it in tins. */
export const LOAF = productOf({
  id: 'loaf',
  name: 'Loaf',
  formula: 'dough',
  pieceG: 500,
  sidePreps: [{ formula: 'filling', joins: 'fill', readyMin: 10, notBefore: 'divide', withinMin: 60 }],
  way: [
    {
      id: 'fill',
      verb: 'fill',
      kind: 'hands',
      minutes: { target: 10 },
      claims: [{ kind: 'vessel', ids: ['tin'], perPieces: 1 }],
      additions: [{ formula: 'filling', gPerPiece: 40 }],
    },
    { id: 'load', verb: 'load', kind: 'hands', minutes: { target: 2 }, claims: [{ kind: 'deck', ids: ['top'] }] },
    { id: 'bake', verb: 'bake', kind: 'bake', minutes: { target: 40 }, bake: [{ minutes: 40, temperatureC: 220 }] },
    { id: 'take-out', verb: 'takeOut', kind: 'hands', minutes: { target: 2 } },
  ],
  loads: { after: 'fill', pieces: 6 },
});

/** The book on the quay, all of it possible. */
export const QUAY_BOOK: BookContext = { kitchen: QUAY_KITCHEN, ingredients: QUAY_INGREDIENTS, formulas: [POT, FILLING, DOUGH] };

export function formulaOf(written: z.input<typeof formulaSchema>): Formula {
  return formulaSchema.parse(written);
}

export function productOf(written: z.input<typeof productSchema>): Product {
  return productSchema.parse(written);
}
