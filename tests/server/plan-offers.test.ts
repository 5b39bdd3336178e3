import { describe, expect, it } from 'vitest';
import { CLEARLY_BETTER_MIN, isClearlyBetter } from '../../server/plan/clearly-better.ts';
import type { PlannerAnswer, PlannerJob, Replanned, TroubleCost } from '../../server/plan/jobs/planner-job.ts';
import type { StartThread } from '../../server/plan/start-thread.ts';
import type { PlannedStep } from '../../shared/floor/events.ts';
import { planStatusSchema, type PlanFigures, type PlanStatus } from '../../shared/plan/plan-api.ts';
import { PRICES } from '../../shared/plan/day/problem.ts';
import { freshId } from './support/live-client.ts';
import { eventLoopTurns, MORNING_MS } from './support/machine.ts';
import { TEST_BUDGETS } from './support/planner-here.ts';
import { openTestHouse, type TestHouse } from './support/test-house.ts';

const MINUTE_MS = 60_000;
const QUIET_MS = 5_000;
/** A state is told to a thread in parts, one a turn. */
const ENOUGH_TURNS = 200;

const FIGURES: PlanFigures = {
  orders: 0,
  ordersOnTime: 0,
  lateMin: 0,
  latestMin: 0,
  spoilMin: 0,
  pinsBroken: 0,
  ripenessMin: 0,
  staleMin: 0,
  movedMin: 0,
  handsMin: 0,
  beginsMs: null,
  endsMs: null,
  total: 400,
};

const NO_TROUBLE: TroubleCost = { spoil: 0, late: 0, pins: 0 };

/** A planner that says what a test has it say, and keeps what it was asked. */
class Script {
  readonly jobs: PlannerJob[] = [];
  readonly answers: Partial<Record<PlannerJob['kind'], PlannerAnswer | 'throws' | 'silence'>> = {};

  /** Answers the last job that silence was kept about. */
  sayLater: (answer: PlannerAnswer) => void = () => {};

  readonly start: StartThread = (ears) => ({
    say: (message) => {
      if (message.type !== 'job') return;
      const { jobId, job } = message;
      this.jobs.push(job);
      const answer = this.answers[job.kind] ?? { kind: 'nothingPlanned' };
      const say = (said: PlannerAnswer | 'throws'): void =>
        ears.hear(said === 'throws' ? { type: 'broken', jobId, message: 'a bug', stack: '' } : { type: 'answer', jobId, answer: said });
      if (answer === 'silence') this.sayLater = say;
      else setImmediate(() => say(answer));
    },
    stop: async () => {},
  });

  count(kind: PlannerJob['kind']): number {
    return this.jobs.filter((job) => job.kind === kind).length;
  }
}

interface Stage {
  readonly floor: TestHouse;
  readonly script: Script;
  readonly weigh: PlannedStep;
}

/** The demo day with a plan in force that has the weighing of C1 at 04:00. */
async function stage(): Promise<Stage> {
  const script = new Script();
  const floor = await openTestHouse({ planning: { startThread: script.start, budgets: TEST_BUDGETS } });
  const weigh: PlannedStep = {
    workpieceId: floor.workpiece('C1').id,
    stepId: 'weigh',
    plannedStartMs: MORNING_MS + 60 * MINUTE_MS,
    plannedEndMs: MORNING_MS + 70 * MINUTE_MS,
    resources: [{ kind: 'station', id: 'mixer' }],
  };
  const { workpieceId: batchKey, plannedEndMs = 0, ...step } = weigh;
  await floor.house.floor.submit({
    commandId: freshId(),
    deviceId: freshId(),
    stationId: null,
    tap: null,
    command: { type: 'adoptProposal', serviceDate: '2026-03-07', batches: [], steps: [{ ...step, plannedEndMs, batchKey }], warnings: [] },
  });
  await eventLoopTurns(ENOUGH_TURNS);
  return { floor, script, weigh };
}

function improved(weigh: PlannedStep, total: number): PlannerAnswer {
  const plannedStartMs = weigh.plannedStartMs + 20 * MINUTE_MS;
  const plan: Replanned = {
    starts: [{ ...weigh, plannedStartMs, plannedEndMs: plannedStartMs + 10 * MINUTE_MS }],
    moved: [
      { workpieceId: weigh.workpieceId, stepId: 'weigh', fromMs: weigh.plannedStartMs, toMs: plannedStartMs, because: { what: 'search' } },
    ],
    warnings: [],
    figures: { ...FIGURES, total },
    cleanings: [],
    cost: NO_TROUBLE,
  };
  return { kind: 'improved', before: FIGURES, plan };
}

async function status({ floor }: Stage): Promise<PlanStatus> {
  return planStatusSchema.parse((await floor.house.app.inject('/api/plan')).json());
}

