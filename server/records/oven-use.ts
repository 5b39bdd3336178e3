import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { DeckUse } from '../../shared/records/answers.ts';

const MINUTE_MS = 60_000;

/** Something that lay in slots of an oven. Instants in ms; null while it still does. */
export interface OvenStay {
  readonly slotIds: readonly string[];
  readonly fromMs: number;
  readonly toMs: number | null;
}

/**
 * How full each deck was, from the first load to the last unloading of them all. What lies in a slot twice at once counts once; what is
 * still in is left out.
 */
export function ovenUse(kitchen: Kitchen | null, stays: readonly OvenStay[]): readonly DeckUse[] {
  const over = stays.flatMap(({ slotIds, fromMs, toMs }) => (toMs === null || toMs <= fromMs ? [] : [{ slotIds, fromMs, toMs }]));
  if (kitchen === null || over.length === 0) return [];
  const fromMs = Math.min(...over.map((stay) => stay.fromMs));
  const toMs = Math.max(...over.map((stay) => stay.toMs));
  return kitchen.ovens
    .flatMap((oven) => oven.decks)
    .map((deck) => ({
      deck: deck.id,
      slots: deck.slots.length,
      slotMin: deck.slots.reduce((sum, slot) => sum + takenMs(over.filter(({ slotIds }) => slotIds.includes(slot.id))), 0) / MINUTE_MS,
      spanMin: (toMs - fromMs) / MINUTE_MS,
    }));
}

/** How long at least one of them lasted. */
function takenMs(stays: readonly { readonly fromMs: number; readonly toMs: number }[]): number {
  let takenToMs = Number.NEGATIVE_INFINITY;
  let sumMs = 0;
  for (const { fromMs, toMs } of [...stays].sort((a, b) => a.fromMs - b.fromMs)) {
    sumMs += Math.max(0, toMs - Math.max(fromMs, takenToMs));
    takenToMs = Math.max(takenToMs, toMs);
  }
  return sumMs;
}
