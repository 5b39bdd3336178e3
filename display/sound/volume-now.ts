import type { FloorLink } from '../link/floor-link.ts';
import { browserHours } from '../parts/browser-hours.ts';

/** How loud this hour is to be, by what the page knows of the house. Full where it knows nothing. */
export function volumeNow(link: FloorLink): number {
  return browserHours(link.view.state?.house?.document ?? null).volumePct(link.nowMs());
}
