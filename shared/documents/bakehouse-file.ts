import { z } from 'zod';
import { accepted, refused, type Result } from '../result.ts';
import { formulaSchema, ingredientSchema, productSchema, type Formula, type Product } from './formula.ts';
import { houseSchema } from './house.ts';
import { kitchenSchema } from './kitchen.ts';
import { faultAt, idSet, kitchenFaults, uniqueIds, type Fault, type FileFault } from './kitchen-faults.ts';
import type { SidePrep, Step } from './method.ts';
import { gramsSchema, keySchema, minutesSchema, piecesSchema, serviceDateSchema } from './names.ts';

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
});

/** A whole bakehouse and one day of it, as one JSON file. */
export const bakehouseFileSchema = z.strictObject({
  format: z.literal(BAKEHOUSE_FORMAT, `this program reads format ${BAKEHOUSE_FORMAT}`),
  house: houseSchema,
  kitchen: kitchenSchema,
  ingredients: z.array(ingredientSchema).max(2000).default([]),
  formulas: z.array(formulaSchema).min(1).max(500),
  products: z.array(productSchema).max(1000).default([]),
  day: daySchema,
});

export type BakehouseFile = z.infer<typeof bakehouseFileSchema>;
export type DayBatch = z.infer<typeof dayBatchSchema>;

export type { FileFault } from './kitchen-faults.ts';

/** A path of keys and indexes as people write it. */
export function pathText(path: readonly PropertyKey[]): string {
  let text = '';
  for (const part of path) {
    if (typeof part === 'number') text += `[${part}]`;
    else text += text === '' ? String(part) : `.${String(part)}`;
  }
  return text === '' ? '(the whole file)' : text;
}

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
  uniqueIds('ingredients', file.ingredients, fault);
  uniqueIds('formulas', file.formulas, fault);
  uniqueIds('products', file.products, fault);
  checkLetters(file.formulas, fault);
  const ingredientIds = idSet(file.ingredients);
  file.formulas.forEach((formula, index) => {
    checkParts(formula, `formulas[${index}]`, ingredientIds, file.formulas, fault);
    checkSteps(formula.method, formula, `formulas[${index}].method`, file, ingredientIds, fault);
    checkSidePreps(formula.sidePreps, formula.method, `formulas[${index}].sidePreps`, file.formulas, fault);
    if (formula.seedG !== undefined && formula.kind !== 'ferment')
      fault(`formulas[${index}].seedG`, `only a ferment keeps a seed, and this formula's kind is ${formula.kind}`);
  });
  file.products.forEach((product, index) => {
    const path = `products[${index}]`;
    const formula = file.formulas.find((candidate) => candidate.id === product.formula);
    if (formula === undefined) {
      fault(`${path}.formula`, `there is no formula "${product.formula}"`);
    } else {
      const methodIds = idSet(formula.method);
      product.way.forEach((step, stepIndex) => {
        if (methodIds.has(step.id)) fault(`${path}.way[${stepIndex}].id`, `"${step.id}" is already a step of formula "${formula.id}"`);
      });
    }
    checkSteps(product.way, formula ?? null, `${path}.way`, file, ingredientIds, fault);
    checkSidePreps(product.sidePreps, [...(formula?.method ?? []), ...product.way], `${path}.sidePreps`, file.formulas, fault);
    if (product.loads !== undefined && !product.way.some((step) => step.id === product.loads?.after))
      fault(`${path}.loads.after`, `there is no step "${product.loads.after}"`);
  });
  file.day.batches.forEach((batch, index) => checkBatch(batch, `day.batches[${index}]`, file, fault));
  return faults;
}

function checkLetters(formulas: readonly Formula[], fault: Fault): void {
  const owner = new Map<string, string>();
  formulas.forEach((formula, index) => {
    const other = owner.get(formula.letters);
    if (other !== undefined) fault(`formulas[${index}].letters`, `"${formula.letters}" already belongs to formula "${other}"`);
    owner.set(formula.letters, formula.id);
  });
}

