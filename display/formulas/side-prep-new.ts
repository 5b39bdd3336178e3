import type { SidePrep, Step } from '../../shared/documents/method.ts';
import type { EditorContext } from './editor-context.ts';

/**
 * A side prep to begin with: one that a step takes and that is not in the list yet, else the first prep of the book at the
 * last step. Null where the book has no prep, or no step is there to join.
 */
export function firstSidePrep(steps: readonly Step[], preps: readonly SidePrep[], { entries }: EditorContext): SidePrep | null {
  const prepIds = new Set(entries.filter(({ kind }) => kind === 'prep').map(({ id }) => id));
  for (const step of steps)
    for (const { formula } of step.additions)
      if (formula !== undefined && prepIds.has(formula) && !preps.some((prep) => prep.formula === formula && prep.joins === step.id))
        return { formula, joins: step.id, readyMin: 0 };
  const [first] = prepIds;
  const last = steps.at(-1);
  return first === undefined || last === undefined ? null : { formula: first, joins: last.id, readyMin: 0 };
}
