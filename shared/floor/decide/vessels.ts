import type { Step } from '../../documents/method.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { Despite, EventOf } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { freeVessels, givesBackAt, vesselsFreeMs, vesselsLacking } from '../vessels.ts';
import { wayOf } from '../way.ts';

/** The vessels that a step claims and its workpiece does not have yet. Refused where there are too few, unless knowingly. */
export function takeVessels(
  state: FloorState,
  workpiece: Workpiece,
  step: Step,
  despite: readonly Despite[],
  atMs: number,
  nowMs: number,
): Result<readonly EventOf<'vesselsTaken'>[], Refusal> {
  const events: EventOf<'vesselsTaken'>[] = [];
  for (const claim of step.claims) {
    const needed = claim.kind === 'vessel' ? vesselsLacking(workpiece, claim) : 0;
    const [first] = claim.ids;
    if (needed === 0 || first === undefined) continue;
    const vesselId = claim.ids.find((id) => freeVessels(state, id, nowMs) >= needed);
    if (vesselId !== undefined) {
      events.push({ type: 'vesselsTaken', workpieceId: workpiece.id, vesselId, count: needed, atMs });
      continue;
    }
    const free = Math.max(0, freeVessels(state, first, nowMs));
    if (!despite.includes('vesselsShort')) {
      const freeMs = vesselsFreeMs(state, first, needed, nowMs);
      const until = freeMs === null ? {} : { freeMs };
      return refused({ code: 'vesselsShort', tag: workpiece.tag, stepId: step.id, vesselId: first, needed, free, ...until });
    }
    if (free > 0) events.push({ type: 'vesselsTaken', workpieceId: workpiece.id, vesselId: first, count: free, atMs });
  }
  return accepted(events);
}

/** What a workpiece gives back when a step of its way is over. */
export function giveBackAfter(state: FloorState, workpiece: Workpiece, step: Step, atMs: number): EventOf<'vesselsReturned'>[] {
  const kitchen = state.kitchen?.document;
  if (kitchen === undefined) return [];
  const way = wayOf(state, workpiece);
  return giveBack(
    state,
    workpiece,
    workpiece.vessels.filter((held) => givesBackAt(kitchen, way, held.vesselId) === step.id),
    atMs,
  );
}

/** Everything that a workpiece holds, given back as it leaves the floor. */
export function giveBackAll(state: FloorState, workpiece: Workpiece, atMs: number): EventOf<'vesselsReturned'>[] {
  return giveBack(state, workpiece, workpiece.vessels, atMs);
}

function giveBack(state: FloorState, workpiece: Workpiece, vessels: Workpiece['vessels'], atMs: number): EventOf<'vesselsReturned'>[] {
  return vessels.map(({ vesselId, count }) => {
    const turnRoundMin = state.kitchen?.document.vessels.find((vessel) => vessel.id === vesselId)?.turnRoundMin ?? 0;
    return { type: 'vesselsReturned', workpieceId: workpiece.id, vesselId, count, freeMs: Math.round(atMs + turnRoundMin * 60_000), atMs };
  });
}
