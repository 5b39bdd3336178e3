import type { z } from 'zod';
import type { Product } from './formula.ts';
import type { Fault } from './kitchen-faults.ts';
import { clockTimeSchema, keySchema, minutesSchema } from './names.ts';
import { orderSchema, standingOrderSchema } from './order.ts';

/** An order as a bakehouse file has it: ready by a clock time of the day, or so long after the file was brought in (for demos). */
export const fileOrderSchema = orderSchema
  .omit({ id: true, serviceDate: true, readyMs: true, productId: true, standingId: true })
  .extend({ product: keySchema, readyAt: clockTimeSchema.optional(), readyAfterLoadMin: minutesSchema.optional() })
  .refine(
    ({ readyAt, readyAfterLoadMin }) => (readyAt === undefined) !== (readyAfterLoadMin === undefined),
    'an order has "readyAt": "HH:MM" or "readyAfterLoadMin": minutes, and not both',
  );

/** A standing order as a bakehouse file has it. */
export const fileStandingSchema = standingOrderSchema.omit({ productId: true }).extend({ product: keySchema });

export type FileOrder = z.infer<typeof fileOrderSchema>;
export type FileStanding = z.infer<typeof fileStandingSchema>;

/** Every order is of a product of the file. `path` is where the orders stand. */
export function checkOrders(
  orders: readonly { readonly product: string }[],
  products: readonly Product[],
  path: string,
  fault: Fault,
): void {
  const known = new Set(products.map((product) => product.id));
  orders.forEach(({ product }, index) => {
    if (!known.has(product)) fault(`${path}[${index}].product`, { code: 'productUnknown', id: product });
  });
}
