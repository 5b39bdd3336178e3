import type { FloorEvent } from '../../shared/floor/events.ts';

/**
 * Whether an event may change when things can be done, so that the plan has to be looked at again. A new event without a
 * line here does not compile.
 */
const DISTURBS: Readonly<Record<FloorEvent['type'], boolean>> = {
  houseAdopted: true,
  kitchenAdopted: true,
  ingredientsAdopted: false,
  ingredientAdopted: false,
  formulaAdopted: false,
  productAdopted: false,
  formulaArchived: false,
  lessonLeft: false,
  orderPlaced: true,
  orderWithdrawn: true,
  standingAdopted: false,
  pinSet: true,
  pinLifted: true,
  dayOpened: false,
  dayClosed: true,
  workpiecePlanned: true,
  feedPlanned: true,
  planAdopted: true,
  stepStarted: true,
  stepProgressed: true,
  stepHandedOver: true,
  stepHelped: false,
  stepDone: true,
  stepsReopened: true,
  lossNamed: true,
  stepSkipped: true,
  moreTimeGiven: true,
  promptAnswered: false,
  workpieceHeld: true,
  workpieceReleased: true,
  workpieceMoved: true,
  workpieceFinished: true,
  workpieceDiscarded: true,
  holdingDecided: true,
  ovenLoaded: true,
  ovenUnloaded: true,
  loadMoved: true,
  temperatureRead: true,
  ingredientAdded: false,
  ingredientWeighed: false,
  ingredientUnweighed: false,
  batchRescaled: true,
  waterTaken: false,
  riseLearned: false,
  riseForgotten: false,
  waterHeldBackUsed: false,
  workpieceDivided: true,
  loadsMade: true,
  workpiecesJoined: true,
  workpieceDrawn: true,
  scrapPutBack: true,
  fermentFed: true,
  deckSet: true,
  placeRead: true,
  placeOpened: true,
  programmeBegun: true,
  driftLearned: true,
  ripenessLearned: false,
  testPieceStarted: false,
  testPieceEnded: false,
  slotHeatLearned: false,
  bakePaced: true,
  resourceBlocked: true,
  resourceFreed: true,
  vesselsTaken: true,
  vesselsReturned: true,
  timeCorrected: true,
  countCorrected: true,
  tagCorrected: false,
  commandUndone: true,
  callRaised: false,
  callHeard: false,
  callSounded: false,
  soundTestAsked: false,
  soundTestSounded: false,
  soundTestAnswered: false,
  clockAnchored: false,
  clockJumped: true,
};

/** Whether the plan in force has to be looked at again. A plan that follows the floor does not disturb itself. */
export function isDisturbance(event: FloorEvent): boolean {
  return event.type === 'planAdopted' ? event.isWhole : DISTURBS[event.type];
}

/** Events after which a day that was proposed before can no longer be kept: something else is wanted, or is there. */
const OUTDATES: ReadonlySet<FloorEvent['type']> = new Set<FloorEvent['type']>([
  'houseAdopted',
  'kitchenAdopted',
  'formulaAdopted',
  'productAdopted',
  'formulaArchived',
  'clockJumped',
]);

/** Whether what was proposed for a service date is no longer what would be proposed now. What people do meanwhile does not count. */
export function outdatesProposal(event: FloorEvent, serviceDate: string): boolean {
  switch (event.type) {
    case 'orderPlaced':
      return event.order.serviceDate === serviceDate;
    case 'orderWithdrawn':
      // Of which day it was is gone with it.
      return true;
    case 'workpiecePlanned':
      return event.serviceDate === serviceDate;
    case 'dayClosed':
      return event.serviceDate === serviceDate;
    case 'planAdopted':
      return event.isWhole;
    default:
      return OUTDATES.has(event.type);
  }
}
