import type { Kitchen, Mixer } from '../../shared/documents/kitchen.ts';
import type { Claim, Step } from '../../shared/documents/method.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { allergensIn } from './plan-day-allergens.ts';
import { inTurn, overfull, together, type Span } from './plan-day-spans.ts';
import type { PlanThread, ThreadStep, Told } from './plan-day-threads.ts';

const MINUTE_MS = 60_000;

/** The things of a kind that a planned step takes. */
export function taken(planned: Told | null, kind: string): string[] {
  return (planned?.resources ?? []).filter((resource) => resource.kind === kind).map((resource) => resource.id);
}

/** Work that a station is named for has hands of the right station, not more than work there, while somebody is there. */
export function handsFaults(
  kitchen: Kitchen,
  threads: readonly PlanThread[],
  manned: Readonly<Record<string, readonly { readonly fromMs: number; readonly toMs: number }[]>>,
): string[] {
  const faults: string[] = [];
  const work = new Map<string, Span[]>();
  for (const { name, steps } of threads)
    for (const { step, planned } of steps) {
      if (planned === null || step.kind !== 'hands') continue;
      const claim = step.claims.find((one) => one.kind === 'hands');
      const able = claim !== undefined && claim.ids.length > 0 ? claim.ids : step.station === undefined ? [] : [step.station];
      const [station] = taken(planned, 'station').filter((id) => able.includes(id));
      if (able.length === 0) continue;
      if (station === undefined) {
        faults.push(`hands: nobody does ${step.id} of ${name}`);
        continue;
      }
      const { plannedStartMs: fromMs, plannedEndMs: toMs } = planned;
      work.set(station, [...(work.get(station) ?? []), { name: `${step.id} of ${name}`, fromMs, toMs, amount: claim?.count ?? 1 }]);
      const hours = manned[station];
      if (hours !== undefined && toMs > fromMs && !hours.some((span) => span.fromMs <= fromMs && toMs <= span.toMs))
        faults.push(`hands: ${step.id} of ${name} is outside the hours of ${station}`);
    }
  for (const [id, spans] of work)
    faults.push(...overfull(`hands: ${id}`, spans, kitchen.stations.find((station) => station.id === id)?.hands ?? 0));
  return faults;
}

interface Mixing extends Span {
  readonly mixer: Mixer;
  readonly thread: PlanThread;
}

/** One dough in a mixer at a time, all of its mixing in the same one, within its load, with a change-over where it needs one. */
export function mixerFaults(state: FloorState, kitchen: Kitchen, threads: readonly PlanThread[]): string[] {
  const faults: string[] = [];
  const mixings: Mixing[] = [];
  for (const thread of threads) {
    const wanting = thread.steps.filter(({ step, planned }) => planned !== null && step.claims.some((claim) => claim.kind === 'mixer'));
    const ids = new Set(wanting.flatMap(({ planned }) => taken(planned, 'mixer')));
    if (wanting.length === 0) continue;
    const mixer = kitchen.mixers.find((one) => ids.has(one.id));
    if (mixer === undefined || ids.size > 1) {
      faults.push(`mixer: ${thread.name} is mixed in ${ids.size} mixers`);
      continue;
    }
    const { grams } = thread.batch;
    const allowed = wanting.flatMap(({ step }) => step.claims.filter((claim) => claim.kind === 'mixer' && claim.ids.length > 0));
    if (allowed.some((claim) => !claim.ids.includes(mixer.id))) faults.push(`mixer: ${thread.name} may not be mixed in ${mixer.id}`);
    if (grams < mixer.leastG || grams > mixer.mostG)
      faults.push(`mixer: ${thread.name} weighs ${grams} g, ${mixer.id} takes ${mixer.leastG} to ${mixer.mostG}`);
    mixings.push(...runsOf(wanting, mixer).map(([fromMs, toMs]) => ({ name: thread.name, fromMs, toMs, amount: 1, mixer, thread })));
  }
  for (const mixer of kitchen.mixers) {
    const own = mixings.filter((one) => one.mixer === mixer);
    for (const [a, b] of together(own)) faults.push(`mixer: ${mixer.id} has ${a.name} and ${b.name} at once`);
    for (const [before, next] of inTurn(own)) {
      const ownAllergens = allergensIn(state, next.thread.formula);
      const strange = [...allergensIn(state, before.thread.formula)].filter((allergen) => !ownAllergens.has(allergen));
      const neededMs = strange.length === 0 || before.thread === next.thread ? 0 : (mixer.changeOverMin ?? 0) * MINUTE_MS;
      if (next.fromMs - before.toMs < neededMs && next.fromMs >= before.toMs)
        faults.push(`mixer: ${mixer.id} is not cleaned of ${strange.join(', ')} between ${before.name} and ${next.name}`);
    }
  }
  return faults;
}

