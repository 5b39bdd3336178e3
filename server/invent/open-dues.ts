import { dueOf, openDues, type Due } from '../../shared/floor/due.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';

/** Parts of the state on which no due time rests. */
const BESIDE_DUES: ReadonlySet<string> = new Set([
  'sequence',
  'workpieces',
  'undo',
  'lastSoundedMs',
  'lotsUsed',
  'soundTest',
  'soundHeardMs',
]);

/**
 * Where everything open stands, worked out anew only for what an event has touched: most say something of one dough, and a history asks after
 * each of them. A prep follows the dough that it joins, what is in an oven what is beside it.
 */
export class OpenDues {
  #state: FloorState | null = null;
  #dues: readonly Due[] = [];

  of(state: FloorState): readonly Due[] {
    if (this.#state === state) return this.#dues;
    const touched = this.#state === null ? null : touchedAlone(this.#state, state);
    this.#dues = touched === null ? openDues(state) : this.#duesAfter(state, touched);
    this.#state = state;
    return this.#dues;
  }

  #duesAfter(state: FloorState, touched: ReadonlySet<string>): readonly Due[] {
    const known = new Map(this.#dues.map((due) => [due.workpiece, due]));
    return Object.values(state.workpieces).flatMap((workpiece) => {
      if (workpiece.finishedMs !== null) return [];
      const isBound = workpiece.kind === 'prep' && touched.has(servedFormula(state, workpiece));
      const due = (isBound ? undefined : known.get(workpiece)) ?? dueOf(state, workpiece);
      return due === null ? [] : [due];
    });
  }
}

/** The formulas of the doughs that an event has touched; null where it has changed more than doughs that stand for themselves. */
function touchedAlone(before: FloorState, state: FloorState): ReadonlySet<string> | null {
  const parts = Object.keys(state) as (keyof FloorState)[];
  if (parts.some((part) => !BESIDE_DUES.has(part) && before[part] !== state[part])) return null;
  const touched = new Set<string>();
  for (const workpiece of Object.values(state.workpieces)) {
    const was = before.workpieces[workpiece.id];
    if (was === workpiece) continue;
    if (was === undefined || standsBesideOthers(was) || standsBesideOthers(workpiece)) return null;
    touched.add(workpiece.formulaId);
  }
  return touched;
}

function standsBesideOthers({ kind, slotIds }: Workpiece): boolean {
  return kind === 'prep' || slotIds.length > 0;
}

/** The formula of the dough that a prep is made for; its own where it serves none that is known. */
function servedFormula(state: FloorState, { serves, formulaId }: Workpiece): string {
  return state.workpieces[serves?.workpieceId ?? '']?.formulaId ?? formulaId;
}
