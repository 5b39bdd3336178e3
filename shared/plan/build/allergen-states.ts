import type { Allergen } from '../../documents/allergen.ts';

/** The state of what has just been cleaned: anything may follow it, and nothing has to be cleaned for it. */
const CLEAN = 0;

/**
 * What machines and benches can have in them, by its allergens. Where a dough has all that was there before it, nothing is
 * cleaned, and what stays is the dough's own: so the last dough alone says what the next one meets.
 */
export class AllergenStates {
  private readonly byName = new Map<string, number>();
  private readonly sets: ReadonlySet<Allergen>[] = [new Set()];

  /** The state of having had these in it. */
  of(allergens: readonly Allergen[]): number {
    const name = [...allergens].sort().join(' ');
    const known = this.byName.get(name);
    if (known !== undefined) return known;
    this.byName.set(name, this.sets.length);
    return this.sets.push(new Set(allergens)) - 1;
  }

  /** The state right after cleaning. */
  clean(): number {
    return CLEAN;
  }

  /** Seconds of cleaning from each state to each; null where none needs any. */
  setupS(changeOverS: number): readonly (readonly number[])[] | null {
    const matrix = this.sets.map((before) => this.sets.map((own, to) => (to !== CLEAN && strange(before, own) ? changeOverS : 0)));
    return matrix.some((row) => row.some((seconds) => seconds > 0)) ? matrix : null;
  }
}

function strange(before: ReadonlySet<Allergen>, own: ReadonlySet<Allergen>): boolean {
  for (const allergen of before) if (!own.has(allergen)) return true;
  return false;
}
