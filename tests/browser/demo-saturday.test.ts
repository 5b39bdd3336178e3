import { randomBytes } from 'node:crypto';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { dueOf } from '../../shared/floor/due.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { idFromBytes } from '../../shared/ids.ts';
import { nextDeed, type Deed } from '../domain/support/demo-saturday.ts';
import { launchForHouse, openDevice, type DevicePage } from './support/house-pages.ts';
import { letIn } from '../support/let-in.ts';
import { startServer, type RealServer } from './support/real-server.ts';

const DEMO = fileURLToPath(new URL('../../fixtures/harbour.json', import.meta.url));
/** Half an hour a second. Twice as fast, which the house could, a slow machine's baker falls so far behind that the doughs meet in another order. */
const PACE = 1800;
/** The pages are open before the demo begins: its starts are moved on by so much. */
const AHEAD_MIN = 180;
const SHORT_NIGHT = { earliest: 120, target: 180, latest: 1080 };
/** More than the day has, refusals included. */
const MOST_ROUNDS = 800;
/** A look again where a tap came at the wrong moment. Real ms. */
const AGAIN_MS = 20;
/** What is not there by then, hours of the house later, does not come. Real ms. */
const PATIENCE_MS = 5_000;
const LOOKS_FOR_A_TAP = 25;
const MOST_TAPS = 10;
/** The guard against aprons takes two taps within 600 ms for one. */
const GUARD_MS = 650;

let browser: Browser;
let server: RealServer;
let folder: string;
let wall: DevicePage;
let phone: DevicePage;
let rounds = 0;
/** Whoever works the day by commands. */
let cookie = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'ovenward-saturday-'));
  const bakehouse = join(folder, 'harbour-later.json');
  await writeFile(bakehouse, JSON.stringify(forTheTest(JSON.parse(await readFile(DEMO, 'utf8')) as DemoFile)));
  browser = await launchForHouse();
  server = await startServer(join(folder, 'data'), 0, PACE, bakehouse);
  ({ cookie } = letIn(server.port));
  [wall, phone] = await Promise.all([
    openDevice(browser, `http://localhost:${server.port}/wall`, 1920, 1080),
    openDevice(browser, `http://localhost:${server.port}/phone`, 390, 844),
  ]);
  for (const { page } of [wall, phone]) page.setDefaultTimeout(PATIENCE_MS);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  await rm(folder, { recursive: true, force: true });
});

describe('D38 the demo Saturday on a wall and a phone, from Friday night to closing', () => {
  test('the levain is the first call', async () => {
    await workUntil((deed) => deed.tag === 'L1');
    await wall.page.locator('wall-row', { hasText: 'L1' }).getByText('FEED').waitFor();
    await row('L1').getByText('FEED', { exact: true }).waitFor();
  });

  test('the cheese filling stands in the cold, and the phone says what it joins and when', async () => {
    await workUntil((_deed, state) => byTag(state, 'Cf1')?.placeId === 'cold-room');
    await row('Cf1')
      .getByText(/joins Ch1 \d\d:\d\d/)
      .waitFor();
  });

  test('when the first country dough is weighed out, the phone says from when to when the levain is ripe', async () => {
    const state = await workUntil((deed) => deed.tag === 'C1' && deed.stepId === 'weigh');
    expect(byTag(state, 'L1')?.grams).toBe(7400);
    await row('L1')
      .getByText(/ripe \d\d:\d\d–\d\d:\d\d/)
      .waitFor();
  });

  test('the rye is in the oven in two loads, each with its tag', async () => {
    await workUntil((_deed, state) => (byTag(state, 'R1·2')?.slotIds ?? []).length > 0);
    for (const tag of ['R1·1', 'R1·2']) {
      await wall.page.locator('wall-ovens').getByText(tag).first().waitFor();
      await row(tag).waitFor();
    }
  });

  test('the retarded loaves are baked from cold by one tap on the phone', async () => {
    const state = await workUntil((deed) => deed.tag === 'C3' && deed.stepId === 'temper', 'before');
    const loaves = byTag(state, 'C3');
    const due = loaves === undefined ? null : dueOf(state, loaves);
    await pause(((due?.earliestMs ?? 0) - (await told()).houseMs) / PACE);
    await openCard('C3');
    const isLeftOut = async (): Promise<boolean> => byTag((await told()).state, 'C3')?.steps['temper']?.status === 'skipped';
    await press('Bake from cold', isLeftOut);
    expect(byTag((await told()).state, 'C3')?.steps['temper']?.reason).toBe('Bake from cold');
    await backToList();
  });

  test('when all is packed the phone ends the day, and the pot alone goes over', async () => {
    const state = await workUntil(() => false);
    const open = Object.values(state.workpieces).filter((workpiece) => workpiece.finishedMs === null);
    expect(open.map((workpiece) => workpiece.tag)).toEqual(['L1']);
    await press(/^this phone/i, () => phone.page.getByRole('button', { name: 'End of the day…' }).isVisible());
    await press('End of the day…', () => phone.page.getByText('Goes over into the next day').isVisible());
    expect(await phone.page.locator('day-end li strong').allTextContents()).toEqual(['L1']);
    await press(/^End \w+ now$/, async () => (await told()).state.openDates.length === 0);
    await wall.page.locator('wall-row').filter({ hasText: 'L1' }).waitFor();
    expect(await wall.page.locator('wall-row').count()).toBe(1);
    expect([wall.faults, phone.faults]).toEqual([[], []]);
  });
});

