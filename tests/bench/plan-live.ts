import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { monitorEventLoopDelay, performance } from 'node:perf_hooks';
import { pino } from 'pino';
import { readBakehouseFile, type BakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import { proposalSchema, type ProposalDone } from '../../shared/plan/plan-api.ts';
import { assert } from '../../shared/result.ts';
import { openHouse, type House } from '../../server/main/house.ts';
import { newId } from './pages.ts';
import { HARBOUR, inTemporaryFolder } from './places.ts';
import { lineOf, lineWithFloor, type Line, type Round } from './report.ts';
import { percentile } from './statistics.ts';

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;
const HOUR_MS = 3_600_000;
/** Taps a round that each want a re-plan. */
const TAPS = 40;
/** Orders of each product, an hour and a half apart. */
const TIMES = 5;
/** How long the loop is watched after what was to be watched is over. */
const SETTLE_MS = 20;
/** Longest that anything else in the server may wait. */
const LOOP_AIM = '≤ 10 ms';

/** What a tap, and the loop that everything in the server waits for, come to. In milliseconds. */
interface Tapped {
  readonly replanMs: number;
  readonly loopMs: number;
}

/**
 * The planner beside the floor: a day of some forty batches is planned, kept, and planned again at each tap, on threads of
 * its own, while the event loop is watched. The floor of each figure is the same taps in the same house without a plan.
 */
export function planLive(rounds: number): Promise<readonly Line[]> {
  return inTemporaryFolder(async (folder) => {
    const planned = await open(join(folder, 'planned'));
    const bare = await open(join(folder, 'bare'));
    try {
      const { day, tookMs, loopMs: seekingMs } = await seek(planned);
      const keepingMs = await watched(() => keep(planned, day.id));
      await planned.planning.replanner.settled();
      const taps: { readonly planned: Tapped; readonly bare: Tapped }[] = [];
      for (let round = 0; round < rounds; round += 1) taps.push({ planned: await tapAway(planned), bare: await tapAway(bare) });
      const of = (part: keyof Tapped): readonly Round[] =>
        taps.map((tapped) => ({ value: tapped.planned[part], floor: tapped.bare[part] }));
      const name = `plan of ${day.batches.length} batches, ${day.steps.length} steps`;
      return [
        lineOf(`${name}: from asking to found`, 'ms', '≤ 2000 ms', [tookMs]),
        lineOf(`${name}: longest wait in the event loop while it is sought`, 'ms', LOOP_AIM, [seekingMs]),
        lineOf(`${name}: longest wait in the event loop while it is kept`, 'ms', LOOP_AIM, [keepingMs]),
        lineWithFloor(`${name}: tap to adopted re-plan, p99 of ${TAPS}; floor: tap alone`, 'ms', '≤ 50 ms', of('replanMs')),
        lineWithFloor(`${name}: longest wait in the event loop, ${TAPS} taps; floor: without a plan`, 'ms', LOOP_AIM, of('loopMs')),
      ];
    } finally {
      await planned.close();
      await bare.close();
    }
  });
}

/** The harbour house with room for many batches: more in a mixer, three ovens of four slots a deck, five people. */
function roomyHouse(): BakehouseFile {
  const read = readBakehouseFile(JSON.parse(readFileSync(HARBOUR, 'utf8')));
  assert(read.ok, 'the harbour house is a bakehouse file');
  const { kitchen } = read.value;
  const [oven] = kitchen.ovens;
  assert(oven !== undefined, 'the harbour house has an oven');
  const third = {
    ...oven,
    id: 'third-oven',
    decks: oven.decks.map((deck) => ({
      ...deck,
      id: `third-${deck.id}`,
      slots: deck.slots.map((slot) => ({ ...slot, id: `third-${slot.id}` })),
    })),
  };
  return {
    ...read.value,
    kitchen: {
      ...kitchen,
      stations: kitchen.stations.map((station) => (station.id === 'bench' ? { ...station, hands: 2 } : station)),
      restPlaces: kitchen.restPlaces.map((place) => (place.room === undefined ? place : { ...place, room: place.room * 4 })),
      vessels: kitchen.vessels.map((vessel) => ({ ...vessel, count: vessel.count * 6 })),
      ovens: [...kitchen.ovens, third],
    },
  };
}

async function open(dataFolder: string): Promise<House> {
  const house = await openHouse({ dataFolder, pace: 1, log: pino({ level: 'error' }), pagesFolder: null, addresses: [] });
  const file = roomyHouse();
  const outcome = await house.bringIn({ file, digest: createHash('sha256').update(dataFolder).digest() });
  assert(outcome.ok, 'the house is brought in');
  await house.app.ready();
  return house;
}

/** Orders of every product for the day after tomorrow, and the day that is found for them. */
async function seek(house: House): Promise<{ readonly day: ProposalDone; readonly tookMs: number; readonly loopMs: number }> {
  const serviceDate = new Date(house.clock.nowMs() + 2 * DAY_MS).toISOString().slice(0, 10);
  const products = Object.values(house.floor.state.products);
  const orders = products.flatMap(({ id }, index) =>
    Array.from({ length: TIMES }, (_, time) => ({
      productId: id,
      pieces: 14,
      readyMs: Date.parse(`${serviceDate}T06:00Z`) + time * 1.5 * HOUR_MS + index * 10 * MINUTE_MS,
      form: 'cooled' as const,
      weight: 1,
      freshMin: 240,
    })),
  );
  await give(house, { type: 'placeOrders', serviceDate, orders });
  const startMs = performance.now();
  let tookMs = 0;
  let day: ProposalDone | null = null;
  const loopMs = await watched(async () => {
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
  return { day, tookMs, loopMs };
}

async function keep(house: House, id: string): Promise<void> {
  const kept = await house.app.inject({ method: 'POST', url: `/api/plan/proposals/${id}/keep` });
  assert(kept.statusCode === 200, `the day is kept: ${kept.body}`);
}

/** More time for the first dough, again and again: each is a disturbance that moves what comes after it. */
async function tapAway(house: House): Promise<Tapped> {
  const [first] = Object.values(house.floor.state.workpieces);
  assert(first !== undefined, 'there is a dough');
  if (first.steps['weigh'] === undefined) await give(house, { type: 'startStep', workpieceId: first.id, stepId: 'weigh' });
  const replanMs: number[] = [];
  const loopMs = await watched(async () => {
    for (let tap = 0; tap < TAPS; tap += 1) {
      const startMs = performance.now();
      await give(house, { type: 'giveMoreTime', workpieceId: first.id, stepId: 'weigh', minutes: 3 });
      // What listens is told after the answer.
      await new Promise((resolve) => setImmediate(resolve));
      await house.planning.replanner.settled();
      replanMs.push(performance.now() - startMs);
    }
  });
  return { replanMs: percentile(replanMs, 0.99), loopMs };
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

/** The longest that a timer of one millisecond was late while something ran, in milliseconds. */
async function watched(run: () => Promise<void>): Promise<number> {
  const delay = monitorEventLoopDelay({ resolution: 1 });
  delay.enable();
  await run();
  // The last wait is only seen once it is over.
  await new Promise((resolve) => setTimeout(resolve, SETTLE_MS));
  delay.disable();
  return delay.max / 1e6;
}
