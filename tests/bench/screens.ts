import { letContextIn } from '../browser/support/house-pages.ts';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, CDPSession, Page as BrowserPage } from 'playwright-core';
import { boardRows } from '../../shared/floor/board.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { assert } from '../../shared/result.ts';
import { PROTOCOL_VERSION } from '../../shared/wire/protocol.ts';
import type { Hello } from '../../shared/wire/up.ts';
import { launchChromium, SOUND_WITHOUT_TOUCH } from '../browser/support/chromium.ts';
import { startServer } from './child.ts';
import { newId, Page } from './pages.ts';
import { freePort, HARBOUR, inTemporaryFolder } from './places.ts';
import { lineOf, lineWithFloor, type Line, type Round } from './report.ts';
import { median, percentile } from './statistics.ts';

/** So much slower than this machine the pages' processor is made: a small computer behind a screen, a phone of some years. */
const SLOWER = 4;
const BATCHES = 30;
/** A window in which the wall is watched, with a tap somewhere in the house every second. */
const WINDOW_MS = 10_000;
const TAP_EVERY_MS = 1_000;
/** Fewer events in a window would mean that the hands stood idle, and that the wall had nothing to do. */
const LEAST_EVENTS = 3;
/** What starting left behind is over by then. */
const SETTLE_MS = 6_000;
/** Texts that the floor's page writes anew each second: as many as a wall of thirty doughs has. */
const TEXTS = 60;
const PRESSES = 12;
const PRESS_EVERY_MS = 900;

/**
 * What wall and phone cost a slow browser. The wall: thirty doughs, a tap a second; its floor is a page that hears the
 * same messages and writes as many texts. The phone: from finger down to the frame with the pressed look; its floor is a
 * bare button. The browser's own throttling makes both sides four times slower.
 */
export function screens(rounds: number): Promise<readonly Line[]> {
  return inTemporaryFolder(async (folder) => {
    const bakehouse = join(folder, 'thirty.json');
    writeFileSync(bakehouse, JSON.stringify(dayOfThirty()));
    const port = await freePort();
    const server = await startServer(join(folder, 'data'), port, ['--bakehouse', bakehouse]);
    const browser = await launchChromium([SOUND_WITHOUT_TOUCH]);
    const hands = await Page.live(port, 'phone');
    try {
      const base = `http://127.0.0.1:${port}`;
      return [...(await wallLines(browser, base, hands, rounds)), ...(await phoneLines(browser, base, rounds))];
    } finally {
      hands.end();
      await browser.close();
      await server.end('SIGKILL');
    }
  });
}

function dayOfThirty(): unknown {
  const file = JSON.parse(readFileSync(HARBOUR, 'utf8')) as { day: { batches: { start: unknown }[] } };
  const models = file.day.batches;
  const batches = Array.from({ length: BATCHES }, (_, index) => ({ ...models[index % models.length], start: { afterLoadMin: index } }));
  return { ...file, day: { ...file.day, batches } };
}

interface Watched {
  readonly page: BrowserPage;
  readonly cdp: CDPSession;
}

