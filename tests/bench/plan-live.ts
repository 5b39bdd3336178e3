import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pino } from 'pino';
import type { BakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { Workpiece } from '../../shared/floor/state.ts';
import { wayOf } from '../../shared/floor/way.ts';
import { proposalSchema, type ProposalDone } from '../../shared/plan/plan-api.ts';
import { assert } from '../../shared/result.ts';
import { machineClocks, type MachineClocks } from '../../server/clock/real-time.ts';
import { startJournalWorker } from '../../server/journal/start-journal-thread.ts';
import { openHouse, type House } from '../../server/main/house.ts';
import { houseOf, LIVE_DAYS, ordersOf, type LiveDay } from './live-days.ts';
import { LoopWatch, type LongestWait } from './loop-watch.ts';
import { newId } from './pages.ts';
import { inTemporaryFolder } from './places.ts';
import { lineOf, lineWithFloor, type Line, type Round } from './report.ts';
import { percentile } from './statistics.ts';

const DAY_MS = 86_400_000;
const EVENING_MS = Date.parse('2026-03-06T18:00Z');
/** Taps a round that each want a re-plan, and the doughs that they are about, in turn. */
const TAPS = 40;
const DOUGHS = 3;
/** Longest that anything else in the server may wait. */
const LOOP_AIM = '≤ 10 ms';

/** What taps, and the loop that everything in the server waits for, come to. In milliseconds. */
interface Tapped extends LongestWait {
  readonly replanMs: number;
}

/**
 * The planner beside the floor: days are planned, kept, and planned again at each tap, on threads of its own, while the event
 * loop is watched. The floor of a re-plan is the same taps in a house of the same kitchen without a plan; that of a wait, the
 * longest of a thread that has nothing to do meanwhile.
 */
export async function planLive(rounds: number): Promise<readonly Line[]> {
  const lines: Line[] = [];
  for (const day of LIVE_DAYS) lines.push(...(await planDayLive(day, rounds)));
  return lines;
}

function planDayLive(live: LiveDay, rounds: number): Promise<readonly Line[]> {
  return inTemporaryFolder(async (folder) => {
    const clocks = new SetClocks();
    const watch = new LoopWatch();
    const planned = await open(join(folder, 'planned'), houseOf(live.kitchen, 'empty'), clocks);
    const bare = await open(join(folder, 'bare'), houseOf(live.kitchen, 'harbour'), machineClocks);
    try {
      const { day, tookMs, waits: seeking } = await seek(planned, live, watch);
      const keeping = await watch.watched(() => keep(planned, day.id));
      await planned.planning.replanner.settled();
      clocks.goOn((day.figures.beginsMs ?? 0) - planned.clock.nowMs());
      await Promise.all([beginFirst(planned), beginFirst(bare)]);
      const taps: { readonly planned: Tapped; readonly bare: Tapped }[] = [];
      for (let round = 0; round < rounds; round += 1)
        taps.push({ planned: await tapAway(planned, watch), bare: await tapAway(bare, watch) });
      const name = nameOf(day);
      return [
        lineOf(`${name}: from asking to found`, 'ms', `≤ ${live.firstMs} ms`, [tookMs]),
        waitLine(`${name}: longest wait in the event loop while it is sought`, [seeking]),
        waitLine(`${name}: longest wait in the event loop while it is kept`, [keeping]),
        lineWithFloor(
          `${name}: tap to adopted re-plan, p99 of ${TAPS}; floor: tap alone`,
          'ms',
          `≤ ${live.replanMs} ms`,
          taps.map((tapped): Round => ({ value: tapped.planned.replanMs, floor: tapped.bare.replanMs })),
        ),
        waitLine(
          `${name}: longest wait in the event loop, ${TAPS} taps`,
          taps.map((tapped) => tapped.planned),
        ),
      ];
    } finally {
      await planned.close();
      await bare.close();
      await watch.stop();
    }
  });
}

function nameOf({ batches, steps }: ProposalDone): string {
  const work = steps.filter((step) => step.resources.some(({ kind }) => kind === 'station' || kind === 'deck'));
  return `live plan of ${batches.length} batches, ${steps.length} steps (${work.length} of them with hands or in an oven)`;
}

function waitLine(name: string, waits: readonly LongestWait[]): Line {
  return lineWithFloor(
    `${name}; floor: an idle thread`,
    'ms',
    LOOP_AIM,
    waits.map(({ loopMs, idleMs }): Round => ({ value: loopMs, floor: idleMs })),
  );
}

/** The machine's clocks, set to a winter's evening, so that it is the same day each time, and set on together: nobody waits for it to begin. */
class SetClocks implements MachineClocks {
  readonly #offMs = EVENING_MS - machineClocks.wallMs();
  #onMs = 0;

  goOn(byMs: number): void {
    this.#onMs += Math.max(0, byMs);
  }

  wallMs(): number {
    return machineClocks.wallMs() + this.#offMs + this.#onMs;
  }

  monotonicMs(): number {
    return machineClocks.monotonicMs() + this.#onMs;
  }

  uptimeMs(): number {
    return machineClocks.uptimeMs() + this.#onMs;
  }
}

async function open(dataFolder: string, file: BakehouseFile, clocks: MachineClocks): Promise<House> {
  const log = pino({ level: 'error' });
  const startJournalThread = startJournalWorker;
  const house = await openHouse({
    dataFolder,
    pace: 1,
    log,
    pagesFolder: null,
    addresses: [],
    clocks,
    startJournalThread,
    roleOfGuest: () => 'manage',
  });
  const outcome = await house.bringIn({ file, digest: createHash('sha256').update(dataFolder).digest() });
  assert(outcome.ok, 'the house is brought in');
  await house.app.ready();
  return house;
}

/** The orders of a day, and the plan that is found for them. */
async function seek(
  house: House,
  live: LiveDay,
  watch: LoopWatch,
): Promise<{ readonly day: ProposalDone; readonly tookMs: number; readonly waits: LongestWait }> {
  const nowMs = house.clock.nowMs();
  const serviceDate = new Date(nowMs + DAY_MS).toISOString().slice(0, 10);
  await give(house, { type: 'placeOrders', serviceDate, orders: ordersOf(live, nowMs) });
  let tookMs = 0;
  let day: ProposalDone | null = null;
  const waits = await watch.watched(async () => {
    const startMs = performance.now();
    const asked = await house.app.inject({ method: 'POST', url: '/api/plan/proposals', payload: { serviceDate } });
    const { id } = proposalSchema.parse(asked.json());
    for (;;) {
      const proposal = house.planning.proposals.find(id);
      assert(proposal !== null && proposal.status !== 'failed', `the day is planned: ${JSON.stringify(proposal)}`);
      if (proposal.status === 'done') {
        day = proposal;
        tookMs = performance.now() - startMs;
        return;
      }
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  });
  assert(day !== null, 'the day is found');
  return { day, tookMs, waits };
}

async function keep(house: House, id: string): Promise<void> {
  const kept = await house.app.inject({ method: 'POST', url: `/api/plan/proposals/${id}/keep` });
  assert(kept.statusCode === 200, `the day is kept: ${kept.body}`);
}

/** The doughs that are to begin first. */
function firstDoughs(house: House): readonly Workpiece[] {
  return Object.values(house.floor.state.workpieces)
    .sort((a, b) => a.plannedStartMs - b.plannedStartMs)
    .slice(0, DOUGHS);
}

async function beginFirst(house: House): Promise<void> {
  for (const { id } of firstDoughs(house)) await give(house, { type: 'startStep', workpieceId: id, stepId: firstStepOf(house, id) });
  await new Promise((resolve) => setImmediate(resolve));
  await house.planning.replanner.settled();
}

function firstStepOf({ floor }: House, workpieceId: string): string {
  const workpiece = floor.state.workpieces[workpieceId];
  const [first] = workpiece === undefined ? [] : wayOf(floor.state, workpiece);
  assert(first !== undefined, 'a dough has a way');
  return first.id;
}

/** A minute more for one of the first doughs, again and again: each is a disturbance that moves what comes after it. */
async function tapAway(house: House, watch: LoopWatch): Promise<Tapped> {
  const doughs = firstDoughs(house);
  const replanMs: number[] = [];
  const waits = await watch.watched(async () => {
    for (let tap = 0; tap < TAPS; tap += 1) {
      const workpieceId = doughs[tap % doughs.length]?.id ?? '';
      const startMs = performance.now();
      await give(house, { type: 'giveMoreTime', workpieceId, stepId: firstStepOf(house, workpieceId), minutes: 1 });
      // What listens is told after the answer.
      await new Promise((resolve) => setImmediate(resolve));
      await house.planning.replanner.settled();
      replanMs.push(performance.now() - startMs);
    }
  });
  return { ...waits, replanMs: percentile(replanMs, 0.99) };
}

async function give(house: House, command: ClientCommand): Promise<void> {
  const outcome = await house.floor.submit({
    commandId: newId(),
    deviceId: newId(),
    stationId: 'mixer',
    tap: { agoMonotonicMs: 0, agoWallMs: 0 },
    command,
  });
  assert(outcome.ok, `${command.type} is taken: ${JSON.stringify(outcome)}`);
}
