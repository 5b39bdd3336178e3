import type { FloorState } from '../../shared/floor/state.ts';
import type { DoughLine } from './sheet-bar.ts';
import { clashesOf, type Clash } from './sheet-clashes.ts';
import { doughLines } from './sheet-lines.ts';
import { orderMarks, type OrderMark } from './sheet-orders.ts';
import type { SheetProposal } from './sheet-places.ts';
import { sheetRows, type Grouping, type SheetRow } from './sheet-rows.ts';
import { usesOf } from './sheet-uses.ts';
import { spanOf, type Span } from './sheet-axis.ts';

/** What a day sheet is drawn from. */
export interface SheetGiven {
  readonly state: FloorState;
  /** A day that is only tried, in place of the plan in force. */
  readonly proposal: SheetProposal | null;
  readonly nowMs: number;
  /** Which day's orders and finished doughs; null: all that the floor still knows. */
  readonly serviceDate: string | null;
}

/** The day as the sheet draws it: rows of bars on one linear axis, what clashes, and the orders. */
export interface SheetModel {
  readonly span: Span;
  readonly lines: readonly DoughLine[];
  readonly rows: readonly SheetRow[];
  readonly clashes: readonly Clash[];
  readonly orders: readonly OrderMark[];
}

/** Reckons the whole sheet; null where there is nothing to draw. */
export function sheetModel({ state, proposal, nowMs, serviceDate }: SheetGiven, grouping: Grouping): SheetModel | null {
  const lines = doughLines(state, proposal, nowMs, serviceDate);
  const orders = orderMarks(state, proposal, serviceDate);
  if (lines.length === 0 && orders.length === 0) return null;
  const uses = usesOf(state, lines);
  const clashes = clashesOf(state, proposal, lines, uses);
  const span = spanOf(lines, orders, nowMs);
  return {
    span,
    lines,
    rows: sheetRows({ state, lines, uses, clashes, span, nowMs }, grouping),
    clashes,
    orders,
  };
}
