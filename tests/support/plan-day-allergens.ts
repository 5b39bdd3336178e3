import type { Formula } from '../../shared/documents/formula.ts';
import { versionKey, type FloorState } from '../../shared/floor/state.ts';

/** What a dough has of allergens when it leaves the mixer: of its parts, of what its method adds, and of the formulas in it. */
export function allergensIn(state: FloorState, formula: Formula, above: readonly string[] = []): ReadonlySet<string> {
  if (above.includes(formula.id)) return new Set();
  const lines = [...formula.parts.flatMap((part) => part.items), ...formula.method.flatMap((step) => step.additions)];
  return new Set(
    lines.flatMap((line) => {
      if ('item' in line && line.item !== undefined)
        return state.ingredients?.document.find((one) => one.id === line.item)?.allergens ?? [];
      if (!('formula' in line) || line.formula === undefined) return [];
      const other = state.formulas[versionKey(line.formula, state.formulaVersions[line.formula] ?? 0)];
      return other === undefined ? [] : [...allergensIn(state, other, [...above, formula.id])];
    }),
  );
}
