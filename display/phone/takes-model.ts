import { additionG } from '../../shared/documents/amounts.ts';
import type { Step } from '../../shared/documents/method.ts';
import { formulaOf, newestFormula } from '../../shared/floor/contents.ts';
import { sourcesFor } from '../../shared/floor/decide/sources.ts';
import { dueOf } from '../../shared/floor/due.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { takesOf, type Take } from '../../shared/floor/takes.ts';
import { wayOf } from '../../shared/floor/way.ts';
import { dayTag, floorDateOf } from '../parts/day-tag.ts';

/** Something that stands on the floor and can be drawn from. */
export interface Source {
  readonly workpieceId: string;
  readonly tag: string;
  readonly grams: number;
  /** From when on it is ready, at its earliest; null while it is not so far. */
  readonly ripeFromMs: number | null;
}

/** What a step takes, and what it may be drawn from, the readiest first. */
export interface TakeChoice extends Take {
  readonly sources: readonly Source[];
}

/** What a step takes for a workpiece, with the sources there are. */
export function takeChoices(state: FloorState, workpiece: Workpiece, action: Step, nowMs: number): readonly TakeChoice[] {
  return takesOf(state, workpiece, action).map((take) => ({
    ...take,
    // The order is the one in which a tap without a choice draws on them.
    sources: sourcesFor(state, workpiece, take.formulaId, nowMs).map((pot) => sourceOf(state, pot)),
  }));
}

/** Every open ferment and prep that a dough could be given from, beside what its steps take; the readiest first. */
export function sourcesOf(state: FloorState, taker: Workpiece): readonly Source[] {
  const pots = Object.values(state.workpieces).filter(
    (pot) => pot.finishedMs === null && pot.id !== taker.id && pot.grams > 0 && (pot.kind === 'ferment' || pot.kind === 'prep'),
  );
  const rank = (pot: Workpiece): number => (ripeFromMs(state, pot) === null ? 1 : 0);
  return pots
    .sort((a, b) => rank(a) - rank(b) || a.readyMs - b.readyMs || a.tag.localeCompare(b.tag, 'en', { numeric: true }))
    .map((pot) => sourceOf(state, pot));
}

function sourceOf(state: FloorState, pot: Workpiece): Source {
  return {
    workpieceId: pot.id,
    tag: dayTag(pot.tag, pot.serviceDate, floorDateOf(state)),
    grams: pot.grams,
    ripeFromMs: ripeFromMs(state, pot),
  };
}

/** When a pot is ready at its earliest: in its last rest; null before that. */
function ripeFromMs(state: FloorState, pot: Workpiece): number | null {
  const due = dueOf(state, pot);
  if (due === null || due.startedMs === null || due.phase !== 'resting') return null;
  return wayOf(state, pot).at(-1)?.id === due.step.id ? due.earliestMs : null;
}

/** The water of a step that is held back at first, in grams; null where the step has none. */
export function heldBackG(state: FloorState, workpiece: Workpiece, action: Step): number | null {
  const formula = formulaOf(state, workpiece);
  const held = action.additions.filter((addition) => addition.heldBack);
  if (formula === null || held.length === 0) return null;
  const ingredients = state.ingredients?.document ?? [];
  return held.reduce(
    (sum, addition) => sum + additionG(addition, formula, workpiece.grams, workpiece.pieces, newestFormula(state), ingredients).grams,
    0,
  );
}
