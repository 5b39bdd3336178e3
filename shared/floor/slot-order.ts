import type { Deck } from '../documents/kitchen.ts';
import type { Step } from '../documents/method.ts';
import { plannedStepOf } from './planned-step.ts';
import { slotHeatAt } from './slot-heats.ts';
import { decksFor } from './slots.ts';
import type { FloorState, Workpiece } from './state.ts';
import { productOf } from './way.ts';

/**
 * Where a load is best put, deck by deck: the deck that the plan has it on first, then those that will do; on each the slots that its
 * product prefers, then those whose heat is nearest to the reference, as far as anybody knows.
 */
export function slotsInOrder(
  state: FloorState,
  workpiece: Workpiece,
  load: Step,
  nowMs: number,
): readonly { readonly deck: Deck; readonly slotIds: readonly string[] }[] {
  const kitchen = state.kitchen?.document;
  if (kitchen === undefined) return [];
  const plannedId = plannedStepOf(state, workpiece, load.id)?.resources.find(({ kind }) => kind === 'deck')?.id;
  const liked = productOf(state, workpiece)?.prefersSlots ?? [];
  const offReference = (slotId: string): number => Math.abs(Math.log(slotHeatAt(state, slotId, nowMs).factor));
  return [...decksFor(kitchen, load)]
    .sort((a, b) => Number(b.id === plannedId) - Number(a.id === plannedId))
    .map((deck) => {
      const own = deck.slots.map(({ id }) => id);
      const preferred = liked.filter((id) => own.includes(id));
      const others = own.filter((id) => !preferred.includes(id)).sort((a, b) => offReference(a) - offReference(b));
      return { deck, slotIds: [...preferred, ...others] };
    });
}
