import { describe, expect, it } from 'vitest';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { EventOf, MovedStep, PlannedStep, RecordedEvent } from '../../shared/floor/events.ts';
import type { Workpiece } from '../../shared/floor/state.ts';
import { wayOf } from '../../shared/floor/way.ts';
import { planStatusSchema, type PlanStatus } from '../../shared/plan/plan-api.ts';
import { assert } from '../../shared/result.ts';
import { OVERDUE_MS } from '../../server/plan/overdue.ts';
import { USUAL_BUDGETS, type PlannerBudgets } from '../../server/plan/planner.ts';
import { order, proposed, SUNDAY } from './support/day-orders.ts';
import { freshId } from './support/live-client.ts';
import { eventLoopTurns } from './support/machine.ts';
import { startHere, TEST_BUDGETS } from './support/planner-here.ts';
import { openTestHouse, type TestHouse } from './support/test-house.ts';

const MINUTE_MS = 60_000;
const COUNTRY = { productId: 'country-loaf', pieces: 20, readyAt: '11:00' } as const;

/** The demo Saturday with a plan for it and for Sunday's country loaves in force, and all that follows from keeping it done. */
async function planned(budgets: PlannerBudgets = TEST_BUDGETS): Promise<TestHouse> {
  const floor = await openTestHouse({ planning: { startThread: startHere, budgets } });
  const { house } = floor;
  await order(house, [COUNTRY]);
  const proposal = await proposed(house);
  const kept = await house.app.inject({ method: 'POST', url: `/api/plan/proposals/${proposal.id}/keep` });
  assert(kept.statusCode === 200, `the day is kept: ${kept.body}`);
  await calm(floor);
  return floor;
}

/** Until every re-plan is adopted. */
async function calm({ house }: TestHouse): Promise<void> {
  await eventLoopTurns(40);
  await house.planning.replanner.settled();
  await eventLoopTurns(4);
}

/** The workpiece of that tag on the Saturday: Sunday's are counted anew. */
function saturdays({ house }: TestHouse, tag: string): Workpiece {
  const found = Object.values(house.floor.state.workpieces).find((each) => each.tag === tag && each.serviceDate === '2026-03-07');
  assert(found !== undefined, `Saturday has a ${tag}`);
  return found;
}

function workpieceOf({ house }: TestHouse, id: string | undefined): Workpiece {
  const found = house.floor.state.workpieces[id ?? ''];
  assert(found !== undefined, 'the workpiece is on the floor');
  return found;
}

function give({ house }: TestHouse, command: ClientCommand): Promise<unknown> {
  return house.floor.submit({
    commandId: freshId(),
    deviceId: freshId(),
    stationId: 'mixer',
    tap: { agoMonotonicMs: 0, agoWallMs: 0 },
    command,
  });
}

async function adopted(floor: TestHouse, after: number): Promise<readonly EventOf<'planAdopted'>[]> {
  return (await floor.events())
    .filter(({ sequence }) => sequence > after)
    .map(({ event }: RecordedEvent) => event)
    .filter((event): event is EventOf<'planAdopted'> => event.type === 'planAdopted');
}

function stepOf({ house }: TestHouse, workpieceId: string, stepId: string): PlannedStep {
  const found = house.floor.state.plan?.steps[workpieceId]?.find((step) => step.stepId === stepId);
  assert(found !== undefined, `the plan has ${stepId}`);
  return found;
}

async function status({ house }: TestHouse): Promise<PlanStatus> {
  return planStatusSchema.parse((await house.app.inject('/api/plan')).json());
}

