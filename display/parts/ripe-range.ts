import { clockText } from './clock-text.ts';

/** A range wider than this says nothing that hands could plan by. */
const WIDEST_MS = 12 * 60 * 60_000;

/** From when to when a rest may be ripe, as clock times; null where both are the same minute, or too far apart to be of use. */
export function ripeRange(
  { fromMs, toMs }: { readonly fromMs: number; readonly toMs: number },
  zone: string,
): readonly [from: string, to: string] | null {
  const [from, to] = [clockText(fromMs, zone), clockText(toMs, zone)];
  return from === to || toMs - fromMs > WIDEST_MS ? null : [from, to];
}
