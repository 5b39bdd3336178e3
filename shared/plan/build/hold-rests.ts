import type { DayDraft } from './day-draft.ts';
import { holdBetween, takenOf, type Option } from './options.ts';
import type { Chain, StepNodes } from './thread.ts';

/** Room where a dough stands, wherever somebody counts it: a place for each, or as many as the step claims. */
export function holdRests(day: DayDraft, chain: Chain): void {
  for (const nodes of chain.nodes.values()) {
    const step = nodes.rest === null ? day.steps[nodes.start.activity] : day.rests[nodes.rest];
    if (step !== undefined && step.status !== 'over') holdBetween(day, nodes.start, nodes.end, taken(day, chain, nodes), [nodes]);
  }
}

/** Room for what is kept to be drawn from, until the last draws. */
export function holdKept(day: DayDraft, chain: Chain, untilActivity: number): void {
  const nodes = chain.kept === null ? undefined : chain.nodes.get(chain.kept.step.id);
  if (nodes !== undefined)
    holdBetween(day, nodes.start, { activity: untilActivity, edge: 'start', offsetS: 0 }, taken(day, chain, nodes), [nodes]);
}

function taken(day: DayDraft, chain: Chain, { step }: StepNodes): ReturnType<typeof takenOf> {
  const claim = step.claims.find((candidate) => candidate.kind === 'restPlace');
  const ids = step.place === undefined ? (claim?.ids ?? []) : [step.place];
  const places = ids.flatMap((id) => day.table.restPlace(id) ?? []);
  const options = places.map(({ index, room }, at): Option => ({
    resource: index,
    amount: Math.min(claim?.count ?? 1, room),
    price: at * 0.1,
    state: null,
  }));
  return takenOf(day, options, options.length < 2 ? null : day.plan.step(chain.thread, step.id));
}