async function wallLines(browser: Browser, base: string, hands: Page, rounds: number): Promise<readonly Line[]> {
  const wall = await watched(browser, `${base}/wall`, 1920, 1080);
  const least = await watched(browser, `${base}/health`, 1920, 1080);
  const hello: Hello = {
    type: 'hello',
    protocol: PROTOCOL_VERSION,
    page: 'wall',
    pageId: newId(),
    kitchenId: null,
    lastSequence: 0,
    sound: 'none',
    stationId: null,
  };
  await least.page.evaluate(leastThatShows, { hello: JSON.stringify(hello), texts: TEXTS });
  await workFor(base, hands, SETTLE_MS);
  const share: Round[] = [];
  const longest: Round[] = [];
  for (let round = 0; round < rounds; round += 1) {
    await Promise.all([wall, least].map(({ page }) => page.evaluate(() => window.longTasks.splice(0))));
    const before = await Promise.all([wall, least].map(taskS));
    const startMs = performance.now();
    const sequence = await sequenceOf(base);
    await workFor(base, hands, WINDOW_MS);
    assert((await sequenceOf(base)) > sequence + LEAST_EVENTS, 'the taps of the window became events');
    const windowS = (performance.now() - startMs) / 1000;
    const after = await Promise.all([wall, least].map(taskS));
    const [value = 0, floor = 0] = after.map((taken, index) => ((taken - (before[index] ?? 0)) / windowS) * 100);
    share.push({ value, floor });
    const [own = 0, other = 0] = await Promise.all([wall, least].map(({ page }) => page.evaluate(() => Math.max(0, ...window.longTasks))));
    longest.push({ value: own, floor: other });
  }
  await wall.page.context().close();
  await least.page.context().close();
  return [
    lineWithFloor(`wall of ${BATCHES} doughs, a tap a second, ${SLOWER} times slower: main thread`, '%', '< 30 %', share),
    lineOf(
      `wall of ${BATCHES} doughs: longest task in a window (0: none over 50 ms), median of windows`,
      'ms',
      'none over 50 ms',
      longest.map((round) => round.value),
    ),
    lineOf(`wall of ${BATCHES} doughs: longest task of all windows`, 'ms', 'none over 50 ms', [
      Math.max(...longest.map(({ value }) => value)),
    ]),
  ];
}

async function phoneLines(browser: Browser, base: string, rounds: number): Promise<readonly Line[]> {
  const phone = await watched(browser, `${base}/phone`, 390, 844);
  const least = await watched(browser, `${base}/health`, 390, 844);
  await least.page.evaluate(leastThatIsPressed);
  await pause(SETTLE_MS);
  const rowAt = await phone.page.locator('phone-row').nth(2).boundingBox();
  assert(rowAt !== null, 'the phone lists doughs');
  const times: Round[] = [];
  let pressed = 0;
  for (let round = 0; round < rounds; round += 1) {
    const own: number[] = [];
    const other: number[] = [];
    for (let press = 0; press < PRESSES; press += 1) {
      const mine = await pressOn(phone, rowAt.x + rowAt.width / 2, rowAt.y + rowAt.height / 2);
      const bare = await pressOn(least, 100, 100);
      own.push(mine.tookMs);
      other.push(bare.tookMs);
      if (mine.wasPressed) pressed += 1;
    }
    times.push({ value: median(own), floor: median(other) });
    times.push({ value: percentile(own, 0.95), floor: percentile(other, 0.95) });
  }
  await phone.page.context().close();
  await least.page.context().close();
  return [
    lineOf(`phone, ${SLOWER} times slower: presses whose next frame has the pressed look`, '%', '100 %', [
      (pressed / (rounds * PRESSES)) * 100,
    ]),
    lineWithFloor(
      `phone, ${SLOWER} times slower: finger down to that frame, p50`,
      'ms',
      'next frame',
      times.filter((_, index) => index % 2 === 0),
    ),
    lineWithFloor(
      `phone, ${SLOWER} times slower: finger down to that frame, p95`,
      'ms',
      '≤ 50 ms',
      times.filter((_, index) => index % 2 === 1),
    ),
  ];
}

async function watched(browser: Browser, url: string, width: number, height: number): Promise<Watched> {
  const context = await browser.newContext({ viewport: { width, height }, hasTouch: true });
  await letContextIn(context, url);
  const page = await context.newPage();
  await page.addInitScript(watchPage);
  await page.goto(url);
  const cdp = await context.newCDPSession(page);
  await cdp.send('Performance.enable', { timeDomain: 'timeTicks' });
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  return { page, cdp };
}

/** Seconds that the page's main thread has spent in tasks so far. */
async function taskS({ cdp }: Watched): Promise<number> {
  const { metrics } = await cdp.send('Performance.getMetrics');
  const taken = metrics.find((metric) => metric.name === 'TaskDuration');
  assert(taken !== undefined, 'the browser says how long its tasks took');
  return taken.value;
}

