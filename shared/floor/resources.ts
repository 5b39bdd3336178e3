import type { Kitchen } from '../documents/kitchen.ts';
import type { EventOf } from './events.ts';
import { decksOf } from './slots.ts';
import type { FloorState } from './state.ts';
import { positionOf, wayOf } from './way.ts';

/** Anything of a kitchen that can be blocked. */
export type Resource = EventOf<'resourceBlocked'>['resource'];

/** Whether two name the same thing. A bench is a rest place like the others. */
export function isSameResource(a: Resource, b: Resource): boolean {
  const kindOf = (resource: Resource): string => (resource.kind === 'bench' ? 'restPlace' : resource.kind);
  return a.id === b.id && kindOf(a) === kindOf(b);
}

/** The name of a thing in a kitchen; null where the kitchen has none. Slots are named with their deck. */
export function resourceName(kitchen: Kitchen, resource: Resource): string | null {
  if (resource.kind === 'slot') {
    const deck = decksOf(kitchen).find((candidate) => candidate.slots.some((slot) => slot.id === resource.id));
    const slot = deck?.slots.find((candidate) => candidate.id === resource.id);
    return deck === undefined || slot === undefined ? null : `${deck.name} ${slot.name}`;
  }
  return thingsOf(kitchen, resource.kind).find((thing) => thing.id === resource.id)?.name ?? null;
}

/** A place to work at, with how many doughs it takes at once; null where nobody counts. */
export interface Bench {
  readonly id: string;
  readonly name: string;
  readonly room: number | null;
}

/**
 * The benches of a kitchen as plans name them: where a bench is cleaned between doughs each place on it is one of its own,
 * `bench` and `bench-2`, called by the bench and its number. Empty where the kitchen has no such rest place.
 */
export function benchesOf({ bench, restPlaces }: Kitchen): readonly Bench[] {
  const place = restPlaces.find(({ kind }) => kind === 'bench');
  if (place === undefined) return [];
  const { id, name } = place;
  if (bench?.changeOverMin === undefined || bench.room === 1) return [{ id, name, room: bench?.room ?? null }];
  return Array.from({ length: bench.room }, (_, part) => ({
    id: part === 0 ? id : `${id}-${part + 1}`,
    name: `${name} ${part + 1}`,
    room: 1,
  }));
}

function thingsOf(kitchen: Kitchen, kind: Exclude<Resource['kind'], 'slot'>): readonly { readonly id: string; readonly name: string }[] {
  switch (kind) {
    case 'mixer':
      return kitchen.mixers;
    case 'bowl':
      return kitchen.bowls;
    case 'restPlace':
      return kitchen.restPlaces;
    case 'bench':
      return [...benchesOf(kitchen), ...kitchen.restPlaces];
    case 'vessel':
      return kitchen.vessels;
    case 'deck':
      return decksOf(kitchen);
    case 'station':
      return kitchen.stations;
  }
}

/** What blocks a thing at an instant; null where nothing does, or its time is over. */
export function blockOn(state: FloorState, resource: Resource, nowMs: number): EventOf<'resourceBlocked'> | null {
  const block = state.blocked.find((candidate) => isSameResource(candidate.resource, resource));
  return block === undefined || (block.untilMs !== undefined && block.untilMs <= nowMs) ? null : block;
}

/** What an open dough holds of the kitchen at the moment, and the stations that work on it; `tag` is the dough's. */
export interface Holding {
  readonly tag: string;
  readonly resource: Resource;
}

/** Everything that open doughs hold, but for vessels, which are counted. */
export function holdings(state: FloorState): readonly Holding[] {
  return Object.values(state.workpieces).flatMap((workpiece): readonly Holding[] => {
    if (workpiece.finishedMs !== null) return [];
    const way = wayOf(state, workpiece);
    const life = workpiece.steps[way[positionOf(way, workpiece)]?.id ?? ''];
    const stations = life?.status === 'started' ? [life.stationId, ...life.helperIds] : [];
    const held: readonly (readonly [Resource['kind'], string | null])[] = [
      ['mixer', workpiece.mixerId],
      ['bowl', workpiece.bowlId],
      ['restPlace', workpiece.placeId],
      ...workpiece.slotIds.map((slotId) => ['slot', slotId] as const),
      ...stations.map((stationId) => ['station', stationId] as const),
    ];
    return held.flatMap(([kind, id]) => (id === null ? [] : [{ tag: workpiece.tag, resource: { kind, id } }]));
  });
}
