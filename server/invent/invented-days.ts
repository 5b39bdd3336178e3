import type { BakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { JournalEntry } from '../journal/journal.ts';
import { instantOf } from '../main/planned-starts.ts';
import { Agenda } from './agenda.ts';
import { changeBook } from './book-changes.ts';
import { datesBetween, daysOn, isClosed } from './calendar.ts';
import { CallerOfDays } from './caller-of-days.ts';
import { Chance } from './chance.ts';
import { Crew } from './crew.ts';
import { dayDeeds } from './day-deeds.ts';
import type { DayMind } from './day-mind.ts';
import { Hands } from './hands.ts';
import { hearCall } from './hears.ts';
import { InventedFloor, THE_HOUSE } from './invented-floor.ts';
import { LotNumbers } from './lot-numbers.ts';
import { Desk } from './plan-ahead.ts';
import { weatherOn } from './weather.ts';

/** Clock times of the house: the desk's hour, by when the last dough is packed, when the history is over on its last evening. */
const DESK_AT = '15:20';
const CLOSES_AT = '18:10';
const OVER_AT = '19:30';

export interface InventOptions {
  /** The house, its book and its kitchen; what its day says is not used. */
  readonly file: BakehouseFile;
  /** Service dates, YYYY-MM-DD in the house's zone, both included. Work begins on the evening before the first. */
  readonly firstDate: string;
  readonly lastDate: string;
  readonly seed: number;
}

/** One day of an invented history. */
export interface InventedDay {
  readonly date: string;
  readonly isOpen: boolean;
  /** For the journal, in their order. */
  readonly entries: readonly JournalEntry[];
  /** The floor as the day leaves it. */
  readonly state: FloorState;
}

/** The history of a house, day by day: everything that people and server would have said. The same options, the same history. */
export function* inventedDays({ file, firstDate, lastDate, seed }: InventOptions): Generator<InventedDay, void, undefined> {
  const chance = new Chance(seed);
  const { zone } = file.house;
  const at = (date: string, time: string): number => instantOf(zone, date, time);
  const floor = new InventedFloor(at(daysOn(firstDate, -1), DESK_AT), chance);
  const stationIds = file.kitchen.stations.map((station) => station.id);
  const shared = {
    floor,
    hands: new Hands(stationIds, chance),
    agenda: new Agenda(),
    chance,
    lots: new LotNumbers(file.ingredients, firstDate, lastDate, chance),
  };
  floor.give({ type: 'anchorClock', houseMs: floor.nowMs, realMs: floor.nowMs, pace: 1 }, THE_HOUSE);
  const desk = new Desk(file, daysOn(firstDate, -1), lastDate);
  const dates = datesBetween(firstDate, lastDate);
  for (const [day, date] of dates.entries()) {
    const mind: DayMind = { ...shared, date, day, weather: weatherOn(date, chance) };
    const isOpen = !isClosed(date);
    const goOn = worker(mind);
    if (day === 0) desk.planNext(mind);
    if (day === 0) desk.planNext(mind);
    if (isOpen) dayDeeds(mind, zone);
    goOn(at(date, DESK_AT));
    changeBook(mind, dates.length);
    if (isOpen) desk.planNext(mind);
    goOn(at(date, CLOSES_AT));
    if (floor.state.openDates.includes(date)) closeDay(mind);
    if (date === lastDate) goOn(at(date, OVER_AT));
    yield { date, isOpen, entries: floor.takeEntries(), state: floor.state };
  }
}

/** Works on until an instant: whoever comes next, to a dough or with something else in mind, and the calls in between. */
function worker(mind: DayMind): (untilMs: number) => void {
  const { floor, hands, agenda } = mind;
  const crew = new Crew(mind);
  const caller = new CallerOfDays(floor, hands.wall, (call) => hearCall(mind, call));
  return (untilMs) => {
    for (;;) {
      const visit = crew.next();
      const nextMs = Math.min(visit?.atMs ?? Number.POSITIVE_INFINITY, agenda.nextMs);
      const isThere = caller.passTo(Math.min(nextMs, untilMs));
      if (!isThere) continue;
      if (nextMs >= untilMs) return;
      if (agenda.nextMs <= floor.nowMs) agenda.doNext();
      else if (visit !== null) crew.visit(visit.due);
    }
  };
}

/** What is still on the floor of the day is given up, all but what lives on; then the day is over. */
function closeDay({ floor, hands, date }: DayMind): void {
  const hand = hands.at('bench');
  const isLeft = floor.dues.filter(({ workpiece }) => workpiece.stock === null && workpiece.serviceDate <= date);
  for (const { workpiece } of isLeft)
    floor.give({ type: 'discardWorkpiece', workpieceId: workpiece.id, reason: 'Left over at closing' }, hand);
  floor.give({ type: 'closeDay', serviceDate: date }, hand);
}
