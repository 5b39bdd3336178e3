import { additionG } from '../documents/amounts.ts';
import type { Formula } from '../documents/formula.ts';
import type { Step } from '../documents/method.ts';
import { formulaOf, newestFormula } from './contents.ts';
import type { FloorState, Workpiece } from './state.ts';

/** What a step takes of what another formula makes. */
export interface Take {
  readonly formulaId: string;
  readonly name: string;
  readonly grams: number;
  /** On top of the workpiece's weight. */
  readonly isExtra: boolean;
}

/** What a step takes of ferments and preps for a workpiece as it is, in the order of the method. */
export function takesOf(state: FloorState, workpiece: Workpiece, step: Step): readonly Take[] {
  const formula = formulaOf(state, workpiece);
  if (formula === null) return [];
  const find = newestFormula(state);
  return step.additions.flatMap((addition) => {
    if (addition.formula === undefined) return [];
    const amount = additionG(addition, formula, baseG(formula, workpiece, step), workpiece.pieces, find, state.ingredients?.document ?? []);
    return [{ formulaId: addition.formula, name: find(addition.formula)?.name ?? addition.formula, ...amount }];
  });
}

/**
 * The weight in grams that a step's additions are reckoned from: while it is the formula's, what that is scaled to, so
 * that scrap put back draws no more levain; on a product's way, what is there.
 */
export function baseG(formula: Formula, workpiece: Workpiece, step: Step): number {
  return formula.method.some((own) => own.id === step.id) ? workpiece.scaledToG : workpiece.grams;
}
