import { decksOf } from '../../shared/floor/slots.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { Device } from '../../shared/wire/down.ts';
import { clockText } from '../parts/clock-text.ts';
import type { RefusalFacts } from '../words/en/refusals.ts';
import { VERBS } from '../words/en/verbs.ts';
import { stepOf } from './card-model.ts';

/** The house's time zone; the world's clock where the house has not said. */
export function zoneOf(state: FloorState | null): string {
  return state?.house?.document.zone ?? 'UTC';
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
    product: (productId) => Object.values(state?.products ?? {}).find((product) => product.id === productId)?.name ?? productId,
  };
}
