import type { FormulaOf } from '../../documents/amounts.ts';
import type { Ingredient, Product } from '../../documents/formula.ts';
import type { CommandOf } from '../commands.ts';
import type { Versions } from './documents-in.ts';

/** Batches that a day is to have. */
export type DayPlan = Pick<CommandOf<'planBatches'>, 'serviceDate' | 'batches'>;

/** The documents that a day is planned by, and their versions. */
export interface DayBook {
  readonly formulaOf: FormulaOf;
  readonly productOf: (id: string) => Product | null;
  readonly ingredients: readonly Ingredient[];
  readonly versions: Versions;
}
