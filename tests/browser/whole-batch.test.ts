import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { INSECURE_HOST, launchForHouse, openDevice, type DevicePage } from './support/house-pages.ts';
import { startServer, type RealServer } from './support/real-server.ts';

/** Fast enough that rests end and calls sound while the test goes on, slow enough that a step is not lost under the thumb. */
const PACE = 60;
/** Steps that the longest way of the demo has, with room to spare. */
const MOST_TAPS = 60;
const LOOK_EVERY_MS = 25;
const LOOKS_FOR_A_TAP = 40;

let browser: Browser;
let server: RealServer;
let dataFolder: string;
let wall: DevicePage;
let bench: DevicePage;
let oven: DevicePage;

beforeAll(async () => {
  dataFolder = await mkdtemp(join(tmpdir(), 'ovenward-browser-'));
  [browser, server] = await Promise.all([launchForHouse(), startServer(dataFolder, 0, PACE)]);
  wall = await openDevice(browser, `http://localhost:${server.port}/wall`, 1920, 1080);
  bench = await openDevice(browser, `http://${INSECURE_HOST}:${server.port}/phone`, 390, 844);
  oven = await openDevice(browser, `http://localhost:${server.port}/phone`, 390, 844);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  await rm(dataFolder, { recursive: true, force: true });
});

describe('B1 a demo batch goes from weighing to packing on a wall and two phones', () => {
  test('the phone at the bench runs on a host name that is no secure context', async () => {
    expect(await bench.page.evaluate(() => window.isSecureContext)).toBe(false);
    await row(bench.page, 'M1').waitFor();
    await row(oven.page, 'M1').waitFor();
  });

  test('the wall says that this is no real day, and shows the first call', async () => {
    await wall.page.getByText(`PACE ×${PACE}`).waitFor();
    await wall.page.locator('wall-row', { hasText: 'C1' }).first().waitFor();
  });

  test('two phones tap the milk buns on, from one mix to two cuts that go their own ways', async () => {
    await tapOn(bench.page, 'M1', (workpiece) => workpiece.ending === 'divided');
    const state = await stateOf(server);
    const cuts = Object.values(state.workpieces).filter((workpiece) => workpiece.parentId === byTag(state, 'M1')?.id);
    expect(cuts.map((cut) => [cut.tag, cut.productId, cut.pieces])).toEqual([
      ['M1a', 'milk-bun', 30],
      ['M1b', 'custard-bun', 30],
    ]);
    await row(oven.page, 'M1a').waitFor();
    await wall.page.getByText('M1a').first().waitFor();
    await tapOn(oven.page, 'M1a', (workpiece) => workpiece.ending === 'finished');
    await tapOn(bench.page, 'M1b', (workpiece) => workpiece.ending === 'finished');
    const done = await stateOf(server);
    expect(byTag(done, 'M1a')?.ending).toBe('finished');
    expect(byTag(done, 'M1b')?.ending).toBe('finished');
    expect(Object.values(done.workpieces).flatMap((workpiece) => (workpiece.finishedMs === null ? [] : workpiece.slotIds))).toEqual([]);
    await wall.page.getByText('M1a', { exact: true }).waitFor({ state: 'detached' });
  });

  test('a little more, heard and undo do what they say', async () => {
    await openCard(bench.page, 'C1');
    const before = byTag(await stateOf(server), 'C1');
    await press(bench.page, /^C1 /, async () => byTag(await stateOf(server), 'C1')?.lastCommandId !== before?.lastCommandId);
    await press(bench.page, /^Undo/, async () => byTag(await stateOf(server), 'C1')?.lastCommandId === before?.lastCommandId);
    const { call: _called, ...withoutCall } = byTag(await stateOf(server), 'C1') ?? {};
    const { call: _calledBefore, ...beforeWithoutCall } = before ?? {};
    expect(withoutCall).toEqual(beforeWithoutCall);
    await backToList(bench.page);
  });

  test('what calls is sounded by the wall, and the journal knows', async () => {
    await eventually(async () => (await eventsOf(server)).some(({ event }) => event.type === 'callSounded'));
    const sounded = (await eventsOf(server)).filter(({ event }) => event.type === 'callSounded');
    expect(new Set(sounded.map(({ deviceId }) => deviceId)).size).toBe(1);
  });
});

