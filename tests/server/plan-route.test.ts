import type { LightMyRequestResponse } from 'fastify';
import { describe, expect, it } from 'vitest';
import { MOST_RUNS, MOST_SCHEDULES, planStatusSchema, trySchema, type PlanStatus } from '../../shared/plan/plan-api.ts';
import { assert } from '../../shared/result.ts';
import type { House } from '../../server/main/house.ts';
import { order, proposed, SUNDAY } from './support/day-orders.ts';
import { freshId, LiveClient } from './support/live-client.ts';
import { eventLoopTurns } from './support/machine.ts';
import { eventsOf } from './support/read-calendar.ts';
import { openTestHouse } from './support/test-house.ts';

function post(house: House, url: string, payload: object): Promise<LightMyRequestResponse> {
  return house.app.inject({ method: 'POST', url, payload });
}

/** The paths of the faults that an answer of 400 names. */
function faultPaths(answer: LightMyRequestResponse): readonly string[] {
  expect([answer.statusCode, answer.headers['content-type']]).toEqual([400, expect.stringMatching(/^application\/problem\+json/)]);
  return answer.json<{ faults: { path: string }[] }>().faults.map(({ path }) => path);
}

/** What cannot be asked, and the paths of its faults. */
const ASKS: readonly (readonly [object, ...string[]])[] = [
  [{}, 'serviceDate'],
  [{ serviceDate: '2026-02-30' }, 'serviceDate'],
  [{ serviceDate: SUNDAY, colour: 'grey' }, '(the whole file)'],
  [{ serviceDate: SUNDAY, schedules: 0 }, 'schedules'],
  [{ serviceDate: SUNDAY, schedules: MOST_SCHEDULES + 1 }, 'schedules'],
  [{ serviceDate: SUNDAY, seed: -1 }, 'seed'],
  [{ serviceDate: SUNDAY, pins: [{ key: 'country#1', startMs: 1 }] }, 'pins[0].key'],
  [{ serviceDate: SUNDAY, pins: [{ key: 'country#1|||weigh', startMs: 1.5 }] }, 'pins[0].startMs'],
  [{ serviceDate: SUNDAY, changes: [{ kind: 'fewerPieces', orderId: freshId(), pieces: 0 }] }, 'changes[0].pieces'],
  [{ serviceDate: SUNDAY, changes: [{ kind: 'leaveOut', orderId: freshId(), pieces: 3 }] }, 'changes[0]'],
  [{ serviceDate: SUNDAY, changes: [{ kind: 'leaveOut', orderId: freshId() }] }, 'changes[0].orderId'],
  [{ serviceDate: SUNDAY, firstOrderIds: ['nobody'] }, 'firstOrderIds[0]'],
  [{ serviceDate: SUNDAY, firstOrderIds: [freshId()] }, 'firstOrderIds[0]'],
];

describe('what is asked of the planner', () => {
  it('E14 is held against its shape and the house, and each fault named by its field; nothing is sought', async () => {
    const { house } = await openTestHouse();
    for (const [body, ...paths] of ASKS)
      expect(faultPaths(await post(house, '/api/plan/proposals', body)), JSON.stringify(body)).toEqual(paths);
    expect(house.planning.proposals.all()).toEqual([]);
  });

  it('E14 is not about an order of another day', async () => {
    const { house } = await openTestHouse();
    const [id = ''] = await order(house, [{ productId: 'rye-tin', pieces: 6, readyAt: '12:00' }], '2026-03-09');
    const answer = await post(house, '/api/plan/proposals', { serviceDate: SUNDAY, changes: [{ kind: 'leaveOut', orderId: id }] });
    expect(faultPaths(answer)).toEqual(['changes[0].orderId']);
    expect(answer.body).toContain('2026-03-09');
  });

  it('E14 and what is to be played too, where there is no plan', async () => {
    const { house } = await openTestHouse();
    for (const [body, ...paths] of [
      [{ runs: MOST_RUNS + 1 }, 'runs'],
      [{ proposalId: 'x' }, 'proposalId'],
      [{ proposalId: freshId() }, 'proposalId'],
      [{}, 'proposalId'],
    ] as const)
      expect(faultPaths(await post(house, '/api/plan/tries', body)), JSON.stringify(body)).toEqual(paths);
  });

  it('E14 is 404 for what is not there', async () => {
    const { house } = await openTestHouse();
    for (const url of [`/api/plan/proposals/${freshId()}`, '/api/plan/proposals/x', `/api/plan/tries/${freshId()}`, '/api/plan/tries/x'])
      expect((await house.app.inject(url)).json(), url).toMatchObject({ type: 'urn:ovenward:problem:notFound', status: 404 });
    expect((await house.app.inject({ method: 'POST', url: `/api/plan/proposals/${freshId()}/keep`, payload: {} })).statusCode).toBe(404);
    expect(faultPaths(await post(house, `/api/plan/proposals/${freshId()}/keep`, { now: true }))).toEqual(['(the whole file)']);
  });

  it('E14 says that there is no plan where there is none', async () => {
    const { house } = await openTestHouse();
    expect(planStatusSchema.parse((await house.app.inject('/api/plan')).json())).toEqual({
      houseMs: house.clock.nowMs(),
      plan: null,
      isReplanning: false,
      fault: null,
      offers: [],
      proposals: [],
    });
  });
});

