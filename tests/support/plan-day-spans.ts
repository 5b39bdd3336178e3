/** Something that takes so much of a thing from an instant to another, by name. */
export interface Span {
  readonly name: string;
  readonly fromMs: number;
  readonly toMs: number;
  readonly amount: number;
}

/** Where together they are more than there is, at every instant at which one more makes it so. */
export function overfull(what: string, spans: readonly Span[], most: number): string[] {
  const faults = spans.flatMap((one) => {
    const then = spans.filter((other) => other.fromMs <= one.fromMs && one.fromMs < other.toMs);
    const sum = then.reduce((all, other) => all + other.amount, 0);
    if (one.toMs <= one.fromMs || sum <= most) return [];
    return [`${what}: ${sum} of ${most} at ${new Date(one.fromMs).toISOString()}: ${then.map((other) => other.name).join(', ')}`];
  });
  return [...new Set(faults)];
}

/** The pairs that are there at the same time. */
export function together<One extends Span>(spans: readonly One[]): (readonly [One, One])[] {
  return spans.flatMap((a, index) =>
    spans.slice(index + 1).flatMap((b) => (a.fromMs < b.toMs && b.fromMs < a.toMs ? [[a, b] as const] : [])),
  );
}

/** Each with the one that comes next after it. */
export function inTurn<One extends Span>(spans: readonly One[]): (readonly [One, One])[] {
  const ordered = [...spans].sort((a, b) => a.fromMs - b.fromMs);
  return ordered.slice(1).flatMap((next, index) => {
    const before = ordered[index];
    return before === undefined ? [] : [[before, next] as const];
  });
}
