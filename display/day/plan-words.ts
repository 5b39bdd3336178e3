import type { MovedStep, PlanWarning } from '../../shared/floor/events.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { ProposedWarning } from '../../shared/plan/plan-api.ts';
import type { Cause, Change, Remedy, Trouble } from '../../shared/plan/why/reason.ts';
import { unreachable } from '../../shared/result.ts';
import { CAUSES, lengthWords, movedWhyWords, PLANNING, REMEDIES, TROUBLES, WARNINGS } from '../words/day.ts';
import { placeOfKey, type PlanNames } from './plan-names.ts';
import type { TriedChange } from './tried-change.ts';

/** What is to be tried, in one line. */
export function triedText(change: TriedChange, names: PlanNames): string {
  switch (change.kind) {
    case 'readyLater':
      return PLANNING.later(names.order(change.orderId), change.minutes);
    case 'fewerPieces':
      return PLANNING.fewer(names.order(change.orderId), change.pieces);
    case 'leaveOut':
      return PLANNING.leftOut(names.order(change.orderId));
    case 'first':
      return PLANNING.first(names.order(change.orderId));
    case 'startsAt':
      return PLANNING.pinned(names.step(placeOfKey(change.key)), names.dayClock(change.startMs));
    default:
      return unreachable(change);
  }
}

/** What will not be right, in one line; `order` tells when a late one will be ready. */
export function warningText(warning: PlanWarning | ProposedWarning, names: PlanNames, floor: FloorState): string {
  switch (warning.kind) {
    case 'spoils':
      return WARNINGS.spoils(names.step(warning), names.dayClock(warning.atMs), lengthWords(warning.byMin));
    case 'late':
      return WARNINGS.late(names.order(warning.orderId), names.dayClock(warning.atMs), lengthWords(Math.ceil(warning.byMin)));
    case 'short':
      return WARNINGS.short(names.order(warning.orderId), warning.pieces);
    case 'pinBroken':
      return pinText(warning, names, floor);
    default:
      return unreachable(warning);
  }
}

function pinText(warning: Extract<PlanWarning | ProposedWarning, { kind: 'pinBroken' }>, names: PlanNames, floor: FloorState): string {
  if ('key' in warning) return WARNINGS.pinBroken(names.step(placeOfKey(warning.key)), names.dayClock(warning.atMs));
  const pin = floor.pins[warning.pinId];
  if (pin?.kind === 'first') return WARNINGS.firstBroken(names.order(pin.orderId));
  return WARNINGS.pinBroken(pin === undefined ? '' : names.step(pin), names.dayClock(warning.atMs));
}

/** Why a step moved. */
export function movedWhyText(step: MovedStep, names: PlanNames): string {
  const { because, workpieceId, cut, load, fromMs, toMs } = step;
  if (because === undefined) return '';
  const { what, resource, stepId } = because;
  if (isOfItself(step)) {
    // Parts of one dough that are still to be divided off all bear its name: it may be another of them.
    const isAlone = cut === undefined && load === undefined;
    return isAlone && toMs > fromMs ? PLANNING.notBegun : movedWhyWords(what, null);
  }
  if (what === 'resource' && resource !== undefined) return movedWhyWords(what, names.resource(resource));
  if (what !== 'dough' || stepId === undefined) return movedWhyWords(what, null);
  const other = names.step({ workpieceId: because.workpieceId ?? workpieceId, stepId });
  // What comes earlier waits for nothing.
  return toMs > fromMs ? movedWhyWords(what, other) : PLANNING.goesWith(other);
}

/** Nothing but its own dough is named as what moved it. */
function isOfItself({ because, workpieceId, stepId }: MovedStep): boolean {
  return because?.what === 'dough' && because.stepId === stepId && (because.workpieceId ?? workpieceId) === workpieceId;
}

/** What is not right with a day. */
export function troubleText(trouble: Trouble, names: PlanNames): string {
  switch (trouble.kind) {
    case 'late':
      return TROUBLES.late(names.order(trouble.orderId), lengthWords(Math.ceil(trouble.byMin)));
    case 'spoils':
      return TROUBLES.spoils(names.step(trouble), lengthWords(Math.ceil(trouble.byMin)));
    case 'pinBroken':
      return TROUBLES.pinBroken(names.step(trouble), names.dayClock(trouble.atMs));
    default:
      return unreachable(trouble);
  }
}

