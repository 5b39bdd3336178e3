import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DAY_SECTIONS, ORDERS, PLANNING, READING } from '../../display/words/en/day.ts';
import { SHEET_WORDS } from '../../display/words/en/day-sheet.ts';
import { NUMBERS } from '../../display/words/en/numbers.ts';
import { PANELS } from '../../display/words/en/panels.ts';
import { PHONE } from '../../display/words/en/phone.ts';
import type { Order } from '../../shared/documents/order.ts';
import type { MovedStep, PlannedStep } from '../../shared/floor/events.ts';
import { plannedStepOf } from '../../shared/floor/planned-step.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { proposalSchema, type ProposalDone } from '../../shared/plan/plan-api.ts';
import { assert } from '../../shared/result.ts';
import { openClockedHouse, SATURDAY_MS, type ClockedHouse } from './support/clocked-house.ts';
import { eventsOf, press } from './support/floor-of-server.ts';
import { launchForHouse, openDevice, type DevicePage } from './support/house-pages.ts';

const MINUTE_MS = 60_000;
/** Longer than the usual one-touch minutes, and than any rest of the dough gives way. */
const MORE_MIN = 45;
/** A whole day is sought meanwhile, on a machine that may be busy. */
const PATIENCE_MS = 20_000;

let browser: Browser;
let bakehouse: ClockedHouse;
let folder: string;
let desk: DevicePage;
let wall: DevicePage;
let mixer: DevicePage;
let oven: DevicePage;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'ovenward-day-'));
  [browser, bakehouse] = await Promise.all([launchForHouse(), openClockedHouse(folder, SATURDAY_MS)]);
  const at = (page: string): string => `http://localhost:${bakehouse.port}/${page}`;
  [desk, wall, mixer, oven] = await Promise.all([
    openDevice(browser, at('day'), 1280, 800),
    openDevice(browser, at('wall'), 1920, 1080),
    openDevice(browser, at('phone'), 390, 844),
    openDevice(browser, at('phone'), 390, 844),
  ]);
  for (const { page } of [desk, wall, mixer, oven]) page.setDefaultTimeout(PATIENCE_MS);
});

afterAll(async () => {
  await browser.close();
  await bakehouse.close();
  await rm(folder, { recursive: true, force: true });
});

describe('I37 from pasted orders to a day that runs, with the server that people start', () => {
  test('rows of a spreadsheet become orders, batches, a plan, and the day that the floor follows', async () => {
    const rows = ['Product\tPieces\tReady by', 'Milk buns, plain\t24\t8:30', 'Olive flatbread\t6\t9:00', 'Cheese boats\t8\t9:30'];
    await desk.page.getByLabel(READING.box).fill(rows.join('\n'));
    await button(READING.take(3)).click();
    await desk.page.getByText(ORDERS.placed(3)).waitFor();
    await button(DAY_SECTIONS.plan).click();
    await button(PLANNING.plan).click();
    await desk.page.getByRole('progressbar').waitFor();
    await Promise.all([standAt(mixer.page, 'Mixer'), standAt(oven.page, 'Oven'), desk.page.locator('plan-compare table').waitFor()]);
    expect(await desk.page.getByRole('progressbar').count()).toBe(0);
    expect(await figure('ordersOnTime', 0)).toBe('3 of 3');
    expect(floor().plan).toBeNull();
    await button(PLANNING.keepOne(PLANNING.proposal('A'))).click();
    await desk.page.getByText(PLANNING.kept).waitFor();
    expect(
      Object.values(floor().workpieces)
        .map(({ tag }) => tag)
        .sort(),
    ).toEqual(['Cf1', 'Ch1', 'M1', 'O1']);
  });

  test('the wall has every dough with the clock at which it is planned into the oven', async () => {
    for (const [tag, name] of [
      ['M1', 'Milk buns, plain'],
      ['O1', 'Olive flatbread'],
      ['Ch1', 'Cheese boats'],
    ] as const) {
      const [bake] = bakesOf(tag);
      assert(bake !== undefined, `${tag} is to be baked`);
      await wall.page.locator('wall-row', { hasText: tag }).waitFor();
      await strip(name).getByText(clock(bake.plannedStartMs), { exact: true }).waitFor();
      await wall.page.locator('wall-ovens').getByText(tag, { exact: false }).first().waitFor();
    }
  });

  test('when the first planned step is due a phone says that it has begun, and the day sheet shows it', async () => {
    const weigh = planned('O1', 'weigh');
    expect(Math.min(...Object.values(floor().workpieces).map(({ plannedStartMs }) => plannedStartMs))).toBe(weigh.plannedStartMs);
    await bakehouse.pass(weigh.plannedStartMs - bakehouse.house.clock.nowMs());
    const bar = desk.page.locator(`day-sheet-row [data-key="${byTag('O1').id}|||weigh"]`);
    expect(await bar.getAttribute('aria-label')).toContain(SHEET_WORDS.standings.planned);
    await press(mixer.page, /\bO1\b/, () => mixer.page.locator('card-actions').isVisible());
    await press(mixer.page, new RegExp(`^${PHONE.started}`), async () => byTag('O1').steps['weigh']?.status === 'started');
    await expect.poll(() => bar.getAttribute('aria-label')).toContain(SHEET_WORDS.standings.begun);
    expect(byTag('O1').steps['weigh']?.stationId).toBe('mixer');
  });
});

