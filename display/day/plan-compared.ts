import type { FloorState } from '../../shared/floor/state.ts';
import type { PlanFigures } from '../../shared/plan/plan-api.ts';
import { type FIGURES, lengthWords, ofAllWords, PLANNING } from '../words/day.ts';
import { ordersOf } from './order-rows.ts';

const MINUTE_MS = 60_000;

/** Figures of a day as far as they are known. */
export type KnownFigures = Partial<PlanFigures>;

/**
 * What the plan in force comes to for the orders of a date; null where it has nothing of that date. What cannot be read off
 * the plan is as the planner last told it (`told`): like the figures of a proposal, of all that is planned, whatever its date.
 */
export function figuresInForce(floor: FloorState, serviceDate: string, told: PlanFigures | null): KnownFigures | null {
  const { plan } = floor;
  if (plan === null) return null;
  const orders = ordersOf(floor, serviceDate).length;
  const ofDay = new Set(ordersOf(floor, serviceDate).map(({ id }) => id));
  const wrong = plan.warnings.flatMap((warning) =>
    (warning.kind === 'late' || warning.kind === 'short') && ofDay.has(warning.orderId) ? [warning.orderId] : [],
  );
  const late = plan.warnings.flatMap((warning) => (warning.kind === 'late' && ofDay.has(warning.orderId) ? [warning.byMin] : []));
  const steps = Object.entries(plan.steps).flatMap(([id, planned]) => (floor.workpieces[id]?.serviceDate === serviceDate ? planned : []));
  if (steps.length === 0) return null;
  const ends = steps.map(({ plannedStartMs, plannedEndMs = plannedStartMs }) => plannedEndMs);
  const atHands = steps.filter(({ resources }) => resources.some(({ kind }) => kind === 'station'));
  const ofOrders = { orders, ordersOnTime: orders - new Set(wrong).size, latestMin: Math.max(0, ...late) };
  // It stands where it stands: moved is what a proposal would have otherwise.
  if (told !== null) return { ...told, ...ofOrders, movedMin: 0 };
  return {
    ...ofOrders,
    spoilMin: plan.warnings.reduce((sum, warning) => sum + (warning.kind === 'spoils' ? warning.byMin : 0), 0),
    pinsBroken: plan.warnings.filter(({ kind }) => kind === 'pinBroken').length,
    handsMin: atHands.reduce(
      (sum, { plannedStartMs, plannedEndMs = plannedStartMs }) => sum + (plannedEndMs - plannedStartMs) / MINUTE_MS,
      0,
    ),
    beginsMs: Math.min(...steps.map(({ plannedStartMs }) => plannedStartMs)),
    endsMs: Math.max(...ends),
  };
}

/** Batches of a date that are on the floor: what was divided off is part of one. */
export function batchesOf({ workpieces }: FloorState, serviceDate: string): number {
  return Object.values(workpieces).filter((one) => one.serviceDate === serviceDate && one.parentId === null && one.ending !== 'discarded')
    .length;
}

/** Rows of the comparison that are figures, in their order. */
export const COMPARED = [
  'ordersOnTime',
  'latestMin',
  'spoilMin',
  'pinsBroken',
  'ripenessMin',
  'staleMin',
  'beginsMs',
  'endsMs',
  'handsMin',
  'movedMin',
] as const satisfies readonly (keyof typeof FIGURES & keyof PlanFigures)[];

/** Figures that are worth a row only where some day has anything of them. */
const ONLY_WHERE_ANY: ReadonlySet<(typeof COMPARED)[number]> = new Set(['spoilMin', 'pinsBroken', 'staleMin', 'movedMin']);

/** The rows that some of these days have something to say in. */
export function comparedRows(days: readonly KnownFigures[]): readonly (typeof COMPARED)[number][] {
  return COMPARED.filter((key) => !ONLY_WHERE_ANY.has(key) || days.some((figures) => Math.round(figures[key] ?? 0) > 0));
}

/** One figure in words, and whether it is one that somebody should look at. */
export function figureText(
  key: (typeof COMPARED)[number],
  figures: KnownFigures,
  clock: (atMs: number) => string,
): { readonly text: string; readonly isBad: boolean } {
  const value = figures[key];
  if (value === undefined || value === null) return { text: PLANNING.unknown, isBad: false };
  switch (key) {
    case 'ordersOnTime':
      return { text: ofAllWords(value, figures.orders ?? value), isBad: value < (figures.orders ?? value) };
    case 'beginsMs':
    case 'endsMs':
      return { text: clock(value), isBad: false };
    case 'latestMin':
    case 'spoilMin':
      return { text: lengthWords(value), isBad: value >= 1 };
    case 'pinsBroken':
      return { text: String(value), isBad: value > 0 };
    default:
      return { text: lengthWords(value), isBad: false };
  }
}