/** What holds it back. */
export function causeText(cause: Cause, names: PlanNames): string {
  const at = names.step(cause.at);
  switch (cause.kind) {
    case 'busy': {
      const words = cause.resource.kind === 'station' ? CAUSES.atWork : CAUSES.busy;
      return words(at, names.resource(cause.resource), names.step(cause.by), names.dayClock(cause.untilMs));
    }
    case 'closed':
      return cause.resource.kind === 'station'
        ? CAUSES.nobody(at, names.resource(cause.resource), names.dayClock(cause.untilMs))
        : CAUSES.closed(at, names.resource(cause.resource), names.dayClock(cause.untilMs));
    case 'tooShort':
      return CAUSES.tooShort(at, names.dayClock(cause.beginsMs));
    case 'pinned':
      return CAUSES.pinned(at, names.dayClock(cause.atMs));
    case 'begun':
      return CAUSES.begun(at);
    default:
      return unreachable(cause);
  }
}

/** A change that was tried against a trouble, and what the day came to with it. */
export function remedyText(remedy: Remedy, trouble: Trouble, names: PlanNames): string {
  return `${remedyChangeText(remedy.change, names)} ${outcomeText(remedy, trouble)}`;
}

/** Less than a minute is nothing, in what came of a try as in the trouble itself. */
const NOTHING_MIN = 1;

function outcomeText({ troubleLeftMin, beforeMin, leftMin }: Remedy, trouble: Trouble): string {
  if (troubleLeftMin < NOTHING_MIN && leftMin < NOTHING_MIN) return REMEDIES.fits;
  const outcome = troubleLeftText(troubleLeftMin, trouble);
  // Where one order is all that is late, what is left of it has been said.
  const isAll = trouble.kind === 'late' && Math.abs(leftMin - troubleLeftMin) < NOTHING_MIN;
  return isAll || leftMin < NOTHING_MIN ? outcome : `${outcome}; ${REMEDIES.inAll(minutesText(leftMin), minutesText(beforeMin))}`;
}

function troubleLeftText(leftMin: number, trouble: Trouble): string {
  const isGone = leftMin < NOTHING_MIN;
  switch (trouble.kind) {
    case 'late':
      return isGone ? REMEDIES.inTime : REMEDIES.lateStill(minutesText(leftMin), minutesText(trouble.byMin));
    case 'spoils':
      return isGone ? REMEDIES.noneSpoils : REMEDIES.spoilsStill(minutesText(leftMin));
    case 'pinBroken':
      return isGone ? REMEDIES.asPinned : REMEDIES.offPin(minutesText(leftMin));
    default:
      return unreachable(trouble);
  }
}

/** A length that somebody waits: a minute that has begun counts. */
function minutesText(min: number): string {
  return lengthWords(Math.ceil(min));
}

function remedyChangeText(change: Change, names: PlanNames): string {
  switch (change.kind) {
    case 'openEarlier':
      return change.stationId === null
        ? REMEDIES.allEarlier(lengthWords(change.minutes))
        : REMEDIES.openEarlier(stationName(change.stationId, names), lengthWords(change.minutes));
    case 'openLonger':
      return change.stationId === null
        ? REMEDIES.allLonger(lengthWords(change.minutes))
        : REMEDIES.openLonger(stationName(change.stationId, names), lengthWords(change.minutes));
    case 'oneMoreHand': {
      const station = stationName(change.stationId, names);
      return change.fromMs === undefined || change.toMs === undefined
        ? REMEDIES.oneMoreHand(station)
        : REMEDIES.oneMoreHandFor(station, names.dayClock(change.fromMs), names.dayClock(change.toMs));
    }
    case 'moreVessels':
      return REMEDIES.moreVessels(names.resource({ kind: 'vessel', id: change.vesselId }), change.count);
    case 'beginEarlier':
      return REMEDIES.beginEarlier(names.step(change), lengthWords(change.minutes), names.dayClock(change.startMs));
    case 'beginLater':
      return REMEDIES.beginLater(names.step(change), lengthWords(change.minutes), names.dayClock(change.startMs));
    default:
      return triedText(change, names);
  }
}

function stationName(id: string, names: PlanNames): string {
  return names.resource({ kind: 'station', id });
}
