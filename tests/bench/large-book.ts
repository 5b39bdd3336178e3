import { BOOK_FORMAT } from '../../shared/book/book-api.ts';

/** Formulas of the large book, the deep one and those of the day's file not counted. */
export const FORMULAS = 2_000;
/** The dough that is typed in. */
export const DEEP = { id: 'deep', levels: 4, items: 60 } as const;

const LETTERS = 26;
/** Pairs of letters from E on: the day's own doughs have letters before that, or one only. */
const FIRST = 4;
const PAIRS = (LETTERS - FIRST) * LETTERS;

/**
 * A book as it is brought in: soakers of two lines each, and one dough of sixty lines whose preferments lie four deep. There are
 * no letters for more than some hundred formulas: the rest of a large book is archived.
 */
export function largeBook(): unknown {
  const soakers = Array.from({ length: FORMULAS }, (_, index) => soaker(index));
  return {
    format: BOOK_FORMAT,
    ingredients: Array.from({ length: DEEP.items }, (_, index) => ({
      id: `bench-${index}`,
      name: `Ingredient ${index}`,
      kind: index % 5 === 0 ? 'flour' : index % 5 === 1 ? 'water' : 'other',
    })),
    formulas: [...soakers, deep()],
    products: [],
    archived: soakers.slice(PAIRS).map((_soaker, index) => soakerId(PAIRS + index)),
  };
}

/** Where a line's grams stand on the page of the deep dough: in its innermost preferment, so that everything above it follows. */
export const INNERMOST_GRAMS = 'formula.parts[0].items[0].g';

function soakerId(index: number): string {
  return `soaker-${index}`;
}

function soaker(index: number): object {
  const pair = index % PAIRS;
  return {
    id: soakerId(index),
    ...named(`Seed soaker ${index}`, FIRST + Math.floor(pair / LETTERS), pair % LETTERS),
    kind: 'prep',
    parts: [{ name: 'Soaker', role: 'dough', items: [line(index % DEEP.items, 100), line((index + 1) % DEEP.items, 120)] }],
  };
}

function deep(): unknown {
  const parts = DEEP.levels + 1;
  const own = DEEP.items / parts;
  return {
    id: DEEP.id,
    ...named('Deep dough', 3, LETTERS - 1),
    kind: 'dough',
    parts: Array.from({ length: parts }, (_, level) => ({
      name: `Level ${level}`,
      role: level === DEEP.levels ? 'dough' : 'preferment',
      items: [
        ...Array.from({ length: level === 0 ? own : own - 1 }, (_line, index) => line(level * own + index, 50 + index)),
        ...(level === 0 ? [] : [{ part: `Level ${level - 1}`, g: 400 }]),
      ],
    })),
  };
}

function named(name: string, first: number, second: number): object {
  const letters = String.fromCharCode(65 + first, 97 + second);
  return { name, letters, method: [{ id: 'weigh', verb: 'weigh', kind: 'hands', minutes: { target: 5 } }] };
}

function line(ingredient: number, g: number): object {
  return { item: `bench-${ingredient}`, g };
}