describe('B2 the power goes', () => {
  test('the pages count on and say so, two phones keep a tap on one step, and it counts once', async () => {
    await Promise.all([openCard(bench.page, 'R1'), openCard(oven.page, 'R1')]);
    const before = await stateOf(server);
    const rye = byTag(before, 'R1');
    await server.kill();
    await wall.page.getByText('NO LINK').first().waitFor();
    await bench.page
      .getByText(/No link since/)
      .first()
      .waitFor();
    const keptOn = (page: Page): Promise<boolean> =>
      page
        .getByText(/1 tap kept/)
        .first()
        .isVisible();
    await Promise.all([bench, oven].map(({ page }) => press(page, /^R1 /, () => keptOn(page))));

    server = await startServer(dataFolder, server.port, PACE);
    await wall.page.getByText('NO LINK').first().waitFor({ state: 'detached' });
    // Whoever came second is told what was done, when and by whom.
    const notes = [bench, oven].map(({ page }) => page.locator('answer-note p'));
    await Promise.race(notes.map((note) => note.waitFor()));
    const words = (await Promise.all(notes.map((note) => note.allTextContents()))).flat();
    expect(words).toHaveLength(1);
    expect(words[0]).toMatch(/^R1 .+: done \d\d:\d\d on phone \d+\.$/);

    const after = byTag(await stateOf(server), 'R1');
    const begun = Object.keys(after?.steps ?? {}).filter(
      (stepId) => rye?.steps[stepId] === undefined || rye.steps[stepId]?.status !== after?.steps[stepId]?.status,
    );
    const done = (await eventsOf(server)).filter(
      ({ event }) => event.type === 'stepDone' && event.workpieceId === rye?.id && begun.includes(event.stepId),
    );
    expect(new Set(done.map(({ commandId }) => commandId)).size).toBe(1);
    expect(new Set(done.map(({ event }) => (event.type === 'stepDone' ? event.stepId : ''))).size).toBe(done.length);
    await Promise.all(
      [bench, oven].map(({ page }) =>
        page
          .getByText(/tap kept|taps kept/)
          .first()
          .waitFor({ state: 'detached' }),
      ),
    );
  });

  test('what was there before is there after, and calls that fell due meanwhile sound', async () => {
    const events = await eventsOf(server);
    expect(events.map(({ sequence }) => sequence)).toEqual(events.map((_event, index) => index + 1));
    const restarted = events.length;
    await eventually(async () => (await eventsOf(server)).slice(restarted - 20).some(({ event }) => event.type === 'callSounded'));
  });

  test('nothing went wrong in any page, and Ctrl-C ends in good order', async () => {
    expect([wall.faults, bench.faults, oven.faults]).toEqual([[], [], []]);
    expect(await server.stop()).toBe(0);
  });
});

function row(page: Page, tag: string): ReturnType<Page['locator']> {
  return page.locator('phone-row').filter({ has: page.getByText(tag, { exact: true }) });
}

async function openCard(page: Page, tag: string): Promise<void> {
  await backToList(page);
  await tapUntil(
    page,
    () => row(page, tag).getByRole('button').click(),
    () => page.locator('card-actions, ways-list').isVisible(),
  );
}

async function backToList(page: Page): Promise<void> {
  const back = page.getByRole('button', { name: /Doughs/ });
  if ((await back.count()) === 0) return;
  await tapUntil(
    page,
    () => back.click(),
    async () => (await page.locator('card-actions, ways-list').count()) === 0,
  );
}

/** Presses a button of the card until what it is for has come about. */
async function press(page: Page, name: RegExp, isThere: () => Promise<boolean>): Promise<void> {
  await tapUntil(page, () => page.getByRole('button', { name }).first().click(), isThere);
}

/** Taps as a person does: where the guard let a tap go because something had just moved, once more. */
async function tapUntil(page: Page, tap: () => Promise<void>, isThere: () => Promise<boolean>): Promise<void> {
  do {
    await settled(page);
    await tap();
    await within(LOOKS_FOR_A_TAP, isThere);
  } while (!(await isThere()));
}

/** The guard against aprons takes two taps within 600 ms for one, and lets nothing through for 400 ms after something moved. */
async function settled(page: Page): Promise<void> {
  await page.waitForTimeout(650);
}

/** Taps a dough's wide button until it stands as wanted. */
async function tapOn(page: Page, tag: string, isThere: (workpiece: Workpiece) => boolean): Promise<void> {
  await openCard(page, tag);
  for (let taps = 0; taps < MOST_TAPS; taps += 1) {
    const before = byTag(await stateOf(server), tag);
    if (before === undefined) throw new Error(`${tag} is not on the floor`);
    if (isThere(before)) {
      await backToList(page);
      return;
    }
    await press(page, new RegExp(`^${tag} `), async () => byTag(await stateOf(server), tag)?.lastCommandId !== before.lastCommandId);
  }
  throw new Error(`${tag} did not get there in ${MOST_TAPS} taps`);
}

async function stateOf({ port }: RealServer): Promise<FloorState> {
  const answer = (await (await fetch(`http://127.0.0.1:${port}/api/state`)).json()) as { state: FloorState };
  return answer.state;
}

async function eventsOf({ port }: RealServer): Promise<readonly RecordedEvent[]> {
  const all: RecordedEvent[] = [];
  for (;;) {
    const answer = (await (await fetch(`http://127.0.0.1:${port}/api/events?after=${all.length}`)).json()) as { events: RecordedEvent[] };
    all.push(...answer.events);
    if (answer.events.length === 0) return all;
  }
}

function byTag(state: FloorState, tag: string): Workpiece | undefined {
  return Object.values(state.workpieces).find((workpiece) => workpiece.tag === tag);
}

/** Polls a condition of another process until it holds; the suite's time limit is the only clock. */
async function eventually(holds: () => Promise<boolean>): Promise<void> {
  await within(Number.POSITIVE_INFINITY, holds);
}

/** Polls a condition so many times at most. */
async function within(looks: number, holds: () => Promise<boolean>): Promise<void> {
  for (let look = 0; look < looks && !(await holds()); look += 1) await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS));
}
