import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { Step } from '../../shared/documents/method.ts';
import type { PlannedCleaning } from '../../shared/plan/planned-cleaning.ts';
import type { Span } from './sheet-axis.ts';
import { placeKey, type DoughLine } from './sheet-bar.ts';

const HOUR_MS = 3_600_000;
/** A cleaning this soon after the last dough of the sheet is part of its day; what comes later would only make the day look short. */
const WITHIN_MS = 4 * HOUR_MS;

/** What is cleaned is no step of any method: nothing but its name and its time is known of it. */
const CLEAN: Step = {
  id: 'clean',
  verb: 'clean',
  kind: 'hands',
  minutes: { target: 0 },
  toleranceMin: { late: 0 },
  claims: [],
  additions: [],
};

/** Cleanings of the kitchen's that are ahead, each a line of its own below the doughs, by when they are to be done. */
export function cleaningLines(
  cleanings: readonly PlannedCleaning[],
  kitchen: Kitchen | null,
  { fromMs, toMs }: Span,
  isTried: boolean,
): readonly DoughLine[] {
  return cleanings
    .filter(({ plannedStartMs, plannedEndMs }) => plannedEndMs > fromMs && plannedStartMs < toMs + WITHIN_MS)
    .toSorted((a, b) => a.plannedStartMs - b.plannedStartMs)
    .map(({ cleaningId, plannedStartMs, plannedEndMs, resources }, index) => {
      const name = kitchen?.cleanings?.find(({ id }) => id === cleaningId)?.name ?? cleaningId;
      // By its number, so that what is open or has the keyboard stays so when it moves.
      const place = { ownerId: `clean>${cleaningId}@${index}`, cut: null, load: null, stepId: CLEAN.id };
      return {
        key: `${place.ownerId}||`,
        rootKey: place.ownerId,
        tag: name,
        name,
        pieces: null,
        depth: 0,
        productIds: [],
        isCleaning: true,
        bars: [
          {
            ...place,
            key: placeKey(place),
            tag: name,
            step: CLEAN,
            standing: isTried ? 'proposed' : 'planned',
            fromMs: plannedStartMs,
            toMs: plannedEndMs,
            pieces: null,
            latestStartMs: null,
            wasMs: null,
            resources,
            pin: null,
          },
        ],
      } as const;
    });
}
