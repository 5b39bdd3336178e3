import type { Verb } from '../../documents/method.ts';
import { unreachable } from '../../result.ts';
import type { DayDraft } from './day-draft.ts';
import { holdBetween, takenOf, type Option } from './options.ts';
import type { Chain, StepNodes } from './thread.ts';

/** Hands, for every step that somebody works on, and the bench where it is worked on there. */
export function holdHands(day: DayDraft, chain: Chain): void {
  for (const nodes of chain.nodes.values()) {
    if (nodes.step.kind !== 'hands' || nodes.rest !== null) continue;
    const status = day.steps[nodes.start.activity]?.status;
    if (status === 'begun') holdThoseAtWork(day, chain, nodes);
    else if (status === 'ahead') holdStation(day, chain, nodes);
    if (status === 'begun' || status === 'ahead') holdBench(day, chain, nodes);
  }
}

/** Whoever began it, and who helps; where nobody said, whose work it is. */
function holdThoseAtWork(day: DayDraft, chain: Chain, nodes: StepNodes): void {
  const life = chain.thread.lives[nodes.step.id];
  const ids = [...new Set([life?.stationId ?? nodes.step.station ?? null, ...(life?.helperIds ?? [])])].filter((id) => id !== null);
  for (const id of ids) {
    const station = day.table.station(id);
    if (station !== null)
      holdBetween(day, nodes.start, nodes.end, takenOf(day, [{ resource: station.index, amount: 1, price: 0, state: null }], null), [
        nodes,
      ]);
  }
}

function holdStation(day: DayDraft, chain: Chain, nodes: StepNodes): void {
  const { step } = nodes;
  const claim = step.claims.find((candidate) => candidate.kind === 'hands');
  const ids = claim === undefined || claim.ids.length === 0 ? (step.station === undefined ? [] : [step.station]) : claim.ids;
  const needed = claim?.count ?? 1;
  const stations = ids.flatMap((id) => day.table.station(id) ?? []);
  if (stations.length === 0) return;
  const able = stations.filter(({ hands }) => hands >= needed);
  if (able.length === 0) tooFewHands(day, chain, nodes, ids, needed, Math.max(...stations.map(({ hands }) => hands)));
  const options = (able.length === 0 ? stations : able).map(({ index, hands }, place): Option => ({
    resource: index,
    amount: Math.min(needed, hands),
    price: place * 0.1,
    state: null,
  }));
  holdBetween(day, nodes.start, nodes.end, takenOf(day, options, day.plan.step(chain.thread, step.id)), [nodes]);
}

function tooFewHands(
  day: DayDraft,
  { thread }: Chain,
  { step }: StepNodes,
  stationIds: readonly string[],
  needed: number,
  most: number,
): void {
  if (thread.place.workpieceId !== null) return;
  const { batchKey } = thread.place;
  const about = { batchKey, formulaId: thread.formula.id, productId: thread.product?.id ?? null, stepId: step.id };
  day.context.faults.push({ ...about, code: 'tooFewHands', stationIds, needed, most });
}

function holdBench(day: DayDraft, chain: Chain, nodes: StepNodes): void {
  const { step } = nodes;
  const claim = step.claims.find((candidate) => candidate.kind === 'bench');
  const isBenchPlace = day.context.kitchen.restPlaces.some((place) => place.id === step.place && place.kind === 'bench');
  if (claim === undefined && !isBenchPlace && !isMakeUp(step.verb)) return;
  const parts = day.table.bench();
  const state = day.table.allergens.of(day.context.allergensOn(chain.thread));
  const options = parts.map(({ index, room }): Option => ({
    resource: index,
    amount: Math.min(claim?.count ?? 1, room),
    price: 0,
    state: room > 1 ? null : state,
  }));
  holdBetween(day, nodes.start, nodes.end, takenOf(day, options, day.plan.step(chain.thread, step.id)), [nodes]);
}

/** Whether it is done on the bench, wherever the method says that the dough stands. */
function isMakeUp(verb: Verb): boolean {
  switch (verb) {
    case 'divide':
    case 'scale':
    case 'round':
    case 'shape':
    case 'tin':
    case 'lockIn':
    case 'sheet':
    case 'turn':
      return true;
    case 'weigh':
    case 'feed':
    case 'ripen':
    case 'add':
    case 'firstSpeed':
    case 'secondSpeed':
    case 'stand':
    case 'turnOut':
    case 'bulk':
    case 'fold':
    case 'benchRest':
    case 'fill':
    case 'chill':
    case 'prove':
    case 'retard':
    case 'temper':
    case 'top':
    case 'wash':
    case 'seed':
    case 'dust':
    case 'dock':
    case 'score':
    case 'load':
    case 'bake':
    case 'partBake':
    case 'bakeOff':
    case 'takeOut':
    case 'depan':
    case 'cool':
    case 'wait':
    case 'glaze':
    case 'slice':
    case 'pack':
    case 'cook':
    case 'clean':
      return false;
    default:
      return unreachable(verb);
  }
}
