import type { FloorState } from '../../shared/floor/state.ts';
import type { ProposalDone } from '../../shared/plan/plan-api.ts';
import type { OrderedProduct } from '../../shared/plan/orders/read-orders.ts';
import { dayClockText } from '../parts/day-clock-text.ts';
import { ORDERS, stepWords } from '../words/day.ts';
import { placeKey, type StepPlace } from './sheet-bar.ts';
import { doughLines } from './sheet-lines.ts';
import { settledPlace } from './sheet-places.ts';
import { barTitle, thingAloneText } from './sheet-texts.ts';

/** A cleaning is called by what is cleaned and when: `clean>spiral@…`. */
const CLEANING = 'clean>';

/** A step as the planner points at it: below a batch that it proposes, or below a workpiece. */
export interface PlannedPlace {
  readonly batchKey?: string;
  readonly workpieceId?: string;
  readonly cut?: number | undefined;
  readonly load?: number | undefined;
  readonly stepId: string;
}

/** How the things of a plan are called. */
export interface PlanNames {
  /** "24 Milk buns, 06:30"; with its weekday where that is not today's. */
  order(orderId: string): string;
  /** "C1 fold". */
  step(place: PlannedPlace): string;
  resource(resource: { readonly kind: string; readonly id: string }): string;
  /** A clock time, with its weekday where that is not today's. */
  dayClock(atMs: number): string;
}

/** Names for a day as the plan in force has it, or a proposal. */
export function planNames(
  floor: FloorState,
  proposal: ProposalDone | null,
  products: readonly OrderedProduct[],
  nowMs: number,
  zone: string,
): PlanNames {
  const lines = doughLines(floor, proposal, nowMs, null);
  const titles = new Map(lines.flatMap(({ bars }) => bars.map((bar) => [bar.key, barTitle(bar)] as const)));
  const tags = new Map(lines.map(({ key, tag }) => [key, tag] as const));
  const kitchen = floor.kitchen?.document ?? null;
  const nameOf = (productId: string): string => products.find(({ id }) => id === productId)?.name ?? productId;
  return {
    order: (orderId) => {
      const order = floor.orders[orderId];
      return order === undefined ? orderId : ORDERS.named(order.pieces, nameOf(order.productId), dayClockText(order.readyMs, nowMs, zone));
    },
    step: (place) => {
      const cleaning = kitchen?.cleanings?.find(({ id }) => place.batchKey?.startsWith(`${CLEANING}${id}@`));
      if (cleaning !== undefined) return stepWords(cleaning.name, place.stepId);
      const settled = settledPlace(floor, stepPlace(place));
      const lineKey = placeKey(settled).slice(0, -settled.stepId.length - 1);
      const tag = tags.get(lineKey) ?? tags.get(`${settled.ownerId}||`) ?? settled.ownerId;
      return titles.get(placeKey(settled)) ?? stepWords(tag, settled.stepId);
    },
    resource: (resource) => thingAloneText(resource as Parameters<typeof thingAloneText>[0], kitchen),
    dayClock: (atMs) => dayClockText(atMs, nowMs, zone),
  };
}

function stepPlace({ batchKey, workpieceId, cut, load, stepId }: PlannedPlace): StepPlace {
  return { ownerId: batchKey ?? workpieceId ?? '', cut: cut ?? null, load: load ?? null, stepId };
}

/** The place that a key of the planner names. */
export function placeOfKey(key: string): PlannedPlace {
  const [batchKey = '', cut = '', load = '', stepId = ''] = key.split('|');
  return { batchKey, stepId, cut: cut === '' ? undefined : Number(cut), load: load === '' ? undefined : Number(load) };
}

/** The key under which the planner knows a place. */
export function keyOfPlace(place: PlannedPlace): string {
  return placeKey(stepPlace(place));
}
