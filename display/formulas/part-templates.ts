import type { Ingredient, Part, PartItem } from '../../shared/documents/formula.ts';
import { convertedYeastG } from '../../shared/trade/yeast-forms.ts';

type Kind = Ingredient['kind'];

/** What is made before the dough. */
export const PART_TEMPLATES = ['poolish', 'biga', 'sponge', 'fermentedDough', 'oldDough', 'soaker', 'scald'] as const;
export type PartTemplate = (typeof PART_TEMPLATES)[number];

/** One line of a template: a kind of ingredient, per cent of the part's own flour; yeast as instant. */
interface TemplateLine {
  readonly kind: Kind;
  readonly pct: number;
}

const YEAST_INSTANT = 'instant';

/** Usual beginnings, to be put right by whoever writes the formula. Common practice, not from a source. */
const LINES: Readonly<Record<PartTemplate, readonly TemplateLine[]>> = {
  poolish: [
    { kind: 'flour', pct: 100 },
    { kind: 'water', pct: 100 },
    { kind: 'yeast', pct: 0.1 },
  ],
  biga: [
    { kind: 'flour', pct: 100 },
    { kind: 'water', pct: 50 },
    { kind: 'yeast', pct: 0.3 },
  ],
  sponge: [
    { kind: 'flour', pct: 100 },
    { kind: 'water', pct: 62 },
    { kind: 'yeast', pct: 0.5 },
  ],
  fermentedDough: [
    { kind: 'flour', pct: 100 },
    { kind: 'water', pct: 65 },
    { kind: 'salt', pct: 2 },
    { kind: 'yeast', pct: 0.4 },
  ],
  oldDough: [
    { kind: 'flour', pct: 100 },
    { kind: 'water', pct: 68 },
    { kind: 'salt', pct: 2 },
    { kind: 'yeast', pct: 0.7 },
  ],
  soaker: [
    { kind: 'seed', pct: 100 },
    { kind: 'water', pct: 100 },
  ],
  scald: [
    { kind: 'flour', pct: 100 },
    { kind: 'water', pct: 200 },
  ],
};

/** What of the dough's flour goes into the part as it is proposed, per cent. Common practice. */
const SHARE_PCT: Readonly<Record<PartTemplate, number>> = {
  poolish: 30,
  biga: 40,
  sponge: 50,
  fermentedDough: 20,
  oldDough: 15,
  soaker: 15,
  scald: 8,
};

/**
 * A part as it usually begins, for a dough of so much flour (grams). Only what the house has of each kind is in it, and
 * yeast in the form in which it is bought. Its lines take nothing away from the dough's own.
 */
export function partOfTemplate(template: PartTemplate, name: string, doughFlourG: number, ingredients: readonly Ingredient[]): Part {
  const baseG = Math.max(10, Math.round((doughFlourG * SHARE_PCT[template]) / 100));
  const items = LINES[template].flatMap(({ kind, pct }): PartItem[] => {
    const found = ingredients.find((ingredient) => ingredient.kind === kind);
    if (found === undefined) return [];
    const g = (baseG * pct) / 100;
    return [{ item: found.id, g: roundTo(kind === 'yeast' ? convertedYeastG(g, YEAST_INSTANT, found.yeastForm ?? YEAST_INSTANT) : g) }];
  });
  return { name, role: template === 'soaker' || template === 'scald' ? 'soaker' : 'preferment', items };
}

/** Whole grams, or tenths and hundredths where there are few. */
function roundTo(g: number): number {
  if (g >= 10) return Math.round(g);
  return g >= 1 ? Math.round(g * 10) / 10 : Math.round(g * 100) / 100;
}
