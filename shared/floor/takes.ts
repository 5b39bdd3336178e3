import { additionG } from '../documents/amounts.ts';
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
    const amount = additionG(addition, formula, workpiece.grams, workpiece.pieces, find, state.ingredients?.document ?? []);
    return [{ formulaId: addition.formula, name: find(addition.formula)?.name ?? addition.formula, ...amount }];
  });
}
