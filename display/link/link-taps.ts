import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import type { Outcome, Refusal } from '../../shared/floor/refusals.ts';
import { workpieceIdOf } from './command-workpiece.ts';
import type { AnsweredTap } from './floor-link.ts';
import { houseAt } from './house-clock.ts';
import { MAX_KEPT_TAPS, tapTimeOf, type KeptRecord } from './kept-tap.ts';
import type { HeldTap, LinkEffect, LinkState } from './link-state.ts';
import { andThen, become, type LinkStep } from './link-step.ts';
import type { LocalInstant } from './local-instant.ts';

/** Taps remembered, after their events came, for the outcome that is still to come. */
const SETTLED_REMEMBERED = 20;

/** Somebody tapped: shown at once, kept, and sent where the line allows it. */
export function tapped(link: LinkState, commandId: string, command: ClientCommand, at: LocalInstant): LinkStep {
  const dismissed: LinkState = { ...link, lastAnswer: null, undoable: null, refusedHere: null };
  if (link.taps.filter(isUnanswered).length >= MAX_KEPT_TAPS) return become({ ...dismissed, refusedHere: command });
  const record: KeptRecord = {
    format: 1,
    commandId,
    command,
    kitchenId: link.kitchenId,
    pageId: link.pageId,
    monotonicMs: at.monotonicMs,
    wallMs: at.wallMs,
    tapMs: houseAt(link.clock, at.monotonicMs) ?? at.wallMs,
    order: link.nextOrder,
  };
  const held: HeldTap = { record, isSent: false, answeredSequence: null };
  const holding = become({ ...dismissed, taps: [...link.taps, held], nextOrder: link.nextOrder + 1 }, { type: 'keep', record });
  return andThen(holding, (next) => sendTaps(next, at));
}

/** Sends what has not been sent on this connection, in the order of the taps; nothing while the line is not live or a pause is on. */
export function sendTaps(link: LinkState, at: LocalInstant): LinkStep {
  if (link.line !== 'live' || link.isRetryWaiting) return become(link);
  const effects: LinkEffect[] = [];
  const taps = link.taps.map((tap) => {
    if (tap.isSent || !isUnanswered(tap)) return tap;
    const { commandId, command } = tap.record;
    effects.push({ type: 'send', message: { type: 'command', commandId, tap: tapTimeOf(tap.record, link.pageId, at), command } });
    return { ...tap, isSent: true };
  });
  return effects.length === 0 ? become(link) : { link: { ...link, taps }, effects };
}

/** The server answered a tap. An answer to something that was never asked here, or is answered already, changes nothing. */
export function answered(link: LinkState, commandId: string, outcome: Outcome): LinkStep {
  const held = link.taps.find((tap) => tap.record.commandId === commandId && isUnanswered(tap));
  const command = held?.record.command ?? link.settled.find((tap) => tap.commandId === commandId)?.command;
  if (command === undefined) return become(link);
  const answer: AnsweredTap = { commandId, command, outcome };
  if (!outcome.ok && outcome.refusal.code === 'notKept') return notKept(link, answer);
  const told: LinkState = {
    ...link,
    lastAnswer: tellable(link.lastAnswer, answer),
    settled: link.settled.filter((tap) => tap.commandId !== commandId),
  };
  const forget: LinkEffect = { type: 'forget', commandId };
  if (!outcome.ok) return become({ ...told, taps: without(told.taps, commandId) }, forget);
  const isLast = !link.taps.some(
    (tap) => isUnanswered(tap) && tap.record.commandId !== commandId && tap.record.order > (held?.record.order ?? -1),
  );
  const undoable = isLast ? (outcome.undoable ? answer : null) : link.undoable;
  // The answer may come before its events: until they are folded, the tap stays on top, or it would vanish for a blink.
  const taps = link.taps
    .map((tap) => (tap.record.commandId === commandId ? { ...tap, answeredSequence: outcome.sequence } : tap))
    .filter((tap) => tap.answeredSequence === null || !link.isKnown || tap.answeredSequence > link.confirmed.sequence);
  return become({ ...told, taps, undoable, retries: 0 }, forget);
}

