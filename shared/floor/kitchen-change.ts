import { faultAt, type FileFault } from '../documents/kitchen-faults.ts';
import type { Kitchen } from '../documents/kitchen.ts';
import type { Step } from '../documents/method.ts';
import { unreachable } from '../result.ts';
import { holdings, resourceName, type Resource } from './resources.ts';
import { heldVessels } from './vessels.ts';
import { formulasInForce, productsInForce } from './book-of.ts';
import { decksOf } from './slots.ts';
import { versionKey, type FloorState } from './state.ts';
import { wayOf } from './way.ts';

/** A method that names things of the kitchen, with the name that people know it by. */
interface Way {
  readonly name: string;
  readonly steps: readonly Step[];
}

/**
 * What stands against a changed kitchen on the floor as it is: what was taken out and is still named by a method in
 * force or by that of an open dough, or held by one; vessels counted below what is held. What the kitchen in force has
 * not either is no fault of the change. Each thing is told once, with who needs it. Paths begin with `kitchen`.
 */
export function changeFaults(state: FloorState, after: Kitchen): FileFault[] {
  const before = state.kitchen?.document;
  if (before === undefined) return [];
  const needs = new Map<string, { readonly path: string; readonly name: string; readonly by: Set<string> }>();
  const need = (resource: Resource, by: string): void => {
    const name = resourceName(before, resource);
    if (name === null || resourceName(after, resource) !== null) return;
    const key = `${listOf(resource.kind)} ${resource.id}`;
    const entry = needs.get(key) ?? { path: pathOf(after, before, resource), name, by: new Set<string>() };
    entry.by.add(by);
    needs.set(key, entry);
  };
  for (const { tag, resource } of holdings(state)) need(resource, tag);
  for (const way of waysInUse(state)) for (const step of way.steps) for (const resource of namedBy(step)) need(resource, way.name);
  for (const { product, resource } of ovenNamed(state)) need(resource, product);
  const removed = [...needs.values()].map(({ path, name, by }) => faultAt(path, { code: 'stillNeeded', name, by: [...by] }));
  return [...removed, ...countFaults(state, before, after)];
}

/** The methods in force that are not out of the way, and those that open doughs began with. */
function waysInUse(state: FloorState): readonly Way[] {
  const formulas = formulasInForce(state).map(({ name, method }): Way => ({ name, steps: method }));
  const products = productsInForce(state)
    .filter((product) => !state.archivedFormulas.includes(product.formula))
    .map(({ name, way }): Way => ({ name, steps: way }));
  const open = Object.values(state.workpieces).flatMap((workpiece): readonly Way[] => {
    if (workpiece.finishedMs !== null) return [];
    const ahead = wayOf(state, workpiece).filter((step) => (workpiece.steps[step.id]?.status ?? 'started') === 'started');
    const cuts = workpiece.cuts.flatMap((cut) => state.products[versionKey(cut.productId, cut.productVersion)]?.way ?? []);
    return [{ name: workpiece.tag, steps: [...ahead, ...cuts] }];
  });
  return [...formulas, ...products, ...open];
}

/** Everything that a step names, as a bakehouse file is checked for: also the second best of a claim has to be there. */
function namedBy(step: Step): readonly Resource[] {
  const named: Resource[] = step.claims.flatMap((claim) =>
    claim.ids.map((id): Resource => ({ kind: claim.kind === 'hands' ? 'station' : claim.kind, id })),
  );
  if (step.station !== undefined) named.push({ kind: 'station', id: step.station });
  if (step.place !== undefined) named.push({ kind: 'restPlace', id: step.place });
  return named;
}

/** Decks and slots that products in force name for their room and their place. */
function ovenNamed(state: FloorState): readonly { readonly product: string; readonly resource: Resource }[] {
  return productsInForce(state)
    .filter((product) => !state.archivedFormulas.includes(product.formula))
    .flatMap(({ name, deckRoom = [], prefersSlots = [] }) => [
      ...deckRoom.map(({ deck }) => ({ product: name, resource: { kind: 'deck', id: deck } as const })),
      ...prefersSlots.map((id) => ({ product: name, resource: { kind: 'slot', id } as const })),
    ]);
}

function countFaults(state: FloorState, before: Kitchen, after: Kitchen): FileFault[] {
  const faults: FileFault[] = [];
  for (const vessel of before.vessels) {
    const heldCount = heldVessels(state, vessel.id);
    const index = after.vessels.findIndex((candidate) => candidate.id === vessel.id);
    const count = after.vessels[index]?.count ?? 0;
    if (count >= heldCount) continue;
    if (index === -1) faults.push(faultAt('kitchen.vessels', { code: 'vesselsHeld', name: vessel.name, heldCount }));
    else faults.push(faultAt(`kitchen.vessels[${index}].count`, { code: 'vesselsHeld', name: null, heldCount }));
  }
  return faults;
}

function listOf(kind: Resource['kind']): string {
  switch (kind) {
    case 'mixer':
      return 'mixers';
    case 'bowl':
      return 'bowls';
    case 'restPlace':
    case 'bench':
      return 'restPlaces';
    case 'vessel':
      return 'vessels';
    case 'deck':
    case 'slot':
      return 'ovens';
    case 'station':
      return 'stations';
    default:
      return unreachable(kind);
  }
}

/** The list that the thing was taken out of: a slot's deck and a deck's oven, where they are still there. */
function pathOf(after: Kitchen, before: Kitchen, { kind, id }: Resource): string {
  const list = `kitchen.${listOf(kind)}`;
  if (kind !== 'deck' && kind !== 'slot') return list;
  const oven = before.ovens.find((candidate) =>
    candidate.decks.some((deck) => (kind === 'deck' ? deck.id === id : deck.slots.some((slot) => slot.id === id))),
  );
  const ovenIndex = after.ovens.findIndex((candidate) => candidate.id === oven?.id);
  if (ovenIndex === -1) return list;
  const deckWas = kind === 'slot' ? decksOf(before).find((deck) => deck.slots.some((slot) => slot.id === id)) : undefined;
  const deckIndex = after.ovens[ovenIndex]?.decks.findIndex((deck) => deck.id === deckWas?.id) ?? -1;
  const decks = `${list}[${ovenIndex}].decks`;
  return deckIndex === -1 ? decks : `${decks}[${deckIndex}].slots`;
}
