import type { Agenda } from './agenda.ts';
import type { Chance } from './chance.ts';
import type { Hands } from './hands.ts';
import type { InventedFloor } from './invented-floor.ts';
import type { LotNumbers } from './lot-numbers.ts';
import type { Weather } from './weather.ts';

/** What the hands of a day work with. */
export interface DayMind {
  readonly floor: InventedFloor;
  readonly hands: Hands;
  readonly agenda: Agenda;
  readonly chance: Chance;
  readonly lots: LotNumbers;
  /** The service date that is worked for, and the how manieth day of the history it is. */
  readonly date: string;
  readonly day: number;
  readonly weather: Weather;
}
