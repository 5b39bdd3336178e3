import type { Formula } from '../../documents/formula.ts';
import { sidePrepsOf } from '../../floor/decide/side-preps.ts';
import type { EventOf } from '../../floor/events.ts';
import type { BuildContext } from './context.ts';
import type { ProposedBatch } from './day-input.ts';
import type { Families } from './floor-threads.ts';
import type { Thread } from './thread.ts';
import { addCuts, withLoads, type CutBelow } from './threads-below.ts';

/** The threads of batches that are proposed, and of the preps that the floor will plan with them. What the books lack is a fault. */
export function proposedThreads(context: BuildContext, proposed: readonly ProposedBatch[], families: Families): readonly Thread[] {
  const threads = proposed.flatMap((batch) => threadOf(context, batch, families));
  return [...threads, ...prepThreads(context, proposed, families)];
}

function threadOf(context: BuildContext, batch: ProposedBatch, families: Families): readonly Thread[] {
  const formula = context.find(batch.formulaId);
  if (formula === null) {
    missing(context, batch, 'formula', batch.formulaId);
    return [];
  }
  const cuts = cutsOf(context, batch);
  const only = cuts.length === 1 ? cuts[0] : undefined;
  const thread = withLoads(
    {
      ...fresh(context, batch.batchKey, formula, batch.grams, families.of(batch.batchKey)),
      product: only?.product ?? null,
      pieces: only?.pieces ?? null,
      steps: only === undefined ? formula.method : [...formula.method, ...only.product.way],
      serviceDate: batch.serviceDate ?? null,
      notBeforeMs: batch.notBeforeMs ?? null,
    },
    0,
  );
  if (only === undefined) addCuts(thread, cuts);
  return [thread];
}

function fresh(context: BuildContext, batchKey: string, formula: Formula, grams: number, batch: number): Thread {
  return {
    place: { batchKey, workpieceId: null, cut: undefined, load: undefined },
    kind: formula.kind,
    batch,
    tag: null,
    formula,
    product: null,
    pieces: null,
    grams,
    scaledToG: grams,
    allergens: context.allergensOf(formula),
    steps: formula.method,
    lives: {},
    workpiece: null,
    serviceDate: null,
    startMs: null,
    notBeforeMs: null,
    shaped: 1,
    serves: null,
    parent: null,
    children: [],
  };
}

function cutsOf(context: BuildContext, batch: ProposedBatch): readonly CutBelow[] {
  return batch.cuts.flatMap(({ productId, pieces, grams }) => {
    const product = context.newestProduct(productId);
    if (product === null) missing(context, batch, 'product', productId);
    return product === null ? [] : [{ product, pieces, grams }];
  });
}

function missing({ faults }: BuildContext, { batchKey, formulaId }: ProposedBatch, kind: 'formula' | 'product', id: string): void {
  faults.push({ batchKey, formulaId, productId: kind === 'product' ? id : null, code: 'documentMissing', kind, id });
}

/** The floor makes the preps of a batch by itself once it is planned: by the same rule they are planned with it here. */
function prepThreads(context: BuildContext, proposed: readonly ProposedBatch[], families: Families): readonly Thread[] {
  const batches = proposed.map((batch) => ({ ...batch, cuts: batch.cuts.map((cut) => ({ ...cut })), plannedStartMs: context.nowMs }));
  const events = batches.flatMap((batch): EventOf<'workpiecePlanned'>[] => {
    const formula = context.find(batch.formulaId);
    if (formula === null || formula.kind !== 'dough') return [];
    return [
      {
        type: 'workpiecePlanned',
        workpieceId: batch.batchKey,
        kind: 'batch',
        tag: '',
        serviceDate: '',
        formulaId: formula.id,
        formulaVersion: 0,
        plannedStartMs: batch.plannedStartMs,
        grams: batch.grams,
        cuts: batch.cuts.map((cut) => ({ ...cut, productVersion: 0 })),
      },
    ];
  });
  const { formulaVersions, productVersions } = context.state;
  const book = {
    formulaOf: context.find,
    productOf: (id: string) => context.newestProduct(id),
    ingredients: context.ingredients,
    versions: { formulaVersions, productVersions },
  };
  const preps = sidePrepsOf({ serviceDate: '', batches }, book, events);
  if (!preps.ok) return [];
  return preps.value.map(({ formula, grams, serves }) => ({
    ...fresh(context, `${formula.id}>${serves.workpieceId}`, formula, grams, families.of(serves.workpieceId)),
    serves,
  }));
}