describe('what a page that shows plans is told', () => {
  it('E19 what the plan in force comes to and when the kitchen is cleaned, once it was looked at; and of the proposal before', async () => {
    const { house } = await openTestHouse();
    const { kitchen } = house.floor.state;
    assert(kitchen !== null, 'there is a kitchen');
    const cleanings = [
      {
        id: 'spiral',
        name: 'Spiral',
        resource: { kind: 'mixer', id: 'spiral' },
        minutes: 15,
        station: 'mixer',
        from: '10:00',
        to: '13:00',
      },
    ];
    const command = { type: 'adoptKitchen', fromVersion: kitchen.version, kitchen: { ...kitchen.document, cleanings } };
    expect((await post(house, '/api/commands', { commandId: freshId(), command })).statusCode).toBe(200);
    await order(house, [{ productId: 'rye-tin', pieces: 6, readyAt: '12:00' }]);
    const proposal = await proposed(house);
    assert(proposal.status === 'done', 'the day is found');
    const told = async (): Promise<PlanStatus['plan']> => planStatusSchema.parse((await house.app.inject('/api/plan')).json()).plan;
    expect(await told()).toBeNull();
    // What is cleaned on days to come does not make this one longer.
    expect(proposal.figures.endsMs).toBeLessThanOrEqual(Math.max(...proposal.steps.map(({ plannedEndMs }) => plannedEndMs)));
    expect((await post(house, `/api/plan/proposals/${proposal.id}/keep`, {})).statusCode).toBe(200);
    await eventLoopTurns(40);
    await house.planning.replanner.settled();
    const plan = await told();
    expect(plan?.figures).toMatchObject({ ordersOnTime: proposal.figures.ordersOnTime, pinsBroken: 0 });
    // Once a day within its window, for as long as it takes, by the one who does it.
    for (const found of [proposal.cleanings, plan?.cleanings ?? []]) {
      const dates = found.map(({ plannedStartMs }) => new Date(plannedStartMs).toISOString().slice(0, 10));
      expect([...dates].sort().slice(0, 2)).toEqual(['2026-03-07', SUNDAY]);
      expect(new Set(dates).size).toBe(dates.length);
      for (const [index, { cleaningId, plannedStartMs, plannedEndMs, resources }] of found.entries()) {
        const date = dates[index] ?? '';
        expect([cleaningId, plannedEndMs - plannedStartMs]).toEqual(['spiral', 15 * 60_000]);
        expect(resources.map(({ kind, id }) => `${kind} ${id}`).sort()).toEqual(['mixer spiral', 'station mixer']);
        expect(plannedStartMs).toBeGreaterThanOrEqual(Date.parse(`${date}T10:00Z`));
        expect(plannedEndMs).toBeLessThanOrEqual(Date.parse(`${date}T13:00Z`));
      }
    }
  });

  it('E19 that a day is sought, found, dropped or kept, and that a re-plan is over, without asking', async () => {
    const { house } = await openTestHouse();
    const page = await LiveClient.live(house.app);
    const news = async (): Promise<number> => {
      await eventLoopTurns();
      return page.of('planNews').length;
    };
    await order(house, [{ productId: 'rye-tin', pieces: 6, readyAt: '12:00' }]);
    expect(await news()).toBe(0);
    const first = await proposed(house);
    // Sought, and found.
    expect(await news()).toBe(2);
    expect((await house.app.inject({ method: 'DELETE', url: `/api/plan/proposals/${first.id}` })).statusCode).toBe(204);
    expect(await news()).toBe(3);
    const second = await proposed(house);
    expect(await news()).toBe(5);
    await post(house, `/api/plan/proposals/${second.id}/keep`, {});
    await eventLoopTurns(40);
    await house.planning.replanner.settled();
    expect(await news()).toBeGreaterThan(5);
  });
});

