import { Temporal } from 'temporal-polyfill';
import type { FloorState } from '../../../shared/floor/state.ts';

/** From when until before when the dates of an answer last, by the clocks of the house. */
export function periodOf({ house }: FloorState, { from, to }: { readonly from: string; readonly to: string }): readonly [number, number] {
  const begins = (date: Temporal.PlainDate): number => date.toZonedDateTime(house?.document.zone ?? 'UTC').epochMilliseconds;
  return [begins(Temporal.PlainDate.from(from)), begins(Temporal.PlainDate.from(to).add({ days: 1 }))];
}
