import type { Step } from '../../shared/documents/method.ts';
import { slotHolders, slotsNeeded } from '../../shared/floor/slots.ts';
import { slotsInOrder } from '../../shared/floor/slot-order.ts';
import type { Workpiece } from '../../shared/floor/state.ts';
import type { DayMind } from './day-mind.ts';

/** Somebody has a deck of their own in mind so often. */
const OWN_MIND_SHARE = 0.35;

/** Free slots of one deck that somebody would rather have than the first; null where the house may choose. */
export function freeSlotsFor({ floor, chance }: DayMind, workpiece: Workpiece, load: Step): readonly string[] | null {
  if (!chance.is(OWN_MIND_SHARE)) return null;
  const holders = slotHolders(floor.state);
  const choices = slotsInOrder(floor.state, workpiece, load, floor.nowMs).flatMap(({ deck, slotIds }) => {
    const needed = slotsNeeded(floor.state, workpiece, load, deck.id);
    const free = slotIds.filter((slotId) => !holders.has(slotId));
    return free.length < needed ? [] : [free.slice(-needed)];
  });
  const [first, ...others] = choices;
  return first === undefined ? null : chance.pick([first, ...others]);
}
