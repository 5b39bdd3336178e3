import type { Instance } from './instance.ts';
import type { PrecedenceGraph } from './precedence-graph.ts';
import { rowsOf, type Rows } from './rows.ts';

/** An instance in which each resource does one thing at a time: its arcs, and who uses which machine. */
export interface DisjunctiveGraph {
  readonly precedence: PrecedenceGraph;
  /** By the graph's numbers, who uses each machine. */
  readonly machines: readonly Int32Array[];
  /** By activity, the machines that it uses. */
  readonly machinesOf: Rows;
}

/**
 * The instance so seen; null where it is not such a one, as two activities can use a resource together, or it has calendars. A
 * resource that one activity alone uses is no machine.
 */
export function disjunctiveGraph({ demands, capacities, calendars }: Instance, precedence: PrecedenceGraph): DisjunctiveGraph | null {
  if ((calendars ?? []).some((steps) => steps !== null && steps.length > 0)) return null;
  const { originals, durations } = precedence;
  const machines: Int32Array[] = [];
  const machinesOf: number[][] = Array.from(originals, () => []);
  for (const [resource, needs] of demands.entries()) {
    const needOf = (place: number): number => ((durations[place] ?? 0) > 0 ? (needs[originals[place] ?? 0] ?? 0) : 0);
    const users = Int32Array.from(originals.keys()).filter((place) => needOf(place) > 0);
    if (users.length < 2) continue;
    const [least = 0, next = 0] = Array.from(users, needOf).sort((one, other) => one - other);
    if (least + next <= (capacities[resource] ?? 0)) return null;
    for (const place of users) machinesOf[place]?.push(machines.length);
    machines.push(users);
  }
  return machines.length === 0 ? null : { precedence, machines, machinesOf: rowsOf(machinesOf) };
}
