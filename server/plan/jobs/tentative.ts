import type { FloorState } from '../../../shared/floor/state.ts';
import type { DayInput } from '../../../shared/plan/build/day-input.ts';
import type { ProposalAsk } from '../../../shared/plan/plan-api.ts';
import type { TentativeChange } from '../../../shared/plan/tentative-change.ts';
import type { Remedy } from '../../../shared/plan/why/reason.ts';
import { unreachable } from '../../../shared/result.ts';
import { changedOrder } from '../keep-proposal.ts';
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
  /** By station: how much earlier than by its hours somebody is there, in minutes. */
  readonly earlierMin: Readonly<Record<string, number>>;
}

/** The same with one change more, of orders, hours, hands or a start. */
export function withChange(tried: Tried, change: Remedy['change'] | undefined): Tried {
  if (change === undefined) return tried;
  switch (change.kind) {
    case 'readyLater':
    case 'fewerPieces':
    case 'leaveOut':
      return { ...tried, state: withTriedOrders(tried.state, [change]) };
    case 'openEarlier':
      return { ...tried, earlierMin: { ...tried.earlierMin, [change.stationId]: change.minutes } };
    case 'oneMoreHand':
      return { ...tried, state: withOneMoreHand(tried.state, change.stationId) };
    case 'beginEarlier':
      return {
        ...tried,
        pins: [...tried.pins, { key: placeKey(change), startMs: change.startMs }],
      };
    default:
      return unreachable(change);
  }
}

function withOneMoreHand(state: FloorState, stationId: string): FloorState {
  if (state.kitchen === null) return state;
  const { document } = state.kitchen;
  const stations = document.stations.map((station) => (station.id === stationId ? { ...station, hands: station.hands + 1 } : station));
  return { ...state, kitchen: { ...state.kitchen, document: { ...document, stations } } };
}
