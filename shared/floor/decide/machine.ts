import type { Mixer } from '../../documents/kitchen.ts';
import type { Claim, Step } from '../../documents/method.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { EventOf } from '../events.ts';
import { bowlHolder, strangeAllergens } from '../mixers.ts';
import { blockOn } from '../resources.ts';
import type { Refusal } from '../refusals.ts';
import { mixerHolder } from '../slots.ts';
import type { FloorState, Workpiece } from '../state.ts';
import type { BeginWishes } from './begin.ts';

type Resource = EventOf<'stepStarted'>['resources'][number];

/** What a step takes of mixers and bowls, and what it gives free. */
export interface Machine {
  readonly taken: readonly Resource[];
  readonly freed: readonly Resource[];
}

const NOTHING: Machine = { taken: [], freed: [] };

/**
 * The mixer and bowl for a step: the mixer that the dough is on, or the first of those that will do which is free, in
 * order and clean. While a dough stands in a bowl that comes off, its mixer is free for another.
 */
export function machineFor(
  state: FloorState,
  workpiece: Workpiece,
  step: Step,
  wishes: BeginWishes,
  nowMs: number,
): Result<Machine, Refusal> {
  const claim = step.claims.find((candidate) => candidate.kind === 'mixer');
  if (claim === undefined) return accepted(NOTHING);
  const mixers = state.kitchen?.document.mixers ?? [];
  const { mixerId: wantedId } = wishes;
  const wanted = mixers.find((mixer) => mixer.id === wantedId);
  if (wantedId !== undefined && wanted === undefined)
    return refused({ code: 'mixerUnknown', tag: workpiece.tag, stepId: step.id, mixerId: wantedId });
  const current = mixers.find((mixer) => mixer.id === workpiece.mixerId);
  if (step.verb === 'stand' && current?.bowlComesOff === true && workpiece.bowlId !== null)
    return accepted({ taken: [], freed: [{ kind: 'mixer', id: current.id }] });
  if (current !== undefined && (wanted === undefined || wanted === current))
    return accepted({ taken: [{ kind: 'mixer', id: current.id }], freed: [] });
  const chosen = chosenMixer(state, workpiece, step, wanted === undefined ? candidatesOf(claim, mixers) : [wanted], wishes, nowMs);
  if (!chosen.ok || chosen.value === null) return chosen.ok ? accepted(NOTHING) : chosen;
  const bowl = bowlFor(state, workpiece, step, chosen.value, nowMs);
  if (!bowl.ok) return bowl;
  const taken: Resource[] = [{ kind: 'mixer', id: chosen.value.id }];
  if (bowl.value !== null) taken.push({ kind: 'bowl', id: bowl.value });
  return accepted({ taken, freed: current === undefined ? [] : [{ kind: 'mixer', id: current.id }] });
}

function candidatesOf(claim: Claim, mixers: readonly Mixer[]): readonly Mixer[] {
  if (claim.ids.length === 0) return mixers;
  return claim.ids.map((id) => mixers.find((mixer) => mixer.id === id)).filter((mixer) => mixer !== undefined);
}

function chosenMixer(
  state: FloorState,
  workpiece: Workpiece,
  step: Step,
  candidates: readonly Mixer[],
  wishes: BeginWishes,
  nowMs: number,
): Result<Mixer | null, Refusal> {
  let reason: Refusal | null = null;
  for (const mixer of candidates) {
    const refusal = whyNot(state, workpiece, step, mixer, wishes, nowMs);
    if (refusal === null) return accepted(mixer);
    reason ??= refusal;
  }
  return reason === null ? accepted(null) : refused(reason);
}

function whyNot(state: FloorState, workpiece: Workpiece, step: Step, mixer: Mixer, wishes: BeginWishes, nowMs: number): Refusal | null {
  const at = { tag: workpiece.tag, stepId: step.id };
  const holder = mixerHolder(state, mixer.id);
  if (holder !== null && holder.id !== workpiece.id) return { code: 'mixerBusy', ...at, mixerId: mixer.id, busyWithTag: holder.tag };
  const block = blockOn(state, { kind: 'mixer', id: mixer.id }, nowMs);
  if (block !== null) {
    const until = block.untilMs === undefined ? {} : { untilMs: block.untilMs };
    return { code: 'resourceBlocked', ...at, resource: block.resource, why: block.why, ...until };
  }
  if (wishes.despite?.includes('changeOver') === true) return null;
  const allergens = strangeAllergens(state, mixer, workpiece, nowMs);
  if (allergens.length === 0) return null;
  return { code: 'changeOverNeeded', ...at, mixerId: mixer.id, allergens: [...allergens], cleanMin: mixer.changeOverMin ?? 0 };
}

/** The bowl that the dough is in where it fits, or the first free one that does; null where the kitchen counts none for the mixer. */
function bowlFor(state: FloorState, workpiece: Workpiece, step: Step, mixer: Mixer, nowMs: number): Result<string | null, Refusal> {
  const fitting = (state.kitchen?.document.bowls ?? []).filter((bowl) => bowl.fits.includes(mixer.id));
  if (fitting.length === 0 || fitting.some((bowl) => bowl.id === workpiece.bowlId)) return accepted(null);
  const free = fitting.find((bowl) => bowlHolder(state, bowl.id) === null && blockOn(state, { kind: 'bowl', id: bowl.id }, nowMs) === null);
  if (free !== undefined) return accepted(free.id);
  const takenByTags = fitting.map((bowl) => bowlHolder(state, bowl.id)?.tag).filter((tag) => tag !== undefined);
  return refused({ code: 'noFreeBowl', tag: workpiece.tag, stepId: step.id, mixerId: mixer.id, takenByTags });
}
