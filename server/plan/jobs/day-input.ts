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

/** By how many minutes shifts are longer than by their hours, by station. */
export interface Shifts {
  readonly earlierMin: Readonly<Record<string, number>>;
  readonly longerMin: Readonly<Record<string, number>>;
}

/** Everybody comes and goes by the hours of the kitchen. */
export const USUAL_SHIFTS: Shifts = { earlierMin: {}, longerMin: {} };

/**
 * What a day is planned from: the floor as it stands, and hours in the house's zone, some shifts longer than usual. Null in a
 * house without kitchen.
 */
export function dayInputOf(
  state: FloorState,
  nowMs: number,
  tried: { readonly proposed: readonly ProposedBatch[] } & Pick<DayInput, 'pins' | 'firstOrderIds'>,
  shifts: Shifts = USUAL_SHIFTS,
): DayInput | null {
  if (state.house === null || state.kitchen === null) return null;
  const horizonMs = horizonOf(state, nowMs);
  const calendar = zoneCalendar(state.house.document.zone);
  const calendars = calendarsOf(state.kitchen.document, calendar, { fromMs: nowMs - BEFORE_MS, toMs: horizonMs });
  return { state, nowMs, calendars: withShifts(calendars, shifts), calendarsEndMs: horizonMs, ...tried };
}

function withShifts(calendars: DayCalendars, shifts: Shifts): DayCalendars {
  const stations = Object.entries(calendars.stations).map(([id, spans]) => [id, longerSpans(id, spans, shifts)] as const);
  return { ...calendars, stations: Object.fromEntries(stations) };
}

type Spans = DayCalendars['stations'][string];

/** A shift begins earlier or ends later; its breaks stay as they are. Two shifts never overlap. */
function longerSpans(id: string, spans: Spans, { earlierMin, longerMin }: Shifts): Spans {
  const earlierMs = (earlierMin[id] ?? 0) * MINUTE_MS;
  const longerMs = (longerMin[id] ?? 0) * MINUTE_MS;
  if (earlierMs + longerMs === 0) return spans;
  const longer: { readonly fromMs: number; readonly toMs: number }[] = [];
  for (const [index, { fromMs, toMs }] of spans.entries()) {
    const endedMs = spans[index - 1]?.toMs ?? Number.NEGATIVE_INFINITY;
    const nextMs = spans[index + 1]?.fromMs ?? Infinity;
    const begins = fromMs - endedMs >= LONGEST_BREAK_MS;
    const ends = nextMs - toMs >= LONGEST_BREAK_MS;
    longer.push({
      fromMs: begins ? Math.max(longer.at(-1)?.toMs ?? Number.NEGATIVE_INFINITY, fromMs - earlierMs) : fromMs,
      toMs: ends ? Math.min(nextMs, toMs + longerMs) : toMs,
    });
  }
  return longer;
}

function horizonOf(state: FloorState, nowMs: number): number {
  const wanted = Object.values(state.orders).map(({ readyMs }: Order) => readyMs);
  const planned = Object.values(state.plan?.steps ?? {}).flatMap((steps) => steps.map((step) => step.plannedEndMs ?? step.plannedStartMs));
  const begin = Object.values(state.workpieces).map(({ plannedStartMs }) => plannedStartMs);
  const lastMs = [...wanted, ...planned, ...begin].reduce((last, atMs) => Math.max(last, atMs), nowMs);
  return Math.min(lastMs, nowMs + LONGEST_MS - AFTER_MS) + AFTER_MS;
}
