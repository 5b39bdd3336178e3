import type { Claim, Step } from '../documents/method.ts';
import type { Kitchen } from '../documents/kitchen.ts';
import type { FloorState, Workpiece } from './state.ts';

/** How many vessels a claim asks for, with so many pieces. */
export function vesselsNeeded(claim: Claim, pieces: number | null): number {
  return claim.perPieces === undefined || pieces === null ? claim.count : Math.ceil(pieces / claim.perPieces);
}

/** How many of a vessel are in use. */
export function heldVessels(state: FloorState, vesselId: string): number {
  let held = 0;
  for (const workpiece of Object.values(state.workpieces)) {
    for (const one of workpiece.vessels) if (one.vesselId === vesselId) held += one.count;
  }
  return held;
}

/** How many of a vessel have been given back and have their turn-round still before them at an instant. */
export function returningVessels(state: FloorState, vesselId: string, nowMs: number): number {
  return state.vesselReturns.reduce((sum, back) => sum + (back.vesselId === vesselId && back.freeMs > nowMs ? back.count : 0), 0);
}

/** How many of a vessel can be taken at an instant; below nothing where more are in use than the kitchen has. */
export function freeVessels(state: FloorState, vesselId: string, nowMs: number): number {
  const count = state.kitchen?.document.vessels.find((vessel) => vessel.id === vesselId)?.count ?? 0;
  return count - heldVessels(state, vesselId) - returningVessels(state, vesselId, nowMs);
}

/** When enough of a vessel will have had their turn-round; null where too many are still in use for that. */
export function vesselsFreeMs(state: FloorState, vesselId: string, needed: number, nowMs: number): number | null {
  let free = freeVessels(state, vesselId, nowMs);
  const returning = state.vesselReturns.filter((back) => back.vesselId === vesselId && back.freeMs > nowMs);
  for (const back of returning.sort((a, b) => a.freeMs - b.freeMs)) {
    free += back.count;
    if (free >= needed) return back.freeMs;
  }
  return null;
}

/**
 * The step whose end gives a vessel back: the one that its claim names, or by the kind of vessel the loading (boards,
 * bannetons), the depanning (tins, trays) or the dividing (tubs). Null where it is given back at the end of the way.
 */
export function givesBackAt(kitchen: Kitchen, way: readonly Step[], vesselId: string): string | null {
  const from = way.findIndex((step) => step.claims.some((claim) => claim.kind === 'vessel' && claim.ids.includes(vesselId)));
  const until = way[from]?.claims.find((claim) => claim.kind === 'vessel' && claim.ids.includes(vesselId))?.until;
  if (until !== undefined) return until;
  const verb = VERB_OF_RETURN[kitchen.vessels.find((vessel) => vessel.id === vesselId)?.kind ?? 'rack'];
  return verb === null ? null : (way.find((step, index) => index > from && step.verb === verb)?.id ?? null);
}

const VERB_OF_RETURN = { board: 'load', banneton: 'load', tin: 'depan', tray: 'depan', tub: 'divide', rack: null } as const;

/** What a workpiece still lacks of the vessels of one claim; the vessel that it has some of already counts. */
export function vesselsLacking(workpiece: Workpiece, claim: Claim): number {
  const has = workpiece.vessels.reduce((sum, one) => sum + (claim.ids.includes(one.vesselId) ? one.count : 0), 0);
  return Math.max(0, vesselsNeeded(claim, workpiece.pieces) - has);
}
