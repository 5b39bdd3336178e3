import type { CommandOf } from '../../../shared/floor/commands.ts';
import type { Order } from '../../../shared/documents/order.ts';
import type { Proposal, ProposalAsk } from '../../../shared/plan/plan-api.ts';
import { proposalSchema } from '../../../shared/plan/plan-api.ts';
import { assert } from '../../../shared/result.ts';
import type { House } from '../../../server/main/house.ts';
import { freshId } from './live-client.ts';
import { eventLoopTurns } from './machine.ts';

/** The day after the harbour's market Saturday. */
export const SUNDAY = '2026-03-08';

type Wanted = Pick<Order, 'productId' | 'pieces'> & Partial<CommandOf<'placeOrders'>['orders'][number]> & { readonly readyAt: string };

/** Places orders for a Sunday of the harbour, whose clocks show UTC in winter; returns their ids. */
export async function order(house: House, orders: readonly Wanted[], serviceDate = SUNDAY): Promise<readonly string[]> {
  const before = new Set(Object.keys(house.floor.state.orders));
  const payload = {
    commandId: freshId(),
    command: {
      type: 'placeOrders',
      serviceDate,
      orders: orders.map(({ readyAt, ...wanted }) => ({ readyMs: Date.parse(`${serviceDate}T${readyAt}Z`), ...wanted })),
    },
  };
  const answer = await house.app.inject({ method: 'POST', url: '/api/commands', payload });
  assert(answer.statusCode === 200, `the orders are placed: ${answer.body}`);
  return Object.keys(house.floor.state.orders).filter((id) => !before.has(id));
}

/** Asks for a day and waits until it is found or not. */
export async function proposed(house: House, ask: Partial<ProposalAsk> = {}): Promise<Proposal> {
  const answer = await house.app.inject({ method: 'POST', url: '/api/plan/proposals', payload: { serviceDate: SUNDAY, ...ask } });
  assert(answer.statusCode === 202, `the day is sought: ${answer.body}`);
  const { id } = proposalSchema.parse(answer.json());
  for (;;) {
    const proposal = await proposalOf(house, id);
    if (proposal.status !== 'running') return proposal;
    await eventLoopTurns(1);
  }
}

export async function proposalOf(house: House, id: string): Promise<Proposal> {
  return proposalSchema.parse((await house.app.inject(`/api/plan/proposals/${id}`)).json());
}
