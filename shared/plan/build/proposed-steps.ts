import type { Resource } from '../../floor/resources.ts';
import type { DaySolution, Edge } from '../day/problem.ts';
import type { ProposedStep } from '../proposed.ts';
import type { BuiltDay, RestStep, StepOf } from './built-day.ts';

/** Where a solution has everything: what of it is needed to tell its steps. */
export type Placed = Pick<DaySolution, 'startsS' | 'options'>;

/**
 * Every step that is begun or ahead, rests too, with its start, its end and what it takes: mixer and bowl, deck, hands,
 * bench, vessels, the place where it stands. Cleanings are steps of no batch and are not among them. In no order.
 */
export function stepsOf(built: BuiltDay, solution: Placed): ProposedStep[] {
  const { problem, originMs } = built;
  const atS = (activity: number, edge: Edge): number =>
    (solution.startsS[activity] ?? 0) + (edge === 'end' ? (problem.activities[activity]?.durationS ?? 0) : 0);
  const told = (step: StepOf, fromS: number, toS: number): ProposedStep => ({
    batchKey: step.batchKey,
    ...(step.cut === undefined ? {} : { cut: step.cut }),
    ...(step.load === undefined ? {} : { load: step.load }),
    stepId: step.stepId,
    plannedStartMs: originMs + fromS * 1000,
    plannedEndMs: originMs + toS * 1000,
    resources: resourcesOf(built, step, solution.options),
  });
  const worked = built.steps
    .filter((step) => isTold(step) && step.formulaId !== null)
    .map((step) => told(step, atS(step.activity, 'start'), atS(step.activity, 'end')));
  const rested = built.rests.filter(isTold).map((rest) => {
    const [fromS, toS] = spanOf(rest, atS);
    return told(rest, fromS, toS);
  });
  return [...worked, ...rested];
}

/** When a rest begins and ends, in seconds after the origin. */
export function spanOf(rest: RestStep, atS: (activity: number, edge: Edge) => number): readonly [number, number] {
  const { activity, edge, offsetS } = rest.from;
  const fromS = atS(activity, edge) + offsetS;
  if (rest.to.length === 0) return [fromS, fromS + rest.targetS];
  return [fromS, Math.max(fromS, ...rest.to.map((to) => atS(to.activity, to.edge)))];
}

/** What a step takes in a solution, each once. */
export function resourcesOf({ problem }: BuiltDay, step: StepOf, options: Int32Array): Resource[] {
  const taken = new Map<string, Resource>();
  if (step.restPlaceId !== null) add({ kind: 'restPlace', id: step.restPlaceId });
  for (const index of step.holds) {
    const hold = problem.holds[index];
    if (hold === undefined) continue;
    const { on } = hold;
    const option = 'choice' in on ? (options[on.choice] ?? 0) : 0;
    const resource = 'choice' in on ? problem.choices[on.choice]?.options[option]?.resource : on.resource;
    const amount = 'choice' in on ? (on.amounts[option] ?? 0) : on.amount;
    const found = resource === undefined ? undefined : problem.resources[resource];
    if (found !== undefined && amount > 0) add({ kind: found.kind as Resource['kind'], id: found.id });
  }
  return [...taken.values()];

  function add(resource: Resource): void {
    taken.set(`${resource.kind} ${resource.id}`, resource);
  }
}

function isTold({ status }: StepOf): boolean {
  return status === 'ahead' || status === 'begun';
}
