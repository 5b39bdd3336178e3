import type { Kitchen, RestPlace } from '../../shared/documents/kitchen.ts';
import type { Claim, Step, Verb } from '../../shared/documents/method.ts';
import { GROUP_OF } from './verb-groups.ts';

type PlaceKind = RestPlace['kind'];

/** Kinds of place in which a rest usually stands, the likeliest first. */
const PLACE_KINDS: Partial<Readonly<Record<Verb, readonly PlaceKind[]>>> = {
  ripen: ['warm-shelf', 'prover', 'bench'],
  bulk: ['warm-shelf', 'prover', 'bench'],
  prove: ['prover', 'warm-shelf', 'bench'],
  benchRest: ['bench'],
  temper: ['bench'],
  fold: ['bench'],
  chill: ['cold-room', 'retarder'],
  retard: ['retarder', 'cold-room'],
};
/** By the order of the work a dough holds the mixer from its first ingredient to its turning out. */
const IN_THE_MIXER: ReadonlySet<Verb> = new Set(['add', 'firstSpeed', 'secondSpeed', 'stand', 'turnOut']);
const VESSEL_KINDS: Partial<Readonly<Record<Verb, Kitchen['vessels'][number]['kind']>>> = { tin: 'tin' };

/** Where a rest usually stands in this kitchen; undefined where it has no such place or the verb needs none. */
export function usualPlace(verb: Verb, kitchen: Kitchen): string | undefined {
  for (const kind of PLACE_KINDS[verb] ?? []) {
    const place = kitchen.restPlaces.find((known) => known.kind === kind);
    if (place !== undefined) return place.id;
  }
  return undefined;
}

/**
 * Whose work it is: as the nearest step before (or else behind) of the same part of the work says, else the mixer's station
 * for mixing. Undefined where nothing tells.
 */
export function usualStation(verb: Verb, index: number, steps: readonly Step[], kitchen: Kitchen): string | undefined {
  const isLike = (step: Step): boolean => step.station !== undefined && GROUP_OF[step.verb] === GROUP_OF[verb];
  const like = steps.slice(0, index).findLast(isLike) ?? steps.slice(index).find(isLike);
  if (like?.station !== undefined) return like.station;
  if (GROUP_OF[verb] === 'mixing') return mixerOf(index, steps, kitchen)?.station;
  // A kitchen of one station has no other.
  return kitchen.stations.length === 1 ? kitchen.stations[0]?.id : undefined;
}

/** What the step usually takes: the mixer that the mixing before it has, the tins that the kitchen has, a deck. */
export function usualClaims(verb: Verb, index: number, steps: readonly Step[], kitchen: Kitchen): Claim[] {
  if (IN_THE_MIXER.has(verb)) {
    const before = steps.slice(0, index).findLast((step) => step.claims.some((claim) => claim.kind === 'mixer'));
    const same = before?.claims.find((claim) => claim.kind === 'mixer');
    if (same !== undefined) return [same];
    const mixer = kitchen.mixers[0];
    return mixer === undefined ? [] : [{ kind: 'mixer', ids: [mixer.id], count: 1 }];
  }
  if (verb === 'load' && kitchen.ovens.length > 0) return [{ kind: 'deck', ids: [], count: 1 }];
  const vessels = kitchen.vessels.filter((vessel) => vessel.kind === VESSEL_KINDS[verb]);
  return vessels.length === 0 ? [] : [{ kind: 'vessel', ids: vessels.map((vessel) => vessel.id), count: 1, perPieces: 1 }];
}

function mixerOf(index: number, steps: readonly Step[], kitchen: Kitchen): Kitchen['mixers'][number] | undefined {
  const claimed = steps
    .slice(0, index)
    .flatMap((step) => step.claims)
    .findLast((claim) => claim.kind === 'mixer')?.ids[0];
  return kitchen.mixers.find((mixer) => mixer.id === claimed) ?? kitchen.mixers[0];
}
