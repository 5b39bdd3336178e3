import type { MachineClocks } from '../../server/clock/real-time.ts';

/** The machine's clocks with a hand on them: they run on, and can be moved ahead as if that time had gone by. */
export class StagedClocks implements MachineClocks {
  readonly #startWallMs: number;
  readonly #startMonotonicMs = performance.now();
  #aheadMs = 0;

  /** Begins at a wall-clock instant. */
  constructor(startWallMs: number) {
    this.#startWallMs = startWallMs;
  }

  wallMs(): number {
    return this.#startWallMs + this.#ranMs();
  }

  monotonicMs(): number {
    return this.#ranMs();
  }

  uptimeMs(): number {
    return this.#ranMs();
  }

  advance(byMs: number): void {
    this.#aheadMs += byMs;
  }

  #ranMs(): number {
    return performance.now() - this.#startMonotonicMs + this.#aheadMs;
  }
}
