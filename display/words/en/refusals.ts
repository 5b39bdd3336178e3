import type { Refusal } from '../../../shared/floor/refusals.ts';
import { unreachable } from '../../../shared/result.ts';

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
}

/** A refusal as the baker reads it: what it was about, and why nothing came of it. */
export function refusalWords(refusal: Refusal, facts: RefusalFacts): string {
  const about = aboutWords(refusal, facts);
  return about === '' ? capital(whyWords(refusal, facts)) : `${about}: ${whyWords(refusal, facts)}`;
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
      return `no room: ${list(refusal.deckIds.map((deckId) => facts.deck(deckId)))} taken by ${list(refusal.takenByTags)}.`;
    case 'cutsTooHeavy':
      return `the cuts need ${Math.round(refusal.neededG)} g, there are ${Math.round(refusal.hasG)} g.`;
    case 'productUnknown':
      return `no product ${facts.product(refusal.productId)} is made here.`;
    case 'nothingCalls':
      return 'nothing calls at the moment.';
    case 'alreadyHeard':
      return `heard ${facts.clock(refusal.atMs)} already.`;
    case 'notHeld':
      return 'its call is not held.';
    case 'nothingToUndo':
      return 'nothing to undo: only the last thing this phone did can be taken back.';
    case 'workRestsOnIt':
      return 'cannot be undone: work done since rests on it.';
    case 'dayAlreadyOpen':
      return `the day ${refusal.serviceDate} is open already.`;
    case 'documentMissing':
      return `the ${refusal.kind} ${refusal.id} is missing.`;
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
  return slots.length === 0 ? 'None of the others is free.' : `Free: ${list(slots)}.`;
}

function list(items: readonly string[]): string {
  if (items.length <= 1) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
