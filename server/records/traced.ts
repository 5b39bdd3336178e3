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

/** So many of what was traced, the nearest first. Of a hundred thousand only those that can be among them are sorted. */
export function nearestOf(workpieces: ReadonlyMap<number, Traced>, most: number): readonly (readonly [number, Traced])[] {
  const counts = new Map<number, number>();
  for (const { feeds } of workpieces.values()) counts.set(feeds, (counts.get(feeds) ?? 0) + 1);
  let [mostFeeds, count] = [0, 0];
  for (const [feeds, many] of [...counts].sort(([a], [b]) => a - b)) {
    if (count >= most) break;
    mostFeeds = feeds;
    count += many;
  }
  const near: (readonly [number, Traced])[] = [];
  for (const entry of workpieces) if (entry[1].feeds <= mostFeeds) near.push(entry);
  return near.sort(byNearness).slice(0, most);
}

/** What is nearest first: fewer feeds between, then fewer steps, then as it happened. */
function byNearness([, a]: readonly [number, Traced], [, b]: readonly [number, Traced]): number {
  return a.feeds - b.feeds || a.hops - b.hops || a.sequence - b.sequence;
}
