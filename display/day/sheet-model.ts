import type { FloorState } from '../../shared/floor/state.ts';
import type { PlannedCleaning } from '../../shared/plan/planned-cleaning.ts';
import type { DoughLine } from './sheet-bar.ts';
import { clashesOf, type Clash } from './sheet-clashes.ts';
import { cleaningLines } from './sheet-cleanings.ts';
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
  /** Of that day, or of the plan in force. */
  readonly cleanings: readonly PlannedCleaning[];
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

/** Every dough of the day, and below them what is cleaned while they are made. Empty where there is neither dough nor order. */
export function sheetLines({ state, proposal, cleanings, nowMs, serviceDate }: SheetGiven): readonly DoughLine[] {
  const doughs = doughLines(state, proposal, nowMs, serviceDate);
  const orders = orderMarks(state, proposal, serviceDate);
  if (doughs.length === 0 && orders.length === 0) return [];
  const ofDoughs = spanOf(doughs, orders, nowMs);
  return [...doughs, ...cleaningLines(cleanings, state.kitchen?.document ?? null, ofDoughs, proposal !== null)];
}

/** Reckons the whole sheet; null where there is nothing to draw. */
export function sheetModel(given: SheetGiven, grouping: Grouping): SheetModel | null {
  const { state, proposal, nowMs, serviceDate } = given;
  const lines = sheetLines(given);
  const orders = orderMarks(state, proposal, serviceDate);
  if (lines.length === 0 && orders.length === 0) return null;
  const uses = usesOf(state, lines);
  const span = spanOf(lines, orders, nowMs);
  const clashes = clashesOf({ state, proposal, lines, uses, span, nowMs });
  return {
    span,
    lines,
    rows: sheetRows({ state, lines, uses, clashes, span, nowMs }, grouping),
    clashes,
    orders,
  };
}
