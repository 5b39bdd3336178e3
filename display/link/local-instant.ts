/**
 * An instant by the page's own two clocks, in milliseconds. `monotonicMs` only runs forward but begins anew with every
 * page load and may stand still while the device sleeps; `wallMs` is whatever somebody set.
 */
export interface LocalInstant {
  readonly monotonicMs: number;
  readonly wallMs: number;
}