/** The journal could not be written: nothing happened, the tap stays kept and is sent again after a pause. */
function notKept(link: LinkState, answer: AnsweredTap): LinkStep {
  const taps = link.taps.map((tap) => (tap.record.commandId === answer.commandId ? { ...tap, isSent: false } : tap));
  const told: LinkState = { ...link, taps, lastAnswer: answer };
  if (link.isRetryWaiting) return become(told);
  return become({ ...told, isRetryWaiting: true, retries: link.retries + 1 }, { type: 'retryLater', retry: link.retries });
}

/** A refusal stays to be read until the next action; what went well does not push it away. */
function tellable(before: AnsweredTap | null, answer: AnsweredTap): AnsweredTap {
  const isRefusalBefore = before !== null && !before.outcome.ok && before.outcome.refusal.code !== 'notKept';
  return isRefusalBefore && answer.outcome.ok ? before : answer;
}

/** Drops the taps that have come back as events, and those whose answer the confirmed state has caught up with. */
export function settledBy(link: LinkState, events: readonly RecordedEvent[]): LinkStep {
  const confirmedIds = new Set(events.map((recorded) => recorded.commandId));
  const settled = link.taps.filter((tap) => isUnanswered(tap) && confirmedIds.has(tap.record.commandId));
  const taps = link.taps.filter(
    (tap) => !confirmedIds.has(tap.record.commandId) && (tap.answeredSequence === null || tap.answeredSequence > link.confirmed.sequence),
  );
  if (taps.length === link.taps.length) return become(link);
  const remembered = [...link.settled, ...settled.map(({ record }) => ({ commandId: record.commandId, command: record.command }))];
  return {
    link: { ...link, taps, settled: remembered.slice(-SETTLED_REMEMBERED) },
    effects: settled.map((tap) => ({ type: 'forget', commandId: tap.record.commandId })),
  };
}

/** Drops the taps that were made on another kitchen than this one, and tells the last of them as what it is here. */
export function withoutForeignTaps(link: LinkState, kitchenId: string): LinkStep {
  const isForeign = ({ record }: HeldTap): boolean => record.kitchenId !== null && record.kitchenId !== kitchenId;
  const foreign = link.taps.filter(isForeign);
  const last = foreign.at(-1);
  if (last === undefined) return become(link);
  const { commandId, command } = last.record;
  return {
    link: {
      ...link,
      taps: link.taps.filter((tap) => !isForeign(tap)),
      lastAnswer: { commandId, command, outcome: { ok: false, refusal: foreignRefusal(command) } },
    },
    effects: foreign.map((tap) => ({ type: 'forget', commandId: tap.record.commandId })),
  };
}

function foreignRefusal(command: ClientCommand): Refusal {
  switch (command.type) {
    case 'undoCommand':
      return { code: 'nothingToUndo' };
    case 'hearAllCalls':
      return { code: 'nothingCalls' };
    case 'askSoundTest':
    case 'answerSoundTest':
      return { code: 'noSoundTest' };
    case 'forgetRise':
      return { code: 'mixerUnknown', mixerId: command.mixerId };
    case 'closeDay':
    case 'planBatches':
    case 'placeOrders':
      return { code: 'dayNotOpen', serviceDate: command.serviceDate };
    case 'adoptKitchen':
    case 'adoptHouse':
    case 'adoptFormula':
    case 'adoptProduct':
    case 'adoptIngredient':
    case 'archiveFormula':
    case 'leaveLesson':
    case 'bringInBook':
    case 'adoptStanding':
      return { code: 'documentChanged', version: 0 };
    case 'withdrawOrders':
      return { code: 'orderUnknown', orderId: command.orderIds[0] ?? '' };
    case 'liftPin':
      return { code: 'pinUnknown', pinId: command.pinId };
    case 'setPin':
      return { code: 'nothingChanges' };
    case 'setDeck':
      return { code: 'deckUnknown', deckId: command.deckId };
    case 'readPlace':
    case 'openPlace':
    case 'beginProgramme':
      return { code: 'placeUnknown', placeId: command.placeId };
    case 'startTestPiece':
    case 'endTestPiece':
      return { code: 'noSuchSlot', slotId: command.slotId };
    case 'blockResource':
    case 'freeResource':
      return { code: 'resourceUnknown', resource: command.resource };
    default:
      return { code: 'workpieceUnknown', workpieceId: workpieceIdOf(command) };
  }
}

function isUnanswered(tap: HeldTap): boolean {
  return tap.answeredSequence === null;
}

function without(taps: readonly HeldTap[], commandId: string): readonly HeldTap[] {
  return taps.filter((tap) => tap.record.commandId !== commandId);
}