/** What of the demo file is changed for the test. */
interface DemoFile {
  readonly products: readonly { readonly way: readonly { readonly verb: string; readonly minutes: object }[] }[];
  readonly day: { readonly batches: readonly { readonly start: { readonly afterLoadMin: number } }[] };
}

/** The demo a little later, when the pages are open, and with a short night in the cold, in which nothing else happens. */
function forTheTest(file: DemoFile): DemoFile {
  const batches = file.day.batches.map((batch) => ({ ...batch, start: { afterLoadMin: batch.start.afterLoadMin + AHEAD_MIN } }));
  const products = file.products.map((product) => ({
    ...product,
    way: product.way.map((step) => (step.verb === 'retard' ? { ...step, minutes: SHORT_NIGHT } : step)),
  }));
  return { ...file, products, day: { ...file.day, batches } };
}

interface Told {
  readonly state: FloorState;
  readonly houseMs: number;
}

async function told(): Promise<Told> {
  return (await (await fetch(`http://127.0.0.1:${server.port}/api/state`)).json()) as Told;
}

/** Works on, always with what is due first, until the wanted deed is the next one and its time has come, or before that. */
async function workUntil(isWanted: (deed: Deed, state: FloorState) => boolean, when: 'then' | 'before' = 'then'): Promise<FloorState> {
  for (; rounds < MOST_ROUNDS; rounds += 1) {
    const { state, houseMs } = await told();
    const deed = nextDeed(state, houseMs);
    if (deed === null || (when === 'before' && isWanted(deed, state))) return state;
    if (deed.atMs > houseMs) await pause((deed.atMs - houseMs) / PACE);
    if (isWanted(deed, state)) return state;
    const answer = await fetch(`http://127.0.0.1:${server.port}/api/commands`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie },
      body: JSON.stringify({ commandId: idFromBytes(randomBytes(16)), command: deed.command }),
    });
    // Something was done or fell due between looking and tapping: look again.
    if (!answer.ok) await pause(AGAIN_MS);
  }
  throw new Error(`the day does not end in ${MOST_ROUNDS} commands`);
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

function row(tag: string): Locator {
  return phone.page.locator('phone-row').filter({ has: phone.page.getByText(tag, { exact: true }) });
}

function byTag(state: FloorState, tag: string): Workpiece | undefined {
  return Object.values(state.workpieces).find((workpiece) => workpiece.tag === tag);
}

async function openCard(tag: string): Promise<void> {
  await tapUntil(row(tag).getByRole('button'), () => phone.page.locator('card-actions').isVisible());
}

async function backToList(): Promise<void> {
  const back = phone.page.getByRole('button', { name: /Doughs/ });
  await tapUntil(back, async () => (await phone.page.locator('card-actions').count()) === 0);
}

function press(name: string | RegExp, isThere: () => Promise<boolean>): Promise<void> {
  return tapUntil(phone.page.getByRole('button', { name }).first(), isThere);
}

/** Taps as a person does: where the guard let a tap go because something had just moved, once more. */
async function tapUntil(button: Locator, isThere: () => Promise<boolean>): Promise<void> {
  for (let tap = 0; tap < MOST_TAPS && !(await isThere()); tap += 1) {
    await pause(GUARD_MS);
    await button.click();
    for (let look = 0; look < LOOKS_FOR_A_TAP && !(await isThere()); look += 1) await pause(AGAIN_MS);
  }
  expect(await isThere(), 'what was tapped for has come about').toBe(true);
}