describe('the plan in force', () => {
  it('E11 is left alone by what changes nothing', async () => {
    const floor = await planned();
    const { sequence } = floor.house.floor.state;
    const first = saturdays(floor, 'C1');
    await give(floor, { type: 'readTemperature', workpieceId: first.id, where: 'flour', celsius: 20 });
    await calm(floor);
    floor.house.planning.replanner.look();
    await calm(floor);
    expect(await adopted(floor, sequence)).toEqual([]);
  });

  it('E11 follows what takes longer: what comes after it moves, once, and says why', async () => {
    const floor = await planned();
    const first = saturdays(floor, 'C1');
    await give(floor, { type: 'startStep', workpieceId: first.id, stepId: 'weigh' });
    await calm(floor);
    const { sequence } = floor.house.floor.state;
    const before = stepOf(floor, first.id, 'fill-bowl');
    // It will take until long after the next step was to begin.
    const minutes = Math.ceil((before.plannedStartMs - floor.house.clock.nowMs()) / MINUTE_MS) + 40;
    await give(floor, { type: 'giveMoreTime', workpieceId: first.id, stepId: 'weigh', minutes });
    await calm(floor);
    const plans = await adopted(floor, sequence);
    expect(plans).toHaveLength(1);
    const [plan] = plans;
    expect(plan).toMatchObject({ isWhole: false });
    const after = stepOf(floor, first.id, 'fill-bowl');
    expect(after.plannedStartMs - before.plannedStartMs).toBeGreaterThanOrEqual(40 * MINUTE_MS);
    const move = plan?.moved.find(({ workpieceId, stepId }) => workpieceId === first.id && stepId === 'fill-bowl');
    expect(move).toMatchObject({
      fromMs: before.plannedStartMs,
      toMs: after.plannedStartMs,
    });
    // By its own dough, or by the mixer that another has meanwhile: a step on the floor either way.
    const because = move?.because;
    expect(['dough', 'resource']).toContain(because?.what);
    expect(wayOf(floor.house.floor.state, workpieceOf(floor, because?.workpieceId)).map(({ id }) => id)).toContain(because?.stepId);
    // What has begun is not moved.
    expect(plan?.starts.filter(({ workpieceId, stepId }) => workpieceId === first.id && stepId === 'weigh')).toEqual([]);
    expect((await status(floor)).plan).toMatchObject({ moved: plan?.moved, movedMs: plan?.atMs });
  });

  it('E11 takes in together what happens together', async () => {
    const floor = await planned();
    const first = saturdays(floor, 'C1');
    await give(floor, { type: 'startStep', workpieceId: first.id, stepId: 'weigh' });
    await calm(floor);
    const { sequence } = floor.house.floor.state;
    await Promise.all(
      [10, 15, 20].map((minutes) => give(floor, { type: 'giveMoreTime', workpieceId: first.id, stepId: 'weigh', minutes })),
    );
    await calm(floor);
    expect(await adopted(floor, sequence)).toHaveLength(1);
  });

  it('E11 keeps a pin, and says so hours ahead where it cannot', async () => {
    const floor = await planned();
    const batch = Object.values(floor.house.floor.state.workpieces).find(
      ({ serviceDate, kind }) => serviceDate === SUNDAY && kind === 'batch',
    );
    assert(batch !== undefined, 'there is a batch for Sunday');
    const startMs = stepOf(floor, batch.id, 'weigh').plannedStartMs - 30 * MINUTE_MS;
    await give(floor, { type: 'setPin', pin: { kind: 'startsAt', workpieceId: batch.id, stepId: 'weigh', startMs } });
    await calm(floor);
    expect(stepOf(floor, batch.id, 'weigh').plannedStartMs).toBe(startMs);
    await give(floor, {
      type: 'setPin',
      pin: { kind: 'startsAt', workpieceId: batch.id, stepId: 'weigh', startMs: floor.house.clock.nowMs() - 30 * MINUTE_MS },
    });
    await calm(floor);
    const [pin] = Object.values(floor.house.floor.state.pins);
    expect((await status(floor)).plan?.warnings).toContainEqual(expect.objectContaining({ kind: 'pinBroken', pinId: pin?.id }));
  });

  it('E11 begins a dough sooner whose order is wanted sooner; what is known to be late moves nothing again', async () => {
    const floor = await planned({ ...TEST_BUDGETS, replan: USUAL_BUDGETS.replan });
    const [wanted] = Object.values(floor.house.floor.state.orders).filter(({ serviceDate }) => serviceDate === SUNDAY);
    assert(wanted !== undefined, 'there is an order for Sunday');
    const batch = Object.values(floor.house.floor.state.workpieces).find(
      ({ serviceDate, kind }) => serviceDate === SUNDAY && kind === 'batch',
    );
    assert(batch !== undefined, 'there is a batch for Sunday');
    const before = stepOf(floor, batch.id, 'weigh');
    const place = async (readyMs: number): Promise<readonly EventOf<'planAdopted'>[]> => {
      const { sequence } = floor.house.floor.state;
      await order(floor.house, [{ ...COUNTRY, id: wanted.id, readyMs }]);
      await calm(floor);
      return adopted(floor, sequence);
    };
    const [moved, ...more] = await place(Date.parse(`${SUNDAY}T07:00Z`));
    expect(more).toEqual([]);
    expect(moved?.moved).toContainEqual(expect.objectContaining({ workpieceId: batch.id, stepId: 'weigh' }));
    // What comes earlier is never said to do so for its own sake.
    const isOfItself = ({ workpieceId, stepId, because }: MovedStep): boolean =>
      because?.workpieceId === workpieceId && because.stepId === stepId;
    expect(moved?.moved.filter(({ cut, load }) => cut === undefined && load === undefined).filter(isOfItself)).toEqual([]);
    expect(before.plannedStartMs - stepOf(floor, batch.id, 'weigh').plannedStartMs).toBeGreaterThanOrEqual(30 * MINUTE_MS);
    expect((await status(floor)).plan?.warnings).toEqual([]);
    // Nobody can have it ready within two hours: it is as early as can be, and said to be late.
    await place(floor.house.clock.nowMs() + 120 * MINUTE_MS);
    expect((await status(floor)).plan?.warnings).toContainEqual(expect.objectContaining({ kind: 'late', orderId: wanted.id }));
    const { sequence } = floor.house.floor.state;
    floor.house.planning.replanner.look();
    await calm(floor);
    expect(await adopted(floor, sequence)).toEqual([]);
  });

  it('E11 warns of an order that will be late, and no longer once it is withdrawn', async () => {
    const floor = await planned();
    const [id = ''] = await order(floor.house, [{ productId: 'rye-tin', pieces: 500, readyAt: '05:00' }], '2026-03-07');
    await calm(floor);
    const warned = (await status(floor)).plan?.warnings.filter((warning) => 'orderId' in warning && warning.orderId === id) ?? [];
    expect(warned.map(({ kind }) => kind)).toContain('short');
    // Nothing is missing yet of a day that nobody has planned.
    const [far = ''] = await order(floor.house, [{ productId: 'rye-tin', pieces: 500, readyAt: '05:00' }], '2026-03-12');
    await calm(floor);
    expect((await status(floor)).plan?.warnings.filter((warning) => 'orderId' in warning && warning.orderId === far)).toEqual([]);
    await give(floor, { type: 'withdrawOrders', orderIds: [id] });
    await calm(floor);
    expect((await status(floor)).plan?.warnings.filter((warning) => 'orderId' in warning && warning.orderId === id)).toEqual([]);
  });

  it('E12 moves what nobody has begun in time, by an alarm and not before', async () => {
    const floor = await planned();
    const first = saturdays(floor, 'C1');
    const { sequence } = floor.house.floor.state;
    const { plannedStartMs } = stepOf(floor, first.id, 'weigh');
    await floor.machine.pass(plannedStartMs + OVERDUE_MS - floor.house.clock.nowMs() - 1000);
    await calm(floor);
    expect(await adopted(floor, sequence)).toEqual([]);
    await floor.machine.pass(2000);
    await calm(floor);
    const plans = await adopted(floor, sequence);
    expect(plans).toHaveLength(1);
    expect(stepOf(floor, first.id, 'weigh').plannedStartMs).toBeGreaterThanOrEqual(plannedStartMs + OVERDUE_MS - MINUTE_MS);
  });

  it('E12 is looked at after a restart: time has gone by', async () => {
    const floor = await planned();
    const { sequence } = floor.house.floor.state;
    await floor.close();
    floor.machine.passUnnoticed(90 * MINUTE_MS);
    const again = await openTestHouse({ folder: floor.folder, machine: floor.machine });
    await calm(again);
    expect((await adopted(again, sequence)).length).toBeGreaterThan(0);
    const late = Object.entries(again.house.floor.state.plan?.steps ?? {})
      .flatMap(([, steps]) => steps)
      .filter(({ plannedStartMs }) => plannedStartMs < again.house.clock.nowMs() - 1000);
    expect(late).toEqual([]);
  });
});
