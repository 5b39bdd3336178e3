import { boardRows, type Row } from '../../shared/floor/board.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { steadyOrder } from './order.ts';

/** The floor's rows in the wall's order, which time alone does not change: sorted anew only where the floor has changed. */
export class SteadyRows {
  private order: { readonly state: FloorState; readonly keys: readonly string[] } | null = null;

  /** The rows at an instant. Ask with the floors as they follow one another: each order goes by the one before. */
  at(state: FloorState, nowMs: number): readonly Row[] {
    const rows = boardRows(state, nowMs);
    if (this.order?.state !== state) {
      const entries = steadyOrder(
        this.order?.keys ?? [],
        rows.map((row) => [row] as const),
        nowMs,
      );
      this.order = { state, keys: entries.map(([row]) => row.workpieceId) };
    }
    const { keys } = this.order;
    return [...rows].sort((a, b) => keys.indexOf(a.workpieceId) - keys.indexOf(b.workpieceId));
  }
}
