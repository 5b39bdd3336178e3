import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { dueOf } from '../../shared/floor/due.ts';
import { nextSound } from '../../shared/floor/sounding.ts';
import { HEARTBEAT_MS } from '../../shared/wire/protocol.ts';
import { assert } from '../../shared/result.ts';
import { houseHours } from '../../server/floor/house-hours.ts';
import { FaultClient } from '../faults/fault-client.ts';
import { letIn } from '../support/let-in.ts';
import { startServer } from './child.ts';
import { openPages, Page } from './pages.ts';
import { freePort, HARBOUR, inTemporaryFolder } from './places.ts';
import { lineOf, type Line } from './report.ts';
import { median, percentile } from './statistics.ts';
import { floorSide, tapToLast } from './tap-side.ts';

const WALLS = 20;
const PHONES = 280;
const BATCHES = 60;
/** Eight hours in eight minutes. */
const PACE = 60;
const HOURS = 8;
const HOUR_MS = 3_600_000;
const BATCH_EVERY_MIN = 6;
/** Hands look at the floor so often, in real ms: a quarter of a minute of the house. */
const LOOK_EVERY_MS = 250;
/** A call that should have sounded so long ago, in real ms, was missed: bursts are 3 s apart, and an answer may take 4. */
const MISSED_AFTER_MS = 8_000;
/** A phone on 2G takes in something for so long, and then nothing for so long, in ms. */
const SLOW_OPEN_MS = 5;
const SLOW_SHUT_MS = 1_000;
/** Taps on the floor, with as many pages, after the day. */
const FLOOR_TAPS = 300;

/**
 * A busy Saturday at pace: 300 screens and phones, 60 batches, eight hours. Whether memory grows after the first hour, how long a tap takes
 * until the last screen has it, whether a call is missed, and whether a phone on a slow line holds up the others. By name only: it takes nine minutes.
 */
export function saturday(): Promise<readonly Line[]> {
  return inTemporaryFolder(async (folder) => {
    const bakehouse = join(folder, 'saturday.json');
    writeFileSync(bakehouse, busyDay());
    const port = await freePort();
    const server = await startServer(join(folder, 'data'), port, ['--bakehouse', bakehouse, '--pace', String(PACE), '--here']);
    const wall = new FaultClient('wall', port, letIn(port, 'wall', 'look').cookie);
    wall.connect();
    const pages = [
      ...(await openPages(WALLS - 1, () => Page.live(port, 'wall'))),
      ...(await openPages(PHONES, () => Page.live(port, 'phone'))),
    ];
    const heartbeat = setInterval(() => {
      wall.ping();
      for (const page of pages) page.ping();
    }, HEARTBEAT_MS);
    const slow = pages.at(-1);
    assert(slow !== undefined, 'there are phones');
    const prompt = pages.slice(0, -1);
    const startMs = performance.now();
    const hourNow = (): number => ((performance.now() - startMs) * PACE) / HOUR_MS;
    const times: { readonly hour: number; readonly ms: number }[] = [];
    const rss: { readonly hour: number; readonly mib: number }[] = [];
    let missed = 0;
    let isSlow = false;
    while (hourNow() < HOURS) {
      if (!isSlow && hourNow() > HOURS / 2) {
        isSlow = true;
        void holdBack(slow);
      }
      rss.push({ hour: hourNow(), mib: rssMiB(server.pid) });
      const nowMs = houseNow(wall);
      const next = nextSound(wall.state, nowMs, houseHours(wall.state.house?.document ?? null));
      if (next !== null && next.atMs < nowMs - MISSED_AFTER_MS * PACE) missed += 1;
      const due = Object.values(wall.state.workpieces)
        .map((workpiece) => dueOf(wall.state, workpiece))
        .find((each) => each !== null && each.dueMs <= nowMs);
      if (due !== null && due !== undefined) {
        const { workpiece, action, startedMs, phase } = due;
        const begins = startedMs === null || phase === 'waiting' || phase === 'planned';
        const tapper = prompt[times.length % prompt.length];
        assert(tapper !== undefined, 'there are pages');
        const ms = await tapToScreens(tapper, prompt, {
          type: begins ? 'startStep' : 'finishStep',
          workpieceId: workpiece.id,
          stepId: begins ? due.step.id : action.id,
        });
        if (ms !== null) times.push({ hour: hourNow(), ms });
      }
      await pause(LOOK_EVERY_MS);
    }
    const lost = prompt.filter(({ isLost }) => isLost).length;
    const floorMs = await floorTimes(folder, pages, wall);
    clearInterval(heartbeat);
    wall.end();
    for (const page of pages) page.end();
    await server.end('SIGKILL');
    const p99 = percentile(
      times.map(({ ms }) => ms),
      0.99,
    );
    const half = (isSecond: boolean): number =>
      percentile(
        times.filter(({ hour }) => hour > HOURS / 2 === isSecond).map(({ ms }) => ms),
        0.99,
      );
    const inHour = (hour: number): number => median(rss.filter((at) => Math.floor(at.hour) === hour).map(({ mib }) => mib));
    const name = `Saturday of ${BATCHES} batches, ${WALLS + PHONES} screens, ${HOURS} h at ×${PACE}`;
    return [
      {
        ...lineOf(`${name}: tap to the last screen, p99 of ${times.length} taps`, 'ms', 'ratio ≤ 2', [p99]),
        floor: round(percentile(floorMs, 0.99)),
        ratio: round(p99 / percentile(floorMs, 0.99)),
      },
      lineOf(`${name}: the same, before a phone on a slow line is there`, 'ms', 'as after', [half(false)]),
      lineOf(`${name}: the same, once it is`, 'ms', 'as before', [half(true)]),
      lineOf(`${name}: memory in the second hour`, 'MiB', '—', [inHour(1)]),
      lineOf(`${name}: memory in the eighth hour`, 'MiB', 'not more than in the second', [inHour(HOURS - 1)]),
      lineOf(`${name}: looks at which a call should have sounded and had not`, 'calls', '0', [missed]),
      lineOf(`${name}: screens that lost their line, the slow one apart`, 'screens', '0', [lost]),
    ];
  });
}

