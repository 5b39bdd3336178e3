import type { DayInput } from '../build/day-input.ts';
import type { Remedy } from './reason.ts';

const MINUTE_MS = 60_000;

/** Changes of the kitchen or the plan that are tried beside those of orders. */
export type KitchenChange = Extract<Remedy['change'], { kind: 'openEarlier' | 'oneMoreHand' | 'beginEarlier' }>;

/** The day's input as it would be with somebody there earlier, one more pair of hands, or a dough begun earlier. */
export function relaxedInput(input: DayInput, change: KitchenChange): DayInput {
  switch (change.kind) {
    case 'openEarlier':
      return withHours(input, change.stationId, change.minutes * MINUTE_MS);
    case 'oneMoreHand':
      return withHand(input, change.stationId);
    case 'beginEarlier': {
      const key = `${change.batchKey}|${change.cut ?? ''}|${change.load ?? ''}|${change.stepId}`;
      return { ...input, pins: [...(input.pins ?? []), { key, startMs: change.startMs }] };
    }
  }
}

function withHours(input: DayInput, stationId: string, earlierMs: number): DayInput {
  const hours = input.calendars.stations[stationId];
  if (hours === undefined) return input;
  const longer: { fromMs: number; toMs: number }[] = [];
  for (const { fromMs, toMs } of hours) {
    const before = longer.at(-1);
    // A break that somebody works through is no break any more.
    if (before !== undefined && fromMs - earlierMs <= before.toMs) longer[longer.length - 1] = { fromMs: before.fromMs, toMs };
    else longer.push({ fromMs: fromMs - earlierMs, toMs });
  }
  return { ...input, calendars: { ...input.calendars, stations: { ...input.calendars.stations, [stationId]: longer } } };
}

function withHand(input: DayInput, stationId: string): DayInput {
  const { kitchen } = input.state;
  if (kitchen === null) return input;
  const stations = kitchen.document.stations.map((station) =>
    station.id === stationId ? { ...station, hands: station.hands + 1 } : station,
  );
  return { ...input, state: { ...input.state, kitchen: { ...kitchen, document: { ...kitchen.document, stations } } } };
}
