import type { PlannedCleaning } from '../planned-cleaning.ts';
import type { BuiltDay } from './built-day.ts';
import { resourcesOf, type Placed } from './proposed-steps.ts';

/** When the cleanings that are still ahead are to be done in a solution, and what each takes out of use. In no order. */
export function cleaningsOf(built: BuiltDay, solution: Placed): PlannedCleaning[] {
  const { problem, originMs } = built;
  return built.steps
    .filter(({ formulaId, status }) => formulaId === null && status === 'ahead')
    .map((step) => {
      const startS = solution.startsS[step.activity] ?? 0;
      const endS = startS + (problem.activities[step.activity]?.durationS ?? 0);
      return {
        cleaningId: cleaningIdOf(step.batchKey),
        plannedStartMs: originMs + startS * 1000,
        plannedEndMs: originMs + endS * 1000,
        resources: resourcesOf(built, step, solution.options),
      };
    });
}

/** The cleaning in a key as `clean>spiral-bowl@1772852400000`. */
function cleaningIdOf(batchKey: string): string {
  return batchKey.slice(batchKey.indexOf('>') + 1, batchKey.lastIndexOf('@'));
}
