import type { BakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import { assert } from '../../shared/result.ts';
import { commandOfFile, instantOf } from '../main/planned-starts.ts';
import { batchesFor, FEED_AT } from './batches-of-day.ts';
import { daysOn, nextOpen } from './calendar.ts';
import type { DayMind } from './day-mind.ts';
import { THE_HOUSE } from './invented-floor.ts';
import { ordersOf, type Wanted } from './orders-of-day.ts';

const MINUTE_MS = 60_000;
/** What a pot is fed with on an evening before which nothing is drawn, in grams. */
const KEPT_ALIVE_G = 1500;
const CHANGED_SHARE = 0.35;
const WITHDRAWN_SHARE = 0.06;
const FIRST_SHARE = 0.08;
/** Orders grow by so much a day. */
const GROWTH_PER_DAY = 0.001;

/** The afternoon's work at the desk: the orders of the next day on which the house is open, its doughs, and the pot's feeds until then. */
export function planAhead(mind: DayMind, file: BakehouseFile, today: string): void {
  const { floor, hands, chance, day } = mind;
  const { zone } = file.house;
  const date = nextOpen(today);
  const orders = ordersOf(date, zone, 1 + GROWTH_PER_DAY * day, chance);
  const batches = [...batchesFor(date, file, orders)];
  const desk = hands.at('bench');
  if (floor.state.house === null) {
    const command = { ...commandOfFile(file, floor.nowMs), serviceDate: date, batches, orders: [...orders] };
    const brought = floor.give(command, THE_HOUSE);
    assert(brought.refusal === null, `the house is brought in: ${JSON.stringify(brought.refusal)}`);
    return;
  }
  keepPotAlive(mind, file, today, daysOn(date, -1));
  floor.give({ type: 'placeOrders', serviceDate: date, orders: [...orders] }, desk);
  const planned = floor.give({ type: 'planBatches', serviceDate: date, batches }, desk);
  assert(planned.refusal === null, `${date} is planned: ${JSON.stringify(planned.refusal)}`);
  changeOrders(mind, date, orders);
}

/** A feed on each evening from one date on until before another: no day that comes draws on the pot meanwhile. */
export function keepPotAlive({ floor, hands }: DayMind, file: BakehouseFile, from: string, before: string): void {
  const pot = floor.dues.find((due) => due.workpiece.stock !== null)?.workpiece;
  if (pot === undefined) return;
  for (let eve = from; eve < before; eve = daysOn(eve, 1))
    floor.give(
      { type: 'planFeed', workpieceId: pot.id, feedMs: instantOf(file.house.zone, eve, FEED_AT), grams: KEPT_ALIVE_G },
      hands.at('mixer'),
    );
}

/** Somebody rings up: an order is another, one is called off, one has to come first. What is baked stays as it was planned. */
function changeOrders({ floor, hands, agenda, chance }: DayMind, date: string, orders: readonly Wanted[]): void {
  const desk = hands.at('bench');
  const later = (mostMin: number, run: () => void): void => agenda.note(floor.nowMs + chance.between(5, mostMin) * MINUTE_MS, run);
  const placed = Object.values(floor.state.orders).filter((order) => order.serviceDate === date);
  const one = placed[chance.whole(0, Math.max(0, placed.length - 1))];
  if (one === undefined || orders.length < 4) return;
  if (chance.is(CHANGED_SHARE))
    later(150, () => {
      const { serviceDate, ...wanted } = one;
      if (floor.state.orders[one.id] !== undefined)
        floor.give({ type: 'placeOrders', serviceDate, orders: [{ ...wanted, pieces: Math.max(1, one.pieces - chance.whole(1, 2)) }] }, desk);
    });
  if (chance.is(WITHDRAWN_SHARE)) later(120, () => floor.give({ type: 'withdrawOrders', orderIds: [one.id] }, desk));
  const other = placed.find((order) => order.id !== one.id);
  if (other !== undefined && chance.is(FIRST_SHARE)) {
    floor.give({ type: 'setPin', pin: { kind: 'first', orderId: other.id } }, desk);
    later(100, () => {
      for (const pin of Object.values(floor.state.pins)) floor.give({ type: 'liftPin', pinId: pin.id }, desk);
    });
  }
}
