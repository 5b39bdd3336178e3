import { keySchema } from '../../shared/documents/names.ts';
import { kept } from '../parts/kept.ts';

const KEY = 'ovenward.station';

/** The station that the address names (`?station=oven`), else the one that this device keeps; null where neither does. */
export function stationFor(query: URLSearchParams, keptId: string | null): string | null {
  for (const wanted of [query.get('station'), keptId]) {
    const parsed = keySchema.safeParse(wanted);
    if (parsed.success) return parsed.data;
  }
  return null;
}

/** The station of this screen as it opens. */
export function openingStation(): string | null {
  return stationFor(new URLSearchParams(location.search), kept.read(KEY));
}

/** Keeps the station for this device, and in the address, so that a bookmark of the page says it too. */
export function keepStation(stationId: string): void {
  kept.write(KEY, stationId);
  const address = new URL(location.href);
  address.searchParams.set('station', stationId);
  history.replaceState(null, '', address);
}
