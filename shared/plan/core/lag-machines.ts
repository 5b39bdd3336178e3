import type { LagProblem } from './lag-problem.ts';

// Indexes of typed arrays stay within bounds by construction here, hence `as number` in the loops.

/** Something that gets through `capacity` of work in each unit of time, and who has how much work for it. */
export interface Machine {
  readonly users: Int32Array;
  /** By activity, in units of capacity and time. */
  readonly work: Float64Array;
  readonly capacity: number;
}

/** Most sets of activities of which no two can run at once that are watched beside the resources. */
const MOST_CLIQUES = 8;

/** The resources, and sets of activities of which no two can run at once, for whatever reasons: such a set works like one machine. */
export function machinesOf(problem: LagProblem): readonly Machine[] {
  const { needs, durations, most, users } = problem;
  const resources = needs.map((need, resource) => ({
    users: users[resource] as Int32Array,
    work: Float64Array.from(need, (amount, activity) => amount * (durations[activity] as number)),
    capacity: most[resource] as number,
  }));
  const cliques = cliquesOf(problem).map((members) => ({ users: members, work: Float64Array.from(durations), capacity: 1 }));
  return [...resources.filter((machine) => machine.users.length > 1), ...cliques];
}

/** From each activity one, by taking in what conflicts with all so far, the longest first; those with the most to do are kept. */
function cliquesOf({ size, durations, conflicts }: LagProblem): readonly Int32Array[] {
  const isConflict = new Uint8Array(size * size);
  for (const { one, other } of conflicts) isConflict[one * size + other] = isConflict[other * size + one] = 1;
  const longestFirst = Array.from(durations.keys()).sort((one, other) => (durations[other] as number) - (durations[one] as number));
  const cliques = new Map<string, { readonly members: readonly number[]; readonly work: number }>();
  for (const seed of longestFirst) {
    const members = [seed];
    for (const next of longestFirst) {
      if (members.every((member) => isConflict[member * size + next] === 1)) members.push(next);
    }
    members.sort((one, other) => one - other);
    const work = members.reduce((sum, member) => sum + (durations[member] as number), 0);
    if (members.length > 2) cliques.set(members.join(), { members, work });
  }
  const kept = [...cliques.values()].sort((one, other) => other.work - one.work).slice(0, MOST_CLIQUES);
  return kept.map(({ members }) => Int32Array.from(members));
}
