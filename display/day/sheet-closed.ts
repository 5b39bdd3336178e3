import type { Hours, Kitchen } from '../../shared/documents/kitchen.ts';
import { benchesOf, blockOn } from '../../shared/floor/resources.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { zonedDate, zonedInstantMs } from '../parts/zoned-instant.ts';
import type { StepResource } from './sheet-bar.ts';
import type { Span } from './sheet-axis.ts';

/** A stretch of time in which a thing cannot be had: nobody is at the station, or it is blocked. */
export interface Closed extends Span {
  readonly why: 'nobodyThere' | 'outOfUse';
}

/** When a thing cannot be had within a span: outside a station's hours and in its breaks, and while it is blocked. */
export function closedOf(state: FloorState, resource: StepResource, span: Span, nowMs: number): readonly Closed[] {
  const zone = state.house?.document.zone ?? 'UTC';
  const station = resource.kind === 'station' ? state.kitchen?.document.stations.find(({ id }) => id === resource.id) : undefined;
  const absent = station === undefined ? [] : absences(station, span, zone);
  const block = blockOn(state, asBlocked(state, resource), nowMs);
  const blocked = block === null ? [] : [{ fromMs: block.atMs, toMs: block.untilMs ?? span.toMs }];
  return [
    ...absent.map((gap): Closed => ({ ...gap, why: 'nobodyThere' })),
    ...within(blocked, span).map((gap): Closed => ({ ...gap, why: 'outOfUse' })),
  ];
}

/** A bench is blocked as a whole, whatever its places are called. */
function asBlocked(state: FloorState, resource: StepResource): StepResource {
  const benches = state.kitchen === null || resource.kind !== 'bench' ? [] : benchesOf(state.kitchen.document);
  const [first] = benches;
  return first !== undefined && benches.some(({ id }) => id === resource.id) ? { kind: 'bench', id: first.id } : resource;
}

function absences({ hours, breaks }: Kitchen['stations'][number], span: Span, zone: string): readonly Span[] {
  const there = hours === undefined ? [span] : within(spansOf(hours, span, zone), span);
  const away = within(spansOf(breaks ?? [], span, zone), span);
  const outside = gapsBetween(there, span);
  return [...outside, ...away].sort((a, b) => a.fromMs - b.fromMs);
}

/** The stretches of clock times on every day that the span touches; over midnight where they end earlier than they begin. */
function spansOf(hours: readonly Hours[], span: Span, zone: string): readonly Span[] {
  const found: Span[] = [];
  for (let day = -1; ; day += 1) {
    const date = zonedDate(span.fromMs, zone, day);
    if (zonedInstantMs(date, 0, zone) > span.toMs) return found;
    // ISO 8601: Monday is 1, Sunday 7.
    const weekday = new Date(`${date}T00:00:00Z`).getUTCDay() || 7;
    for (const { from, to, weekdays } of hours) {
      if (weekdays !== undefined && !weekdays.includes(weekday)) continue;
      const nextDate = to <= from ? zonedDate(span.fromMs, zone, day + 1) : date;
      found.push({ fromMs: zonedInstantMs(date, minuteOf(from), zone), toMs: zonedInstantMs(nextDate, minuteOf(to), zone) });
    }
  }
}

function minuteOf(clockTime: string): number {
  const [hour = 0, minute = 0] = clockTime.split(':').map(Number);
  return hour * 60 + minute;
}

function within(spans: readonly Span[], { fromMs, toMs }: Span): readonly Span[] {
  return spans
    .map((span) => ({ fromMs: Math.max(span.fromMs, fromMs), toMs: Math.min(span.toMs, toMs) }))
    .filter((span) => span.toMs > span.fromMs);
}

function gapsBetween(spans: readonly Span[], { fromMs, toMs }: Span): readonly Span[] {
  const gaps: Span[] = [];
  let freeMs = fromMs;
  for (const span of spans.toSorted((a, b) => a.fromMs - b.fromMs)) {
    if (span.fromMs > freeMs) gaps.push({ fromMs: freeMs, toMs: span.fromMs });
    freeMs = Math.max(freeMs, span.toMs);
  }
  return freeMs < toMs ? [...gaps, { fromMs: freeMs, toMs }] : gaps;
}
