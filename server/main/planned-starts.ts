import { Temporal } from 'temporal-polyfill';
import type { BakehouseFile, DayBatch } from '../../shared/documents/bakehouse-file.ts';
import type { FileOrder, FileStanding } from '../../shared/documents/file-orders.ts';
import type { CommandOf } from '../../shared/floor/commands.ts';

/** Whether a name is a time zone that clocks here know. */
export function isKnownZone(zone: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone);
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

/** The date of an instant in a zone. */
export function dateIn(zone: string, instantMs: number): string {
  return Temporal.Instant.fromEpochMilliseconds(instantMs).toZonedDateTimeISO(zone).toPlainDate().toString();
}

/**
 * The instant of a clock time (HH:MM) on a date in a zone. Where the clock shows it twice that night, the earlier one;
 * where it is skipped, as long after the change as it would have been (`compatible`, as in RFC 5545).
 */
export function instantOf(zone: string, date: string, clockTime: string): number {
  const time = Temporal.PlainTime.from(clockTime);
  return Temporal.PlainDate.from(date).toPlainDateTime(time).toZonedDateTime(zone, { disambiguation: 'compatible' }).epochMilliseconds;
}

/** What a bakehouse file says, as the command that brings it in at `nowMs`. */
export function commandOfFile(file: BakehouseFile, nowMs: number): CommandOf<'bringInDay'> {
  const { zone } = file.house;
  const serviceDate = file.day.serviceDate ?? dateIn(zone, nowMs);
  const products = new Map(file.products.map((product) => [product.id, product]));
  return {
    type: 'bringInDay',
    house: file.house,
    kitchen: file.kitchen,
    ingredients: file.ingredients,
    formulas: file.formulas,
    products: file.products,
    serviceDate,
    batches: file.day.batches.map((batch) => {
      const cuts = batch.cuts.map((cut) => ({
        productId: cut.product,
        pieces: cut.pieces,
        grams: cut.pieces * (products.get(cut.product)?.pieceG ?? 0),
      }));
      const neededG = cuts.reduce((sum, cut) => sum + cut.grams, 0);
      return { formulaId: batch.formula, plannedStartMs: startOf(batch, zone, serviceDate, nowMs), grams: batch.doughG ?? neededG, cuts };
    }),
    ...(file.day.orders === undefined ? {} : { orders: file.day.orders.map((order) => placed(order, zone, serviceDate, nowMs)) }),
    ...(file.standing === undefined ? {} : { standing: file.standing.map(standing) }),
  };
}

function placed(
  { product, readyAt, readyAfterLoadMin, ...wanted }: FileOrder,
  zone: string,
  serviceDate: string,
  nowMs: number,
): NonNullable<CommandOf<'bringInDay'>['orders']>[number] {
  const readyMs = readyAt === undefined ? Math.round(nowMs + (readyAfterLoadMin ?? 0) * 60_000) : instantOf(zone, serviceDate, readyAt);
  return { ...wanted, productId: product, readyMs };
}

function standing({ product, ...wanted }: FileStanding): NonNullable<CommandOf<'bringInDay'>['standing']>[number] {
  return { ...wanted, productId: product };
}

function startOf(batch: DayBatch, zone: string, serviceDate: string, nowMs: number): number {
  const { start } = batch;
  if ('afterLoadMin' in start) return Math.round(nowMs + start.afterLoadMin * 60_000);
  const date = Temporal.PlainDate.from(serviceDate).subtract({ days: start.daysBefore }).toString();
  return instantOf(zone, date, start.at);
}
