import type { House } from '../../shared/documents/house.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { decksOf } from '../../shared/floor/slots.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { Device } from '../../shared/wire/down.ts';
import { clockText } from '../parts/clock-text.ts';
import { loadText, weightText } from '../parts/weight-text.ts';
import type { RefusalFacts } from '../words/refusals.ts';
import { VERBS } from '../words/verbs.ts';
import { stepOf } from './step-of.ts';
import { readingText } from './degrees.ts';

/** The house's time zone; the world's clock where the house has not said. */
export function zoneOf(state: FloorState | null): string {
  return state?.house?.document.zone ?? 'UTC';
}

/** Units of a house that has not said any. */
const USUAL_UNITS: House['units'] = { temperature: 'C', weight: 'g' };

/** The house's units. */
export function unitsOf(state: FloorState | null): House['units'] {
  return state?.house?.document.units ?? USUAL_UNITS;
}

/** Everything in the house that has a name and is no slot. */
function namedIn(kitchen: Kitchen): readonly { readonly id: string; readonly name: string }[] {
  const { mixers, bowls, restPlaces, vessels, stations } = kitchen;
  return [...mixers, ...bowls, ...restPlaces, ...vessels, ...stations, ...decksOf(kitchen)];
}

/** A station by name; its id where the kitchen no longer has it. */
export function stationName(state: FloorState, stationId: string): string {
  return state.kitchen?.document.stations.find((station) => station.id === stationId)?.name ?? stationId;
}

/** The names that refusals are told with. */
export function factsOf(state: FloorState | null, devices: readonly Device[], deviceId: string | null): RefusalFacts {
  const kitchen = state?.kitchen?.document;
  const decks = kitchen === undefined ? [] : decksOf(kitchen);
  const deck = decks.flatMap((candidate) => candidate.slots.map((slot) => ({ id: slot.id, name: `${candidate.name} ${slot.name}` })));
  const nameIn = (items: readonly { readonly id: string; readonly name: string }[] | undefined, id: string): string | null =>
    items?.find((item) => item.id === id)?.name ?? null;
  return {
    clock: (atMs) => clockText(atMs, zoneOf(state)),
    step: (tag, stepId) => {
      if (state === null || tag === undefined || stepId === undefined) return null;
      const workpiece = Object.values(state.workpieces).find(
        (candidate) => candidate.tag === tag && stepOf(state, candidate.id, stepId) !== null,
      );
      const step = workpiece === undefined ? null : stepOf(state, workpiece.id, stepId);
      return step === null ? null : VERBS[step.verb].running;
    },
    station: (stationId) => nameIn(kitchen?.stations, stationId),
    device: (id) => nameIn(devices, id),
    isThisDevice: (id) => id === deviceId,
    mixer: (mixerId) => nameIn(kitchen?.mixers, mixerId) ?? mixerId,
    slot: (slotId) => nameIn(deck, slotId) ?? slotId,
    deck: (deckId) => nameIn(decks, deckId) ?? deckId,
    formula: (formulaId) => nameIn(Object.values(state?.formulas ?? {}), formulaId) ?? formulaId,
    vessel: (vesselId) => nameIn(kitchen?.vessels, vesselId) ?? vesselId,
    place: (placeId) => nameIn(kitchen?.restPlaces, placeId) ?? placeId,
    ingredient: (ingredientId) => nameIn(state?.ingredients?.document, ingredientId) ?? ingredientId,
    reading: (celsius) => readingText(celsius, unitsOf(state).temperature),
    weight: (grams) => weightText(grams, unitsOf(state)),
    load: (grams) => loadText(grams, unitsOf(state)),
    resource: ({ id }) => (kitchen === undefined ? null : nameIn([...namedIn(kitchen), ...deck], id)) ?? id,
    product: (productId) => Object.values(state?.products ?? {}).find((product) => product.id === productId)?.name ?? productId,
  };
}
