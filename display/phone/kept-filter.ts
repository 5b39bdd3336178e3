import { kept } from '../parts/kept.ts';

const KEY = 'ovenward.phone-list-of';

/** The station whose doughs this device listed last; null for everybody's. */
export function keptFilter(): string | null {
  const last = kept.read(KEY);
  return last === null || last === '' ? null : last;
}

/** Keeps whose doughs are listed for this device's next load; null for everybody's. */
export function keepFilter(stationId: string | null): void {
  kept.write(KEY, stationId ?? '');
}
