import type { Due } from '../../shared/floor/due.ts';
import type { DayMind } from './day-mind.ts';
import type { Hand } from './invented-floor.ts';
import { putBackScrap } from './put-back.ts';
import { weighOut } from './weighing.ts';

const MINUTE_MS = 60_000;
const HELP_SHARE = 0.05;
const HAND_OVER_SHARE = 0.04;
const PROGRESS_SHARE = 0.07;
/** Work shorter than this is shared with nobody. */
const WORTH_SHARING_MIN = 4;

/** What else happens between the start and the end of a piece of work. */
export function whileWorking(mind: DayMind, { workpiece, action }: Due, hand: Hand, fromMs: number, toMs: number): void {
  const { floor, hands, agenda, chance } = mind;
  const on = { workpieceId: workpiece.id, stepId: action.id };
  const at = (share: number): number => fromMs + share * (toMs - fromMs);
  if (action.verb === 'weigh' || action.verb === 'feed') weighOut(mind, workpiece, hand, fromMs, toMs);
  if (action.verb === 'weigh') agenda.note(at(0.05), () => putBackScrap(mind, workpiece.id, hand));
  for (const addition of action.additions) {
    const { item } = addition;
    const [lotNumber] = item === undefined || addition.gPerPiece === undefined ? [] : mind.lots.on(item, mind.date);
    if (item === undefined || lotNumber === undefined || !chance.is(0.85)) continue;
    agenda.note(at(0.5), () => {
      if (isWorkedOn(mind, on)) floor.give({ type: 'addIngredient', ...on, ingredientId: item, grams: 0, lotNumber }, hand);
    });
  }
  if (toMs - fromMs < WORTH_SHARING_MIN * MINUTE_MS) return;
  if (chance.is(HELP_SHARE))
    agenda.note(at(0.3), () => {
      const helper = hands.helperFor(action.station, floor.nowMs);
      if (helper !== null && isWorkedOn(mind, on)) floor.give({ type: 'helpStep', ...on }, helper);
    });
  if (chance.is(HAND_OVER_SHARE))
    agenda.note(at(0.55), () => {
      const other = hands.helperFor(action.station, floor.nowMs);
      if (other !== null && other.stationId !== null && isWorkedOn(mind, on))
        floor.give({ type: 'handOver', ...on, toStationId: other.stationId }, hand);
    });
  const pieces = workpiece.pieces ?? 0;
  if (pieces > 3 && chance.is(PROGRESS_SHARE))
    agenda.note(at(0.4), () => {
      if (isWorkedOn(mind, on)) floor.give({ type: 'reportProgress', ...on, piecesDone: Math.round(pieces * 0.4) }, hand);
    });
}

/** Whether a step of a workpiece is still under way: taps that would only be refused are not made up. */
function isWorkedOn({ floor }: DayMind, on: { readonly workpieceId: string; readonly stepId: string }): boolean {
  const workpiece = floor.state.workpieces[on.workpieceId];
  return workpiece?.finishedMs === null && workpiece.steps[on.stepId]?.status === 'started';
}
