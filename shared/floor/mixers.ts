import type { Allergen } from '../documents/allergen.ts';
import type { Mixer } from '../documents/kitchen.ts';
import type { Step } from '../documents/method.ts';
import { allergensOf } from './contents.ts';
import type { EventOf } from './events.ts';
import type { FloorState, Workpiece } from './state.ts';

/** The workpiece that has a bowl, or null. */
export function bowlHolder(state: FloorState, bowlId: string): Workpiece | null {
  return Object.values(state.workpieces).find((workpiece) => workpiece.bowlId === bowlId) ?? null;
}

/**
 * Allergens that a mixer has had in it since it was cleaned and that a dough has not. Empty where nobody changes over
 * that mixer. As the ingredients declare them: no test of what is really in the bowl.
 */
export function strangeAllergens(state: FloorState, mixer: Mixer, workpiece: Workpiece, nowMs: number): readonly Allergen[] {
  if (mixer.changeOverMin === undefined || cleaningOver(state, mixer.id, nowMs) !== null) return [];
  const own = new Set(allergensOf(state, workpiece));
  return (state.residues[mixer.id]?.allergens ?? []).filter((allergen) => !own.has(allergen));
}

/** The cleaning of a mixer that was to last until an instant and is over by then, though nobody said so; null where there was none. */
export function cleaningOver(state: FloorState, mixerId: string, nowMs: number): EventOf<'resourceBlocked'> | null {
  const over = state.blocked.find(
    (block) =>
      block.resource.kind === 'mixer' &&
      block.resource.id === mixerId &&
      block.why !== 'outOfOrder' &&
      block.untilMs !== undefined &&
      block.untilMs <= nowMs,
  );
  return over ?? null;
}

/** For each mixer that a step wants, those that will do, best first: the ones it names, or any. */
export function mixersOf(state: FloorState, step: Step): readonly (readonly Mixer[])[] {
  const all = state.kitchen?.document.mixers ?? [];
  return step.claims
    .filter((claim) => claim.kind === 'mixer')
    .map(({ ids }) => (ids.length === 0 ? all : ids.flatMap((id) => all.filter((mixer) => mixer.id === id))));
}
