import type { MovedStep, PlanWarning } from '../../shared/floor/events.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { ProposedWarning } from '../../shared/plan/plan-api.ts';
import type { Cause, Remedy, Trouble } from '../../shared/plan/why/reason.ts';
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
export function movedWhyText({ because, workpieceId }: MovedStep, names: PlanNames): string {
  if (because === undefined) return '';
  const { what, resource, stepId } = because;
  if (what === 'resource' && resource !== undefined) return movedWhyWords(what, names.resource(resource));
  if (what === 'dough' && stepId !== undefined)
    return movedWhyWords(what, names.step({ workpieceId: because.workpieceId ?? workpieceId, stepId }));
  return movedWhyWords(what, null);
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

/** A change that was tried, and what is left of the lateness with it. */
export function remedyText({ change, leftMin }: Remedy, names: PlanNames): string {
  const left = leftMin < 1 ? REMEDIES.fits : REMEDIES.left(lengthWords(Math.ceil(leftMin)));
  return `${remedyChangeText(change, names)} ${left}`;
}

function remedyChangeText(change: Remedy['change'], names: PlanNames): string {
  switch (change.kind) {
    case 'openEarlier':
      return REMEDIES.openEarlier(names.resource({ kind: 'station', id: change.stationId }), lengthWords(change.minutes));
    case 'oneMoreHand':
      return REMEDIES.oneMoreHand(names.resource({ kind: 'station', id: change.stationId }));
    case 'beginEarlier':
      return REMEDIES.beginEarlier(names.step(change), lengthWords(change.minutes), names.dayClock(change.startMs));
    default:
      return triedText(change, names);
  }
}
