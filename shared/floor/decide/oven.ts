import type { Step } from '../../documents/method.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { EventOf, FloorEvent } from '../events.ts';
import { blockOn } from '../resources.ts';
import type { Refusal } from '../refusals.ts';
import { slotsInOrder } from '../slot-order.ts';
import { decksOf, slotHolders, slotsNeeded } from '../slots.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { productOf } from '../way.ts';

type Block = EventOf<'resourceBlocked'>;

/** What a step says of the oven: a load goes into its slots; what is taken out leaves them, and has lost what baking takes. */
export function ovenFacts(
  state: FloorState,
  workpiece: Workpiece,
  way: readonly Step[],
  step: Step,
  atMs: number,
  nowMs: number,
  wantedSlotIds: readonly string[] | undefined,
): Result<readonly FloorEvent[], Refusal> {
  if (step.verb === 'takeOut') return accepted(takenOut(state, workpiece, way, step, atMs));
  if (step.verb !== 'load') return accepted([]);
  const slots = chosenSlots(state, workpiece, step, nowMs, wantedSlotIds);
  if (!slots.ok) return slots;
  const pieces = workpiece.pieces === null || workpiece.pieces === 0 ? {} : { pieces: workpiece.pieces };
  return accepted([{ type: 'ovenLoaded', workpieceId: workpiece.id, stepId: step.id, atMs, slotIds: [...slots.value], ...pieces }]);
}

function takenOut(state: FloorState, workpiece: Workpiece, way: readonly Step[], step: Step, atMs: number): FloorEvent[] {
  const events: FloorEvent[] = [];
  if (workpiece.slotIds.length > 0)
    events.push({ type: 'ovenUnloaded', workpieceId: workpiece.id, stepId: step.id, atMs, slotIds: [...workpiece.slotIds] });
  const isBakedAgain = way.slice(way.findIndex((candidate) => candidate.id === step.id)).some((later) => later.kind === 'bake');
  const grams = isBakedAgain ? 0 : bakeLossG(state, workpiece);
  if (grams > 0) events.push({ type: 'lossNamed', workpieceId: workpiece.id, what: 'bake', grams, atMs });
  return events;
}

/** What the dough of the pieces loses in the oven, by the product's bake loss; toppings and fillings are not dough. In grams, to 0.1. */
function bakeLossG(state: FloorState, workpiece: Workpiece): number {
  const product = productOf(state, workpiece);
  if (product === null || workpiece.pieces === null) return 0;
  const doughG = Math.min(workpiece.grams, product.pieceG * workpiece.pieces);
  return Math.round(doughG * product.bakeLossPct * 0.1) / 10;
}

function chosenSlots(
  state: FloorState,
  workpiece: Workpiece,
  load: Step,
  nowMs: number,
  wanted: readonly string[] | undefined,
): Result<readonly string[], Refusal> {
  const kitchen = state.kitchen?.document;
  const order = slotsInOrder(state, workpiece, load, nowMs);
  const holders = slotHolders(state);
  const candidates = order.flatMap(({ slotIds }) => slotIds);
  const blocks = slotBlocks(state, nowMs);
  const freeSlotIds = candidates.filter((slotId) => !holders.has(slotId) && !blocks.has(slotId));
  const at = { tag: workpiece.tag, stepId: load.id };
  if (wanted !== undefined) {
    const known = new Set(kitchen === undefined ? [] : decksOf(kitchen).flatMap((deck) => deck.slots.map((slot) => slot.id)));
    for (const slotId of wanted) {
      if (!known.has(slotId)) return refused({ code: 'slotUnknown', ...at, slotId });
      const holder = holders.get(slotId);
      if (holder !== undefined) return refused({ code: 'slotTaken', ...at, slotId, takenByTag: holder.tag, freeSlotIds });
      const block = blocks.get(slotId);
      if (block !== undefined) return refused(blockedRefusal(block, at));
    }
    return accepted([...new Set(wanted)]);
  }
  for (const { deck, slotIds } of order) {
    const free = freeSlotIds.filter((slotId) => slotIds.includes(slotId));
    const fits = slotsNeeded(state, workpiece, load, deck.id);
    if (free.length >= fits) return accepted(free.slice(0, fits));
  }
  const needed = slotsNeeded(state, workpiece, load);
  if (freeSlotIds.length >= needed) return accepted(freeSlotIds.slice(0, needed));
  const takenByTags = [...new Set(candidates.map((slotId) => holders.get(slotId)?.tag).filter((tag) => tag !== undefined))];
  const block = candidates.map((slotId) => blocks.get(slotId)).find((candidate) => candidate !== undefined);
  if (takenByTags.length === 0 && block !== undefined) return refused(blockedRefusal(block, at));
  return refused({ code: 'noFreeSlot', ...at, deckIds: order.map(({ deck }) => deck.id), takenByTags });
}

/** Slots that nobody can have at an instant, their deck's or their own block. */
function slotBlocks(state: FloorState, nowMs: number): ReadonlyMap<string, Block> {
  const blocks = new Map<string, Block>();
  const kitchen = state.kitchen?.document;
  for (const deck of kitchen === undefined ? [] : decksOf(kitchen)) {
    const deckBlock = blockOn(state, { kind: 'deck', id: deck.id }, nowMs);
    for (const slot of deck.slots) {
      const block = deckBlock ?? blockOn(state, { kind: 'slot', id: slot.id }, nowMs);
      if (block !== null) blocks.set(slot.id, block);
    }
  }
  return blocks;
}

function blockedRefusal(block: Block, at: { readonly tag: string; readonly stepId: string }): Refusal {
  const until = block.untilMs === undefined ? {} : { untilMs: block.untilMs };
  return { code: 'resourceBlocked', ...at, resource: block.resource, why: block.why, ...until };
}
