import type { FaultFacts } from '../../../shared/documents/fault-facts.ts';
import type { EventOf } from '../../../shared/floor/events.ts';
import type { Refusal } from '../../../shared/floor/refusals.ts';
import { unreachable } from '../../../shared/result.ts';
import { ALLERGENS, BLOCKED_WHY, listWords, PUT_BACK } from './floor.ts';

/** What the words need to know of the house beside the refusal itself. */
export interface RefusalFacts {
  clock(atMs: number): string;
  /** What a step is called, "fold"; null where nobody knows any more. */
  step(tag: string | undefined, stepId: string | undefined): string | null;
  station(stationId: string): string | null;
  /** The name of a device; null for one that is not here any more. */
  device(deviceId: string): string | null;
  isThisDevice(deviceId: string): boolean;
  mixer(mixerId: string): string;
  /** A slot with its deck, "Top left". */
  slot(slotId: string): string;
  deck(deckId: string): string;
  product(productId: string): string;
  formula(formulaId: string): string;
  vessel(vesselId: string): string;
  place(placeId: string): string;
  ingredient(ingredientId: string): string;
  /** What is wrong with a document, in words; missing on pages that send none. */
  fault?(facts: FaultFacts): string;
  /** A temperature in the house's unit. */
  reading(celsius: number): string;
  /** A weight in the house's unit. */
  weight(grams: number): string;
  /** A machine's load, in kilograms or pounds. */
  load(grams: number): string;
  /** Anything that can be blocked, by what it is called. */
  resource(resource: EventOf<'resourceBlocked'>['resource']): string;
}

/** A refusal as the baker reads it: what it was about, and why nothing came of it. */
export function refusalWords(refusal: Refusal, facts: RefusalFacts): string {
  const about = aboutWords(refusal, facts);
  return about === '' ? capital(whyWords(refusal, facts)) : `${about}: ${whyWords(refusal, facts)}`;
}

/** The reason alone, where it stands beside the dough that it is about. */
export function reasonWords(refusal: Refusal, facts: RefusalFacts): string {
  return capital(whyWords(refusal, facts));
}

function aboutWords(refusal: Refusal, facts: RefusalFacts): string {
  const tag = 'tag' in refusal ? refusal.tag : undefined;
  const step = facts.step(tag, 'stepId' in refusal ? refusal.stepId : undefined);
  return [tag, step].filter((part) => part !== undefined && part !== null).join(' ');
}