/** The top deck is set to so many degrees. */
async function disturb({ floor }: Stage, temperatureC: number): Promise<void> {
  await floor.house.floor.submit({
    commandId: freshId(),
    deviceId: freshId(),
    stationId: 'oven',
    tap: { agoMonotonicMs: 0, agoWallMs: 0 },
    command: { type: 'setDeck', deckId: 'top', temperatureC },
  });
  await eventLoopTurns(ENOUGH_TURNS);
}

describe('a better way to go on', () => {
  it('E13 is sought once the floor is quiet, and offered where it is clearly better; the plan stays until somebody keeps it', async () => {
    const made = await stage();
    const { floor, script, weigh } = made;
    script.answers.improve = improved(weigh, 300);
    await floor.machine.pass(QUIET_MS - 1);
    expect(script.count('improve')).toBe(0);
    await floor.machine.pass(1);
    await eventLoopTurns(ENOUGH_TURNS);
    const { offers } = await status(made);
    expect(offers).toMatchObject([
      { madeMs: MORNING_MS + QUIET_MS, before: { total: 400 }, after: { total: 300 }, moved: [{ stepId: 'weigh' }] },
    ]);
    expect(floor.house.floor.state.plan?.steps[weigh.workpieceId]).toEqual([weigh]);
    const kept = await floor.house.app.inject({ method: 'POST', url: `/api/plan/proposals/${offers[0]?.id}/keep`, payload: {} });
    await eventLoopTurns(ENOUGH_TURNS);
    expect(kept.statusCode).toBe(200);
    expect(floor.house.floor.state.plan?.steps[weigh.workpieceId]?.[0]?.plannedStartMs).toBe(weigh.plannedStartMs + 20 * MINUTE_MS);
    expect((await status(made)).offers).toEqual([]);
    expect((await floor.house.app.inject({ method: 'POST', url: `/api/plan/proposals/${offers[0]?.id}/keep` })).statusCode).toBe(404);
  });

  it('E13 is gone when somebody does not want it, or when something happens', async () => {
    const made = await stage();
    const { floor, script, weigh } = made;
    script.answers.improve = improved(weigh, 300);
    await floor.machine.pass(QUIET_MS);
    await eventLoopTurns(ENOUGH_TURNS);
    const [offer] = (await status(made)).offers;
    const dismissed = await floor.house.app.inject({ method: 'DELETE', url: `/api/plan/proposals/${offer?.id}` });
    expect([dismissed.statusCode, (await status(made)).offers]).toEqual([204, []]);
    await disturb(made, 231);
    await floor.machine.pass(QUIET_MS);
    await eventLoopTurns(ENOUGH_TURNS);
    expect((await status(made)).offers).toHaveLength(1);
    await disturb(made, 232);
    expect((await status(made)).offers).toEqual([]);
  });

  it('E13 is not offered for a plan that has moved meanwhile, and sought anew', async () => {
    const made = await stage();
    const { floor, script, weigh } = made;
    script.answers.improve = 'silence';
    await floor.machine.pass(QUIET_MS);
    await eventLoopTurns(ENOUGH_TURNS);
    await disturb(made, 231);
    script.sayLater(improved(weigh, 300));
    await eventLoopTurns(ENOUGH_TURNS);
    expect([(await status(made)).offers, script.count('improve')]).toEqual([[], 1]);
    script.answers.improve = improved(weigh, 200);
    await floor.machine.pass(QUIET_MS);
    await eventLoopTurns(ENOUGH_TURNS);
    expect((await status(made)).offers).toMatchObject([{ after: { total: 200 } }]);
  });

  it('E13 gives way to a day that somebody asks for', async () => {
    const made = await stage();
    const { floor, script } = made;
    script.answers.improve = 'silence';
    script.answers.propose = { kind: 'impossible', faults: [{ code: 'noMixer', message: 'no mixer takes it' }] };
    await floor.machine.pass(QUIET_MS);
    await eventLoopTurns(ENOUGH_TURNS);
    const asked = await floor.house.app.inject({ method: 'POST', url: '/api/plan/proposals', payload: { serviceDate: '2026-03-08' } });
    await eventLoopTurns(ENOUGH_TURNS);
    const found = await floor.house.app.inject(`/api/plan/proposals/${asked.json<{ id: string }>().id}`);
    expect(found.json()).toMatchObject({ status: 'failed', faults: [{ code: 'noMixer' }] });
  });

  it('E13 counts as clearly better by a share of what it was, and by minutes of ripeness', () => {
    const gain = CLEARLY_BETTER_MIN * PRICES.ripenessMin;
    expect(isClearlyBetter({ total: 100 }, { total: 100 - gain })).toBe(true);
    expect(isClearlyBetter({ total: 100 }, { total: 100 - gain + 0.1 })).toBe(false);
    expect(isClearlyBetter({ total: 1000 }, { total: 951 })).toBe(false);
    expect(isClearlyBetter({ total: 1000 }, { total: 950 })).toBe(true);
    expect(isClearlyBetter({ total: 100 }, { total: 200 })).toBe(false);
  });
});

