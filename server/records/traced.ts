/** An edge by its place in the journal, and what it goes from and to. */
export interface TraceEdgeKey {
  readonly sequence: number;
  readonly item: number;
  readonly source: number;
  readonly target: number;
}

/** What a walk found of one workpiece. */
export interface Traced {
  /** The edge by which it was first reached; null where the walk began with it. */
  readonly first: TraceEdgeKey | null;
  /** The event at which it was first reached. */
  readonly sequence: number;
  readonly hops: number;
  readonly feeds: number;
  readonly fedSince: number;
  readonly isInIt: boolean;
}

/** What is nearest first: fewer feeds between, then fewer steps, then as it happened. */
export function byNearness([, a]: readonly [number, Traced], [, b]: readonly [number, Traced]): number {
  return a.feeds - b.feeds || a.hops - b.hops || a.sequence - b.sequence;
}
