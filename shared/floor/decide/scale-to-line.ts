import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorState, PlannedCut, Workpiece } from '../state.ts';
import { neededLinesG } from '../weigh-amounts.ts';
import type { WeighLine } from '../weigh-out.ts';
import type { Decision } from './decision.ts';
import { beyondSeedG, sourcesFor } from './sources.ts';
import { standingLine } from './weigh.ts';

/**
 * There is only so much of a line: the whole batch is scaled to it, and the pieces that are cut of it, rounded down. Only
 * before it is mixed, and never upwards. A pot that stands is not scaled: what is fed is said when it is.
 */
export function decideScaleToLine(state: FloorState, command: CommandOf<'scaleToLine'>, context: CommandContext): Decision {
  const found = standingLine(state, command, context);
  if (!found.ok) return found;
  const { standing, weighOut, line } = found.value;
  const { workpiece, atMs } = standing;
  const { tag } = workpiece;
  if (weighOut.isMixed || (workpiece.stock !== null && workpiece.stock.fedMs !== null)) return refused({ code: 'alreadyMixed', tag });
  const neededG = exactG(state, workpiece, line.id);
  const { grams } = command;
  if (grams >= Math.min(line.grams, neededG)) return refused({ code: 'nothingChanges', tag });
  const hasG = drawableG(state, workpiece, line, atMs);
  if (hasG !== null && line.formulaId !== null && grams > hasG)
    return refused({ code: 'notEnoughToDraw', tag, formulaId: line.formulaId, neededG: grams, hasG });
  const fromG = workpiece.scaledToG;
  const factor = grams / neededG;
  // A thousandth up, so that pieces that fill it whole still do.
  const toG = Math.ceil(fromG * factor * 1000 - 1e-6) / 1000;
  const cuts = scaledCuts(workpiece.cuts, factor);
  const lightestG = Math.min(...workpiece.cuts.map(pieceG));
  if (workpiece.cuts.length > 0 && cuts.length === 0) return refused({ code: 'cutsTooHeavy', tag, neededG: lightestG, hasG: toG });
  const goneG = fromG - toG;
  if (goneG > workpiece.grams) return refused({ code: 'moreThanThere', tag, fromTag: tag, neededG: goneG, hasG: workpiece.grams });
  return accepted([{ type: 'batchRescaled', workpieceId: workpiece.id, fromG, toG, cuts, atMs }]);
}

function exactG(state: FloorState, workpiece: Workpiece, lineId: string): number {
  const [part, index] = lineId.split('-').map(Number);
  return neededLinesG(state, workpiece)?.[part ?? 0]?.[index ?? 0] ?? 0;
}

/** What the pots or preps of a line have to give, fed or still to be fed; null where it is not drawn, or nothing of it stands. */
function drawableG(state: FloorState, workpiece: Workpiece, line: WeighLine, atMs: number): number | null {
  if (line.formulaId === null) return null;
  const sources = sourcesFor(state, workpiece, line.formulaId, atMs);
  return sources.length === 0 ? null : sources.reduce((sum, source) => sum + beyondSeedG(source, source.grams), 0);
}

function pieceG(cut: PlannedCut): number {
  return cut.grams / cut.pieces;
}

/** Planned cuts of so much less dough: each rounded down, and what that leaves goes to those that lost most by it. */
function scaledCuts(cuts: readonly PlannedCut[], factor: number): PlannedCut[] {
  const wanted = cuts.map((cut) => cut.pieces * factor);
  const pieces = wanted.map((count) => Math.floor(count + 1e-9));
  const cutsG = (): number => cuts.reduce((sum, cut, index) => sum + pieceG(cut) * (pieces[index] ?? 0), 0);
  const mostG = cuts.reduce((sum, cut) => sum + cut.grams, 0) * factor;
  const lost = (index: number): number => (wanted[index] ?? 0) - (pieces[index] ?? 0);
  for (const index of [...cuts.keys()].sort((a, b) => lost(b) - lost(a))) {
    const cut = cuts[index];
    if (cut === undefined || lost(index) < 1e-9 || cutsG() + pieceG(cut) > mostG) continue;
    pieces[index] = (pieces[index] ?? 0) + 1;
  }
  return cuts.flatMap((cut, index) => {
    const count = pieces[index] ?? 0;
    return count === 0 ? [] : [{ ...cut, pieces: count, grams: count * pieceG(cut) }];
  });
}
