import type { Claim } from '../../documents/method.ts';
import type { OnFloorCommand } from '../decide-on-floor.ts';
import { bowlHolder } from '../mixers.ts';
import { blockOn } from '../resources.ts';
import { projectionOf } from '../projection.ts';
import { mixerHolder } from '../slots.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { wayOf } from '../way.ts';
import type { WayOut } from '../ways-out.ts';
import { effectOf, finishOf, refusalOf, refusedStep, wayOut, type Asked } from './asked.ts';
import { blockedUntilMs } from './blocked.ts';

type ClaimKind = Claim['kind'];

/** Whether it is a mixer that has another dough in it, has no bowl for it, is being cleaned or has to be. */
export function isAboutMixer(asked: Asked): boolean {
  return refusedMixerId(asked) !== null;
}

function refusedMixerId({ refusal }: Asked): string | null {
  if (refusal.code === 'mixerBusy' || refusal.code === 'changeOverNeeded' || refusal.code === 'noFreeBowl') return refusal.mixerId;
  return refusal.code === 'resourceBlocked' && refusal.resource.kind === 'mixer' ? refusal.resource.id : null;
}

/** Another mixer that takes so much dough, and the cleaning that a change-over asks for. */
export function mixerWays(asked: Asked): readonly WayOut[] {
  return isAboutMixer(asked) ? [...otherMixers(asked), ...cleaning(asked)] : [];
}

function otherMixers(asked: Asked): readonly WayOut[] {
  const { state, due, nowMs } = asked;
  const { grams, id } = due.workpiece;
  const refusedId = refusedMixerId(asked);
  return (state.kitchen?.document.mixers ?? []).flatMap((mixer) => {
    const holder = mixerHolder(state, mixer.id);
    if (mixer.id === refusedId || (holder !== null && holder.id !== id) || blockOn(state, { kind: 'mixer', id: mixer.id }, nowMs) !== null)
      return [];
    if (grams < mixer.leastG || grams > mixer.mostG) return [];
    const command = onMixer(asked, mixer.id);
    return command === null ? [] : [wayOut('otherMixer', command, effectOf(asked, 0), { mixerId: mixer.id })];
  });
}

/** A step that is itself on the mixer and not begun is begun there, or else the one after it is; whichever is accepted. */
function onMixer(asked: Asked, mixerId: string): OnFloorCommand | null {
  const { state, due, nowMs } = asked;
  const start: OnFloorCommand = { type: 'startStep', workpieceId: due.workpiece.id, stepId: due.action.id, mixerId };
  const finish: OnFloorCommand = { ...finishOf(due), mixerId };
  const isWaiting = due.workpiece.steps[due.action.id] === undefined;
  const wantsMixer = due.action.claims.some((claim) => claim.kind === 'mixer');
  const commands = isWaiting && wantsMixer ? [start, finish] : [finish];
  return commands.find((command) => refusalOf(state, command, nowMs) === null) ?? null;
}

function cleaning(asked: Asked): readonly WayOut[] {
  const { refusal } = asked;
  if (refusal.code !== 'changeOverNeeded') return [];
  const { mixerId, cleanMin } = refusal;
  const minutes = Math.max(1, Math.ceil(cleanMin));
  const command: OnFloorCommand = { type: 'blockResource', resource: { kind: 'mixer', id: mixerId }, why: 'allergenChangeOver', minutes };
  return [wayOut('clean', command, effectOf(asked, minutes), { mixerId })];
}

/** When the first of the mixers that will do is expected to be free; infinity where nobody can tell, or where only cleaning helps. */
export function mixerFreeMs(asked: Asked): number {
  const { state, nowMs, refusal } = asked;
  if (refusal.code === 'changeOverNeeded') return Infinity;
  if (refusal.code === 'noFreeBowl') return bowlFreeMs(asked, refusal.mixerId);
  const refusedId = refusedMixerId(asked);
  const claimed = refusedStep(asked).claims.find((claim) => claim.kind === 'mixer')?.ids ?? [];
  const all = (state.kitchen?.document.mixers ?? []).map((mixer) => mixer.id);
  const ids = claimed.length > 0 ? claimed : refusedId === null ? all : [refusedId, ...all];
  return Math.min(...ids.map((id) => Math.max(heldUntilMs(state, id, nowMs), blockedUntilMs(state, 'mixer', id, nowMs))));
}

function heldUntilMs(state: FloorState, mixerId: string, nowMs: number): number {
  const holder = mixerHolder(state, mixerId);
  return holder === null ? nowMs : untilOutOf(state, holder, ['mixer'], nowMs);
}

/** A dough keeps its bowl while it is mixed, whether it is on the mixer or not. */
function bowlFreeMs({ state, nowMs }: Asked, mixerId: string): number {
  const bowls = (state.kitchen?.document.bowls ?? []).filter((bowl) => bowl.fits.includes(mixerId));
  return Math.min(
    ...bowls.map((bowl) => {
      const holder = bowlHolder(state, bowl.id);
      const heldMs = holder === null ? nowMs : untilOutOf(state, holder, ['mixer', 'bowl'], nowMs);
      return Math.max(heldMs, blockedUntilMs(state, 'bowl', bowl.id, nowMs));
    }),
  );
}

/** When a dough is expected to be done with the machine that it has: at the end of its steps there that follow one another. */
function untilOutOf(state: FloorState, holder: Workpiece, kinds: readonly ClaimKind[], nowMs: number): number {
  const thereIds = new Set(
    wayOf(state, holder)
      .filter((step) => step.claims.some((claim) => kinds.includes(claim.kind)))
      .map((step) => step.id),
  );
  let atMs = nowMs;
  for (const { stepId, toMs } of projectionOf(state, holder, nowMs)?.stretches ?? []) {
    if (!thereIds.has(stepId)) break;
    atMs = Math.max(atMs, toMs);
  }
  return atMs;
}
