import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { Product } from '../../shared/documents/formula.ts';
import { benchesOf } from '../../shared/floor/resources.ts';
import { decksOf } from '../../shared/floor/slots.ts';
import { versionKey, type FloorState } from '../../shared/floor/state.ts';
import type { Bar, DoughLine, StepResource } from './sheet-bar.ts';

/** Steps of one dough that follow one another on one thing come apart by less than this, in ms. */
const APART_MS = 60_000;

/** One dough on one thing, without a break. */
export interface Stay {
  readonly tag: string;
  readonly fromMs: number;
  readonly toMs: number;
  /** How much of it: slots of a deck, one of anything else. */
  readonly amount: number;
  readonly bars: readonly Bar[];
}

/** A thing of the kitchen with what is on it all day. */
export interface ResourceUse {
  readonly resource: StepResource;
  /** How much of it there is; null where nobody counts. */
  readonly room: number | null;
  readonly stays: readonly Stay[];
}

/**
 * Mixers, the hands of stations, the bench, rest places and decks, in this order and each as the kitchen has them, with
 * what is on them. Places where nothing rests all day are left out; what the kitchen does not have (any more) comes last.
 */
export function usesOf(state: FloorState, lines: readonly DoughLine[]): readonly ResourceUse[] {
  const kitchen = state.kitchen?.document;
  if (kitchen === undefined) return [];
  const taken = new Map<string, Stay[]>();
  for (const line of lines)
    for (const bar of line.bars) for (const resource of ownResources(bar)) join(taken, resource, line, bar, state, kitchen);
  const known = thingsOf(kitchen);
  const strays = [...taken.keys()].filter((key) => known.every((thing) => keyOf(thing.resource) !== key)).flatMap((key) => strayOf(key));
  return [...known, ...strays].flatMap(({ resource, room }) => {
    const stays = taken.get(keyOf(resource)) ?? [];
    const isQuiet = stays.length === 0 && (resource.kind === 'restPlace' || resource.kind === 'bench');
    return isQuiet ? [] : [{ resource, room, stays: stays.toSorted((a, b) => a.fromMs - b.fromMs) }];
  });
}

/** The key of a thing among others. */
export function keyOf({ kind, id }: StepResource): string {
  return `${kind} ${id}`;
}

/** What the sheet has a row for: hands only where hands work, a mixer, deck, bench or place whoever is on it. */
function ownResources({ step, resources }: Bar): readonly StepResource[] {
  return resources.filter(({ kind }) => {
    if (kind === 'station') return step.kind === 'hands';
    return kind === 'mixer' || kind === 'deck' || kind === 'bench' || kind === 'restPlace';
  });
}

function join(taken: Map<string, Stay[]>, resource: StepResource, line: DoughLine, bar: Bar, state: FloorState, kitchen: Kitchen): void {
  const key = keyOf(resource);
  const stays = taken.get(key) ?? [];
  taken.set(key, stays);
  const last = stays.at(-1);
  const goesOn = last !== undefined && last.tag === line.tag && bar.fromMs - last.toMs < APART_MS && bar.fromMs >= last.fromMs;
  if (goesOn && resource.kind !== 'station')
    stays[stays.length - 1] = { ...last, toMs: Math.max(last.toMs, bar.toMs), bars: [...last.bars, bar] };
  else
    stays.push({
      tag: line.tag,
      fromMs: bar.fromMs,
      toMs: bar.toMs,
      amount: resource.kind === 'deck' ? slotsOn(state, kitchen, line, bar, resource.id) : 1,
      bars: [bar],
    });
}

/** Slots that the pieces take on a deck: those they lie in, or by what the product says of that deck. */
function slotsOn(state: FloorState, kitchen: Kitchen, line: DoughLine, bar: Bar, deckId: string): number {
  const held = state.workpieces[bar.ownerId]?.slotIds.length ?? 0;
  if (held > 0 && bar.standing === 'begun') return held;
  if (line.isCleaning === true) return decksOf(kitchen).find(({ id }) => id === deckId)?.slots.length ?? 1;
  const [productId] = line.productIds;
  const product = productId === undefined ? null : newest(state, productId);
  const perSlot = product?.deckRoom?.find((room) => room.deck === deckId)?.piecesPerSlot ?? product?.piecesPerSlot;
  if (perSlot !== undefined && bar.pieces !== null) return Math.max(1, Math.ceil(bar.pieces / perSlot));
  return product?.way.flatMap((step) => step.claims).find((claim) => claim.kind === 'deck')?.count ?? 1;
}

function newest(state: FloorState, productId: string): Product | null {
  return state.products[versionKey(productId, state.productVersions[productId] ?? 0)] ?? null;
}

interface Thing {
  readonly resource: StepResource;
  readonly room: number | null;
}

function thingsOf(kitchen: Kitchen): readonly Thing[] {
  const places = kitchen.restPlaces;
  return [
    ...kitchen.mixers.map(({ id }): Thing => ({ resource: { kind: 'mixer', id }, room: 1 })),
    ...kitchen.stations.map(({ id, hands }): Thing => ({ resource: { kind: 'station', id }, room: hands })),
    ...benchesOf(kitchen).map(({ id, room }): Thing => ({ resource: { kind: 'bench', id }, room })),
    ...places.map(({ id, room }): Thing => ({ resource: { kind: 'restPlace', id }, room: room ?? null })),
    ...decksOf(kitchen).map(({ id, slots }): Thing => ({ resource: { kind: 'deck', id }, room: slots.length })),
  ];
}

function strayOf(key: string): readonly Thing[] {
  const [kind, id = ''] = key.split(' ');
  return kind === 'mixer' || kind === 'station' || kind === 'bench' || kind === 'restPlace' || kind === 'deck'
    ? [{ resource: { kind, id }, room: null }]
    : [];
}