describe('a day that is played', () => {
  it('E16 says how often each order is late: of a proposal, and of the plan in force once that is kept', async () => {
    const { house } = await openTestHouse();
    const [id = ''] = await order(house, [{ productId: 'rye-tin', pieces: 6, readyAt: '12:00' }]);
    const proposal = await proposed(house);
    const played = async (ask: object): Promise<unknown> => {
      const asked = await post(house, '/api/plan/tries', { runs: 5, ...ask });
      expect(asked.statusCode).toBe(202);
      await eventLoopTurns(200);
      return trySchema.parse((await house.app.inject(`/api/plan/tries/${asked.json<{ id: string }>().id}`)).json());
    };
    const expected = { status: 'done', result: { runs: 5, orders: [{ orderId: id, lateShare: 0 }] } };
    expect(await played({ proposalId: proposal.id })).toMatchObject(expected);
    expect(house.floor.state.plan).toBeNull();
    expect((await post(house, `/api/plan/proposals/${proposal.id}/keep`, {})).statusCode).toBe(200);
    expect(await played({})).toMatchObject(expected);
  });
});

describe('GET /api/plan/calendar', () => {
  it('E14 names what is wrong with its query', async () => {
    const { house } = await openTestHouse();
    for (const [query, ...paths] of [
      ['', 'station', 'date'],
      ['?station=bench&date=07.03.2026', 'date'],
      ['?station=Bench&date=2026-03-07', 'station'],
      ['?station=bench&date=2026-03-07&kind=all', '(the whole file)'],
    ] as const)
      expect(faultPaths(await house.app.inject(`/api/plan/calendar${query}`)), query).toEqual(paths);
  });

  it('E5 is read by other programs: what the plan has for the station, with its ids, once a day is kept', async () => {
    const { house } = await openTestHouse();
    expect((await house.app.inject(`/api/plan/calendar?station=nobody&date=${SUNDAY}`)).statusCode).toBe(404);
    await order(house, [{ productId: 'rye-tin', pieces: 6, readyAt: '12:00' }]);
    const proposal = await proposed(house);
    await post(house, `/api/plan/proposals/${proposal.id}/keep`, {});
    await eventLoopTurns(40);
    const answer = await house.app.inject(`/api/plan/calendar?station=bench&date=${SUNDAY}`);
    expect([answer.headers['content-type'], answer.headers['content-disposition']]).toEqual([
      'text/calendar; charset=utf-8',
      `attachment; filename="bench-${SUNDAY}.ics"`,
    ]);
    const events = eventsOf(answer.body);
    const sundays = new Set(
      Object.values(house.floor.state.workpieces)
        .filter(({ serviceDate }) => serviceDate === SUNDAY)
        .map(({ id }) => id),
    );
    const wanted = Object.entries(house.floor.state.plan?.steps ?? {}).flatMap(([workpieceId, steps]) =>
      sundays.has(workpieceId)
        ? steps.filter(({ resources }) => resources.some(({ kind, id }) => kind === 'station' && id === 'bench'))
        : [],
    );
    expect(wanted.length).toBeGreaterThan(0);
    const inOrder = wanted.map(({ plannedStartMs }) => plannedStartMs / 1000).sort((a, b) => a - b);
    expect(events.map((event) => event.startDate.toUnixTime())).toEqual(inOrder);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
  });
});
