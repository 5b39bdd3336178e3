import { readBakehouseFile, type BakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import type { Formula, Product } from '../../../shared/documents/formula.ts';
import type { Kitchen } from '../../../shared/documents/kitchen.ts';
import type { Step } from '../../../shared/documents/method.ts';
import { assert } from '../../../shared/result.ts';
import { Digits } from './digits.ts';
import { demoFile, harbourFile } from './harbour.ts';
import { COUNTRY_20, levainFile, PLAIN_20, POT, type Listed } from './levain-house.ts';

/** The house that a number stands for: the harbour's doughs alone, the demo house, or one of its own. */
export function houseFile(n: number): BakehouseFile {
  if (n % 4 === 0) return harbourFile();
  return n % 4 === 1 ? demoFile() : randomHouse(n);
}

/** The house of the levain pot, made otherwise by a whole number: its bowls, tins, tubs and day, loads and what it stands for. */
function randomHouse(n: number): BakehouseFile {
  const digits = new Digits(n);
  const file = levainFile(dayOf(digits));
  const isTinned = digits.below(3) > 0;
  const varied = {
    ...file,
    kitchen: kitchenOf(file.kitchen, digits),
    formulas: file.formulas.map((formula) => formulaWith(formula)),
    products: file.products.map((product) => productWith(product, digits, isTinned)),
  };
  // Through JSON, as a file comes: what is undefined is not there.
  const read = readBakehouseFile(JSON.parse(JSON.stringify(varied)));
  assert(read.ok, read.ok ? '' : JSON.stringify(read.fault, null, 2));
  return read.value;
}

/** A pot or two, doughs that take of it, two plain ones at once that may be joined, buns with a soaker and a filling. */
function dayOf(digits: Digits): readonly Listed[] {
  const buns = { product: 'bun', pieces: 40 };
  return [
    { ...POT, doughG: 3000 + 1000 * digits.below(4) },
    ...(digits.onceIn(3) ? [{ ...POT, min: 30 }] : []),
    { ...COUNTRY_20, min: 20 * digits.below(4) },
    {
      ...COUNTRY_20,
      min: 480,
      cuts: [
        { product: 'country-loaf', pieces: 8 },
        { product: 'country-round', pieces: 12 },
      ],
    },
    PLAIN_20,
    { ...PLAIN_20, min: 5 * digits.below(3) },
    { formula: 'plain', min: 40, doughG: 9000, cuts: [{ product: 'plain-round', pieces: 9 }] },
    { formula: 'buns', min: 10, doughG: 6000, cuts: digits.onceIn(2) ? [buns] : [buns, { product: 'roll', pieces: 30 }] },
  ];
}

function kitchenOf(kitchen: Kitchen, digits: Digits): Kitchen {
  const bowls = digits.below(4);
  const comesOff = digits.onceIn(2);
  const changeOver = digits.onceIn(2) ? { changeOverMin: 10 } : {};
  return {
    ...kitchen,
    stations: [...kitchen.stations, { id: 'oven', name: 'Oven', hands: 1 }],
    mixers: kitchen.mixers.map((mixer) => ({ ...mixer, ...changeOver, bowlComesOff: comesOff && bowls > 0 })),
    bowls: Array.from({ length: bowls }, (_, index) => ({
      id: `bowl-${index + 1}`,
      name: `Bowl ${index + 1}`,
      litres: 60,
      fits: kitchen.mixers.map((mixer) => mixer.id),
    })),
    restPlaces: [...kitchen.restPlaces, { id: 'cold-room', name: 'Cold room', kind: 'cold-room', temperatureC: 4 }],
    vessels: [
      ...kitchen.vessels.map((vessel) => ({ ...vessel, count: 12 + 7 * digits.below(5) })),
      { id: 'tub', name: 'Tubs', kind: 'tub', count: 2 + digits.below(3), turnRoundMin: 5 },
    ],
  };
}

/** A dough stands in its bowl between the speeds, some of its water is held back, and it rests in a tub. */
function formulaWith(formula: Formula): Formula {
  if (formula.kind !== 'dough') return formula;
  const [first] = formula.method.filter((step) => step.id === 'first-speed');
  assert(first !== undefined, 'a dough of this house is mixed at first speed');
  const stand = { ...first, id: 'stand', verb: 'stand' as const, kind: 'timed' as const, minutes: { target: 15 }, check: undefined };
  const second = {
    ...first,
    id: 'second-speed',
    verb: 'secondSpeed' as const,
    additions: [{ item: 'water', pct: 3, heldBack: true }],
  };
  const method = formula.method.flatMap((step) => {
    if (step.id === 'first-speed') return [step, stand, second];
    return step.id === 'bulk' ? [{ ...step, claims: [{ kind: 'vessel' as const, ids: ['tub'], count: 1 }] }] : [step];
  });
  return { ...formula, method };
}

function productWith(product: Product, digits: Digits, isTinned: boolean): Product {
  const shape = `${product.id}-shape`;
  if (!product.way.some((step) => step.id === shape)) return product;
  const perPieces = 1 + digits.below(4);
  const claims = isTinned ? [{ kind: 'vessel' as const, ids: ['tin'], count: 1, perPieces }] : [];
  const inLoads = digits.onceIn(3) ? { loads: { after: shape, pieces: 3 + digits.below(6) } } : {};
  return { ...product, ...inLoads, way: product.way.map((step) => (step.id === shape ? { ...step, claims } : steamed(step))) };
}

/** A bake has steam for its first third; then it goes out, and the load is turned. */
function steamed(step: Step): Step {
  if (step.bake === undefined) return step;
  const steamMin = step.minutes.target / 3;
  const phases = [
    { minutes: steamMin, steam: 'in' as const },
    { minutes: step.minutes.target - steamMin, steam: 'out' as const, turn: true },
  ];
  return { ...step, bake: phases };
}