describe('I38 a dough that takes longer', () => {
  test('the plan moves; the page says what and why, a line each; the wall follows; another station’s phone is left alone', async () => {
    const before = {
      bake: bakesOf('O1')[0],
      movedMs: floor().plan?.movedMs,
      sequence: floor().sequence,
      spoken: await spokenOn(oven.page),
    };
    const { page } = mixer;
    await press(page, PHONE.other, () => page.getByRole('button', { name: PANELS.more, exact: true }).isVisible());
    await press(page, PANELS.more, () => page.getByRole('button', { name: NUMBERS.minutes, exact: true }).isVisible());
    await press(page, NUMBERS.minutes, () => page.locator('minutes-panel').isVisible());
    await press(page, `+${MORE_MIN}`, async () => byTag('O1').steps['weigh']?.moreMin === MORE_MIN);

    const news = desk.page.locator('plan-news');
    await expect.poll(() => movedOf('O1').length).toBeGreaterThan(0);
    for (const step of movedOf('O1').slice(0, 3)) {
      const line = news.locator('li', { hasText: `${clock(step.fromMs)} → ${clock(step.toMs)}` }).filter({ hasText: 'O1' });
      await line.first().waitFor();
      // Tag and step, from when to when, and why.
      expect(await line.first().locator('.soft').innerText()).not.toBe('');
    }
    const after = bakesOf('O1')[0];
    assert(before.bake !== undefined && after !== undefined, 'it is still to be baked');
    expect(after.plannedStartMs).toBeGreaterThan(before.bake.plannedStartMs);
    await strip('Olive flatbread').getByText(clock(after.plannedStartMs), { exact: true }).waitFor();
    expect(await strip('Olive flatbread').getByText(clock(before.bake.plannedStartMs), { exact: true }).count()).toBe(0);

    // The other phone has heard of it, or it would be left alone by accident.
    await oven.page.locator('phone-row', { hasText: 'O1' }).first().waitFor();
    expect(await spokenOn(oven.page)).toEqual(before.spoken);
    const since = (await eventsOf(bakehouse)).filter(({ sequence }) => sequence > before.sequence).map(({ event }) => event.type);
    expect(since.filter((type) => type === 'planAdopted').length).toBeGreaterThan(0);
    expect(since.filter((type) => type === 'callRaised' || type === 'callSounded')).toEqual([]);
  });

  test('when nobody taps and the clock goes on, what is late to begin moves as well', async () => {
    const weigh = planned('M1', 'weigh');
    await bakehouse.pass(weigh.plannedStartMs + 25 * MINUTE_MS - bakehouse.house.clock.nowMs());
    await expect.poll(() => planned('M1', 'weigh').plannedStartMs).toBeGreaterThan(weigh.plannedStartMs);
    const [step] = movedOf('M1');
    assert(step !== undefined, 'it is told that it moved');
    await desk.page
      .locator('plan-news li', { hasText: `${clock(step.fromMs)} → ${clock(step.toMs)}` })
      .filter({ hasText: 'M1' })
      .first()
      .waitFor();
  });
});