/** What is drawn from another formula must be a ferment or a prep, and must not lead back to where it goes in. */
function checkTaken(id: string, path: string, into: Formula, formulas: readonly Formula[], fault: Fault): void {
  const taken = formulas.find((candidate) => candidate.id === id);
  if (taken === undefined) fault(path, `there is no formula "${id}"`);
  else if (taken.kind === 'dough') fault(path, `"${id}" is a dough; only a ferment or a prep can be taken`);
  else if (leadsTo(taken, into.id, formulas, new Set())) fault(path, `"${id}" is made with "${into.id}" itself`);
}

function leadsTo(from: Formula, id: string, formulas: readonly Formula[], seen: Set<string>): boolean {
  if (from.id === id) return true;
  if (seen.has(from.id)) return false;
  seen.add(from.id);
  const taken = from.parts.flatMap((part) => part.items).flatMap((line) => ('formula' in line ? [line.formula] : []));
  return formulas.some((candidate) => taken.includes(candidate.id) && leadsTo(candidate, id, formulas, seen));
}

/** Side preps join at a step that takes them, and wait for steps that are there. */
function checkSidePreps(
  preps: readonly SidePrep[],
  steps: readonly Step[],
  path: string,
  formulas: readonly Formula[],
  fault: Fault,
): void {
  preps.forEach((prep, index) => {
    const at = `${path}[${index}]`;
    const made = formulas.find((candidate) => candidate.id === prep.formula);
    if (made === undefined) fault(`${at}.formula`, `there is no formula "${prep.formula}"`);
    else if (made.kind !== 'prep') fault(`${at}.formula`, `"${prep.formula}" is a ${made.kind}, not a prep`);
    const joins = steps.find((step) => step.id === prep.joins);
    if (joins === undefined) fault(`${at}.joins`, `there is no step "${prep.joins}"`);
    else if (!joins.additions.some((addition) => addition.formula === prep.formula))
      fault(`${at}.joins`, `step "${prep.joins}" does not take "${prep.formula}" among its additions`);
    if (prep.notBefore !== undefined && !steps.some((step) => step.id === prep.notBefore))
      fault(`${at}.notBefore`, `there is no step "${prep.notBefore}"`);
  });
}

function checkParts(formula: Formula, path: string, ingredients: ReadonlySet<string>, formulas: readonly Formula[], fault: Fault): void {
  const earlier = new Set<string>();
  const taken = new Set<string>();
  formula.parts.forEach((part, partIndex) => {
    part.items.forEach((line, lineIndex) => {
      const at = `${path}.parts[${partIndex}].items[${lineIndex}]`;
      if ('item' in line) {
        if (!ingredients.has(line.item)) fault(`${at}.item`, `there is no ingredient "${line.item}"`);
      } else if ('formula' in line) {
        checkTaken(line.formula, `${at}.formula`, formula, formulas, fault);
      } else {
        if (!earlier.has(line.part)) fault(`${at}.part`, `"${line.part}" is not a part that stands before this one`);
        if (taken.has(line.part)) fault(`${at}.part`, `"${line.part}" is already taken`);
        taken.add(line.part);
      }
    });
    if (earlier.has(part.name)) fault(`${path}.parts[${partIndex}].name`, `"${part.name}" is used twice`);
    earlier.add(part.name);
  });
  const last = formula.parts.at(-1)?.name;
  formula.parts.forEach((part, partIndex) => {
    if (part.name !== last && !taken.has(part.name)) fault(`${path}.parts[${partIndex}].name`, `"${part.name}" goes into nothing`);
  });
}

