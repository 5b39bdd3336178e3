import type { Step } from '../../documents/method.ts';
import { refused, type Result } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState, Workpiece } from '../state.ts';
import { takesOf, type Take } from '../takes.ts';
import { toTenth } from '../tenths.ts';
import type { Decision } from './decision.ts';
import { Ledger } from './draw-ledger.ts';
import { standingOf } from './standing.ts';

/** What is drawn by hand, beside what the way says, comes on top of what the workpiece weighs. */
export function decideDrawFrom(state: FloorState, command: CommandOf<'drawFrom'>, context: CommandContext): Decision {
  const from = standingOf(state, command.fromWorkpieceId, context);
  if (!from.ok) return from;
  const to = standingOf(state, command.toWorkpieceId, context);
  if (!to.ok) return to;
  const source = from.value.workpiece;
  const target = to.value.workpiece;
  const grams = toTenth(command.grams);
  if (grams === 0) return refused({ code: 'nothingChanges', tag: target.tag });
  const ledger = new Ledger(state, target, undefined, command.despite ?? [], Math.max(from.value.atMs, to.value.atMs));
  const drawn = ledger.draw({ source, grams, isExtra: true });
  return drawn === null ? ledger.settle() : refused(drawn);
}

/**
 * What a step takes of ferments and preps when it is done, and the end of those that it empties. As said, or what the
 * formula says, of the sources in their order. Sources that are not as far are taken to be: their taps were forgotten.
 */
export function drawEvents(
  state: FloorState,
  workpiece: Workpiece,
  step: Step,
  command: Pick<CommandOf<'finishStep'>, 'draws' | 'despite'>,
  atMs: number,
): Result<readonly FloorEvent[], Refusal> {
  const takes = takesOf(state, workpiece, step);
  const ledger = new Ledger(state, workpiece, step.id, command.despite ?? [], atMs);
  const refusal = command.draws === undefined ? drawByFormula(ledger, takes) : drawAsSaid(state, ledger, takes, command.draws);
  return refusal === null ? ledger.settle() : refused(refusal);
}

function drawAsSaid(
  state: FloorState,
  ledger: Ledger,
  takes: readonly Take[],
  draws: NonNullable<CommandOf<'finishStep'>['draws']>,
): Refusal | null {
  for (const draw of draws) {
    const source = state.workpieces[draw.fromWorkpieceId];
    if (source === undefined) return { code: 'workpieceUnknown', workpieceId: draw.fromWorkpieceId };
    if (source.finishedMs !== null) return { code: 'workpieceFinished', tag: source.tag, atMs: source.finishedMs };
    const take = takes.find((candidate) => candidate.formulaId === source.formulaId);
    if (take === undefined) return { code: 'wrongSource', ...ledger.at, fromTag: source.tag };
    const refusal = ledger.draw({ source, grams: toTenth(draw.grams), isExtra: take.isExtra });
    if (refusal !== null) return refusal;
  }
  return null;
}

function drawByFormula(ledger: Ledger, takes: readonly Take[]): Refusal | null {
  for (const take of takes) {
    const refusal = ledger.drawTake(take);
    if (refusal !== null) return refusal;
  }
  return null;
}
