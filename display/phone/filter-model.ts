import type { Station } from '../../shared/documents/kitchen.ts';
import type { Row } from '../../shared/floor/board.ts';
import type { Role } from '../../shared/floor/role.ts';
import { isOfStation } from '../parts/station-rows.ts';

/** How much waits at other stations, by role. */
export interface Elsewhere {
  readonly lost: number;
  readonly late: number;
  readonly calls: number;
  /** The most pressing among them. */
  readonly strongest: Role;
}

/** The station that the list is for; null for everybody's, and where the kitchen no longer has it. */
export function filterIn(stations: readonly Station[], stationId: string | null): Station | null {
  return stations.find((station) => station.id === stationId) ?? null;
}

/** What calls, is late or is being lost and is not on a station's list; null where nothing is. */
export function elsewhereOf(rows: readonly Row[], stationId: string | null): Elsewhere | null {
  const hidden = rows.filter((row) => !isOfStation(row, stationId));
  const count = (role: Role): number => hidden.filter((row) => row.role === role).length;
  const lost = count('lost');
  const late = count('late');
  const calls = count('call');
  if (lost + late + calls === 0) return null;
  return { lost, late, calls, strongest: lost > 0 ? 'lost' : late > 0 ? 'late' : 'call' };
}
