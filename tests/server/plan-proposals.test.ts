import { describe, expect, it } from 'vitest';
import { MOST_PROPOSALS, planStatusSchema, proposalSchema, type ProposalDone } from '../../shared/plan/plan-api.ts';
import { assert } from '../../shared/result.ts';
import type { House } from '../../server/main/house.ts';
import { order, proposalOf, proposed, SUNDAY } from './support/day-orders.ts';
import { freshId } from './support/live-client.ts';
import { eventLoopTurns } from './support/machine.ts';
import { openTestHouse } from './support/test-house.ts';

const COUNTRY = { productId: 'country-loaf', pieces: 20, readyAt: '11:00' } as const;
const RYE = { productId: 'rye-tin', pieces: 6, readyAt: '12:00' } as const;

async function keep(house: House, id: string): Promise<{ readonly status: number; readonly body: Record<string, unknown> }> {
  const answer = await house.app.inject({ method: 'POST', url: `/api/plan/proposals/${id}/keep` });
  await eventLoopTurns(40);
  return { status: answer.statusCode, body: answer.json() };
}

async function done(house: House, ask: Parameters<typeof proposed>[1] = {}): Promise<ProposalDone> {
  const proposal = await proposed(house, ask);
  assert(proposal.status === 'done', `the day is planned: ${JSON.stringify(proposal)}`);
  return proposal;
}

describe('a day that is asked for', () => {
  it('E9 is sought in the background, and has batches, steps and figures when it is found', async () => {
    const { house } = await openTestHouse();
    await order(house, [COUNTRY, RYE]);
    await order(house, [RYE], '2026-03-12');
    const asked = await house.app.inject({ method: 'POST', url: '/api/plan/proposals', payload: { serviceDate: SUNDAY } });
    const running = proposalSchema.parse(asked.json());
    expect([asked.statusCode, running.status, running.ask]).toMatchObject([202, 'running', { serviceDate: SUNDAY, seed: 1, changes: [] }]);
    const proposal = await done(house);
    const made = (productId: string): number =>
      proposal.batches
        .flatMap(({ cuts }) => cuts.filter((cut) => cut.productId === productId))
        .reduce((sum, { pieces }) => sum + pieces, 0);
    expect([made('country-loaf'), made('rye-tin')]).toEqual([20, 6]);
    expect(proposal.figures).toMatchObject({ orders: 2, ordersOnTime: 2, lateMin: 0, spoilMin: 0 });
    const keys = new Set(proposal.steps.map(({ batchKey }) => batchKey));
    for (const { batchKey, plannedStartMs } of proposal.batches) {
      expect(keys).toContain(batchKey);
      expect(plannedStartMs).toBe(
        Math.min(...proposal.steps.filter((step) => step.batchKey === batchKey).map((step) => step.plannedStartMs)),
      );
    }
    // What is on the floor already is planned with it.
    for (const { id, tag } of Object.values(house.floor.state.workpieces)) expect(keys.has(id), tag).toBe(true);
  });

  it('E9 is the same again for the same seed and number of schedules', async () => {
    const { house } = await openTestHouse();
    await order(house, [COUNTRY, RYE]);
    const [first, second] = [await done(house, { seed: 7, schedules: 12 }), await done(house, { seed: 7, schedules: 12 })];
    expect([second.steps, second.figures, second.batches]).toEqual([first.steps, first.figures, first.batches]);
    expect(first.schedules).toBeLessThanOrEqual(12);
  });

  it('E9 stays to be compared with others until there are too many: then the oldest is dropped', async () => {
    const { house } = await openTestHouse();
    await order(house, [RYE]);
    const ids: string[] = [];
    for (let seed = 0; seed <= MOST_PROPOSALS; seed += 1) ids.push((await done(house, { seed, schedules: 1 })).id);
    const { proposals } = planStatusSchema.parse((await house.app.inject('/api/plan')).json());
    expect(proposals.map(({ id }) => id)).toEqual(ids.slice(1));
    expect((await house.app.inject(`/api/plan/proposals/${ids[0]}`)).statusCode).toBe(404);
  });

  it('E9 is given up when somebody says so, and what was asked for after it is found', async () => {
    const { house } = await openTestHouse();
    await order(house, [RYE]);
    const asked = await house.app.inject({ method: 'POST', url: '/api/plan/proposals', payload: { serviceDate: SUNDAY } });
    const { id } = proposalSchema.parse(asked.json());
    expect((await house.app.inject({ method: 'DELETE', url: `/api/plan/proposals/${id}` })).statusCode).toBe(204);
    expect((await house.app.inject({ method: 'DELETE', url: `/api/plan/proposals/${id}` })).statusCode).toBe(404);
    expect((await house.app.inject(`/api/plan/proposals/${id}`)).statusCode).toBe(404);
    expect((await done(house)).figures.orders).toBe(1);
  });

  it('E9 with other orders than the house has is tried, and the house keeps its own', async () => {
    const { house } = await openTestHouse();
    const [country = '', rye = ''] = await order(house, [COUNTRY, RYE]);
    const { orders } = house.floor.state;
    const proposal = await done(house, {
      changes: [
        { kind: 'fewerPieces', orderId: country, pieces: 10 },
        { kind: 'leaveOut', orderId: rye },
      ],
    });
    const products = proposal.batches.flatMap(({ cuts }) => cuts.map(({ productId }) => productId));
    expect([products.includes('country-loaf'), products.includes('rye-tin'), proposal.figures.orders]).toEqual([true, false, 1]);
    expect(house.floor.state.orders).toBe(orders);
  });

  it('E9 that cannot be made in time says which orders are late, by how much, and why', async () => {
    const { house } = await openTestHouse();
    const [id = ''] = await order(house, [{ ...COUNTRY, readyAt: '04:30' }], '2026-03-07');
    const proposal = await done(house, { serviceDate: '2026-03-07', changes: [] });
    expect(proposal.late.map(({ orderId }) => orderId)).toEqual([id]);
    expect(proposal.figures).toMatchObject({ ordersOnTime: 0, latestMin: proposal.late[0]?.byMin });
    expect(proposal.warnings).toContainEqual({
      kind: 'late',
      orderId: id,
      atMs: proposal.late[0]?.readyMs,
      byMin: proposal.late[0]?.byMin,
    });
    expect(proposal.reasons.map(({ trouble }) => trouble.kind)).toContain('late');
  });
});