/** A finger on something and off it again beside it, so that nothing is opened. */
async function pressOn({ page, cdp }: Watched, x: number, y: number): Promise<{ tookMs: number; wasPressed: boolean }> {
  await page.evaluate(() => window.presses.splice(0));
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
  await page.waitForFunction(() => window.presses.length > 0);
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchCancel', touchPoints: [] });
  await pause(PRESS_EVERY_MS / 10);
  const [press] = await page.evaluate(() => window.presses);
  assert(press !== undefined, 'the press was seen');
  return press;
}

/** Hands somewhere in the house: a tap a second, on whatever can go on. */
async function workFor(base: string, hands: Page, forMs: number): Promise<void> {
  const endMs = performance.now() + forMs;
  while (performance.now() < endMs) {
    const command = await nextTap(base);
    if (command !== null) hands.tap(command);
    hands.ping();
    await pause(TAP_EVERY_MS);
  }
}

async function nextTap(base: string): Promise<ClientCommand | null> {
  const { state, houseMs } = (await (await fetch(`${base}/api/state`)).json()) as { state: FloorState; houseMs: number };
  const rows = boardRows(state, houseMs).filter((row) => row.phase !== 'resting');
  const row = rows[Math.floor(houseMs / TAP_EVERY_MS) % Math.max(1, rows.length)];
  if (row === undefined) return null;
  const onStep = { workpieceId: row.workpieceId, stepId: row.stepId };
  return row.startedMs === null || row.phase === 'planned' ? { type: 'startStep', ...onStep } : { type: 'finishStep', ...onStep };
}

async function sequenceOf(base: string): Promise<number> {
  return ((await (await fetch(`${base}/api/state`)).json()) as { sequence: number }).sequence;
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

declare global {
  interface Window {
    longTasks: number[];
    presses: { tookMs: number; wasPressed: boolean }[];
  }
}

/** Runs in the page before anything of its own: takes note of long tasks, and of what the first frame after a finger shows. */
function watchPage(): void {
  window.longTasks = [];
  window.presses = [];
  new PerformanceObserver((list) => window.longTasks.push(...list.getEntries().map((entry) => entry.duration))).observe({
    type: 'longtask',
  });
  window.addEventListener(
    'pointerdown',
    (event) => {
      const button = event.composedPath().find((target) => target instanceof HTMLButtonElement);
      requestAnimationFrame(() => {
        const wasPressed = button?.dataset['pressed'] !== undefined;
        // A task behind the frame's own: by then it is drawn.
        const channel = new MessageChannel();
        channel.port1.addEventListener('message', () => window.presses.push({ tookMs: performance.now() - event.timeStamp, wasPressed }));
        channel.port1.start();
        channel.port2.postMessage(null);
      });
    },
    { capture: true },
  );
}

/** Runs in the page: the least that hears a floor and shows it. */
function leastThatShows({ hello, texts }: { hello: string; texts: number }): void {
  document.body.replaceChildren(...Array.from({ length: texts }, () => document.createElement('div')));
  const lines = [...document.body.children];
  const socket = new WebSocket(`ws://${location.host}/live?page=wall`);
  let heard = 0;
  socket.addEventListener('open', () => socket.send(hello));
  socket.addEventListener('message', (event) => {
    JSON.parse(String(event.data));
    heard += 1;
  });
  setInterval(() => {
    const nowMs = Date.now();
    lines.forEach((line, index) => (line.textContent = `${heard} ${nowMs - index * 1000}`));
    socket.send(JSON.stringify({ type: 'ping', t1: performance.now() }));
  }, 1000);
}

/** Runs in the page: the least that looks pressed. */
function leastThatIsPressed(): void {
  const button = document.createElement('button');
  button.style.cssText = 'position: fixed; inset: 0; width: 100%; height: 100%';
  document.body.replaceChildren(button);
  button.addEventListener('pointerdown', () => {
    button.dataset['pressed'] = '';
    button.style.background = 'silver';
  });
  button.addEventListener('pointercancel', () => {
    delete button.dataset['pressed'];
    button.style.background = '';
  });
}
