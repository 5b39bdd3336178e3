import type { PutBackKind } from '../../shared/documents/formula.ts';
import { formulaOf } from '../../shared/floor/contents.ts';
import { dueOf } from '../../shared/floor/due.ts';
import { stageOf } from '../../shared/floor/stage.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { dayTag, floorDateOf } from '../parts/day-tag.ts';

/** A dough by its id and the tag to show. */
export interface Tagged {
  readonly workpieceId: string;
  readonly tag: string;
}

/** Scrap of one dough that can go into another. */
export interface PutBackChoice {
  readonly from: Tagged;
  readonly to: Tagged;
  readonly whats: readonly PutBackKind[];
  readonly mostG: number;
}

function tagged(state: FloorState, workpiece: Workpiece): Tagged {
  return { workpieceId: workpiece.id, tag: dayTag(workpiece.tag, workpiece.serviceDate, floorDateOf(state)) };
}

/** What can go back: into this one while it is in the bowl, and of this one into others that are. */
export function putBackChoices(state: FloorState, workpiece: Workpiece): readonly PutBackChoice[] {
  const all = Object.values(state.workpieces);
  const pairs = all
    .filter((other) => other.id !== workpiece.id)
    .flatMap((other) => [
      { from: other, to: workpiece },
      { from: workpiece, to: other },
    ]);
  return pairs.flatMap(({ from, to }) => {
    const whats = isInBowl(state, to) ? (formulaOf(state, to)?.takesBack ?? []).map((taken) => taken.what) : [];
    const mostG = from.scrapG;
    return mostG < 1 || whats.length === 0 ? [] : [{ from: tagged(state, from), to: tagged(state, to), whats, mostG }];
  });
}

function isInBowl(state: FloorState, workpiece: Workpiece): boolean {
  const due = dueOf(state, workpiece);
  return workpiece.kind === 'batch' && due !== null && stageOf(state, due) === 'mixing';
}

/** Mixes of the same formula that stand at the same step, and could go on in one tub with it. */
export function joinChoices(state: FloorState, workpiece: Workpiece): readonly Tagged[] {
  const due = dueOf(state, workpiece);
  if (due === null || workpiece.kind !== 'batch' || workpiece.slotIds.length > 0) return [];
  return Object.values(state.workpieces)
    .filter((other) => {
      const isSame =
        other.id !== workpiece.id &&
        other.kind === 'batch' &&
        other.formulaId === workpiece.formulaId &&
        other.formulaVersion === workpiece.formulaVersion &&
        other.slotIds.length === 0;
      return isSame && dueOf(state, other)?.action.id === due.action.id;
    })
    .map((other) => tagged(state, other));
}

/** In how many equal loads it may go on: a cut, or a batch of one product, that is not in the oven. */
export function loadParts(workpiece: Workpiece): readonly number[] {
  const { kind, pieces, productId, slotIds } = workpiece;
  if (pieces === null || productId === null || slotIds.length > 0 || (kind !== 'cut' && kind !== 'batch')) return [];
  return [2, 3, 4].filter((loads) => loads <= pieces);
}
