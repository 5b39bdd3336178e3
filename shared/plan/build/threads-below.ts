import type { Product } from '../../documents/formula.ts';
import type { Step } from '../../documents/method.ts';
import type { Thread } from './thread.ts';

/** A cut that a dough is still to be divided into. */
export interface CutBelow {
  readonly product: Product;
  readonly pieces: number;
  readonly grams: number;
}

/** How many pieces go in each load, as even as they come, the larger ones first: as the floor makes them. */
export function loadCounts(pieces: number, most: number): readonly number[] {
  const count = Math.max(1, Math.ceil(pieces / most));
  const least = Math.floor(pieces / count);
  const larger = pieces - least * count;
  return Array.from({ length: count }, (_, index) => (index < larger ? least + 1 : least));
}

/**
 * The cuts of a dough below it, numbered from 0, each with its loads. A dough that becomes one product has none: it goes
 * on under its own name.
 */
export function addCuts(parent: Thread, cuts: readonly CutBelow[]): void {
  cuts.forEach((cut, index) => {
    const thread = withLoads(
      {
        ...parent,
        place: { ...parent.place, cut: index },
        product: cut.product,
        pieces: cut.pieces,
        grams: cut.grams,
        scaledToG: cut.grams,
        tag: parent.tag === null ? null : `${parent.tag}${String.fromCharCode('a'.charCodeAt(0) + index)}`,
        steps: cut.product.way,
        ...notBegun(parent),
      },
      0,
    );
    parent.children.push(thread);
  });
}

/**
 * A thread whose loads go on apart from each other stops at the step that makes them, with the loads below it; any other is
 * as it was. `already` loads have been made of it before.
 */
export function withLoads(thread: Thread, already: number): Thread {
  const { product, pieces, steps } = thread;
  const loads = product?.loads;
  if (loads === undefined || pieces === null || pieces === 0) return thread;
  const at = steps.findIndex((step) => step.id === loads.after);
  const status = thread.lives[loads.after]?.status;
  if (at === -1 || at === steps.length - 1 || status === 'done' || status === 'skipped') return thread;
  const counts = loadCounts(pieces, loads.pieces);
  if (counts.length < 2) return thread;
  const stem: Thread = { ...thread, steps: steps.slice(0, at + 1), children: [] };
  addLoads(stem, steps.slice(at + 1), counts, already);
  return stem;
}

function addLoads(stem: Thread, steps: readonly Step[], counts: readonly number[], already: number): void {
  const all = counts.reduce((sum, count) => sum + count, 0);
  let behind = 0;
  counts.forEach((pieces, index) => {
    behind += pieces;
    const grams = (stem.grams * pieces) / all;
    stem.children.push({
      ...stem,
      place: { ...stem.place, load: already + index },
      pieces,
      grams,
      scaledToG: grams,
      tag: stem.tag === null ? null : `${stem.tag}·${already + index + 1}`,
      steps,
      ...notBegun(stem),
      shaped: behind / all,
    });
  });
}

function notBegun(parent: Thread): Pick<Thread, 'lives' | 'workpiece' | 'startMs' | 'notBeforeMs' | 'shaped' | 'parent' | 'children'> {
  return { lives: {}, workpiece: null, startMs: null, notBeforeMs: null, shaped: 1, parent, children: [] };
}
