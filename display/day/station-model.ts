import type { FloorState } from '../../shared/floor/state.ts';
import type { Bar } from './sheet-bar.ts';
import { sheetLines, type SheetGiven } from './sheet-model.ts';

/** What hands do at a station, one step after another. */
export interface StationDay {
  readonly id: string;
  readonly name: string;
  readonly hands: number;
  /** By when they begin. */
  readonly bars: readonly Bar[];
}

/** Every station of the kitchen with what hands have to do there from now on; what is done is left off. */
export function stationDays(given: SheetGiven): readonly StationDay[] {
  const bars = sheetLines(given).flatMap((line) => line.bars);
  return (given.state.kitchen?.document.stations ?? []).map(({ id, name, hands }) => ({
    id,
    name,
    hands,
    bars: bars
      .filter((bar) => isAheadAt(bar, id))
      .toSorted((a, b) => a.fromMs - b.fromMs || a.tag.localeCompare(b.tag, 'en', { numeric: true })),
  }));
}

/** Hands, and what somebody has to judge: whoever stands at the mixer looks after the dough in it. */
function isAheadAt({ standing, step, resources }: Bar, stationId: string): boolean {
  if (standing === 'done' || (step.kind !== 'hands' && step.kind !== 'judged')) return false;
  const named = resources.filter(({ kind }) => kind === 'station');
  return named.length === 0 ? step.station === stationId : named.some(({ id }) => id === stationId);
}

/** The day that a list is of: the one asked for, or the floor's own. */
export function dateOf(state: FloorState, serviceDate: string | null): string | null {
  return serviceDate ?? state.serviceDate;
}
