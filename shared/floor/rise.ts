import type { Mixer } from '../documents/kitchen.ts';
import { expectedRise, type ExpectedRise } from '../trade/expected-rise.ts';
import { formulaOf } from './contents.ts';
import type { FloorState, RiseSample, Workpiece } from './state.ts';

/**
 * By how much a mixer is expected to warm a dough of a formula and a load (grams), in kelvin, with how sure that is and
 * from where it is known. Without a mixer, what is customary. What `exceptId`, a dough itself, has said does not count.
 */
export function riseOf(state: FloorState, mixerId: string | null, formulaId: string, loadG: number, exceptId?: string): ExpectedRise {
  const mixer = state.kitchen?.document.mixers.find((candidate) => candidate.id === mixerId);
  const samples = mixerId === null ? [] : (state.rises[mixerId] ?? []);
  const readings = lastOfEach(samples).filter((sample) => sample.workpieceId !== exceptId);
  return expectedRise({ readings, formulaId, loadG, documentRiseK: mixer?.riseK ?? null });
}

/** What each dough said last. The state keeps all of it, so that after an undo the one before counts again. */
function lastOfEach(samples: readonly RiseSample[]): readonly RiseSample[] {
  return samples.filter((sample, index) => !samples.slice(index + 1).some((later) => later.workpieceId === sample.workpieceId));
}

/**
 * The mixer that a dough is on, or will be on as things are: the first that its method names, or the first of the kitchen's
 * that takes its weight. Null where nothing of it is mixed.
 */
export function mixerFor(state: FloorState, workpiece: Workpiece): string | null {
  if (workpiece.mixerId !== null) return workpiece.mixerId;
  const claims = (formulaOf(state, workpiece)?.method ?? []).flatMap((step) => step.claims.filter((claim) => claim.kind === 'mixer'));
  const [claim] = claims;
  if (claim === undefined) return null;
  const mixers = state.kitchen?.document.mixers ?? [];
  const candidates = claim.ids.length === 0 ? mixers : claim.ids.flatMap((id) => mixers.find((mixer) => mixer.id === id) ?? []);
  return (candidates.find((mixer) => takes(mixer, workpiece.scaledToG)) ?? candidates[0])?.id ?? null;
}

function takes({ leastG, mostG }: Mixer, grams: number): boolean {
  return grams >= leastG && grams <= mostG;
}
