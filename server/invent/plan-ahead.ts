import type { CommandOf } from '../../shared/floor/commands.ts';
import type { BakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import { assert } from '../../shared/result.ts';
import { commandOfFile, instantOf } from '../main/planned-starts.ts';
import { batchesFor, FEED_AT, type PlannedBatch } from './batches-of-day.ts';
import { daysOn, nextOpen } from './calendar.ts';
import type { DayMind } from './day-mind.ts';
import { THE_HOUSE } from './invented-floor.ts';
import { ordersOf, type Wanted } from './orders-of-day.ts';

const MINUTE_MS = 60_000;
/** What a pot is fed with on an evening before which nothing is drawn, in grams. */
const KEPT_ALIVE_G = 1500;
const WEIGH_MS = 6 * MINUTE_MS;
const PROPOSAL_SHARE = 0.75;
const CHANGED_SHARE = 0.35;
const WITHDRAWN_SHARE = 0.06;
const FIRST_SHARE = 0.08;
/** Orders grow by so much a day. */
const GROWTH_PER_DAY = 0.001;

/** The desk of the house: what is planned so far, always until the day after the next, so that the pot never stands without a feed ahead. */
export class Desk {
  readonly #file: BakehouseFile;
  readonly #lastDate: string;
  #plannedTo: string;

  /** Nothing is planned up to a date, this one included; nothing will be after `lastDate` but that the pot is kept alive. */
  constructor(file: BakehouseFile, plannedTo: string, lastDate: string) {
    this.#file = file;
    this.#plannedTo = plannedTo;
    this.#lastDate = lastDate;
  }

  /** The orders of one more day on which the house is open, its doughs, and the pot's feeds until then. */
  planNext(mind: DayMind): void {
    const before = this.#plannedTo;
    const date = nextOpen(before);
    if (date <= this.#lastDate) {
      this.#plannedTo = date;
      keepPotAlive(mind, this.#file, before, daysOn(date, -1));
      planDay(mind, this.#file, date);
    } else if (before <= this.#lastDate) {
      this.#plannedTo = date;
      keepPotAlive(mind, this.#file, before, daysOn(this.#lastDate, 2));
    }
  }
}

function planDay(mind: DayMind, file: BakehouseFile, date: string): void {
  const { floor, hands, chance, day } = mind;
  const orders = ordersOf(date, file.house.zone, 1 + GROWTH_PER_DAY * day, chance);
  const batches = [...batchesFor(date, file, orders)];
  const desk = hands.at('bench');
  if (floor.state.house === null) {
    const brought = floor.give({ ...commandOfFile(file, floor.nowMs), serviceDate: date, batches, orders: [...orders] }, THE_HOUSE);
    assert(brought.refusal === null, `the house is brought in: ${JSON.stringify(brought.refusal)}`);
    return;
  }
  floor.give({ type: 'placeOrders', serviceDate: date, orders: [...orders] }, desk);
  const command = chance.is(PROPOSAL_SHARE) ? proposalOf(date, batches) : ({ type: 'planBatches', serviceDate: date, batches } as const);
  const planned = floor.give(command, desk);
  assert(planned.refusal === null, `${date} is planned: ${JSON.stringify(planned.refusal)}`);
  changeOrders(mind, date, orders);
}

/** A day that was looked at as a plan before it was kept: when each dough is begun. */
function proposalOf(serviceDate: string, batches: readonly PlannedBatch[]): CommandOf<'adoptProposal'> {
  const keyed = batches.map((batch, index) => ({ ...batch, batchKey: `${batch.formulaId}#${index}` }));
  const steps = keyed
    .filter((batch) => batch.cuts.length > 0)
    .map(({ batchKey, plannedStartMs }) => ({
      batchKey,
      stepId: 'weigh',
      plannedStartMs,
      plannedEndMs: plannedStartMs + WEIGH_MS,
      resources: [{ kind: 'station' as const, id: 'mixer' }],
    }));
  return { type: 'adoptProposal', serviceDate, batches: keyed, steps, warnings: [] };
}

/** A feed on each evening from one date on until before another: no day that comes draws on the pot meanwhile. */
function keepPotAlive({ floor, hands }: DayMind, file: BakehouseFile, from: string, before: string): void {
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
        floor.give(
          { type: 'placeOrders', serviceDate, orders: [{ ...wanted, pieces: Math.max(1, one.pieces - chance.whole(1, 2)) }] },
          desk,
        );
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
