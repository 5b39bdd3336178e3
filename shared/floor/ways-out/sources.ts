import type { FloorState, Workpiece } from '../state.ts';
import { takesOf, type Take } from '../takes.ts';
import type { WayOut } from '../ways-out.ts';
import { effectOf, finishOf, wayOut, type Asked } from './asked.ts';

/** Another pot or prep of the same formula that has enough beyond its seed. */
export function sourceWays(asked: Asked): readonly WayOut[] {
  const { state, due } = asked;
  const missing = missingFormulaId(asked);
  if (missing === null) return [];
  const takes = takesOf(state, due.workpiece, due.action);
  const take = takes.find((one) => one.formulaId === missing.formulaId);
  if (take === undefined) return [];
  // Named sources stand for all that the step takes, so the other takes have theirs named with them.
  const others = takes.filter((one) => one !== take).map((one) => drawOf(one, sourcesOf(state, one, due.workpiece.id)[0]));
  if (others.some((draw) => draw === null)) return [];
  return sourcesOf(state, take, due.workpiece.id)
    .filter((source) => source.tag !== missing.fromTag)
    .map((source) => {
      const draws = [drawOf(take, source), ...others].filter((draw) => draw !== null);
      return wayOut('otherSource', { ...finishOf(due), draws }, effectOf(asked, 0), { fromTag: source.tag });
    });
}

function missingFormulaId({ state, refusal }: Asked): { readonly formulaId: string; readonly fromTag: string | null } | null {
  if (refusal.code === 'nothingToDraw' || refusal.code === 'notEnoughToDraw') return { formulaId: refusal.formulaId, fromTag: null };
  if (refusal.code !== 'lastOfFerment') return null;
  const from = Object.values(state.workpieces).find((workpiece) => workpiece.tag === refusal.fromTag && workpiece.finishedMs === null);
  return from === undefined ? null : { formulaId: from.formulaId, fromTag: from.tag };
}

/** Open ferments and preps with enough for a take beyond their seed, the fullest first. */
function sourcesOf(state: FloorState, take: Take, takerId: string): readonly Workpiece[] {
  return Object.values(state.workpieces)
    .filter(
      (source) =>
        source.id !== takerId &&
        source.finishedMs === null &&
        (source.kind === 'ferment' || source.kind === 'prep') &&
        source.formulaId === take.formulaId &&
        spareG(source) >= take.grams,
    )
    .sort((a, b) => spareG(b) - spareG(a));
}

function spareG(source: Workpiece): number {
  return source.grams - (source.stock?.seedG ?? 0);
}

function drawOf(take: Take, source: Workpiece | undefined): { fromWorkpieceId: string; grams: number } | null {
  return source === undefined ? null : { fromWorkpieceId: source.id, grams: take.grams };
}
