import { projectionOf } from '../projection.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { givesBackAt } from '../vessels.ts';
import { wayOf } from '../way.ts';
import type { WayOut } from '../ways-out.ts';
import { effectOf, finishOf, refusedStep, wayOut, type Asked } from './asked.ts';

const MINUTE_MS = 60_000;

/** As many pieces as there are vessels for, where each piece or so many of them want one. */
export function vesselWays(asked: Asked): readonly WayOut[] {
  const { due, refusal } = asked;
  const { pieces } = due.workpiece;
  if (refusal.code !== 'vesselsShort' || pieces === null) return [];
  const claim = refusedStep(asked).claims.find(
    ({ kind, ids }) => kind === 'vessel' && (ids.length === 0 || ids.includes(refusal.vesselId)),
  );
  if (claim?.perPieces === undefined) return [];
  const loadPieces = refusal.free * claim.perPieces;
  if (loadPieces <= 0 || loadPieces >= pieces) return [];
  return [wayOut('part', { ...finishOf(due), loadPieces }, effectOf(asked, 0, { pieces: loadPieces }))];
}

/**
 * When there are vessels enough: as the refusal says, or when those that are washed and those that doughs give back by
 * their targets make up what is missing. Infinity where they never do.
 */
export function vesselsFreeMs({ state, due, refusal, nowMs }: Asked): number {
  if (refusal.code !== 'vesselsShort') return Infinity;
  if (refusal.freeMs !== undefined) return refusal.freeMs;
  const { vesselId } = refusal;
  const coming = [
    ...state.vesselReturns.filter((back) => back.vesselId === vesselId && back.freeMs > nowMs),
    ...Object.values(state.workpieces)
      .filter((holder) => holder.id !== due.workpiece.id && holder.finishedMs === null)
      .flatMap((holder) => givenBack(state, holder, vesselId, nowMs)),
  ].sort((a, b) => a.freeMs - b.freeMs);
  let { free } = refusal;
  for (const back of coming) {
    free += back.count;
    if (free >= refusal.needed) return back.freeMs;
  }
  return Infinity;
}

/** The vessels of one kind that a dough holds, and when they are expected to be there again after their turn-round. */
function givenBack(state: FloorState, holder: Workpiece, vesselId: string, nowMs: number): readonly { count: number; freeMs: number }[] {
  const count = holder.vessels.filter((held) => held.vesselId === vesselId).reduce((sum, held) => sum + held.count, 0);
  const kitchen = state.kitchen?.document;
  const vessel = kitchen?.vessels.find((one) => one.id === vesselId);
  const projection = projectionOf(state, holder, nowMs);
  if (count === 0 || kitchen === undefined || vessel === undefined || projection === null) return [];
  const backId = givesBackAt(kitchen, wayOf(state, holder), vesselId);
  const back = projection.stretches.find((stretch) => stretch.stepId === backId);
  return [{ count, freeMs: (back?.toMs ?? projection.readyMs) + vessel.turnRoundMin * MINUTE_MS }];
}
