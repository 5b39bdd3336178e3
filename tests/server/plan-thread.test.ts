import { describe, expect, it } from 'vitest';
import { PlannerThread } from '../../server/plan/planner-thread.ts';
import type { ToPlanner } from '../../server/plan/planner-messages.ts';
import type { PlannerJob } from '../../server/plan/jobs/planner-job.ts';
import type { PlannerEars } from '../../server/plan/start-thread.ts';
import { PART_ENTRIES, partsOf, withPart } from '../../server/plan/state-parts.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';
import { evolveAll } from '../../shared/floor/evolve.ts';
import { EMPTY_STATE, type FloorState } from '../../shared/floor/state.ts';
import { assert } from '../../shared/result.ts';
import { eventLoopTurns } from './support/machine.ts';
import { openTestHouse, type TestHouse } from './support/test-house.ts';
import { freshId } from './support/live-client.ts';

const JOB: PlannerJob = { kind: 'replan', nowMs: 0, budget: { schedules: 1, seed: 1 }, hint: 'search', known: null };

/** Threads that only write down what they are told. */
class Thread {
  readonly told: ToPlanner[] = [];
  isStopped = false;
  readonly ears: PlannerEars;

  constructor(ears: PlannerEars) {
    this.ears = ears;
  }

  /** The state as its other end would have it, message by message, at the job. */
  stateAtJob(jobId: number): FloorState {
    let state: FloorState = EMPTY_STATE;
    for (const message of this.told) {
      if (message.type === 'part') state = withPart(state, message.part);
      if (message.type === 'events')
        state = evolveAll(
          state,
          message.events.filter(({ sequence }) => sequence > state.sequence),
        );
      if (message.type === 'job' && message.jobId === jobId) return state;
    }
    throw new Error(`job ${jobId} was never told`);
  }
}

interface Stage {
  readonly thread: PlannerThread;
  readonly threads: Thread[];
  readonly logged: unknown[];
}

function stage({ house }: TestHouse): Stage {
  const threads: Thread[] = [];
  const logged: unknown[] = [];
  const thread = new PlannerThread({
    urgency: 'live',
    floor: house.floor,
    log: { error: (fact: unknown) => logged.push(fact) },
    defer: (run) => setImmediate(run),
    start: (ears) => {
      const started = new Thread(ears);
      threads.push(started);
      return {
        say: (message) => started.told.push(structuredClone(message)),
        stop: async () => {
          started.isStopped = true;
        },
      };
    },
  });
  return { thread, threads, logged };
}

/** Somebody takes a dough's temperature. */
function tap({ house, workpiece }: TestHouse, celsius: number): Promise<Outcome> {
  return house.floor.submit({
    commandId: freshId(),
    deviceId: freshId(),
    stationId: 'bench',
    tap: { agoMonotonicMs: 0, agoWallMs: 0 },
    command: { type: 'readTemperature', workpieceId: workpiece('C1').id, where: 'dough', celsius },
  });
}

/** Several passes: what is told goes on its way one message a turn. */
async function told(): Promise<void> {
  await eventLoopTurns(120);
}

describe('a state in parts', () => {
  it('E6 is the same again when they are put together, whatever it holds, and each copies quickly', async () => {
    const { house } = await openTestHouse();
    const many = Object.fromEntries(
      Array.from({ length: 1000 }, (_, index) => [`formula-${index}@1`, Object.values(house.floor.state.formulas)[0]]),
    );
    const steps = Object.fromEntries(Array.from({ length: 200 }, (_, index) => [`workpiece-${index}`, []]));
    const plan: FloorState['plan'] = { planId: 'plan', madeMs: 1, steps, moved: [], movedMs: null, warnings: [] };
    const state = { ...house.floor.state, formulas: many as FloorState['formulas'], plan };
    const parts = [...partsOf(state)];
    expect(parts.reduce(withPart, EMPTY_STATE)).toEqual(state);
    expect(Object.keys(parts.reduce(withPart, EMPTY_STATE).formulas)).toEqual(Object.keys(many));
    for (const { value } of parts)
      if (typeof value === 'object' && value !== null) expect(Object.keys(value).length).toBeLessThanOrEqual(PART_ENTRIES);
    // Least of all the steps of a whole day's plan.
    expect(parts.filter(({ value }) => typeof value === 'object' && value !== null && 'steps' in value)).toEqual([
      { key: 'plan', value: { ...plan, steps: {} } },
    ]);
  });
});

