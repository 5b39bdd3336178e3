import fc from 'fast-check';
import { isPartTaken, type CalcItem, type CalcPart, type ItemKind } from '../../../shared/trade/calc-part.ts';

const KINDS: readonly ItemKind[] = ['flour', 'water', 'salt', 'yeast', 'fat', 'sugar', 'egg', 'dairy', 'seed', 'other'];
/** Grams that a balance could show. */
const grams = fc.integer({ min: 1, max: 500_000 }).map((tenths) => tenths / 10);

const leaf: fc.Arbitrary<CalcItem> = fc
  .record({ kind: fc.constantFrom(...KINDS), g: grams, waterPct: fc.option(fc.integer({ min: 0, max: 100 }), { nil: undefined }) })
  .map(({ kind, g, waterPct }) =>
    (kind === 'egg' || kind === 'dairy') && waterPct !== undefined ? { item: kind, kind, g, waterPct } : { item: kind, kind, g },
  );

/**
 * A dough with parts in one another, `depth` below it: each takes the one before, and perhaps earlier ones, in amounts that are not what
 * is written of them. All have flour but soakers, the dough certainly.
 */
export function nested({ depth }: { readonly depth: number }): fc.Arbitrary<readonly CalcPart[]> {
  const level = fc.record({
    leaves: fc.array(leaf, { minLength: 1, maxLength: 6 }),
    takenG: fc.array(fc.option(grams, { nil: undefined }), { minLength: depth, maxLength: depth }),
    beforeG: grams,
    isSoaker: fc.boolean(),
  });
  return fc.array(level, { minLength: depth + 1, maxLength: depth + 1 }).map((levels) =>
    levels.map(({ leaves, takenG, beforeG, isSoaker }, index): CalcPart => {
      const earlier = takenG
        .slice(0, Math.max(0, index - 1))
        .flatMap((g, other) => (g === undefined ? [] : [{ part: `Part ${other}`, g }]));
      const before = index === 0 ? [] : [{ part: `Part ${index - 1}`, g: beforeG }];
      const isDough = index === levels.length - 1;
      const flour: CalcItem[] = isDough || !isSoaker ? [{ item: 'flour-own', kind: 'flour', g: beforeG }] : [];
      return {
        name: `Part ${index}`,
        role: isDough ? 'dough' : isSoaker ? 'soaker' : 'preferment',
        items: [...flour, ...leaves, ...earlier, ...before],
      };
    }),
  );
}

interface Made {
  readonly flourG: number;
  readonly waterG: number;
  readonly totalG: number;
}

/** What the last part is made of, by what a gram of each part before it is made of. */
export function composedOf(parts: readonly CalcPart[]): Made {
  const made = new Map<string, Made>();
  let last: Made = { flourG: 0, waterG: 0, totalG: 0 };
  for (const { name, items } of parts) {
    let [flourG, waterG, totalG] = [0, 0, 0];
    for (const item of items) {
      totalG += item.g;
      if (isPartTaken(item)) {
        const of = made.get(item.part);
        if (of === undefined) throw new Error(`${item.part} comes later`);
        flourG += (item.g * of.flourG) / of.totalG;
        waterG += (item.g * of.waterG) / of.totalG;
      } else {
        if (item.kind === 'flour') flourG += item.g;
        if (item.kind === 'water') waterG += item.g;
        if (item.kind !== 'water' && item.waterPct !== undefined) waterG += item.g * (item.waterPct / 100);
      }
    }
    last = { flourG, waterG, totalG };
    made.set(name, last);
  }
  return last;
}
