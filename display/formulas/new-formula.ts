import { keyOfName } from '../../shared/book/key-of-name.ts';
import type { Formula, Ingredient, Part, PartItem, Product } from '../../shared/documents/formula.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { Verb } from '../../shared/documents/method.ts';
import { unreachable } from '../../shared/result.ts';
import { FORMULAS, STARTING_NAMES } from '../words/formulas.ts';
import { usualSteps } from './usual-step.ts';

/** What a new formula stands in. */
export interface BookAround {
  readonly kitchen: Kitchen;
  readonly ingredients: readonly Ingredient[];
  readonly isTaken: (id: string) => boolean;
  readonly areLettersTaken: (letters: string) => boolean;
}

type Kind = Formula['kind'];

/** Usual beginnings, per 1000 g of flour or for 1000 g of a filling. Common practice, not from a source. */
const STARTING_LINES: Readonly<Record<Kind, readonly (readonly [Ingredient['kind'] | 'kept', number])[]>> = {
  dough: [
    ['flour', 1000],
    ['water', 650],
    ['salt', 20],
  ],
  ferment: [
    ['flour', 500],
    ['water', 500],
    ['kept', 100],
  ],
  prep: [],
};

const STARTING_VERBS: Readonly<Record<Kind, readonly Verb[]>> = {
  dough: ['weigh', 'firstSpeed', 'secondSpeed', 'bulk', 'divide'],
  ferment: ['feed', 'ripen'],
  prep: ['cook'],
};

/** A formula of a kind as it usually begins, with what the house has, to be put right by whoever writes it. */
export function newFormula(kind: Kind, around: BookAround): Formula {
  const name = FORMULAS.untitled[kind];
  const part: Part = { name: STARTING_NAMES[kind], role: roleOf(kind), items: startingLines(kind, around.ingredients) };
  return {
    id: keyOfName(name, 'formula', around.isTaken),
    name,
    letters: unusedLetters(around.areLettersTaken),
    kind,
    parts: [part],
    ...(kind === 'dough' ? { doughC: 25 } : {}),
    ...(kind === 'ferment' ? { doughC: 27, seedG: 100 } : {}),
    takesBack: [],
    sidePreps: [],
    method: [...usualSteps(STARTING_VERBS[kind], 0, { kitchen: around.kitchen, steps: [], otherKeys: [] })],
  };
}

/** Another one that begins as a formula of the book is. */
export function copyOfFormula(formula: Formula, around: Pick<BookAround, 'isTaken' | 'areLettersTaken'>): Formula {
  const name = FORMULAS.copyOf(formula.name).slice(0, 60);
  return {
    ...formula,
    name,
    id: keyOfName(name, 'formula', around.isTaken),
    letters: unusedLetters(around.areLettersTaken, formula.letters),
  };
}

/** A formula from elsewhere, with an id and letters that the book has not. */
export function asNewFormula(formula: Formula, around: Pick<BookAround, 'isTaken' | 'areLettersTaken'>): Formula {
  const letters = around.areLettersTaken(formula.letters) ? unusedLetters(around.areLettersTaken, formula.letters) : formula.letters;
  return { ...formula, id: keyOfName(formula.name, 'formula', around.isTaken), letters };
}

/** A product of a formula as it usually begins. `isTaken` says of an id whether another product has it. */
export function newProduct(formula: Formula, name: string, kitchen: Kitchen, isTaken: (id: string) => boolean): Product {
  const otherKeys = formula.method.map(({ id }) => id);
  return {
    id: keyOfName(`${formula.name} ${name}`, 'product', isTaken),
    name,
    formula: formula.id,
    pieceG: 500,
    bakeLossPct: 12,
    sidePreps: [],
    way: [...usualSteps(['shape', 'prove', 'load', 'bake', 'takeOut', 'cool'], 0, { kitchen, steps: [], otherKeys })],
  };
}

function startingLines(kind: Kind, ingredients: readonly Ingredient[]): PartItem[] {
  return STARTING_LINES[kind].flatMap(([what, g]): PartItem[] => {
    if (what === 'kept') return [{ seed: true, g }];
    const found = ingredients.find((ingredient) => ingredient.kind === what);
    return found === undefined ? [] : [{ item: found.id, g }];
  });
}

function roleOf(kind: Kind): Part['role'] {
  switch (kind) {
    case 'dough':
    case 'prep':
      return 'dough';
    case 'ferment':
      return 'preferment';
    default:
      return unreachable(kind);
  }
}

/** Letters that no formula has: the first capital that is free, else the first with a small letter behind it. */
function unusedLetters(areTaken: (letters: string) => boolean, near = 'A'): string {
  const capitals = Array.from({ length: 26 }, (_letter, index) => String.fromCodePoint(65 + index));
  const from = Math.max(0, capitals.indexOf(near.charAt(0)));
  const turned = [...capitals.slice(from), ...capitals.slice(0, from)];
  const single = turned.find((letters) => !areTaken(letters));
  if (single !== undefined) return single;
  const pairs = turned.flatMap((capital) => capitals.map((second) => capital + second.toLowerCase()));
  return pairs.find((letters) => !areTaken(letters)) ?? near;
}