function whyWords(refusal: Refusal, facts: RefusalFacts): string {
  switch (refusal.code) {
    case 'workpieceUnknown':
      return 'this dough is not on the floor.';
    case 'workpieceFinished':
      return `off the floor since ${facts.clock(refusal.atMs)}.`;
    case 'stepUnknown':
      return 'its method has no such step.';
    case 'stepAlreadyDone':
      return `${refusal.skipped ? 'skipped' : 'done'} ${facts.clock(refusal.atMs)}${whoWords(refusal, facts)}.`;
    case 'stepAlreadyStarted':
      return `started ${facts.clock(refusal.atMs)}${whoWords(refusal, facts)}.`;
    case 'stepNotReached':
      return `not yet: ${facts.step(refusal.tag, refusal.currentStepId) ?? 'another step'} comes first.`;
    case 'mixerBusy':
      return `${facts.mixer(refusal.mixerId)} has ${refusal.busyWithTag} in it.`;
    case 'mixerUnknown':
      return `there is no mixer ${refusal.mixerId} here.`;
    case 'slotTaken':
      return `${facts.slot(refusal.slotId)} has ${refusal.takenByTag} in it. ${freeWords(refusal.freeSlotIds.map((slotId) => facts.slot(slotId)))}`;
    case 'slotUnknown':
      return `there is no slot ${refusal.slotId} here.`;
    case 'noFreeSlot':
      return `no room: ${listWords(refusal.deckIds.map((deckId) => facts.deck(deckId)))} taken by ${listWords(refusal.takenByTags)}.`;
    case 'resourceBlocked':
      return `${facts.resource(refusal.resource)} ${BLOCKED_WHY[refusal.why]}${refusal.untilMs === undefined ? '' : ` till ${facts.clock(refusal.untilMs)}`}.`;
    case 'changeOverNeeded':
      return `${facts.mixer(refusal.mixerId)} may have ${listWords(refusal.allergens.map((allergen) => ALLERGENS[allergen]))} in it: clean it first, ${refusal.cleanMin} min.`;
    case 'vesselsShort':
      return `needs ${refusal.needed} of ${facts.vessel(refusal.vesselId)}, ${refusal.free} free${refusal.freeMs === undefined ? '' : `, enough at ${facts.clock(refusal.freeMs)}`}.`;
    case 'nothingToDraw':
      return `no ${facts.formula(refusal.formulaId)} stands ready; it takes ${facts.weight(refusal.neededG)}.`;
    case 'notEnoughToDraw':
      return `takes ${facts.weight(refusal.neededG)} of ${facts.formula(refusal.formulaId)}, there are ${facts.weight(refusal.hasG)}.`;
    case 'notCooled':
      return `${refusal.fromTag} is still hot: cooled by ${facts.clock(refusal.cooledMs)}.`;
    case 'lastOfFerment':
      return `${facts.weight(refusal.neededG)} would take of the seed in ${refusal.fromTag}: it has ${facts.weight(refusal.hasG)}, ${facts.weight(refusal.seedG)} is kept back to feed again.`;
    case 'moreThanThere':
      return `${facts.weight(refusal.neededG)} is more than ${refusal.fromTag} has (${facts.weight(refusal.hasG)}).`;
    case 'wrongSource':
      return `${refusal.fromTag} is not what goes in here.`;
    case 'putBackNotTaken':
      return `its formula takes no ${PUT_BACK[refusal.kind]} back.`;
    case 'putBackTooOld':
      return `what is left of ${refusal.fromTag} is ${hoursWords(refusal.ageMin)} old; at most ${hoursWords(refusal.mostMin)}.`;
    case 'putBackOverCap':
      return `takes at most ${facts.weight(refusal.capG)} back, ${facts.weight(refusal.alreadyG)} is in.`;
    case 'pastMixing':
      return 'past the mixer: nothing can be mixed in any more.';
    case 'morePiecesThanThere':
      return `${refusal.wanted} pieces are more than there are (${refusal.has}).`;
    case 'noPieces':
      return 'nothing has been counted of it yet.';
    case 'notJoinable':
      return `cannot be joined with ${refusal.otherTag}: only mixes of one formula that stand at one step can.`;
    case 'notUnderWay':
      return 'nobody has begun that.';
    case 'alreadyThere':
      return alreadyThereWords(refusal, facts);
    case 'stationNeeded':
      return 'this phone stands nowhere fixed: say at which station it is first.';
    case 'stationUnknown':
      return `there is no station ${refusal.stationId} here.`;
    case 'placeUnknown':
      return `there is no place ${refusal.placeId} here.`;
    case 'notInOven':
      return 'it is in no oven.';
    case 'noSuchSlot':
      return 'this kitchen has no such slot.';
    case 'noTestPiece':
      return 'no test piece is in there.';
    case 'programmeMissing':
      return `${refusal.placeId} has no programme in the kitchen’s document.`;
    case 'deckUnknown':
      return `there is no deck ${refusal.deckId} here.`;
    case 'resourceUnknown':
      return `there is no ${refusal.resource.id} here.`;
    case 'notBlocked':
      return `${facts.resource(refusal.resource)} is not blocked.`;
    case 'ingredientUnknown':
      return `no ingredient ${facts.ingredient(refusal.ingredientId)} is in the books.`;
    case 'timeOutOfOrder':
      return `it must lie between ${facts.clock(refusal.earliestMs)} and ${facts.clock(refusal.latestMs)}.`;
    case 'nothingChanges':
      return 'that is how it is already.';
    case 'tagOfOther':
      return `${refusal.wantedTag} is the tag of another dough.`;
    case 'notAFerment':
      return 'is no pot that is fed and fed again.';
    case 'dayNotOpen':
      return `the day ${refusal.serviceDate} is not open.`;
    case 'documentChanged':
      return 'somebody else has changed it since: look at it again.';
    case 'documentFaulty':
      return `${refusal.faults.map(({ path, message, facts: said }) => `${path}: ${(said === undefined ? undefined : facts.fault?.(said)) ?? message}`).join('; ')}.`;
    case 'noFreeBowl':
      return `no bowl is free for ${facts.mixer(refusal.mixerId)}: ${listWords(refusal.takenByTags)} in them.`;
    case 'cutsTooHeavy':
      return `the cuts need ${facts.weight(refusal.neededG)}, there are ${facts.weight(refusal.hasG)}.`;
    case 'productUnknown':
      return `no product ${facts.product(refusal.productId)} is made here.`;
    case 'nothingCalls':
      return 'nothing calls at the moment.';
    case 'alreadyHeard':
      return `heard ${facts.clock(refusal.atMs)} already.`;
    case 'nothingAsked':
      return 'the bake asks for nothing there.';
    case 'promptAnswered':
      return 'somebody has done that already.';
    case 'notHeld':
      return 'its call is not held.';
    case 'soundTestWaits':
      return `a sound test was asked for ${facts.clock(refusal.atMs)}; it sounds as soon as it can.`;
    case 'beingLost':
      return `${refusal.tag} is being lost: nothing else may sound now.`;
    case 'noSoundTest':
      return 'no sound test waits for an answer.';
    case 'soundTestAnswered':
      return `answered ${facts.clock(refusal.atMs)} already: ${refusal.heard ? 'heard' : 'not heard'}.`;
    case 'lineUnknown':
      return 'the list of what is weighed has no such line any more: look at it again.';
    case 'notWeighed':
      return 'that is not in the bowl.';
    case 'alreadyMixed':
      return 'it is mixed already.';
    case 'wildReading':
      return `${facts.reading(refusal.celsius)} is far from the ${facts.reading(refusal.expectedC)} to be expected: measure once more.`;
    case 'pastHoldingLimit':
      return `past its holding limit since ${facts.clock(refusal.limitMs)} (${refusal.clause}): discard it, or let the person responsible decide. The local authority’s rule comes first.`;
    case 'outsideMixer':
      return `outside what ${facts.mixer(refusal.mixerId)} mixes: ${facts.load(refusal.leastG)} to ${facts.load(refusal.mostG)}.`;
    case 'nothingToUndo':
      return 'nothing to undo: only the last thing this phone did can be taken back.';
    case 'workRestsOnIt':
      return 'cannot be undone: work done since rests on it.';
    case 'dayAlreadyOpen':
      return `the day ${refusal.serviceDate} is open already.`;
    case 'documentMissing':
      return `the ${refusal.kind} ${refusal.id} is missing.`;
    case 'orderUnknown':
      return 'the order is no longer there.';
    case 'tooManyOrders':
      return `a day takes ${refusal.most} orders at most.`;
    case 'pinUnknown':
      return 'it moves freely again already.';
    case 'callOutdated':
      return 'this call is no longer true.';
    case 'forbidden':
      return 'this phone may not do that.';
    case 'notKept':
      return refusal.cause === 'diskFull'
        ? 'the server’s disk is full and nothing is written down. This phone keeps the tap and sends it again.'
        : 'the server could not write it down. This phone keeps the tap and sends it again.';
    default:
      return unreachable(refusal);
  }
}

