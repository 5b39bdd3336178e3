import { derivedId } from '../../ids.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { EventOf, VesselsHeld } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { productOf } from '../way.ts';
import { downToTenth } from '../tenths.ts';
import type { Decision } from './decision.ts';
import { standingOf } from './standing.ts';

/** A cut, or a dough that becomes one product, goes on in loads apart from each other. A load is not split again. */
export function decideMakeLoads(state: FloorState, command: CommandOf<'makeLoads'>, context: CommandContext): Decision {
  const standing = standingOf(state, command.workpieceId, context);
  if (!standing.ok) return standing;
  const { workpiece, due, atMs } = standing.value;
  const at = { tag: workpiece.tag, stepId: due.step.id };
  if (workpiece.kind === 'load') return refused({ code: 'nothingChanges', ...at });
  const product = productOf(state, workpiece);
  if (product === null || workpiece.pieces === null) return refused({ code: 'noPieces', ...at });
  // Loads follow the product's way: what is still being mixed has not got there.
  const [first] = product.way;
  if (first !== undefined && !product.way.some((step) => step.id === due.step.id))
    return refused({ code: 'stepNotReached', tag: workpiece.tag, stepId: first.id, currentStepId: due.action.id });
  if (workpiece.slotIds.length > 0) return refused({ code: 'workRestsOnIt', ...at });
  const loads = loadEvents(state, workpiece, due.step.id, command.pieces, atMs, context);
  return loads.ok ? accepted([loads.value]) : loads;
}

/**
 * A cut goes on in loads of so many pieces; what is left stays. Derived ids count from 0. The workpiece is given as it is
 * after the step that makes the loads, with the vessels that it holds by then. Grams and vessels follow the pieces.
 */
export function loadEvents(
  state: FloorState,
  workpiece: Workpiece,
  stepId: string,
  pieces: readonly number[],
  atMs: number,
  context: CommandContext,
): Result<EventOf<'loadsMade'>, Refusal> {
  const { productId, productVersion, pieces: has } = workpiece;
  const at = { tag: workpiece.tag, stepId };
  if (productId === null || productVersion === null || has === null) return refused({ code: 'noPieces', ...at });
  const wanted = pieces.reduce((sum, count) => sum + count, 0);
  if (wanted > has) return refused({ code: 'morePiecesThanThere', ...at, wanted, has });
  if (pieces.length === 1 && wanted === has) return refused({ code: 'nothingChanges', ...at });
  const restPieces = has - wanted;
  const weights = weightsOf(workpiece.grams, pieces, restPieces);
  const vessels = vesselsOf(workpiece.vessels, [...pieces, restPieces]);
  const tags = freeTags(state, workpiece, pieces.length);
  return accepted({
    type: 'loadsMade',
    workpieceId: workpiece.id,
    stepId,
    atMs,
    children: pieces.map((count, index) => ({
      workpieceId: derivedId(context.commandId, index),
      tag: tags[index] ?? workpiece.tag,
      productId,
      productVersion,
      pieces: count,
      grams: weights.loadsG[index] ?? 0,
      vessels: vessels[index] ?? [],
    })),
    restPieces,
    restG: weights.restG,
  });
}

/** The weight by pieces; tenths of a gram that do not go up stay with what is left, or with the last load. */
function weightsOf(
  grams: number,
  pieces: readonly number[],
  restPieces: number,
): { readonly loadsG: readonly number[]; readonly restG: number } {
  const has = pieces.reduce((sum, count) => sum + count, restPieces);
  const loadsG = pieces.map((count) => downToTenth((grams * count) / has));
  const overG = grams - loadsG.reduce((sum, loadG) => sum + loadG, 0);
  if (restPieces > 0) return { loadsG, restG: overG };
  return { loadsG: loadsG.map((loadG, index) => (index === loadsG.length - 1 ? loadG + overG : loadG)), restG: 0 };
}

/** Vessels go with the pieces, whole ones, the largest remainder first, so that none is in two places and none is lost. */
function vesselsOf(held: readonly VesselsHeld[], pieces: readonly number[]): VesselsHeld[][] {
  const total = pieces.reduce((sum, count) => sum + count, 0);
  const shares: VesselsHeld[][] = pieces.map(() => []);
  for (const { vesselId, count } of held) {
    const exact = pieces.map((piecesHere) => (count * piecesHere) / total);
    const whole = exact.map(Math.floor);
    const spare = count - whole.reduce((sum, here) => sum + here, 0);
    const inOrder = exact
      .map((share, index) => ({ index, over: share - Math.floor(share) }))
      .sort((a, b) => b.over - a.over || a.index - b.index);
    for (const { index } of inOrder.slice(0, spare)) whole[index] = (whole[index] ?? 0) + 1;
    whole.forEach((here, index) => {
      if (here > 0) shares[index]?.push({ vesselId, count: here });
    });
  }
  return shares;
}

/**
 * C1b·1, C1b·2 …, going on after the loads that it has had, and never one that is borne already. What goes on apart from
 * a load is a load beside it: C1b·3, not C1b·1·1.
 */
function freeTags(state: FloorState, workpiece: Workpiece, count: number): readonly string[] {
  const borne = new Set(
    Object.values(state.workpieces)
      .filter((other) => other.serviceDate === workpiece.serviceDate)
      .map((other) => other.tag),
  );
  const stem = workpiece.kind === 'load' ? workpiece.tag.replace(/·\d+$/, '') : workpiece.tag;
  const tags: string[] = [];
  for (let number = workpiece.childIds.length + 1; tags.length < count; number += 1) {
    const tag = `${stem}·${number}`;
    if (!borne.has(tag)) tags.push(tag);
  }
  return tags;
}
