/** Lot numbers of one ingredient, the last used first. */
type Lots = readonly string[];

/** What undoing a command puts back of one ingredient's lots. */
export interface LotsBefore {
  readonly before: Lots;
  /** What the command used. */
  readonly used: Lots;
}

/** Lot numbers that are offered again for one ingredient. */
const LOTS_OFFERED = 6;

/** The lots of an ingredient once some have been used again, or for the first time. */
export function lotsWith(before: Lots, used: Lots): Lots {
  return [...new Set([...used, ...before])].slice(0, LOTS_OFFERED);
}

/** The lots as if a command had not used any: what has been used since stays first. */
export function lotsWithout(now: Lots, { before, used }: LotsBefore): Lots {
  const since = now.slice(
    0,
    now.findIndex((lotNumber) => used.includes(lotNumber)),
  );
  return lotsWith(before, since);
}
