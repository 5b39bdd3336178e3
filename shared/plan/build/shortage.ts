/** So much less of a resource, from an instant until another; null: for as long as the plan reaches. */
export interface Shortage {
  readonly fromMs: number;
  readonly toMs: number | null;
  readonly by: number;
}

export interface CapacityFrom {
  readonly fromS: number;
  readonly capacity: number;
}

/**
 * What is left of a capacity while shortages last, from the origin on; null where nothing ever lacks. Shortages without an
 * end are over at `endMs`.
 */
export function calendarOf(
  capacity: number,
  shortages: readonly Shortage[],
  originMs: number,
  endMs: number,
): readonly CapacityFrom[] | null {
  const changes = new Map<number, number>();
  const change = (atMs: number, by: number): void => {
    const atS = Math.max(0, Math.round((atMs - originMs) / 1000));
    changes.set(atS, (changes.get(atS) ?? 0) + by);
  };
  for (const { fromMs, toMs, by } of shortages) {
    const untilMs = toMs ?? endMs;
    if (by <= 0 || untilMs <= originMs || untilMs <= fromMs) continue;
    change(fromMs, by);
    change(untilMs, -by);
  }
  let missing = 0;
  let before = capacity;
  const steps: CapacityFrom[] = [];
  for (const [fromS, by] of [...changes].sort(([a], [b]) => a - b)) {
    missing += by;
    const left = Math.max(0, capacity - missing);
    if (left !== before) steps.push({ fromS, capacity: left });
    before = left;
  }
  return steps.length === 0 ? null : steps;
}

/** Everything between spans, within an interval, as a shortage of everything. */
export function outside(
  spans: readonly { readonly fromMs: number; readonly toMs: number }[],
  fromMs: number,
  toMs: number,
  by: number,
): readonly Shortage[] {
  const gaps: Shortage[] = [];
  let atMs = fromMs;
  for (const span of [...spans].sort((a, b) => a.fromMs - b.fromMs)) {
    if (span.fromMs > atMs) gaps.push({ fromMs: atMs, toMs: Math.min(span.fromMs, toMs), by });
    atMs = Math.max(atMs, span.toMs);
    if (atMs >= toMs) return gaps;
  }
  return [...gaps, { fromMs: atMs, toMs, by }];
}
