import { z } from 'zod';
import { accepted, refused, type Result } from '../result.ts';
import { bookFaults } from './book-faults.ts';
import { checkCuts } from './cut-faults.ts';
import { checkOrders, fileOrderSchema, fileStandingSchema } from './file-orders.ts';
import { formulaSchema, ingredientSchema, productSchema, type Product } from './formula.ts';
import { houseSchema } from './house.ts';
import { kitchenSchema } from './kitchen.ts';
import { faultAt, kitchenFaults, uniqueIds, type Fault, type FileFault } from './kitchen-faults.ts';
import { gramsSchema, keySchema, minutesSchema, piecesSchema, serviceDateSchema } from './names.ts';
import { MOST_ORDERS } from './order.ts';
import { pathText } from './path-text.ts';

/** Version of the bakehouse file that this program writes and reads. */
export const BAKEHOUSE_FORMAT = 1;

/** When a batch is to begin: a clock time of the house's zone, or so long after the file was brought in (for demos). */
export const plannedStartSchema = z.union(
  [
    z.strictObject({
      at: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a clock time is HH:MM, 00:00 to 23:59'),
      /** 1 for the evening before the service date, and so on. */
      daysBefore: z.number().int().min(0).max(7).default(0),
    }),
    z.strictObject({ afterLoadMin: minutesSchema }),
  ],
  'a start is { "at": "HH:MM" }, with or without "daysBefore", or { "afterLoadMin": minutes }',
);

/** One batch of the day: which formula, when, and which cuts it is divided into. */
export const dayBatchSchema = z.strictObject({
  formula: keySchema,
  start: plannedStartSchema,
  /** Weight of the mix; where it is missing, the cuts' pieces say it. */
  doughG: gramsSchema.optional(),
  cuts: z
    .array(z.strictObject({ product: keySchema, pieces: piecesSchema }))
    .max(20)
    .default([]),
});

export const daySchema = z.strictObject({
  /** Missing: the date on which the file is brought in, in the house's zone. */
  serviceDate: serviceDateSchema.optional(),
  batches: z.array(dayBatchSchema).max(500),
  /** What is to be ready when. */
  orders: z.array(fileOrderSchema).max(MOST_ORDERS).optional(),
});

/** A whole bakehouse and one day of it, as one JSON file. */
export const bakehouseFileSchema = z.strictObject({
  format: z.literal(BAKEHOUSE_FORMAT, `this program reads format ${BAKEHOUSE_FORMAT}`),
  house: houseSchema,
  kitchen: kitchenSchema,
  ingredients: z.array(ingredientSchema).max(5000).default([]),
  formulas: z.array(formulaSchema).min(1).max(5000),
  products: z.array(productSchema).max(5000).default([]),
  day: daySchema,
  /** Orders that come every week; missing: those of the house stay as they are. */
  standing: z.array(fileStandingSchema).max(MOST_ORDERS).optional(),
});

export type BakehouseFile = z.infer<typeof bakehouseFileSchema>;
export type DayBatch = z.infer<typeof dayBatchSchema>;

export type { FileFault } from './kitchen-faults.ts';

/**
 * Reads a parsed JSON value as a bakehouse file. Every fault is listed with its path: first those of shape, and only
 * where the shape is right those of meaning (keys that point nowhere, ids used twice, weights that do not add up).
 */
export function readBakehouseFile(value: unknown): Result<BakehouseFile, readonly FileFault[]> {
  const parsed = bakehouseFileSchema.safeParse(value);
  if (!parsed.success) return refused(shapeFaults(parsed.error));
  const faults = meaningFaults(parsed.data);
  return faults.length > 0 ? refused(faults) : accepted(parsed.data);
}

/** The faults that a schema found, each with its path. */
export function shapeFaults(error: z.ZodError): FileFault[] {
  return error.issues.map((issue) => ({ path: pathText(issue.path), message: issue.message }));
}

function meaningFaults(file: BakehouseFile): FileFault[] {
  const faults: FileFault[] = [];
  const fault: Fault = (path, what) => {
    faults.push(faultAt(path, what));
  };
  faults.push(...kitchenFaults(file.kitchen));
  faults.push(...bookFaults(file, file.kitchen));
  file.day.batches.forEach((batch, index) => checkBatch(batch, `day.batches[${index}]`, file, fault));
  checkOrders(file.day.orders ?? [], file.products, 'day.orders', fault);
  uniqueIds('standing', file.standing ?? [], fault);
  checkOrders(file.standing ?? [], file.products, 'standing', fault);
  return faults;
}

function checkBatch(batch: DayBatch, path: string, file: BakehouseFile, fault: Fault): void {
  const formula = file.formulas.find((candidate) => candidate.id === batch.formula);
  if (formula === undefined) {
    fault(`${path}.formula`, { code: 'formulaUnknown', id: batch.formula });
    return;
  }
  let neededG = 0;
  batch.cuts.forEach((cut, index) => {
    const product: Product | undefined = file.products.find((candidate) => candidate.id === cut.product);
    const at = `${path}.cuts[${index}].product`;
    if (product === undefined) fault(at, { code: 'productUnknown', id: cut.product });
    else if (product.formula !== batch.formula)
      fault(at, { code: 'productOfOther', id: cut.product, formula: product.formula, wanted: batch.formula });
    else neededG += product.pieceG * cut.pieces;
  });
  if (batch.cuts.length === 0 && batch.doughG === undefined) fault(`${path}.doughG`, 'where there are no cuts, say how much is made');
  if (batch.doughG !== undefined && batch.doughG < neededG)
    fault(`${path}.doughG`, `the cuts need ${neededG} g, the batch has ${batch.doughG} g`);
  checkCuts(formula, batch.cuts.length, `${path}.cuts`, fault);
}