describe('a planner that fails', () => {
  it('E8 leaves the plan as it is, says so, and is asked again later, each time after a longer while', async () => {
    const made = await stage();
    const { floor, script } = made;
    script.answers.replan = 'throws';
    const before = script.count('replan');
    await disturb(made, 233);
    expect((await status(made)).fault).toMatchObject({ code: 'crashed' });
    await floor.machine.pass(2000);
    await eventLoopTurns(ENOUGH_TURNS);
    expect(script.count('replan') - before).toBe(2);
    await floor.machine.pass(2000);
    await eventLoopTurns(ENOUGH_TURNS);
    expect(script.count('replan') - before).toBe(2);
    script.answers.replan = {
      kind: 'replanned',
      plan: { starts: [], moved: [], warnings: [], figures: FIGURES, cleanings: [], cost: NO_TROUBLE },
    };
    await floor.machine.pass(2000);
    await eventLoopTurns(ENOUGH_TURNS);
    expect(script.count('replan') - before).toBe(3);
    expect(await status(made)).toMatchObject({ fault: null, isReplanning: false });
  });
});

describe('what happens while a re-plan is made', () => {
  it('E11 is taken in before anything is adopted: one re-plan, of the floor as it is then', async () => {
    const made = await stage();
    const { floor, script, weigh } = made;
    const { sequence } = floor.house.floor.state;
    const moved = (minutes: number): PlannerAnswer => {
      const plannedStartMs = weigh.plannedStartMs + minutes * MINUTE_MS;
      const starts = [{ ...weigh, plannedStartMs, plannedEndMs: plannedStartMs + 10 * MINUTE_MS }];
      return { kind: 'replanned', plan: { starts, moved: [], warnings: [], figures: FIGURES, cleanings: [], cost: NO_TROUBLE } };
    };
    script.answers.replan = 'silence';
    await disturb(made, 231);
    expect(await status(made)).toMatchObject({ isReplanning: true });
    const before = script.count('replan');
    await disturb(made, 232);
    await disturb(made, 233);
    expect(script.count('replan')).toBe(before);
    script.answers.replan = moved(30);
    script.sayLater(moved(20));
    await eventLoopTurns(ENOUGH_TURNS);
    expect(script.count('replan')).toBe(before + 1);
    const adopted = (await floor.events()).filter((recorded) => recorded.sequence > sequence && recorded.event.type === 'planAdopted');
    expect(adopted.map(({ event }) => event)).toMatchObject([
      { isWhole: false, starts: [{ plannedStartMs: weigh.plannedStartMs + 30 * MINUTE_MS }] },
    ]);
    expect(await status(made)).toMatchObject({ isReplanning: false });
  });
});

describe('what the plan was known to cost', () => {
  it('E11 goes with the next re-plan, of an offer that was kept too; nobody knows it yet of a day that was just kept', async () => {
    const made = await stage();
    const { floor, script, weigh } = made;
    const known = (): readonly (TroubleCost | null)[] => script.jobs.flatMap((job) => (job.kind === 'replan' ? [job.known] : []));
    const answer = (late: number): PlannerAnswer => ({
      kind: 'replanned',
      plan: { starts: [], moved: [], warnings: [], figures: FIGURES, cleanings: [], cost: { spoil: 0, late, pins: 0 } },
    });
    script.answers.replan = answer(70);
    await disturb(made, 231);
    script.answers.replan = answer(20);
    await disturb(made, 232);
    expect(known().slice(-2)).toEqual([null, { spoil: 0, late: 70, pins: 0 }]);
    script.answers.improve = improved(weigh, 300);
    await floor.machine.pass(QUIET_MS);
    await eventLoopTurns(ENOUGH_TURNS);
    const [offer] = (await status(made)).offers;
    await floor.house.planning.replanner.keep(offer?.id ?? '', { deviceId: freshId(), stationId: null });
    await disturb(made, 233);
    expect(known().at(-1)).toEqual(NO_TROUBLE);
    const { plannedEndMs = 0, workpieceId: batchKey, ...step } = weigh;
    await floor.house.floor.submit({
      commandId: freshId(),
      deviceId: freshId(),
      stationId: null,
      tap: null,
      command: {
        type: 'adoptProposal',
        serviceDate: '2026-03-07',
        batches: [],
        steps: [{ ...step, plannedEndMs, batchKey }],
        warnings: [],
      },
    });
    await eventLoopTurns(ENOUGH_TURNS);
    expect(known().at(-1)).toBeNull();
  });
});
