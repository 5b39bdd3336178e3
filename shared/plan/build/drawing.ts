import { groupedBy } from './grouped.ts';

/** Something of which others take: a pot's feed, a prep. */
export interface Source<Of> {
  readonly of: Of;
  readonly formulaId: string;
  readonly grams: number;
  /** Made for one batch, by its id or key; null for all. */
  readonly forBatch: string | null;
  /** When it can be taken from; null where that is still to be planned. */
  readonly ripe: { readonly fromMs: number; readonly toMs: number | null } | null;
}

/** A step that takes of what another formula makes. */
export interface Taker<By> {
  readonly by: By;
  readonly formulaId: string;
  readonly grams: number;
  /** The batches whose preps it takes: its own and those it came of. */
  readonly batches: ReadonlySet<string>;
  /** When it would be. */
  readonly atMs: number;
}

/** Of less than this nobody speaks. */
const LITTLE_G = 0.5;

/**
 * Who takes of what: a batch's own preps first; else, in the order of their times, of the first that is ripe then and has
 * enough, those with a time before those that are still to be planned; else of what is ripe nearest to then. `short` are
 * those for whom nothing is ripe then, or too little.
 */
export function drawnFrom<Of, By>(
  sources: readonly Source<Of>[],
  takers: readonly Taker<By>[],
): { readonly pairs: readonly { readonly source: Source<Of>; readonly taker: Taker<By> }[]; readonly short: readonly Taker<By>[] } {
  const left = new Map(sources.map((source) => [source, source.grams]));
  const byFormula = groupedBy(sources, ({ formulaId }) => formulaId);
  const pairs: { source: Source<Of>; taker: Taker<By> }[] = [];
  const short: Taker<By>[] = [];
  for (const taker of [...takers].sort((a, b) => a.atMs - b.atMs)) {
    const usable = usableFor(byFormula.get(taker.formulaId) ?? [], taker);
    const hasEnough = (source: Source<Of>): boolean => (left.get(source) ?? 0) >= taker.grams - LITTLE_G;
    const enough = usable.find((source) => hasEnough(source) && (source.forBatch !== null || awayMs(source, taker.atMs) === 0));
    if (enough === undefined) short.push(taker);
    const source = enough ?? usable.find(hasEnough) ?? usable[0];
    if (source === undefined) continue;
    left.set(source, Math.max(0, (left.get(source) ?? 0) - taker.grams));
    pairs.push({ source, taker });
  }
  return { pairs, short };
}

/** What somebody may take of, what is nearest to being ripe then first, and of those what has a time. */
function usableFor<Of, By>(sources: readonly Source<Of>[], { batches, atMs }: Taker<By>): readonly Source<Of>[] {
  const own = sources.filter(({ forBatch }) => forBatch !== null && batches.has(forBatch));
  if (own.length > 0) return own;
  const isOpen = (source: Source<Of>): number => (source.ripe === null ? 1 : 0);
  return sources.filter(({ forBatch }) => forBatch === null).sort((a, b) => awayMs(a, atMs) - awayMs(b, atMs) || isOpen(a) - isOpen(b));
}

/** How far from being ripe it is at an instant. */
function awayMs({ ripe }: Source<unknown>, atMs: number): number {
  if (ripe === null) return 0;
  return Math.max(0, ripe.fromMs - atMs, ripe.toMs === null ? 0 : atMs - ripe.toMs);
}
