const SECOND_MS = 1000;
const MINUTE_S = 60;
/** From here on whole minutes do: a baker does not plan by seconds that far out. */
const WHOLE_MINUTES_FROM_S = 10 * MINUTE_S;
/** Beyond this a clock time says more than a count of minutes. */
const CLOCK_FROM_S = 3 * 60 * MINUTE_S;
/** From here on a clock time could be taken for today's: hours say that it is not. */
const HOURS_FROM_S = 18 * 60 * MINUTE_S;

/** What a countdown shows. `clock` leaves the instant to whoever knows the house's time zone. */
export type Countdown =
  | { readonly kind: 'minutes'; readonly minutes: number }
  | { readonly kind: 'hours'; readonly hours: number }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'clock'; readonly atMs: number };

/**
 * Time to an instant, rounded up so that it reads 0:00 exactly when due: whole hours beyond eighteen, a clock
 * time beyond three, whole minutes above ten, `m:ss` below, `+m:ss` (rounded down) past due.
 */
export function countdownTo(dueMs: number, nowMs: number): Countdown {
  const leftS = Math.ceil((dueMs - nowMs) / SECOND_MS);
  if (leftS > HOURS_FROM_S) return { kind: 'hours', hours: Math.ceil(leftS / (60 * MINUTE_S)) };
  if (leftS > CLOCK_FROM_S) return { kind: 'clock', atMs: dueMs };
  if (leftS > WHOLE_MINUTES_FROM_S) return { kind: 'minutes', minutes: Math.ceil(leftS / MINUTE_S) };
  if (leftS >= 0) return { kind: 'text', text: minutesAndSeconds(leftS === 0 ? 0 : leftS) };
  return { kind: 'text', text: `+${minutesAndSeconds(Math.floor((nowMs - dueMs) / SECOND_MS))}` };
}

/** When the text of a countdown next changes, for one clock that wakes no more often than it must. */
export function nextChangeMs(dueMs: number, nowMs: number): number {
  const phaseMs = (((dueMs - nowMs) % SECOND_MS) + SECOND_MS) % SECOND_MS;
  return nowMs + (phaseMs === 0 ? SECOND_MS : phaseMs);
}

function minutesAndSeconds(seconds: number): string {
  return `${Math.floor(seconds / MINUTE_S)}:${String(seconds % MINUTE_S).padStart(2, '0')}`;
}
