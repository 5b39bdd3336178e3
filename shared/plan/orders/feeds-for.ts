import type { Formula } from '../../documents/formula.ts';
import { batchPlan } from '../../book/batch-plan.ts';
import type { BuildContext } from '../build/context.ts';
import type { Taker } from '../build/drawing.ts';
import type { By } from '../build/draws.ts';
import { groupedBy } from '../build/grouped.ts';
import { restWindow } from '../build/windows.ts';
import { upToTenth } from './dough-batches.ts';

/** How much of a ferment, or of a prep that nobody makes beside a dough, is to be made for the same time. */
export interface FeedFor {
  readonly formula: Formula;
  readonly grams: number;
}

/** What has to be made for those who have nothing to draw on: as few feeds as can be ripe for all of them. */
export function feedsFor(context: BuildContext, short: readonly Taker<By>[]): readonly FeedFor[] {
  return [...groupedBy(short, ({ formulaId }) => formulaId)].flatMap(([formulaId, takers]) => {
    const formula = context.find(formulaId);
    return formula === null || formula.kind === 'dough'
      ? []
      : clustersOf(formula, takers).flatMap((cluster) => sized(context, formula, cluster));
  });
}

/** How much of the time for which a feed is ripe is counted on: others are at the mixer too, and somebody has a break. */
const COUNTED_ON = 0.8;

/** Those that one feed is ripe for: it has to be ripe for the first and not past it for the last. */
function clustersOf(formula: Formula, takers: readonly Taker<By>[]): readonly (readonly Taker<By>[])[] {
  const last = formula.method.at(-1);
  const window = last?.kind === 'timed' ? restWindow(last, null) : null;
  const spanMs = window === null || window.mostS === null ? Infinity : (window.mostS - window.minS) * 1000 * COUNTED_ON;
  const clusters: Taker<By>[][] = [];
  for (const taker of [...takers].sort((a, b) => a.atMs - b.atMs)) {
    const cluster = clusters.at(-1);
    const first = cluster?.[0];
    if (cluster !== undefined && first !== undefined && taker.atMs - first.atMs <= spanMs) cluster.push(taker);
    else clusters.push([taker]);
  }
  return clusters;
}

/** A living pot keeps its seed back; what is mixed in a mixer is made as that takes it. */
function sized(context: BuildContext, formula: Formula, takers: readonly Taker<By>[]): readonly FeedFor[] {
  const doughG = upToTenth(takers.reduce((sum, { grams }) => sum + grams, 0)) + (formula.seedG ?? 0);
  const book = { formulaOf: context.find, ingredients: context.ingredients, kitchen: context.kitchen };
  const plan = formula.seedG === undefined ? batchPlan({ kind: 'dough', doughG }, formula, null, book) : null;
  if (plan === null || !plan.ok) return [{ formula, grams: doughG }];
  return plan.value.batches.map((batch) => ({ formula, grams: upToTenth(batch.doughG) }));
}