describe('a day that is kept', () => {
  it('E10 becomes the day: its batches are on the floor, and every step has its time', async () => {
    const { house } = await openTestHouse();
    await order(house, [COUNTRY, RYE]);
    const proposal = await done(house);
    expect((await keep(house, proposal.id)).status).toBe(200);
    const { workpieces, plan, openDates } = house.floor.state;
    expect(openDates).toContain(SUNDAY);
    const sundays = Object.values(workpieces).filter(({ serviceDate, kind }) => serviceDate === SUNDAY && kind === 'batch');
    expect(sundays.map(({ formulaId }) => formulaId).sort()).toEqual(proposal.batches.map(({ formulaId }) => formulaId).sort());
    for (const workpiece of sundays) expect(plan?.steps[workpiece.id]?.length, workpiece.tag).toBeGreaterThan(5);
    const status = planStatusSchema.parse((await house.app.inject('/api/plan')).json());
    expect(status.plan).toMatchObject({ planId: plan?.planId, ageMin: 0, warnings: [] });
  });

  it('E10 cannot be kept twice, nor another one that was made beside it', async () => {
    const { house } = await openTestHouse();
    await order(house, [RYE]);
    const [first, other] = [await done(house, { seed: 1 }), await done(house, { seed: 2 })];
    expect((await keep(house, first.id)).status).toBe(200);
    const { workpieces } = house.floor.state;
    for (const id of [first.id, other.id]) {
      expect(await keep(house, id)).toMatchObject({ status: 409, body: { type: 'urn:ovenward:problem:refused', why: 'outdated' } });
      expect(await proposalOf(house, id)).toMatchObject({ isOutdated: true });
    }
    expect(Object.keys(house.floor.state.workpieces)).toEqual(Object.keys(workpieces));
  });

  it('E10 is outdated once an order of its day is placed, and not by work on the floor or orders of another day', async () => {
    const { house, workpiece } = await openTestHouse();
    await order(house, [RYE]);
    const proposal = await done(house);
    await house.floor.submit({
      commandId: freshId(),
      deviceId: freshId(),
      stationId: 'mixer',
      tap: { agoMonotonicMs: 0, agoWallMs: 0 },
      command: { type: 'startStep', workpieceId: workpiece('C1').id, stepId: 'weigh' },
    });
    await order(house, [RYE], '2026-03-09');
    expect(await proposalOf(house, proposal.id)).toMatchObject({ isOutdated: false });
    await order(house, [COUNTRY]);
    expect(await proposalOf(house, proposal.id)).toMatchObject({ isOutdated: true });
  });

  it('E10 with the orders that it was tried with: they become what was tried', async () => {
    const { house } = await openTestHouse();
    const [country = '', rye = ''] = await order(house, [COUNTRY, RYE]);
    const proposal = await done(house, {
      changes: [
        { kind: 'fewerPieces', orderId: country, pieces: 10 },
        { kind: 'readyLater', orderId: country, minutes: 30 },
        { kind: 'leaveOut', orderId: rye },
      ],
    });
    const before = house.floor.state.orders[country];
    assert(before !== undefined, 'the order is there');
    expect((await keep(house, proposal.id)).status).toBe(200);
    expect(house.floor.state.orders).toEqual({ [country]: { ...before, pieces: 10, readyMs: before.readyMs + 30 * 60_000 } });
  });

  it('E10 with its pins: the step begins then, and stays pinned on the floor', async () => {
    const { house } = await openTestHouse();
    await order(house, [RYE]);
    const free = await done(house);
    const weigh = free.steps.find(({ batchKey, stepId }) => batchKey === free.batches[0]?.batchKey && stepId === 'weigh');
    assert(weigh !== undefined, 'the rye is weighed');
    const startMs = weigh.plannedStartMs - 20 * 60_000;
    const pinned = await done(house, { pins: [{ key: `${weigh.batchKey}|||weigh`, startMs }] });
    expect(pinned.steps.find(({ batchKey, stepId }) => batchKey === weigh.batchKey && stepId === 'weigh')?.plannedStartMs).toBe(startMs);
    expect((await keep(house, pinned.id)).status).toBe(200);
    const [pin] = Object.values(house.floor.state.pins);
    assert(pin?.kind === 'startsAt', 'a start is pinned');
    expect([house.floor.state.workpieces[pin.workpieceId]?.formulaId, pin.stepId, pin.startMs]).toEqual(['rye', 'weigh', startMs]);
  });
});