/** Stations stand for people; where a device has none, its own name must do. */
function whoWords(
  refusal: { readonly stationId?: string | undefined; readonly deviceId?: string | undefined },
  facts: RefusalFacts,
): string {
  const station = refusal.stationId === undefined ? null : facts.station(refusal.stationId);
  if (station !== null) return ` at the ${station.toLowerCase()}`;
  if (refusal.deviceId === undefined) return '';
  if (facts.isThisDevice(refusal.deviceId)) return ' on this phone';
  const device = facts.device(refusal.deviceId);
  return device === null ? ' on another device' : ` on ${device}`;
}

function freeWords(slots: readonly string[]): string {
  return slots.length === 0 ? 'None of the others is free.' : `Free: ${listWords(slots)}.`;
}

function alreadyThereWords(
  refusal: { readonly stationId?: string | undefined; readonly placeId?: string | undefined },
  facts: RefusalFacts,
): string {
  if (refusal.stationId !== undefined)
    return `the ${(facts.station(refusal.stationId) ?? refusal.stationId).toLowerCase()} has it already.`;
  return refusal.placeId === undefined ? 'it is there already.' : `it stands there already: ${facts.place(refusal.placeId)}.`;
}

/** An age: minutes up to three hours, hours beyond. */
function hoursWords(minutes: number): string {
  return minutes <= 180 ? `${Math.round(minutes)} min` : `${Math.round(minutes / 60)} h`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
