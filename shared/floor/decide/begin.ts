import { beginsByItself, type Step } from '../../documents/method.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { CommandContext } from '../commands.ts';
import { plannedMin } from '../due.ts';
import type { EventOf } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import { mixerHolder } from '../slots.ts';
import type { FloorState, Workpiece } from '../state.ts';

type Resource = EventOf<'stepStarted'>['resources'][number];

/** A step's start with everything that its due times will be computed from. */
export function startOf(
  state: FloorState,
  workpiece: Workpiece,
  step: Step,
  atMs: number,
  context: CommandContext,
  wantedMixerId?: string,
): Result<EventOf<'stepStarted'>, Refusal> {
  const mixer = mixerFor(state, workpiece, step, wantedMixerId);
  if (!mixer.ok) return mixer;
  const resources: Resource[] = [];
  if (mixer.value !== null) resources.push({ kind: 'mixer', id: mixer.value });
  if (step.place !== undefined) resources.push({ kind: 'restPlace', id: step.place });
  const { earliest, latest } = step.minutes;
  return accepted({
    type: 'stepStarted',
    workpieceId: workpiece.id,
    stepId: step.id,
    atMs,
    ...stationFields(context),
    resources,
    pins: {
      ...(earliest === undefined ? {} : { earliestMin: earliest }),
      targetMin: plannedMin(step, workpiece),
      ...(latest === undefined ? {} : { latestMin: latest }),
      factor: 1,
      model: 'nominal',
      houseVersion: state.house?.version ?? 0,
    },
    ...(context.tapUncertain ? { tapUncertain: true as const } : {}),
  });
}

/** The start of the next step where it begins by itself, or nothing. */
export function startOfNext(
  state: FloorState,
  workpiece: Workpiece,
  next: Step | undefined,
  atMs: number,
  context: CommandContext,
): Result<readonly EventOf<'stepStarted'>[], Refusal> {
  if (next === undefined || !beginsByItself(next)) return accepted([]);
  const started = startOf(state, workpiece, next, atMs, context);
  return started.ok ? accepted([started.value]) : started;
}

/** Where the tap was made, for the events of steps. */
export function stationFields(context: CommandContext): { stationId?: string } {
  return context.stationId === null ? {} : { stationId: context.stationId };
}

function mixerFor(state: FloorState, workpiece: Workpiece, step: Step, wantedMixerId: string | undefined): Result<string | null, Refusal> {
  const claim = step.claims.find((candidate) => candidate.kind === 'mixer');
  if (claim === undefined) return accepted(null);
  if (wantedMixerId === undefined && workpiece.mixerId !== null) return accepted(workpiece.mixerId);
  const mixers = state.kitchen?.document.mixers ?? [];
  const tag = workpiece.tag;
  const stepId = step.id;
  if (wantedMixerId !== undefined && !mixers.some((mixer) => mixer.id === wantedMixerId))
    return refused({ code: 'mixerUnknown', tag, stepId, mixerId: wantedMixerId });
  const candidates = wantedMixerId !== undefined ? [wantedMixerId] : claim.ids.length > 0 ? claim.ids : mixers.map((mixer) => mixer.id);
  let busy: Refusal | null = null;
  for (const mixerId of candidates) {
    const holder = mixerHolder(state, mixerId);
    if (holder === null || holder.id === workpiece.id) return accepted(mixerId);
    busy ??= { code: 'mixerBusy', tag, stepId, mixerId, busyWithTag: holder.tag };
  }
  return busy === null ? accepted(null) : refused(busy);
}
