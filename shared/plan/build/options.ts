import type { PlannedStep } from '../../floor/events.ts';
import type { Hold } from '../day/problem.ts';
import type { DayDraft } from './day-draft.ts';
import type { Point } from './problem-draft.ts';
import type { StepNodes } from './thread.ts';

/** A resource that will do, with how much of it is taken and in which state. */
export interface Option {
  readonly resource: number;
  readonly amount: number;
  readonly price: number;
  readonly state: number | null;
}

/** What a hold is on, and its states. */
export type Taken = Pick<Hold, 'on' | 'states'>;

/** What takes one of several resources: the only one there is, or a choice. `planned` says which one it was before. */
export function takenOf(day: DayDraft, options: readonly Option[], planned: PlannedStep | null): Taken | null {
  const [only] = options;
  if (only === undefined) return null;
  if (options.length === 1)
    return { on: { resource: only.resource, amount: only.amount }, states: only.state === null ? null : [only.state] };
  const choice = choiceOf(day, options, planned);
  return takenByChoice(choice, options);
}

/** A choice of resources. Returns its index. */
export function choiceOf(day: DayDraft, options: readonly Pick<Option, 'resource' | 'price'>[], planned: PlannedStep | null): number {
  const { draft } = day.context;
  const before = options.findIndex(({ resource }) => {
    const { kind, id } = draft.resources[resource] ?? { kind: '', id: '' };
    return planned?.resources.some((used) => used.kind === kind && used.id === id) ?? false;
  });
  return draft.choice({
    options: options.map(({ resource, price }) => ({ resource, price })),
    fixedOption: null,
    previousOption: before === -1 ? null : before,
  });
}

/** What one of the holds of a choice takes of each of its options. */
export function takenByChoice(choice: number, options: readonly Pick<Option, 'amount' | 'state'>[]): Taken {
  const states = options.map(({ state }) => state).filter((state) => state !== null);
  return { on: { choice, amounts: options.map(({ amount }) => amount) }, states: states.length === options.length ? states : null };
}

/** Holds what is taken from a point to another, for all steps in between. */
export function holdBetween(
  day: DayDraft,
  from: Point | null,
  to: Point | null,
  wanted: Taken | null,
  during: readonly StepNodes[],
  afterS = 0,
): void {
  const { draft } = day.context;
  if (from === null || to === null || wanted === null) return;
  if (from.activity === to.activity && from.edge === to.edge) return;
  const taken = draft.isFixed(from.activity) ? day.inUse.atMost(wanted) : wanted;
  const fromEdge = from.offsetS === 0 ? from.edge : edgeWithin(day, from, to);
  const hold = draft.hold({ from: from.activity, fromEdge, to: to.activity, toEdge: to.edge, afterS, ...taken });
  if (hold === null) return;
  for (const nodes of during) {
    const step = nodes.rest === null ? day.steps[nodes.start.activity] : day.rests[nodes.rest];
    step?.holds.push(hold);
  }
}

/**
 * A load rests from within the work that shapes them all. Holds begin at edges: at the work's end, or, where the rest may
 * be over before that, at its beginning.
 */
function edgeWithin(day: DayDraft, from: Point, to: Point): 'start' | 'end' {
  const { activities, lags } = day.context.draft;
  const lengthS = activities[from.activity]?.durationS ?? 0;
  const isAfter = lags.some(
    (lag) => lag.from === from.activity && lag.fromEdge === 'start' && lag.to === to.activity && lag.minS >= lengthS,
  );
  return isAfter ? 'end' : 'start';
}
