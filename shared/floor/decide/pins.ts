import type { Pin } from '../../documents/order.ts';
import { derivedId } from '../../ids.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import type { FloorState } from '../state.ts';
import { wayOf } from '../way.ts';
import type { Decision } from './decision.ts';
import { alreadyDone, alreadyStarted } from './standing.ts';

/** Fixes when a step begins, or which order comes first. A pin on the same thing takes the place of the one before. */
export function decideSetPin(state: FloorState, command: CommandOf<'setPin'>, context: CommandContext): Decision {
  const pin: Pin = { id: derivedId(context.commandId, 0), ...command.pin };
  if (pin.kind === 'first') {
    if (state.orders[pin.orderId] === undefined) return refused({ code: 'orderUnknown', orderId: pin.orderId });
  } else {
    const workpiece = state.workpieces[pin.workpieceId];
    if (workpiece === undefined) return refused({ code: 'workpieceUnknown', workpieceId: pin.workpieceId });
    const { tag } = workpiece;
    if (workpiece.finishedMs !== null) return refused({ code: 'workpieceFinished', tag, stepId: pin.stepId, atMs: workpiece.finishedMs });
    const life = workpiece.steps[pin.stepId];
    if (pin.cut === undefined && pin.load === undefined) {
      if (life !== undefined) return refused((life.status === 'started' ? alreadyStarted : alreadyDone)(workpiece, pin.stepId, life));
      if (!wayOf(state, workpiece).some((step) => step.id === pin.stepId)) return refused({ code: 'stepUnknown', tag, stepId: pin.stepId });
    }
  }
  const replaced = Object.values(state.pins).filter((other) => isAboutSame(other, pin));
  const lifted = replaced.map(({ id }): FloorEvent => ({ type: 'pinLifted', pinId: id, atMs: context.tapMs }));
  return accepted([...lifted, { type: 'pinSet', pin, atMs: context.tapMs }]);
}

/** Lets it move again. */
export function decideLiftPin(state: FloorState, command: CommandOf<'liftPin'>, context: CommandContext): Decision {
  if (state.pins[command.pinId] === undefined) return refused({ code: 'pinUnknown', pinId: command.pinId });
  return accepted([{ type: 'pinLifted', pinId: command.pinId, atMs: context.tapMs }]);
}

function isAboutSame(a: Pin, b: Pin): boolean {
  // Only one order can come first.
  if (a.kind === 'first' || b.kind === 'first') return a.kind === b.kind;
  return a.workpieceId === b.workpieceId && a.cut === b.cut && a.load === b.load && a.stepId === b.stepId;
}