/** From when to when a dough is in its mixer: all the time, but for a stand whose bowl comes off and that asks for no mixer now. */
function runsOf(wanting: readonly ThreadStep[], mixer: Mixer): (readonly [number, number])[] {
  const runs: [number, number][] = [];
  for (const { step, planned } of wanting) {
    if (planned === null || (mixer.bowlComesOff && step.verb === 'stand' && !taken(planned, 'mixer').includes(mixer.id))) {
      runs.push([Infinity, -Infinity]);
      continue;
    }
    const last = runs.at(-1) ?? [Infinity, -Infinity];
    if (runs.length === 0) runs.push(last);
    last[0] = Math.min(last[0], planned.plannedStartMs);
    last[1] = Math.max(last[1], planned.plannedEndMs);
  }
  return runs.filter(([fromMs, toMs]) => toMs > fromMs);
}

/** Vessels that a load holds until it gives them back and they have had their turn-round are not more than there are. */
export function vesselFaults(kitchen: Kitchen, threads: readonly PlanThread[]): string[] {
  return kitchen.vessels.flatMap((vessel) => {
    const spans = threads.flatMap((thread) =>
      thread.steps.flatMap(({ step, planned }) => {
        const claim = step.claims.find((one) => one.kind === 'vessel' && one.ids.length === 1 && one.ids[0] === vessel.id);
        if (claim === undefined || planned === null) return [];
        return heldBy(thread, threads, step).map(({ part, pieces, way }) => ({
          name: part.name,
          fromMs: planned.plannedStartMs,
          toMs: backMs(way, step, claim, vessel.kind) + vessel.turnRoundMin * MINUTE_MS,
          amount: claim.perPieces === undefined || pieces === null ? claim.count : Math.ceil(pieces / claim.perPieces),
        }));
      }),
    );
    return overfull(`vessel: ${vessel.id}`, spans, vessel.count);
  });
}

/** Who holds what a thread took: itself, or its loads, each its own; and how they go on. */
function heldBy(
  thread: PlanThread,
  threads: readonly PlanThread[],
  step: Step,
): { part: PlanThread; pieces: number | null; way: readonly ThreadStep[] }[] {
  const own = thread.steps.slice(thread.steps.findIndex((one) => one.step === step));
  const loads = threads.filter((one) => one.above?.thread === thread && one.product === thread.product && thread.product !== null);
  if (loads.length === 0) return [{ part: thread, pieces: thread.pieces, way: own }];
  return loads.map((load) => ({ part: load, pieces: load.pieces, way: [...own, ...load.steps] }));
}

const GIVEN_BACK_AT: Readonly<Record<string, Step['verb'] | null>> = {
  board: 'load',
  banneton: 'load',
  tin: 'depan',
  tray: 'depan',
  tub: 'divide',
  rack: null,
};

function backMs(way: readonly ThreadStep[], from: Step, claim: Claim, kind: string): number {
  const behind = way.filter((one) => one.step !== from);
  const at =
    claim.until === undefined
      ? behind.find((one) => one.step.verb === GIVEN_BACK_AT[kind])
      : behind.find((one) => one.step.id === claim.until);
  return (at ?? way.at(-1))?.planned?.plannedEndMs ?? -Infinity;
}

/** Places that somebody counted have room for what stands there. */
export function placeFaults(kitchen: Kitchen, threads: readonly PlanThread[]): string[] {
  return kitchen.restPlaces.flatMap((place) => {
    if (place.room === undefined) return [];
    const spans = threads.flatMap(({ name, steps }) =>
      steps.flatMap(({ step, planned }) => {
        if (planned === null || step.place !== place.id) return [];
        const amount = step.claims.find((claim) => claim.kind === 'restPlace')?.count ?? 1;
        return [{ name: `${step.id} of ${name}`, fromMs: planned.plannedStartMs, toMs: planned.plannedEndMs, amount }];
      }),
    );
    return overfull(`place: ${place.id}`, spans, place.room);
  });
}
