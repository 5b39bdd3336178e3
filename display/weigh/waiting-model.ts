import { formulaOf } from '../../shared/floor/contents.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { weighOutOf } from '../../shared/floor/weigh-out.ts';
import { dayTag, floorDateOf } from '../parts/day-tag.ts';
import { allLines } from './weigh-model.ts';

/** Something that waits to be weighed. */
export interface Waiting {
  readonly workpieceId: string;
  readonly tag: string;
  readonly name: string;
  readonly grams: number;
  readonly plannedStartMs: number;
  readonly inCount: number;
  readonly lineCount: number;
}

/** What is not mixed yet and has something to weigh, by planned start. */
export function waitingOf(state: FloorState): readonly Waiting[] {
  return Object.values(state.workpieces)
    .flatMap((workpiece) => {
      const out = workpiece.finishedMs === null ? weighOutOf(state, workpiece) : null;
      if (out === null || out.isMixed) return [];
      const lines = allLines(out);
      return {
        workpieceId: workpiece.id,
        tag: dayTag(workpiece.tag, workpiece.serviceDate, floorDateOf(state)),
        name: formulaOf(state, workpiece)?.name ?? workpiece.tag,
        grams: workpiece.grams,
        plannedStartMs: workpiece.plannedStartMs,
        inCount: lines.filter(({ line }) => line.weighed !== null).length,
        lineCount: lines.length,
      };
    })
    .sort((a, b) => a.plannedStartMs - b.plannedStartMs || a.tag.localeCompare(b.tag));
}
