import type { RecordedEvent } from '../../../shared/floor/events.ts';

/** How far the server's clock may be off with everything noted: what the clocks' steps leave. Real time. */
export const CLOCK_SLACK_MS = 30;

/** House time as it should be: what the journal's anchor and its noted jumps make of true time. */
export class HouseTruth {
  readonly #wallErrorAtAnchorMs: () => number;
  #anchor: { readonly houseMs: number; readonly realMs: number; readonly pace: number; readonly wallErrorMs: number } | null = null;
  #jumpedMs = 0;

  constructor(wallErrorMs: () => number) {
    this.#wallErrorAtAnchorMs = wallErrorMs;
  }

  take({ event }: RecordedEvent): void {
    if (event.type === 'clockJumped') this.#jumpedMs += event.byMs;
    if (event.type !== 'clockAnchored' || this.#anchor !== null) return;
    this.#anchor = { houseMs: event.houseMs, realMs: event.realMs, pace: event.pace, wallErrorMs: this.#wallErrorAtAnchorMs() };
  }

  get isAnchored(): boolean {
    return this.#anchor !== null;
  }

  get pace(): number {
    return this.#anchor?.pace ?? 1;
  }

  /** How far the machine's wall clock may be from true time with all that has been noted. */
  get notedWallErrorMs(): number {
    return (this.#anchor?.wallErrorMs ?? 0) + this.#jumpedMs / this.pace;
  }

  /** House time at an instant of true time. */
  at(trueMs: number): number {
    if (this.#anchor === null) return Number.NaN;
    const { houseMs, realMs, pace, wallErrorMs } = this.#anchor;
    return houseMs + pace * (trueMs + wallErrorMs - realMs) + this.#jumpedMs;
  }
}
