import { assert } from '../../shared/result.ts';
import { inTemporaryFolder } from './places.ts';
import { interleaved, lineWithFloor, type Line } from './report.ts';
import { median, percentile } from './statistics.ts';
import { floorSide, realSide, tapToLast, type TapSide } from './tap-side.ts';

const PAGES = 100;
const WARM_UP_TAPS = 100;
const TAPS_A_ROUND = 300;

/** From a tap until the last of 100 pages has what it did. */
export function tapToAll(rounds: number): Promise<readonly Line[]> {
  return withBothSides(PAGES, async (real, floor) => {
    for (const side of [real, floor]) await timesOf(side, WARM_UP_TAPS);
    const results = await interleaved(
      rounds,
      () => timesOf(real, TAPS_A_ROUND),
      () => timesOf(floor, TAPS_A_ROUND),
    );
    const at = (share: number) =>
      results.map(({ value, floor: least }) => ({ value: percentile(value, share), floor: percentile(least, share) }));
    return [
      lineWithFloor('tap to the last of 100 pages, p50', 'ms', 'ratio ≤ 1.3', at(0.5)),
      lineWithFloor('tap to the last of 100 pages, p99', 'ms', 'ratio ≤ 2', at(0.99)),
    ];
  });
}

async function timesOf(side: TapSide, taps: number): Promise<readonly number[]> {
  const times: number[] = [];
  for (let tap = 0; tap < taps; tap += 1) {
    const tapper = side.pages[tap % side.pages.length];
    assert(tapper !== undefined, 'there are pages');
    times.push(await tapToLast(side, tapper));
  }
  return times;
}

const RUSH_PAGES = 200;
const RUSH_PHONES = 50;
const RUSH_TAP_EVERY_MS = 60;
const RUSH_TAPS = 160;

interface Rush {
  readonly firstQuarterMs: number;
  readonly lastQuarterMs: number;
  readonly p99Ms: number;
  readonly mostWaiting: number;
}

/** 1 000 taps a minute from 50 phones, with 200 pages: whether they wait longer and longer. */
export function rush(rounds: number): Promise<readonly Line[]> {
  return withBothSides(RUSH_PAGES, async (real, floor) => {
    const results = await interleaved(
      rounds,
      () => rushOn(real),
      () => rushOn(floor),
    );
    const growth = ({ firstQuarterMs, lastQuarterMs }: Rush): number => lastQuarterMs / firstQuarterMs;
    return [
      lineWithFloor(
        '1 000 taps a minute, 200 pages: last quarter to first',
        'times',
        '≤ 1.2',
        results.map(({ value, floor: least }) => ({ value: growth(value), floor: growth(least) })),
      ),
      lineWithFloor(
        '1 000 taps a minute, 200 pages: tap to outcome, p99',
        'ms',
        'below 60 ms, the time between taps',
        results.map(({ value, floor: least }) => ({ value: value.p99Ms, floor: least.p99Ms })),
      ),
      lineWithFloor(
        '1 000 taps a minute, 200 pages: most taps waiting at once',
        'taps',
        '≤ 5',
        results.map(({ value, floor: least }) => ({ value: value.mostWaiting, floor: least.mostWaiting })),
      ),
    ];
  });
}

async function rushOn(side: TapSide): Promise<Rush> {
  await pause(200);
  const times: number[] = Array.from({ length: RUSH_TAPS }, () => Infinity);
  const waiting = new Set<number>();
  let mostWaiting = 0;
  for (const page of side.pages) page.onEvents = () => {};
  for (let tap = 0; tap < RUSH_TAPS; tap += 1) {
    const phone = side.pages[tap % RUSH_PHONES];
    assert(phone !== undefined, 'there are phones');
    const startMs = performance.now();
    waiting.add(tap);
    mostWaiting = Math.max(mostWaiting, waiting.size);
    // The same phone taps again only three seconds later.
    phone.onOutcome = () => {
      waiting.delete(tap);
      times[tap] = performance.now() - startMs;
    };
    side.tap(phone);
    await pause(RUSH_TAP_EVERY_MS - (performance.now() - startMs));
  }
  const endMs = performance.now() + 10_000;
  while (waiting.size > 0 && performance.now() < endMs) await pause(10);
  assert(
    side.pages.every((page) => !page.isLost),
    'a page was dropped',
  );
  const quarter = RUSH_TAPS / 4;
  return {
    firstQuarterMs: median(times.slice(0, quarter)),
    lastQuarterMs: median(times.slice(-quarter)),
    p99Ms: percentile(times, 0.99),
    mostWaiting,
  };
}

function withBothSides<Value>(pages: number, run: (real: TapSide, floor: TapSide) => Promise<Value>): Promise<Value> {
  return inTemporaryFolder(async (folder) => {
    const real = await realSide(folder, pages);
    try {
      const [first] = real.pages;
      assert(first !== undefined, 'there are pages');
      await tapToLast(real, first);
      const floor = await floorSide(folder, real);
      try {
        return await run(real, floor);
      } finally {
        await floor.end();
      }
    } finally {
      await real.end();
    }
  });
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, Math.max(0, ms)));
}
