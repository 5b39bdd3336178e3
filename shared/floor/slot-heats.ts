import { slotHeat, type SlotHeat } from '../trade/slot-heat.ts';
import { dueOf } from './due.ts';
import type { EventOf, FloorEvent } from './events.ts';
import { decksOf } from './slots.ts';
import type { FloorState, Workpiece } from './state.ts';

const MINUTE_MS = 60_000;
/** A bake that took less or more than these shares of its minutes says something else than how hot its place is. */
const LEAST_SHARE = 0.5;
const MOST_SHARE = 2;

/** How hot a slot is at an instant, by what was baked in it. */
export function slotHeatAt(state: FloorState, slotId: string, atMs: number): SlotHeat {
  return slotHeat(state.slotHeat[slotId] ?? [], atMs);
}

/** The same; null where nothing was baked in it yet. */
export function knownHeat(state: FloorState, slotId: string, atMs: number): SlotHeat | null {
  const heat = slotHeatAt(state, slotId, atMs);
  return heat.count === 0 ? null : heat;
}

/** What the minutes of a bake are multiplied by in the slots where a load lies: the coolest part of it ends last. */
export function bakeFactor(state: FloorState, slotIds: readonly string[], atMs: number): number {
  const factors = slotIds.map((slotId) => slotHeatAt(state, slotId, atMs).factor);
  return factors.length === 0 ? 1 : Math.max(...factors);
}

/** A slot of an oven with its heat, for the map. */
export interface MappedSlot {
  readonly ovenId: string;
  readonly deckId: string;
  readonly slotId: string;
  /** "Bottom left". */
  readonly name: string;
  readonly heat: SlotHeat;
}

/** All slots of an oven, the hottest first; those of which nothing is known stand as the reference does. */
export function slotsByHeat(state: FloorState, ovenId: string, atMs: number): readonly MappedSlot[] {
  const kitchen = state.kitchen?.document;
  const oven = kitchen?.ovens.find(({ id }) => id === ovenId);
  const slots = (oven?.decks ?? []).flatMap((deck) =>
    deck.slots.map((slot) => ({
      ovenId,
      deckId: deck.id,
      slotId: slot.id,
      name: `${deck.name} ${slot.name}`,
      heat: slotHeatAt(state, slot.id, atMs),
    })),
  );
  return slots.sort((a, b) => a.heat.factor - b.heat.factor);
}

/**
 * What the end of a bake teaches of the slots that it stood in: its minutes as a multiple of its programme's. A bake that was taken out late
 * with nobody having asked for more time was only left in; one that was inferred, or whose tap cannot be placed, says nothing.
 */
export function taughtByBake(
  state: FloorState,
  { workpieceId, stepId, inferred, tapUncertain, atMs }: EventOf<'stepDone'>,
): readonly FloorEvent[] {
  const workpiece = state.workpieces[workpieceId];
  if (workpiece === undefined || inferred === true || tapUncertain === true || workpiece.slotIds.length === 0) return [];
  const due = dueOf(state, workpiece);
  if (due?.step.id !== stepId || due.step.kind !== 'bake' || due.startedMs === null) return [];
  const life = workpiece.steps[stepId];
  if (life?.pins === undefined || life.pins === null || life.isMoved || (atMs > due.lateMs && life.moreMin === 0)) return [];
  const minutesShare = (atMs - due.startedMs) / MINUTE_MS / life.pins.targetMin;
  if (!(minutesShare >= LEAST_SHARE && minutesShare <= MOST_SHARE)) return [];
  return [{ type: 'slotHeatLearned', slotIds: [...workpiece.slotIds], kind: 'bake', minutesShare, atMs }];
}

/** Loads that bake in a slot. */
export function bakingIn(state: FloorState, slotId: string): readonly Workpiece[] {
  return Object.values(state.workpieces).filter(
    (workpiece) => workpiece.slotIds.includes(slotId) && dueOf(state, workpiece)?.step.kind === 'bake',
  );
}

/** Whether the kitchen has a slot. */
export function hasSlot(state: FloorState, slotId: string): boolean {
  const kitchen = state.kitchen?.document;
  return kitchen !== undefined && decksOf(kitchen).some((deck) => deck.slots.some((slot) => slot.id === slotId));
}
