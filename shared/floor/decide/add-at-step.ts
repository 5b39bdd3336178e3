import { additionG } from '../../documents/amounts.ts';
import type { Step } from '../../documents/method.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { CommandOf } from '../commands.ts';
import { formulaOf, newestFormula } from '../contents.ts';
import type { FloorEvent } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { baseG } from '../takes.ts';

/**
 * The ingredients that go in at a step, by the formula's amounts, and how much was used of what was held back: all of it
 * where nobody says otherwise. What was not used is named as a loss, since the batch's weight had counted it.
 */
export function additionEvents(
  state: FloorState,
  workpiece: Workpiece,
  step: Step,
  usedHeldBackG: CommandOf<'finishStep'>['usedHeldBackG'],
  atMs: number,
): Result<readonly FloorEvent[], Refusal> {
  const formula = formulaOf(state, workpiece);
  if (formula === null) return accepted([]);
  const events: FloorEvent[] = [];
  const on = { workpieceId: workpiece.id, stepId: step.id, atMs };
  for (const addition of step.additions) {
    if (addition.item === undefined) continue;
    const { grams: exactG, isExtra } = additionG(
      addition,
      formula,
      baseG(formula, workpiece, step),
      workpiece.pieces,
      newestFormula(state),
      state.ingredients?.document ?? [],
    );
    const grams = Math.round(exactG * 10) / 10;
    if (grams <= 0) continue;
    if (!addition.heldBack) {
      events.push({ type: 'ingredientAdded', ...on, ingredientId: addition.item, grams, ...(isExtra ? { isExtra: true as const } : {}) });
      continue;
    }
    const usedG = usedHeldBackG ?? grams;
    if (usedG > grams)
      return refused({ code: 'moreThanThere', tag: workpiece.tag, stepId: step.id, fromTag: workpiece.tag, neededG: usedG, hasG: grams });
    events.push({ type: 'waterHeldBackUsed', ...on, usedG, heldG: grams });
    if (usedG < grams) events.push({ type: 'lossNamed', workpieceId: workpiece.id, what: 'heldBack', grams: grams - usedG, atMs });
  }
  return accepted(events);
}
