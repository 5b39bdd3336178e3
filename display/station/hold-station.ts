import type { Station } from '../../shared/documents/kitchen.ts';
import type { FloorLink, FloorView } from '../link/floor-link.ts';
import type { StationPage } from './station-page.ts';

/**
 * The page's owner: gives the page what the link says, and the link what the page says. A screen introduces itself by its
 * station's name and place, as soon as the kitchen says what that is called. Returns what lets go again.
 */
export function holdStation(page: StationPage, link: FloorLink, monotonicMs: () => number, keep: (stationId: string) => void): () => void {
  page.clock = { nowMs: () => link.nowMs(), pace: () => link.view.pace, monotonicMs };
  let told: string | null = null;
  const introduce = (): void => {
    const station = link.view.connection.phase === 'live' ? untoldStation(link.view, page.stationId) : null;
    // Once for each connection: the server's word that it has heard takes its time.
    if (link.view.connection.phase !== 'live') told = null;
    if (station === null || told === station.id) return;
    told = station.id;
    link.introduce(station.name, station.id);
  };
  const follow = (): void => {
    page.view = link.view;
    introduce();
  };
  follow();
  const unsubscribe = link.subscribe(follow);
  const listeners = new AbortController();
  const { signal } = listeners;
  page.addEventListener('floor-command', (event) => void link.send(event.command), { signal });
  page.addEventListener(
    'station-chosen',
    ({ stationId }) => {
      page.stationId = stationId;
      keep(stationId);
      introduce();
    },
    { signal },
  );
  return () => {
    unsubscribe();
    listeners.abort();
  };
}

/** The station that the house is still to be told of; null where it knows it already, or there is none. */
function untoldStation({ state, device }: FloorView, stationId: string | null): Station | null {
  const station = state?.kitchen?.document.stations.find(({ id }) => id === stationId);
  if (station === undefined || device === null) return null;
  return device.stationId === station.id && device.name === station.name ? null : station;
}
