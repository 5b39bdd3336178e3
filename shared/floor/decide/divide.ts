import type { Step } from '../../documents/method.ts';
import { derivedId } from '../../ids.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { CommandContext } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import { cutTag } from '../projection.ts';
import type { Refusal } from '../refusals.ts';
import { versionKey, type FloorState, type PlannedCut, type Workpiece } from '../state.ts';
import { startOfNext } from './begin.ts';

/**
 * A batch becomes its cuts, as planned or as counted, and a cut whose way begins with a rest is at rest from then on.
 * They never weigh more than the batch gave; what is missing is named as loss.
 */
export function divideEvents(
  state: FloorState,
  workpiece: Workpiece,
  step: Step,
  atMs: number,
  context: CommandContext,
  counted: readonly { readonly productId: string; readonly pieces: number }[] | undefined,
): Result<readonly FloorEvent[], Refusal> {
  const at = { tag: workpiece.tag, stepId: step.id };
  const cuts: PlannedCut[] = [];
  for (const cut of counted ?? workpiece.cuts) {
    const productVersion =
      workpiece.cuts.find((planned) => planned.productId === cut.productId)?.productVersion ?? state.productVersions[cut.productId];
    const product = productVersion === undefined ? undefined : state.products[versionKey(cut.productId, productVersion)];
    if (productVersion === undefined || product === undefined || product.formula !== workpiece.formulaId) {
      return refused({ code: 'productUnknown', ...at, productId: cut.productId });
    }
    cuts.push({ productId: cut.productId, productVersion, pieces: cut.pieces, grams: cut.pieces * product.pieceG });
  }
  const neededG = cuts.reduce((sum, cut) => sum + cut.grams, 0);
  if (neededG > workpiece.grams) return refused({ code: 'cutsTooHeavy', ...at, neededG, hasG: workpiece.grams });
  const children = cuts.map((cut, index) => ({
    workpieceId: derivedId(context.commandId, index),
    tag: cutTag(workpiece.tag, index),
    ...cut,
  }));
  const events: FloorEvent[] = [
    { type: 'workpieceDivided', workpieceId: workpiece.id, stepId: step.id, atMs, children, lossG: workpiece.grams - neededG },
  ];
  for (const { workpieceId, ...child } of children) {
    const cut: Workpiece = { ...workpiece, id: workpieceId, ...child, mixerId: null };
    const begun = startOfNext(state, cut, state.products[versionKey(child.productId, child.productVersion)]?.way[0], atMs, context);
    if (!begun.ok) return begun;
    events.push(...begun.value);
  }
  return accepted(events);
}
