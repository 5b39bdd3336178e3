import type { Formula, Product } from '../../shared/documents/formula.ts';
import type { Step } from '../../shared/documents/method.ts';
import { versionKey, type FloorState } from '../../shared/floor/state.ts';
import type { ProposedStep } from '../../shared/plan/proposed.ts';
import type { PlannedStep } from '../../shared/floor/events.ts';

/** A batch as it is to be made, on the floor or only proposed. */
export interface MadeBatch {
  readonly batchKey: string;
  readonly formulaId: string;
  readonly grams: number;
  readonly cuts: readonly { readonly productId: string; readonly pieces: number }[];
}

/** One step of a thread with when it is planned; null where the plan has none. */
export interface ThreadStep {
  readonly step: Step;
  readonly planned: Told | null;
}

/** A planned step under the name of what it belongs to. */
export type Told = Omit<PlannedStep, 'workpieceId'> & { readonly key: string; readonly plannedEndMs: number };

/** What goes on under one name: a batch to its divide, a cut, a load. */
export interface PlanThread {
  readonly name: string;
  readonly batch: MadeBatch;
  readonly formula: Formula;
  readonly product: Product | null;
  readonly pieces: number | null;
  readonly steps: readonly ThreadStep[];
  /** Which part of the thread above it must be shaped before it can go on; null for a batch. */
  readonly above: { readonly thread: PlanThread; readonly share: number } | null;
}

/** All threads of these batches by the kitchen's books, each with what the plan says of its steps. */
export function threadsOf(state: FloorState, batches: readonly MadeBatch[], steps: readonly (PlannedStep | ProposedStep)[]): PlanThread[] {
  const plan = steps.map(toldOf);
  return batches.flatMap((batch) =>
    threadsOfBatch(
      state,
      batch,
      plan.filter((told) => told.key === batch.batchKey),
    ),
  );
}

/** A planned or proposed step, by one name for what it belongs to. */
export function toldOf(step: PlannedStep | ProposedStep): Told {
  const { plannedStartMs } = step;
  return { ...step, key: 'workpieceId' in step ? step.workpieceId : step.batchKey, plannedEndMs: step.plannedEndMs ?? plannedStartMs };
}

function threadsOfBatch(state: FloorState, batch: MadeBatch, plan: readonly Told[]): PlanThread[] {
  const formula = newest(state.formulas, state.formulaVersions, batch.formulaId);
  if (formula === null) return [];
  const [only, ...more] = batch.cuts;
  const product = only === undefined || more.length > 0 ? null : newest(state.products, state.productVersions, only.productId);
  const pieces = product === null ? null : (only?.pieces ?? null);
  const way = [...formula.method, ...(product?.way ?? [])];
  const own = withLoads({ batch, formula, product, pieces, way, cut: undefined, above: null }, plan);
  if (product !== null) return own;
  const [body] = own;
  return [
    ...own,
    ...batch.cuts.flatMap((cut, index) => {
      const becomes = newest(state.products, state.productVersions, cut.productId);
      if (becomes === null || body === undefined) return [];
      const above = { thread: body, share: 1 };
      return withLoads({ batch, formula, product: becomes, pieces: cut.pieces, way: becomes.way, cut: index, above }, plan);
    }),
  ];
}

interface Whole extends Omit<PlanThread, 'name' | 'steps'> {
  readonly way: readonly Step[];
  /** Its number below its batch. */
  readonly cut: number | undefined;
}

/** A thread, and the loads below it where its pieces are more than go in one. */
function withLoads(whole: Whole, plan: readonly Told[]): PlanThread[] {
  const { way, cut, pieces, product } = whole;
  const at = way.findIndex((step) => step.id === product?.loads?.after);
  const most = product?.loads?.pieces ?? Infinity;
  const count = at === -1 || pieces === null ? 1 : Math.ceil(pieces / most);
  const stem = threadOf(whole, count < 2 ? way : way.slice(0, at + 1), undefined, plan);
  if (count < 2 || pieces === null) return [stem];
  const loads = evenly(pieces, count);
  return [
    stem,
    ...loads.map((inLoad, load) => {
      const shaped = loads.slice(0, load + 1).reduce((sum, one) => sum + one, 0);
      const above = { thread: stem, share: shaped / pieces };
      return threadOf({ ...whole, pieces: inLoad, above, cut }, way.slice(at + 1), load, plan);
    }),
  ];
}

function threadOf(whole: Whole, steps: readonly Step[], load: number | undefined, plan: readonly Told[]): PlanThread {
  const { batch, formula, product, pieces, above, cut } = whole;
  const name = [batch.batchKey, ...(cut === undefined ? [] : [`cut ${cut}`]), ...(load === undefined ? [] : [`load ${load}`])].join(' ');
  const planned = (step: Step): Told | null =>
    plan.find((told) => told.stepId === step.id && told.cut === cut && told.load === load) ?? null;
  return { batch, formula, product, pieces, above, name, steps: steps.map((step) => ({ step, planned: planned(step) })) };
}

/** So many in so many heaps, as even as they come, the larger ones first. */
function evenly(pieces: number, heaps: number): number[] {
  return Array.from({ length: heaps }, (_, index) => Math.floor(pieces / heaps) + (index < pieces % heaps ? 1 : 0));
}

function newest<Document>(
  all: Readonly<Record<string, Document>>,
  versions: Readonly<Record<string, number>>,
  id: string,
): Document | null {
  return all[versionKey(id, versions[id] ?? 0)] ?? null;
}
