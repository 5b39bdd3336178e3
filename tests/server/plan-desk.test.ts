import { describe, expect, it } from 'vitest';
import { PlannerDesk } from '../../server/plan/planner-desk.ts';
import type { PlannerJob } from '../../server/plan/jobs/planner-job.ts';
import type { FromPlanner, ToPlanner } from '../../server/plan/planner-messages.ts';
import { partsOf } from '../../server/plan/state-parts.ts';
import { planProgressSchema, proposalAskSchema } from '../../shared/plan/plan-api.ts';
import { Floor } from '../domain/support/floor.ts';
import { SUNDAY } from './support/day-orders.ts';

const SCHEDULES = 400;
const BUDGET = { schedules: SCHEDULES, seed: 1 };

/** A desk that knows the harbour's Saturday and an order for Sunday, and what it says; each look at its clock is so many milliseconds later. */
function desk(lookMs: number): { readonly desk: PlannerDesk; readonly floor: Floor; readonly said: FromPlanner[] } {
  const floor = Floor.harbour();
  floor.ok({
    type: 'placeOrders',
    serviceDate: SUNDAY,
    orders: [{ productId: 'rye-tin', pieces: 6, readyMs: Date.parse(`${SUNDAY}T12:00Z`), form: 'cooled', weight: 1 }],
  });
  const said: FromPlanner[] = [];
  let nowMs = 0;
  const made = new PlannerDesk(
    (message) => said.push(message),
    () => (nowMs += lookMs),
  );
  for (const part of partsOf(floor.state)) made.take({ type: 'part', part });
  return { desk: made, floor, said };
}

function jobOf(job: PlannerJob): Extract<ToPlanner, { type: 'job' }> {
  return { type: 'job', jobId: 7, job };
}

function propose(floor: Floor): ReturnType<typeof jobOf> {
  return jobOf({ kind: 'propose', nowMs: floor.nowMs, ask: proposalAskSchema.parse({ serviceDate: SUNDAY }), budget: BUDGET });
}

function progressIn(said: readonly FromPlanner[]): readonly number[] {
  return said.flatMap((message) => (message.type === 'progress' ? [planProgressSchema.parse(message.progress).schedulesDone] : []));
}

describe('the planner at its desk', () => {
  it('E18 says how far a search is, not more often than ten times a second, and then what it found', () => {
    const often = desk(100);
    often.desk.take(propose(often.floor));
    const done = progressIn(often.said);
    expect(done.length).toBeGreaterThan(SCHEDULES / 100);
    expect([...done].sort((a, b) => a - b)).toEqual(done);
    expect(done.at(-1)).toBeLessThanOrEqual(SCHEDULES);
    expect(often.said.at(-1)).toMatchObject({
      type: 'answer',
      jobId: 7,
      answer: { kind: 'proposed', day: { figures: { orders: 1, ordersOnTime: 1 } } },
    });
    const seldom = desk(1);
    seldom.desk.take(propose(seldom.floor));
    expect(progressIn(seldom.said).length).toBeLessThanOrEqual(done.length / 10);
  });

  it('E18 goes by what happened since it was told the state, and not by what is in that already', () => {
    const { desk: told, floor, said } = desk(0);
    const placed = floor.recorded.length - 1;
    floor.ok({ type: 'withdrawOrders', orderIds: Object.keys(floor.state.orders) });
    told.take({ type: 'events', events: floor.recorded.slice(placed + 1) });
    // As it may be while the state is on its way.
    told.take({ type: 'events', events: floor.recorded.slice(placed, placed + 1) });
    told.take(propose(floor));
    expect(said).toMatchObject([{ type: 'answer', answer: { kind: 'proposed', day: { batches: [], figures: { orders: 0 } } } }]);
  });

  it('E18 says of a job that breaks that it broke, and takes the next', () => {
    const { desk: told, floor, said } = desk(0);
    told.take(jobOf({ kind: 'dream' } as never));
    told.take(propose(floor));
    expect(said).toMatchObject([
      { type: 'broken', jobId: 7, message: expect.stringContaining('dream') as string },
      { type: 'answer', jobId: 7, answer: { kind: 'proposed' } },
    ]);
  });
});
