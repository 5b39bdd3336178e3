import type { Workpiece } from '../../shared/floor/state.ts';
import type { DayMind } from './day-mind.ts';
import type { Hand } from './invented-floor.ts';
import { toTenth } from './weather.ts';

const MINUTE_MS = 60_000;
/** From the pan to the cold: so warm after so many minutes, in °C. */
const COOLS: readonly (readonly [minutes: number, celsius: number])[] = [
  [1, 88],
  [28, 37],
  [62, 14],
];

/** A filling that was cooked is read while it cools; one that is covered is read before it is put away. */
export function tellCooling({ floor, agenda, chance, weather }: DayMind, workpiece: Workpiece, hand: Hand): void {
  if (workpiece.kind !== 'prep') return;
  const read = (celsius: number): void => {
    if (floor.state.workpieces[workpiece.id]?.finishedMs === null)
      floor.give({ type: 'readTemperature', workpieceId: workpiece.id, where: 'filling', celsius: toTenth(celsius) }, hand);
  };
  if (workpiece.steps['keep'] !== undefined) {
    read(weather.coldC + chance.between(0.5, 2.5));
    return;
  }
  for (const [minutes, celsius] of COOLS)
    if (chance.is(0.8)) agenda.note(floor.nowMs + minutes * MINUTE_MS, () => read(celsius * chance.between(0.94, 1.04)));
}