describe("a planner's thread", () => {
  it('E7 is started with its first job, knows the floor as it is then, and every event once', async () => {
    const floor = await openTestHouse();
    const { thread, threads } = stage(floor);
    await tap(floor, 24);
    await told();
    expect(threads).toEqual([]);
    void thread.run(JOB);
    await told();
    const [first] = threads;
    assert(first !== undefined && threads.length === 1, 'one thread was started');
    expect(first.stateAtJob(1)).toEqual(floor.house.floor.state);
    await tap(floor, 25);
    void thread.run(JOB);
    await told();
    expect(first.stateAtJob(2)).toEqual(floor.house.floor.state);
    expect(threads).toHaveLength(1);
  });

  it('E7 is not told twice what is recorded while the state is on its way', async () => {
    const floor = await openTestHouse();
    const { thread, threads } = stage(floor);
    // The state is there when the command is answered, before those who listen are told of its events.
    await tap(floor, 24).then(() => void thread.run(JOB));
    await told();
    expect(threads[0]?.told.filter(({ type }) => type === 'events')).toHaveLength(1);
    expect(threads[0]?.stateAtJob(1)).toEqual(floor.house.floor.state);
  });

  it('E8 answers its jobs, says how far it is, and a job that breaks is told to whoever asked and to the log', async () => {
    const { thread, threads, logged } = stage(await openTestHouse());
    const said: number[] = [];
    const answers = Promise.allSettled([thread.run(JOB, ({ schedulesDone }) => said.push(schedulesDone)), thread.run(JOB)]);
    await told();
    const ears = threads[0]?.ears;
    assert(ears !== undefined, 'a thread was started');
    ears.hear({ type: 'progress', jobId: 1, progress: { schedulesDone: 7, schedules: 10, best: null } });
    ears.hear({ type: 'broken', jobId: 2, message: 'no such step', stack: 'at once' });
    ears.hear({ type: 'answer', jobId: 1, answer: { kind: 'nothingPlanned' } });
    ears.hear({ type: 'answer', jobId: 1, answer: { kind: 'nothingPlanned' } });
    const [first, second] = await answers;
    expect([said, first]).toEqual([[7], { status: 'fulfilled', value: { kind: 'nothingPlanned' } }]);
    expect(second).toMatchObject({ status: 'rejected', reason: { name: 'PlannerBroken', message: 'no such step' } });
    expect(logged).toEqual([{ message: 'no such step', stack: 'at once' }]);
    expect(thread.isBusy).toBe(false);
  });

  it('E8 that dies is said in the log, fails what it was at, and is started again knowing everything', async () => {
    const floor = await openTestHouse();
    const { thread, threads, logged } = stage(floor);
    const lost = thread.run(JOB);
    await told();
    threads[0]?.ears.died(new Error('out of memory'));
    await expect(lost).rejects.toMatchObject({ name: 'PlannerBroken', message: 'out of memory' });
    expect(logged).toMatchObject([{ message: 'out of memory' }]);
    await tap(floor, 24);
    void thread.run(JOB);
    await told();
    expect(threads).toHaveLength(2);
    expect(threads[1]?.stateAtJob(2)).toEqual(floor.house.floor.state);
    // What the dead one still says is no answer to anybody.
    threads[0]?.ears.hear({ type: 'answer', jobId: 2, answer: { kind: 'nothingPlanned' } });
    expect(thread.isBusy).toBe(true);
  });

  it('E8 that is given up is ended, and what it was at is dropped', async () => {
    const { thread, threads, logged } = stage(await openTestHouse());
    const [[dropped]] = await Promise.all([Promise.allSettled([thread.run(JOB)]), told().then(() => thread.drop())]);
    expect(dropped).toMatchObject({ status: 'rejected', reason: { name: 'JobDropped' } });
    expect([threads[0]?.isStopped, logged]).toEqual([true, []]);
    const answer = thread.run(JOB);
    await told();
    threads[1]?.ears.hear({ type: 'answer', jobId: 2, answer: { kind: 'nothingPlanned' } });
    expect(await answer).toEqual({ kind: 'nothingPlanned' });
  });
});