/** The demo day's batches over and over, one after the other. */
function busyDay(): string {
  const file = JSON.parse(readFileSync(HARBOUR, 'utf8')) as { day: { batches: { start: unknown }[] } };
  const { batches } = file.day;
  file.day.batches = Array.from({ length: BATCHES }, (_, index) => ({
    ...batches[index % batches.length],
    start: { afterLoadMin: index * BATCH_EVERY_MIN },
  }));
  return JSON.stringify(file);
}

function houseNow({ clock }: FaultClient): number {
  assert(clock !== null, 'the wall was welcomed');
  return clock.houseMs + clock.pace * (Date.now() - clock.realMs);
}

/** From a tap until the last page has its events; null where it made none. */
function tapToScreens(tapper: Page, pages: readonly Page[], command: Parameters<Page['tap']>[0]): Promise<number | null> {
  return new Promise((resolve) => {
    const startMs = performance.now();
    const waiting = new Set(pages.filter(({ isLost }) => !isLost));
    const commandId = tapper.tap(command);
    const settle = (ms: number | null): void => {
      for (const page of pages) page.onEvents = () => {};
      tapper.onOutcome = () => {};
      resolve(ms);
    };
    for (const page of pages)
      page.onEvents = () => {
        if (!page.lastEvents.includes(commandId)) return;
        waiting.delete(page);
        if (waiting.size === 0) settle(performance.now() - startMs);
      };
    tapper.onOutcome = (text) => {
      if (text.includes(commandId) && !text.includes('"ok":true')) settle(null);
    };
  });
}

/** Lets a phone take in next to nothing: what is told to it waits in its line. */
async function holdBack(page: Page): Promise<void> {
  while (!page.isLost) {
    page.socket.pause();
    await pause(SLOW_SHUT_MS);
    page.socket.resume();
    await pause(SLOW_OPEN_MS);
  }
}

/** The same bytes to as many sockets from a server that does nothing else. */
async function floorTimes(folder: string, pages: readonly Page[], wall: FaultClient): Promise<readonly number[]> {
  const like = pages[0];
  assert(like !== undefined && like.lastEvents !== '', 'the day had events');
  const outcome = pages.find(({ lastOutcome }) => lastOutcome !== '');
  like.lastOutcome = outcome?.lastOutcome ?? '';
  const floor = await floorSide(folder, { pages, tap: () => {}, end: async () => wall.end() });
  const times: number[] = [];
  for (let tap = 0; tap < FLOOR_TAPS; tap += 1) {
    const tapper = floor.pages[tap % floor.pages.length];
    assert(tapper !== undefined, 'the floor has pages');
    times.push(await tapToLast(floor, tapper));
  }
  await floor.end();
  return times;
}

function rssMiB(pid: number): number {
  return Number(/^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
