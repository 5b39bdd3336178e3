import type { Deck, Kitchen, Mixer } from '../../documents/kitchen.ts';
import { isSameResource, type Resource } from '../../floor/resources.ts';
import { decksOf } from '../../floor/slots.ts';
import { PRICES, type PlanResource } from '../day/problem.ts';
import { AllergenStates } from './allergen-states.ts';
import { BakeStates } from './bake-states.ts';
import type { BuildContext } from './context.ts';
import { calendarOf, outside, type Shortage } from './shortage.ts';
import { secondsOf } from './windows.ts';

/** One bench stands for all of the house: its room is counted as a whole. */
export const BENCH = 'bench';

/**
 * The resources of the problem, each there once somebody asks for it. Capacities are those of the kitchen, less what is
 * blocked, on its way back to the shelf or not manned.
 */
export class ResourceTable {
  readonly allergens = new AllergenStates();
  private readonly context: BuildContext;
  private readonly indexes = new Map<string, number>();
  private readonly stations = new Map<string, { readonly index: number; readonly hands: number }>();
  private readonly bakes = new Map<string, BakeStates>();

  constructor(context: BuildContext) {
    this.context = context;
  }

  /** Null where the kitchen has no such station. */
  station(id: string): { readonly index: number; readonly hands: number } | null {
    const known = this.stations.get(id);
    if (known !== undefined) return known;
    const station = this.kitchen.stations.find((candidate) => candidate.id === id);
    if (station === undefined) return null;
    const spans = this.context.calendars.stations[id];
    const { nowMs, endMs } = this.context;
    const away = spans === undefined ? [] : outside(spans, nowMs, endMs, station.hands);
    const made = { index: this.of({ kind: 'station', id }, station.hands, away), hands: station.hands };
    this.stations.set(id, made);
    return made;
  }

  mixer(mixer: Mixer): number {
    return this.of({ kind: 'mixer', id: mixer.id }, 1);
  }

  /** Bowls that fit the same mixers are as good as one another; `ids` are all of them. */
  bowls(ids: readonly string[]): number {
    const more = ids.slice(1).flatMap((id) => this.blocks({ kind: 'bowl', id }, 1));
    return this.of({ kind: 'bowl', id: ids[0] ?? '' }, ids.length, more);
  }

  /** Null where nobody counts its room. */
  restPlace(id: string): { readonly index: number; readonly room: number } | null {
    const place = this.kitchen.restPlaces.find((candidate) => candidate.id === id);
    if (place?.room === undefined) return null;
    return { index: this.of({ kind: 'restPlace', id }, place.room), room: place.room };
  }

  vessel(id: string): { readonly index: number; readonly count: number; readonly turnRoundS: number } | null {
    const vessel = this.kitchen.vessels.find((candidate) => candidate.id === id);
    if (vessel === undefined) return null;
    const { originMs, nowMs, state } = this.context;
    const returning = state.vesselReturns
      .filter((back) => back.vesselId === id && back.freeMs > nowMs)
      .map((back): Shortage => ({ fromMs: originMs, toMs: back.freeMs, by: back.count }));
    return {
      index: this.of({ kind: 'vessel', id }, vessel.count, returning),
      count: vessel.count,
      turnRoundS: secondsOf(vessel.turnRoundMin),
    };
  }

  deck(deck: Deck): number {
    const slots = deck.slots.flatMap((slot) => this.blocks({ kind: 'slot', id: slot.id }, 1));
    return this.of({ kind: 'deck', id: deck.id }, deck.slots.length, slots);
  }

  bakeStates(deck: Deck): BakeStates {
    const known = this.bakes.get(deck.id);
    if (known !== undefined) return known;
    const made = new BakeStates(this.context.state.deckC[deck.id] ?? deck.temperatureC);
    this.bakes.set(deck.id, made);
    return made;
  }

  /** The places on the bench: one resource with room for all, or, where it is cleaned between doughs, one for each of them. Empty where nobody counts. */
  bench(): readonly { readonly index: number; readonly room: number }[] {
    const { bench } = this.kitchen;
    if (bench === undefined) return [];
    if (bench.changeOverMin === undefined) return [{ index: this.benchPart(0, bench.room), room: bench.room }];
    return Array.from({ length: bench.room }, (_, part) => ({ index: this.benchPart(part, 1), room: 1 }));
  }

  /** Places on the bench are told apart by name, so that a plan says who has which: `bench`, `bench-2`. */
  private benchPart(part: number, room: number): number {
    const id = this.kitchen.restPlaces.find((place) => place.kind === 'bench')?.id ?? BENCH;
    const { originMs, endMs } = this.context;
    const shortages = this.blocks({ kind: 'bench', id }, room);
    return this.named({ kind: 'bench', id: part === 0 ? id : `${id}-${part + 1}` }, room, calendarOf(room, shortages, originMs, endMs));
  }

  /** Gives mixers, benches and decks their set-up times, once all that will use them is known. */
  withSetups(): void {
    const { resources } = this.context.draft;
    for (const [index, resource] of resources.entries()) resources[index] = this.withSetup(resource);
  }

  private withSetup(resource: PlanResource): PlanResource {
    switch (resource.kind) {
      case 'mixer': {
        const changeOverMin = this.kitchen.mixers.find((mixer) => mixer.id === resource.id)?.changeOverMin ?? 0;
        return { ...resource, setupS: this.allergens.setupS(secondsOf(changeOverMin)) };
      }
      case 'bench':
        return {
          ...resource,
          setupS: resource.capacity > 1 ? null : this.allergens.setupS(secondsOf(this.kitchen.bench?.changeOverMin ?? 0)),
        };
      case 'deck': {
        const deck = decksOf(this.kitchen).find((candidate) => candidate.id === resource.id);
        const setupS = deck === undefined ? null : this.bakeStates(deck).setupS(deck);
        return { ...resource, setupS, sharesOneState: true, idlePrice: PRICES.idleMin };
      }
      default:
        return resource;
    }
  }

  private get kitchen(): Kitchen {
    return this.context.kitchen;
  }

  private of(resource: Resource, capacity: number, more: readonly Shortage[] = []): number {
    const known = this.indexes.get(keyOf(resource));
    if (known !== undefined) return known;
    const { originMs, endMs } = this.context;
    return this.named(resource, capacity, calendarOf(capacity, [...this.blocks(resource, capacity), ...more], originMs, endMs));
  }

  private named(resource: Resource, capacity: number, calendar: PlanResource['calendar']): number {
    const known = this.indexes.get(keyOf(resource));
    if (known !== undefined) return known;
    const { kind, id } = resource;
    const bare = { setupS: null, stateAtFirst: null, sharesOneState: false, idlePrice: 0 };
    const index = this.context.draft.resources.push({ kind, id, capacity, calendar, ...bare }) - 1;
    this.indexes.set(keyOf(resource), index);
    return index;
  }

  private blocks(resource: Resource, by: number): readonly Shortage[] {
    const { state, nowMs } = this.context;
    return state.blocked
      .filter((block) => isSameResource(block.resource, resource) && (block.untilMs === undefined || block.untilMs > nowMs))
      .map((block): Shortage => ({ fromMs: block.atMs, toMs: block.untilMs ?? null, by }));
  }
}

function keyOf({ kind, id }: Resource): string {
  return `${kind} ${id}`;
}
