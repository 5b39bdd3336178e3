import type { BakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { assert } from '../../shared/result.ts';
import type { JournalEntry } from '../journal/journal.ts';
import { commandOfFile, instantOf } from '../main/planned-starts.ts';
import { Agenda } from './agenda.ts';
import { batchesFor, FEED_AT } from './batches-of-day.ts';
import { datesBetween, daysOn, isClosed } from './calendar.ts';
import { CallerOfDays } from './caller-of-days.ts';
import { Chance } from './chance.ts';
import { Crew } from './crew.ts';
import type { DayMind } from './day-mind.ts';
import { Hands } from './hands.ts';
import { InventedFloor, THE_HOUSE } from './invented-floor.ts';
import { LotNumbers } from './lot-numbers.ts';
import { ordersOf } from './orders-of-day.ts';
import { weatherOn } from './weather.ts';

export interface InventOptions {
  readonly file: BakehouseFile;
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

export type { RecordedEvent };

/** The history of a house, day by day. The same options, the same history. */
export function* inventedDays({ file, firstDate, lastDate, seed }: InventOptions): Generator<InventedDay, void, undefined> {
  const chance = new Chance(seed);
  const { zone } = file.house;
  const at = (date: string, time: string): number => instantOf(zone, date, time);
  const floor = new InventedFloor(at(daysOn(firstDate, -1), '15:00'), chance);
  const hands = new Hands(
    file.kitchen.stations.map((station) => station.id),
    chance,
  );
  const lots = new LotNumbers(file.ingredients, firstDate, lastDate, new Chance(seed + 1));
  const agenda = new Agenda();
  floor.give({ type: 'anchorClock', houseMs: floor.nowMs, realMs: floor.nowMs, pace: 1 }, THE_HOUSE);
  let isBroughtIn = false;
  for (const [day, date] of datesBetween(firstDate, lastDate).entries()) {
    const mind: DayMind = { floor, hands, agenda, chance, lots, date, day, weather: weatherOn(date, chance) };
    const crew = new Crew(mind);
    const caller = new CallerOfDays(floor, hands.wall, ({ workpieceId, stepId, level }) => {
      const isHeard = level === 'call' ? chance.is(0.35) : level === 'late' ? chance.is(0.85) : true;
      if (!isHeard) return;
      const inMs = level === 'call' ? chance.between(8, 70) * 1000 : level === 'late' ? chance.between(15, 160) * 1000 : chance.between(5, 30) * 1000;
      agenda.note(floor.nowMs + inMs, () => {
        const call = floor.state.workpieces[workpieceId]?.call ?? null;
        if (call !== null && call.stepId === stepId && call.heardMs === null)
          floor.give({ type: 'hearCall', workpieceId, stepId }, hands.at(chance.pick(['bench', 'oven', 'mixer'])));
      });
    });
    const goOn = (untilMs: number, isOver: () => boolean = () => false): void => {
      while (!isOver()) {
        const visit = crew.next();
        const atMs = Math.min(visit?.atMs ?? Number.POSITIVE_INFINITY, agenda.nextMs);
        if (atMs >= untilMs) break;
        if (!caller.passTo(atMs)) continue;
        if (agenda.nextMs <= floor.nowMs) agenda.doNext();
        else if (visit !== null && visit.atMs <= floor.nowMs) crew.visit(visit.due);
      }
      if (isOver()) return;
      while (!caller.passTo(untilMs));
    };
    const isOpen = !isClosed(date);
    if (isOpen) {
      goOn(at(daysOn(date, -1), '15:20'));
      const orders = ordersOf(date, zone, 1, chance);
      const batches = batchesFor(date, file, orders);
      if (!isBroughtIn) {
        const command = { ...commandOfFile(file, floor.nowMs), serviceDate: date, batches: [...batches], orders: [...orders] };
        assert(floor.give(command, THE_HOUSE).refusal === null, 'the house is brought in');
        isBroughtIn = true;
      } else {
        floor.give({ type: 'placeOrders', serviceDate: date, orders: [...orders] }, hands.at('bench'));
        const planned = floor.give({ type: 'planBatches', serviceDate: date, batches: [...batches] }, hands.at('bench'));
        assert(planned.refusal === null, `${date} is planned: ${JSON.stringify(planned.refusal)}`);
      }
    } else if (isBroughtIn) {
      goOn(at(daysOn(date, -1), '15:20'));
      const pot = floor.dues.find((due) => due.workpiece.stock !== null)?.workpiece;
      if (pot !== undefined)
        floor.give({ type: 'planFeed', workpieceId: pot.id, feedMs: at(daysOn(date, -1), FEED_AT), grams: 1500 }, hands.at('mixer'));
    }
    if (isBroughtIn) {
      // Until the last of the day is packed, but no longer than to its closing.
      goOn(at(date, '07:00'));
      goOn(at(date, '18:05'), () => !floor.dues.some((due) => due.workpiece.stock === null));
      if (isOpen) {
        for (const { workpiece } of floor.dues)
          if (workpiece.stock === null)
            floor.give({ type: 'discardWorkpiece', workpieceId: workpiece.id, reason: 'Left over at closing' }, hands.at('bench'));
        floor.give({ type: 'closeDay', serviceDate: date }, hands.at('bench'));
      }
    }
    yield { date, isOpen, entries: floor.takeEntries(), state: floor.state };
  }
}
