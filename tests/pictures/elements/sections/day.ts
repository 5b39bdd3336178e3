import type { TemplateResult } from 'lit';
import '../../../../display/day/day-header.ts';
import '../../../../display/day/order-entry.ts';
import { draftOf } from '../../../../display/day/order-draft.ts';
import '../../../../display/day/order-list.ts';
import '../../../../display/day/order-paste.ts';
import '../../../../display/day/plan-compare.ts';
import type { NamedProposal } from '../../../../display/day/plan-compare.ts';
import { planNames } from '../../../../display/day/plan-names.ts';
import '../../../../display/day/plan-news.ts';
import '../../../../display/day/plan-panel.ts';
import '../../../../display/day/plan-reasons.ts';
import '../../../../display/day/plan-tries.ts';
import '../../../../display/day/standing-orders.ts';
import type { TriedChange } from '../../../../display/day/tried-change.ts';
import type { PlanStatus } from '../../../../shared/plan/plan-api.ts';
import { assert } from '../../../../shared/result.ts';
import { made } from '../made.ts';
import type { Scenes } from '../scene.ts';
import { section, shelf, specimen } from '../specimen.ts';

/** Orders as they are typed, pasted, changed; standing ones; a plan that is sought, compared, kept. */
export function daySection({ day, kitchen }: Scenes): TemplateResult {
  const { floor, products } = day;
  const { state, nowMs } = floor;
  const serviceDate = state.serviceDate ?? '';
  const common = { floor: state, serviceDate, zone: 'Europe/London', products };
  const [order] = Object.values(state.orders);
  assert(order !== undefined, 'nothing is ordered');
  const none = { ...state, orders: {}, standing: null, plan: null };
  const header = made('day-header', { view: { ...kitchen.view, state }, nowMs, serviceDate });
  return section('day', 'Parts of a day’s page', [
    shelf(
      'Orders',
      [
        specimen('order-list', 'whole', made('order-list', common)),
        specimen('order-list, nothing ordered', 'whole', made('order-list', { ...common, floor: none })),
        specimen('order-list, a day that is over', 'whole', made('order-list', { ...common, isClosed: true })),
        specimen(
          'order-entry',
          'whole',
          made('order-entry', { products, from: draftOf({ ...order, freshMin: 90 }, '06:30', () => 'Milk buns') }),
        ),
        specimen('order-entry, standing', 'whole', made('order-entry', { products, isStanding: true })),
        specimen('order-paste', 'on-desk', made('order-paste', { ...common, nowMs })),
        specimen('standing-orders', 'on-desk', made('standing-orders', { ...common, nowMs })),
        specimen('standing-orders, too late', 'on-desk', made('standing-orders', { ...common, nowMs: Number.MAX_SAFE_INTEGER })),
        specimen('standing-orders, none', 'on-desk', made('standing-orders', { ...common, floor: none })),
      ],
      'stacked',
    ),
    shelf('The plan', plan(day), 'stacked'),
    shelf('The header', [specimen('day-header', 'whole', header)], 'stacked'),
  ]);
}

function plan({ floor, products, proposals, offers, reason }: Scenes['day']): readonly TemplateResult[] {
  const { state, nowMs } = floor;
  const serviceDate = state.serviceDate ?? '';
  const done = proposals.filter((each): each is NamedProposal => each.proposal.status === 'done');
  const shown = done[0]?.proposal ?? null;
  const names = planNames(state, shown, products, nowMs, 'Europe/London');
  const [order] = Object.values(state.orders);
  const tried: readonly TriedChange[] = order === undefined ? [] : [{ kind: 'readyLater', orderId: order.id, minutes: 30 }];
  const status: PlanStatus = { houseMs: nowMs, plan: null, isReplanning: false, fault: null, offers: [...offers], proposals: [] };
  const panel = { floor: state, serviceDate, zone: 'Europe/London', nowMs, products };
  return [
    specimen('plan-panel, sought and found', 'whole', made('plan-panel', { ...panel, proposals, shown, status })),
    specimen('plan-panel, nothing ordered', 'whole', made('plan-panel', { ...panel, floor: { ...state, orders: {}, plan: null } })),
    specimen('plan-panel, no planner', 'whole', made('plan-panel', { ...panel, isFailed: true })),
    specimen(
      'plan-compare',
      'whole',
      made('plan-compare', { floor: state, serviceDate, proposals: done, shownId: shown?.id ?? null, names }),
    ),
    specimen('plan-reasons', 'on-desk', made('plan-reasons', { reasons: [reason], names })),
    specimen('plan-tries', 'on-desk', made('plan-tries', { orders: Object.values(state.orders), tried, names })),
    specimen('plan-news', 'whole', made('plan-news', { floor: state, status, names, nowMs })),
  ];
}
