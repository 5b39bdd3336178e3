import type { PreviousPlan } from '../day/previous-plan.ts';
import { NOT_PLANNED_S } from '../day/previous-plan.ts';
import type { DayProblem, DaySolution } from '../day/problem.ts';

/** No option of a choice. */
const NONE = -1;

/** A plan of one day as one of another that is nearly the same: by the keys of activities, and what was chosen by its name. */
export function carriedOver(
  from: { readonly problem: DayProblem; readonly originMs: number },
  { startsS, options }: Pick<DaySolution, 'startsS' | 'options'>,
  to: { readonly problem: DayProblem; readonly originMs: number },
): PreviousPlan {
  const laterS = (from.originMs - to.originMs) / 1000;
  const starts = new Map(from.problem.activities.map(({ key }, index) => [key, (startsS[index] ?? 0) + laterS]));
  const chosen = new Map(choiceKeys(from.problem).map((key, choice) => [key, resourceName(from.problem, choice, options[choice] ?? NONE)]));
  return {
    startsS: Int32Array.from(to.problem.activities, ({ key }) => starts.get(key) ?? NOT_PLANNED_S),
    options: Int32Array.from(choiceKeys(to.problem), (key, choice) => optionNamed(to.problem, choice, chosen.get(key) ?? null)),
  };
}

/** Choices have no names: each is called by the activity from which on it is held, and which of its choices it is. */
function choiceKeys({ activities, choices, holds }: DayProblem): readonly string[] {
  const keys = choices.map(() => '');
  const counts = new Map<number, number>();
  for (const { on, from } of holds) {
    if (!('choice' in on) || keys[on.choice] !== '') continue;
    const count = counts.get(from) ?? 0;
    counts.set(from, count + 1);
    keys[on.choice] = `${activities[from]?.key ?? ''} ${count}`;
  }
  return keys;
}

function resourceName({ choices, resources }: DayProblem, choice: number, option: number): string | null {
  const resource = resources[choices[choice]?.options[option]?.resource ?? NONE];
  return resource === undefined ? null : `${resource.kind} ${resource.id}`;
}

function optionNamed(problem: DayProblem, choice: number, name: string | null): number {
  if (name === null) return NONE;
  return (problem.choices[choice]?.options ?? []).findIndex((_, option) => resourceName(problem, choice, option) === name);
}
