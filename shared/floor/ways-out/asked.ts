import type { Step } from '../../documents/method.ts';
import { idFromBytes, ID_BYTES } from '../../ids.ts';
import type { CommandOf } from '../commands.ts';
import { decideOnFloor, type OnFloorCommand } from '../decide-on-floor.ts';
import { roleAt, type Due } from '../due.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState } from '../state.ts';
import { wayOf } from '../way.ts';
import type { WayOut, WayOutEffect } from '../ways-out.ts';

const MINUTE_MS = 60_000;

/** Nobody's: what is only tried out is never kept. */
const NOBODY = idFromBytes(new Uint8Array(ID_BYTES));

/** A step that something is in the way of, at an instant. */
export interface Asked {
  readonly state: FloorState;
  readonly due: Due;
  readonly refusal: Refusal;
  readonly nowMs: number;
}

/** The tap that would do the step which is called. */
export function finishOf(due: Due): CommandOf<'finishStep'> {
  return { type: 'finishStep', workpieceId: due.workpiece.id, stepId: due.action.id };
}

/** Why a command would be refused at an instant, or null where it would be accepted. Nothing comes of asking. */
export function refusalOf(state: FloorState, command: OnFloorCommand, nowMs: number): Refusal | null {
  const decision = decideOnFloor(state, command, {
    commandId: NOBODY,
    deviceId: NOBODY,
    stationId: null,
    nowMs,
    tapMs: nowMs,
    tapUncertain: false,
  });
  return decision.ok ? null : decision.fault;
}

/** The step that the obstacle is in the way of: the one that is called, or the one that would begin by itself after it. */
export function refusedStep({ state, due, refusal }: Asked): Step {
  const stepId = 'stepId' in refusal ? refusal.stepId : undefined;
  return wayOf(state, due.workpiece).find((step) => step.id === stepId) ?? due.action;
}

/**
 * What so many minutes more do to the dough, by the targets and latests it has now: a hold silences the call, and the
 * dough goes on all the same.
 */
export function effectOf({ due, nowMs }: Asked, delayMin: number, more: Partial<WayOutEffect> = {}): WayOutEffect {
  const thenMs = nowMs + delayMin * MINUTE_MS;
  const unheld: Due = { ...due, workpiece: { ...due.workpiece, heldUntilMs: null } };
  return {
    delayMin,
    roleThen: roleAt(unheld, thenMs),
    overTargetMin: minutesOver(due.dueMs, thenMs),
    overLatestMin: due.lostMs === null ? null : minutesOver(due.lostMs, thenMs),
    placeC: null,
    pieces: null,
    ...more,
  };
}

function minutesOver(limitMs: number, atMs: number): number {
  return Math.max(0, (atMs - limitMs) / MINUTE_MS);
}

/** A way out, about nothing but what is named. */
export function wayOut(
  kind: WayOut['kind'],
  command: OnFloorCommand,
  effect: WayOutEffect,
  about: Partial<Pick<WayOut, 'slotIds' | 'mixerId' | 'placeId' | 'fromTag'>> = {},
): WayOut {
  return { kind, command, slotIds: [], mixerId: null, placeId: null, fromTag: null, ...about, effect };
}
