import type { Order } from '../../../shared/documents/order.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { DayCalendars, DayInput, ProposedBatch } from '../../../shared/plan/build/day-input.ts';
import { zoneCalendar } from '../../floor/house-hours.ts';
import { calendarsOf } from '../calendars.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 3_600_000;
/** Who is away for longer has gone home. */
const LONGEST_BREAK_MS = 4 * HOUR_MS;
/** Hours and breaks are worked out from so long before now, for what has begun by then. */
const BEFORE_MS = 48 * HOUR_MS;
/** And until so long after the last thing that is wanted or planned, for days that run late. */
const AFTER_MS = 24 * HOUR_MS;
/** A day never reaches further than this: what is wanted later is not planned yet. */
const LONGEST_MS = 8 * 24 * HOUR_MS;

/**
 * What a day is planned from: the floor as it stands, and hours in the house's zone; stations in `earlierMin` begin so many
 * minutes earlier. Null in a house without kitchen.
 */
export function dayInputOf(
  state: FloorState,
  nowMs: number,
  tried: { readonly proposed: readonly ProposedBatch[] } & Pick<DayInput, 'pins' | 'firstOrderIds'>,
  earlierMin: Readonly<Record<string, number>> = {},
): DayInput | null {
  if (state.house === null || state.kitchen === null) return null;
  const horizonMs = horizonOf(state, nowMs);
  const calendar = zoneCalendar(state.house.document.zone);
  const calendars = calendarsOf(state.kitchen.document, calendar, { fromMs: nowMs - BEFORE_MS, toMs: horizonMs });
  return { state, nowMs, calendars: beginningEarlier(calendars, earlierMin), calendarsEndMs: horizonMs, ...tried };
}

/** A shift begins earlier; what follows a break does not. */
function beginningEarlier(calendars: DayCalendars, earlierMin: Readonly<Record<string, number>>): DayCalendars {
  const stations = Object.entries(calendars.stations).map(([id, spans]) => {
    const earlierMs = (earlierMin[id] ?? 0) * MINUTE_MS;
    if (earlierMs === 0) return [id, spans] as const;
    return [
      id,
      spans.map(({ fromMs, toMs }, index) => {
        const endedMs = spans[index - 1]?.toMs ?? Number.NEGATIVE_INFINITY;
        return fromMs - endedMs < LONGEST_BREAK_MS ? { fromMs, toMs } : { fromMs: Math.max(endedMs, fromMs - earlierMs), toMs };
      }),
    ] as const;
  });
  return { ...calendars, stations: Object.fromEntries(stations) };
}

function horizonOf(state: FloorState, nowMs: number): number {
  const wanted = Object.values(state.orders).map(({ readyMs }: Order) => readyMs);
  const planned = Object.values(state.plan?.steps ?? {}).flatMap((steps) => steps.map((step) => step.plannedEndMs ?? step.plannedStartMs));
  const begin = Object.values(state.workpieces).map(({ plannedStartMs }) => plannedStartMs);
  const lastMs = [...wanted, ...planned, ...begin].reduce((last, atMs) => Math.max(last, atMs), nowMs);
  return Math.min(lastMs, nowMs + LONGEST_MS - AFTER_MS) + AFTER_MS;
}
