/** Seconds that lie between two stays of one state with none between them. Ordered by their begin; they may overlap. */
export function idleS(stays: readonly { readonly fromS: number; readonly toS: number; readonly state: number }[]): number {
  let sum = 0;
  let endS = 0;
  let state = -1;
  for (const stay of stays) {
    if (stay.state === state && stay.fromS > endS) sum += stay.fromS - endS;
    endS = stay.state === state ? Math.max(endS, stay.toS) : stay.toS;
    state = stay.state;
  }
  return sum;
}
