import type { StepPromise } from './step-promises.ts';

/** From when to when. */
export interface Span {
  readonly startMs: number;
  readonly endMs: number;
}

/** Where a step may have been promised: under which workpiece, as its how-manieth cut and load. */
export interface PromisePlace {
  readonly workpieceId: string;
  readonly cut: number;
  readonly load: number;
}

/** What each workpiece on the floor was promised before anything of it had begun; what begins keeps it in its own row. */
export class Promises {
  readonly #byWorkpiece: Map<string, readonly StepPromise[]>;

  constructor(kept: readonly (readonly [string, readonly StepPromise[]])[]) {
    this.#byWorkpiece = new Map(kept);
  }

  get kept(): readonly (readonly [string, readonly StepPromise[]])[] {
    return [...this.#byWorkpiece];
  }

  set(workpieceId: string, promises: readonly StepPromise[]): void {
    this.#byWorkpiece.set(workpieceId, promises);
  }

  /** The promise of a step at the first of the places that has one; null where none has. */
  find(places: readonly PromisePlace[], step: string): Span | null {
    for (const { workpieceId, cut, load } of places) {
      const found = this.#byWorkpiece
        .get(workpieceId)
        ?.find((promise) => promise.step === step && promise.cut === cut && promise.load === load);
      if (found !== undefined) return { startMs: found.startMs, endMs: found.endMs };
    }
    return null;
  }

  /** Moves what some workpieces were promised along with a clock that was set. */
  shift(workpieceIds: Iterable<string>, byMs: number): void {
    for (const id of workpieceIds) {
      const promises = this.#byWorkpiece.get(id);
      if (promises === undefined) continue;
      const moved = promises.map((promise) => ({ ...promise, startMs: promise.startMs + byMs, endMs: promise.endMs + byMs }));
      this.#byWorkpiece.set(id, moved);
    }
  }

  /** Forgets those of workpieces that have left. */
  keepOnly(present: Readonly<Record<string, unknown>>): void {
    for (const id of this.#byWorkpiece.keys()) if (!(id in present)) this.#byWorkpiece.delete(id);
  }
}
