import type { Kitchen } from '../../../shared/documents/kitchen.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { DayInput } from '../../../shared/plan/build/day-input.ts';
import type { ProposalAsk } from '../../../shared/plan/plan-api.ts';
import type { TentativeChange } from '../../../shared/plan/tentative-change.ts';
import type { Change } from '../../../shared/plan/why/reason.ts';
import { unreachable } from '../../../shared/result.ts';
import { changedOrder } from '../keep-proposal.ts';
import type { Shifts } from './day-input.ts';
import { placeKey } from './place-of-day.ts';

/** The floor as it would be if orders were as somebody tries them. */
export function withTriedOrders(state: FloorState, changes: readonly TentativeChange[]): FloorState {
  const orders = { ...state.orders };
  for (const change of changes) {
    const order = orders[change.orderId];
    const after = order === undefined ? null : changedOrder(order, change);
    if (after === null) delete orders[change.orderId];
    else orders[change.orderId] = after;
  }
  return { ...state, orders };
}

/** Orders that an ask names and that the house has not. */
export function unknownOrders(state: FloorState, { changes, firstOrderIds }: ProposalAsk): readonly string[] {
  return [...changes.map(({ orderId }) => orderId), ...firstOrderIds].filter((id) => state.orders[id] === undefined);
}

/** What a day is tried with. */
export interface Tried {
  readonly state: FloorState;
  readonly pins: NonNullable<DayInput['pins']>;
  readonly firstOrderIds: readonly string[];
  readonly shifts: Shifts;
}

/** The same with one change more, of orders, hours, hands, vessels or a start. */
export function withChange(tried: Tried, change: Change | null): Tried {
  switch (change?.kind) {
    case undefined:
      return tried;
    case 'readyLater':
    case 'fewerPieces':
    case 'leaveOut':
      return { ...tried, state: withTriedOrders(tried.state, [change]) };
    case 'first':
      return { ...tried, firstOrderIds: [...tried.firstOrderIds, change.orderId] };
    case 'openEarlier':
      return { ...tried, shifts: { ...tried.shifts, earlierMin: { ...tried.shifts.earlierMin, ...minutesAt(tried.state, change) } } };
    case 'openLonger':
      return { ...tried, shifts: { ...tried.shifts, longerMin: { ...tried.shifts.longerMin, ...minutesAt(tried.state, change) } } };
    case 'oneMoreHand':
      return { ...tried, state: withKitchen(tried.state, oneMoreHand(change.stationId)) };
    case 'moreVessels':
      return { ...tried, state: withKitchen(tried.state, moreVessels(change)) };
    case 'beginEarlier':
    case 'beginLater':
      return { ...tried, pins: [...tried.pins, { key: placeKey(change), startMs: change.startMs }] };
    default:
      return unreachable(change);
  }
}

function minutesAt(
  { kitchen }: FloorState,
  { stationId, minutes }: { readonly stationId: string | null; readonly minutes: number },
): Readonly<Record<string, number>> {
  const ids = stationId === null ? (kitchen?.document.stations ?? []).map(({ id }) => id) : [stationId];
  return Object.fromEntries(ids.map((id) => [id, minutes]));
}

function withKitchen(state: FloorState, change: (kitchen: Kitchen) => Kitchen): FloorState {
  return state.kitchen === null ? state : { ...state, kitchen: { ...state.kitchen, document: change(state.kitchen.document) } };
}

function oneMoreHand(stationId: string): (kitchen: Kitchen) => Kitchen {
  return (kitchen) => ({
    ...kitchen,
    stations: kitchen.stations.map((station) => (station.id === stationId ? { ...station, hands: station.hands + 1 } : station)),
  });
}

function moreVessels({ vesselId, count }: { readonly vesselId: string; readonly count: number }): (kitchen: Kitchen) => Kitchen {
  return (kitchen) => ({
    ...kitchen,
    vessels: kitchen.vessels.map((vessel) => (vessel.id === vesselId ? { ...vessel, count: vessel.count + count } : vessel)),
  });
}