describe('I39 a day that does not fit', () => {
  test('what is late is named, with its cause; a remedy is a button, and the day with it is compared', async () => {
    const ready = bakehouse.house.clock.nowMs() + 120 * MINUTE_MS;
    await button(/^Orders/).click();
    await desk.page.getByLabel(READING.box).fill(`Milk buns, plain\t45\t${clock(ready)}`);
    await button(READING.take(1)).click();
    await desk.page.getByText(ORDERS.placed(1)).waitFor();
    const order = Object.values(floor().orders).find(({ pieces }) => pieces === 45);
    assert(order !== undefined, 'the order is taken');
    await button(DAY_SECTIONS.plan).click();
    const before = await proposedBy(() => button(PLANNING.plan).click());
    expect(lateMin(before, order)).toBeGreaterThan(0);
    const reason = desk.page.locator('plan-reasons ol > li', { has: desk.page.locator('p.late', { hasText: '45' }) });
    // The trouble, then its cause, then what would help.
    expect(await reason.locator('> p').count()).toBe(2);
    const after = await proposedBy(() => reason.locator('li').getByRole('button').first().click());
    expect(after.ask.changes.length + after.ask.pins.length + after.ask.firstOrderIds.length).toBeGreaterThan(0);
    expect(lateMin(after, order)).toBeLessThan(lateMin(before, order));
    await expect.poll(() => desk.page.locator('plan-compare [data-figure=latestMin] td').count()).toBe(3);
    // In force, as it was ordered, and with the change.
    expect(await figure('latestMin', 2)).not.toBe(await figure('latestMin', 1));
    // Nothing that the planner can tell of the plan in force is left unsaid.
    expect(await desk.page.locator('plan-compare tbody tr > td:nth-of-type(1)').allInnerTexts()).not.toContain(PLANNING.unknown);
    expect([desk, wall, mixer, oven].map(({ faults }) => faults)).toEqual([[], [], [], []]);
  });
});

function floor(): FloorState {
  return bakehouse.house.floor.state;
}

const button = (name: string | RegExp): Locator => desk.page.getByRole('button', { name, exact: typeof name === 'string' });

function byTag(tag: string): Workpiece {
  const found = Object.values(floor().workpieces).find((workpiece) => workpiece.tag === tag);
  assert(found !== undefined, `${tag} is on the floor`);
  return found;
}

function planned(tag: string, stepId: string): PlannedStep {
  const found = plannedStepOf(floor(), byTag(tag), stepId);
  assert(found !== null, `${stepId} of ${tag} is planned`);
  return found;
}

/** When it is in the oven by the plan, first to last. */
function bakesOf(tag: string): readonly PlannedStep[] {
  const steps = floor().plan?.steps[byTag(tag).id] ?? [];
  return steps
    .filter(({ stepId }) => /bake/.test(stepId) && !/load|out|cool/.test(stepId))
    .sort((a, b) => a.plannedStartMs - b.plannedStartMs);
}

function movedOf(tag: string): readonly MovedStep[] {
  return (floor().plan?.moved ?? []).filter(({ workpieceId }) => workpieceId === byTag(tag).id);
}

/** A clock time of the demo house, which keeps UTC in March. */
function clock(atMs: number): string {
  return new Date(atMs).toISOString().slice(11, 16);
}

/** The way of a dough on the wall, with the clocks of its bakes. */
function strip(name: string): Locator {
  return wall.page.locator('wall-strip', { hasText: name });
}

/** A figure of the comparison, by its row and its column among the days. */
async function figure(key: string, day: number): Promise<string> {
  return (await desk.page.locator(`plan-compare [data-figure=${key}] td`).nth(day).innerText()).trim();
}

/** A phone says where it stands. */
async function standAt(page: Page, station: string): Promise<void> {
  await press(page, new RegExp(`^${PHONE.thisPhone}`), () => page.locator('device-panel').isVisible());
  const choice = page.getByRole('button', { name: station, exact: true });
  await press(page, station, async () => (await choice.getAttribute('aria-pressed')) === 'true');
  await press(page, PHONE.save, async () => (await page.locator('device-panel').count()) === 0);
}

/** Everything that a page says up, to a screen reader or to the eye. */
function spokenOn(page: Page): Promise<string[]> {
  return page.locator('[role=alert], [role=status]').allInnerTexts();
}

/** The day that something asks for, once it is found and looked at. */
async function proposedBy(ask: () => Promise<void>): Promise<ProposalDone> {
  const asked = desk.page.waitForResponse(
    (response) => response.request().method() === 'POST' && response.url().endsWith('/api/plan/proposals'),
  );
  await ask();
  const { id } = proposalSchema.parse(await (await asked).json());
  const done = await desk.page.waitForResponse(async (response) => {
    if (!response.url().endsWith(`/api/plan/proposals/${id}`) || response.request().method() !== 'GET') return false;
    return proposalSchema.parse(await response.json()).status !== 'running';
  });
  const proposal = proposalSchema.parse(await done.json());
  assert(proposal.status === 'done', `the day is planned: ${JSON.stringify(proposal)}`);
  await desk.page.locator('day-page').getByText(SHEET_WORDS.tried).waitFor();
  return proposal;
}

/** By how many minutes an order is late in a proposed day, as it was ordered there. */
function lateMin({ late }: ProposalDone, { id }: Order): number {
  return late.find(({ orderId }) => orderId === id)?.byMin ?? 0;
}