function checkSteps(
  steps: readonly Step[],
  formula: Formula | null,
  path: string,
  { kitchen, formulas }: BakehouseFile,
  ingredients: ReadonlySet<string>,
  fault: Fault,
): void {
  uniqueIds(path, steps, fault);
  const stations = idSet(kitchen.stations);
  const places = idSet(kitchen.restPlaces);
  const earlier = new Set<string>();
  const known: Record<string, ReadonlySet<string>> = {
    mixer: idSet(kitchen.mixers),
    bowl: idSet(kitchen.bowls),
    restPlace: places,
    vessel: idSet(kitchen.vessels),
    deck: idSet(kitchen.ovens.flatMap((oven) => oven.decks)),
    hands: stations,
    bench: places,
  };
  steps.forEach((step, index) => {
    const at = `${path}[${index}]`;
    if (step.station !== undefined && !stations.has(step.station)) fault(`${at}.station`, `there is no station "${step.station}"`);
    if (step.place !== undefined && !places.has(step.place)) fault(`${at}.place`, `there is no rest place "${step.place}"`);
    step.additions.forEach((addition, additionIndex) => {
      const additionAt = `${at}.additions[${additionIndex}]`;
      if (addition.item !== undefined && !ingredients.has(addition.item))
        fault(`${additionAt}.item`, `there is no ingredient "${addition.item}"`);
      if (addition.formula === undefined || formula === null) return;
      checkTaken(addition.formula, `${additionAt}.formula`, formula, formulas, fault);
      const isWritten = formula.parts.some((part) => part.items.some((line) => 'formula' in line && line.formula === addition.formula));
      if (addition.pct === undefined && addition.gPerPiece === undefined && !isWritten)
        fault(`${additionAt}.formula`, `the parts of "${formula.id}" do not say how much of "${addition.formula}" goes in`);
    });
    step.claims.forEach((claim, claimIndex) => {
      claim.ids.forEach((id, idIndex) => {
        if (known[claim.kind]?.has(id) !== true) fault(`${at}.claims[${claimIndex}].ids[${idIndex}]`, `there is no ${claim.kind} "${id}"`);
      });
      if (claim.kind === 'vessel' && claim.ids.length === 0)
        fault(`${at}.claims[${claimIndex}].ids`, 'a claim on vessels names which, best first');
      if (claim.until !== undefined && !steps.some((other) => other.id === claim.until))
        fault(`${at}.claims[${claimIndex}].until`, `there is no step "${claim.until}"`);
    });
    (step.after ?? []).forEach((link, linkIndex) => {
      if (!earlier.has(link.step)) fault(`${at}.after[${linkIndex}].step`, `"${link.step}" is not a step that stands before this one`);
    });
    earlier.add(step.id);
  });
  if (steps.at(-1)?.kind === 'bake')
    fault(`${path}[${steps.length - 1}].kind`, 'a bake cannot be the last step: something has to take it out');
}

function checkBatch(batch: DayBatch, path: string, file: BakehouseFile, fault: Fault): void {
  const formula = file.formulas.find((candidate) => candidate.id === batch.formula);
  if (formula === undefined) {
    fault(`${path}.formula`, `there is no formula "${batch.formula}"`);
    return;
  }
  let neededG = 0;
  batch.cuts.forEach((cut, index) => {
    const product: Product | undefined = file.products.find((candidate) => candidate.id === cut.product);
    if (product === undefined) fault(`${path}.cuts[${index}].product`, `there is no product "${cut.product}"`);
    else if (product.formula !== batch.formula)
      fault(`${path}.cuts[${index}].product`, `"${cut.product}" is made of formula "${product.formula}", not "${batch.formula}"`);
    else neededG += product.pieceG * cut.pieces;
  });
  if (formula.kind === 'dough' && batch.cuts.length === 0) fault(`${path}.cuts`, 'a dough needs at least one cut');
  if (batch.cuts.length === 0 && batch.doughG === undefined) fault(`${path}.doughG`, 'where there are no cuts, say how much is made');
  if (batch.doughG !== undefined && batch.doughG < neededG)
    fault(`${path}.doughG`, `the cuts need ${neededG} g, the batch has ${batch.doughG} g`);
  if (batch.cuts.length > 1 && formula.method.at(-1)?.verb !== 'divide') {
    fault(`${path}.cuts`, `formula "${formula.id}" must end its method with a divide before it can have several cuts`);
  }
  if (batch.cuts.length > 1 && formula.method.slice(0, -1).some((step) => step.verb === 'divide')) {
    fault(`${path}.cuts`, `formula "${formula.id}" must divide once only, at the end of its method, before it can have several cuts`);
  }
}
