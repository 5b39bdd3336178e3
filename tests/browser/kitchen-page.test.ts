import { readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { FloorState } from '../../shared/floor/state.ts';
import { measurePage } from './harness/measure-page.ts';
import { INSECURE_HOST, launchForHouse, openDevice, type DevicePage } from './support/house-pages.ts';
import { startServer, type RealServer } from './support/real-server.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** WCAG 2.2, 1.4.6: contrast, enhanced. */
const LEAST_CONTRAST = 7;
const LEAST_TEXT_PX = 16;

let browser: Browser;
let server: RealServer;
let dataFolder: string;
let desk: DevicePage;
let phone: DevicePage;

beforeAll(async () => {
  dataFolder = await mkdtemp(join(tmpdir(), 'ovenward-kitchen-'));
  [browser, server] = await Promise.all([launchForHouse(), startServer(dataFolder, 0, 1)]);
  [desk, phone] = await Promise.all([
    openDevice(browser, `http://localhost:${server.port}/kitchen`, 1920, 1080),
    openDevice(browser, `http://${INSECURE_HOST}:${server.port}/kitchen`, 390, 844),
  ]);
  await Promise.all([thing(desk.page, 'mixer spiral').waitFor(), thing(phone.page, 'mixer spiral').waitFor()]);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  await rm(dataFolder, { recursive: true, force: true });
});

describe('D37 the kitchen is drawn as it stands and edited there', () => {
  test('everything of the house is there, legible, within the page, and axe finds nothing', async () => {
    const { kitchen } = await stateOf();
    const slots = kitchen?.document.ovens.flatMap((oven) => oven.decks.flatMap((deck) => deck.slots)) ?? [];
    for (const slot of slots) expect(await thing(desk.page, `slot ${slot.id}`).count()).toBe(1);
    for (const device of [desk, phone]) {
      await thing(device.page, 'mixer spiral').click();
      await device.page.locator('thing-panel h2').waitFor();
      await expectLegible(device.page);
      expect(await axeFaults(device.page)).toEqual([]);
    }
  });

  test('what is set and blocked on the spot shows on every device, by keyboard as well', async () => {
    await thing(desk.page, 'deck top').focus();
    await desk.page.keyboard.press('Enter');
    const set = desk.page.locator('spot-actions');
    await set.locator('input').fill('251');
    await desk.page.getByRole('button', { name: 'Set it' }).press('Enter');
    await thing(phone.page, 'deck top').getByText('251 °C').waitFor();
    await thing(desk.page, 'mixer planetary').click();
    await desk.page.getByRole('button', { name: /cleaning$/ }).click();
    await thing(phone.page, 'mixer planetary')
      .getByText(/^cleaning till /)
      .waitFor();
    await desk.page.getByRole('button', { name: 'Free it' }).click();
    await thing(phone.page, 'mixer planetary')
      .getByText(/^cleaning/)
      .waitFor({ state: 'detached' });
    await desk.page.keyboard.press('Escape');
    expect(await desk.page.locator('thing-panel').count()).toBe(0);
    expect(await thing(desk.page, 'mixer planetary').evaluate((element) => element.matches(':focus'))).toBe(true);
  });

  test('a change is kept as the next version, and put back where somebody thinks better of it', async () => {
    await thing(desk.page, 'vessel tray').click();
    await field(desk.page, 'kitchen.vessels[3].count').fill('14');
    await desk.page.getByRole('button', { name: 'Put back as it was' }).click();
    await thing(desk.page, 'vessel tray').getByText('10 in all').waitFor();
    expect((await stateOf()).kitchen?.version).toBe(1);
    await field(desk.page, 'kitchen.vessels[3].count').fill('14');
    await keep(desk.page);
    await thing(phone.page, 'vessel tray').getByText('14 in all').waitFor();
    expect((await stateOf()).kitchen).toMatchObject({ version: 2, document: { vessels: { 3: { count: 14 } } } });
    await desk.page.locator('draft-bar .bar').waitFor({ state: 'detached' });
  });

  test('what cannot be is told at its field, and nothing is kept', async () => {
    await thing(desk.page, 'mixer spiral').click();
    const least = field(desk.page, 'kitchen.mixers[0].leastG');
    await least.fill('50');
    await keep(desk.page);
    const faulty = desk.page.locator('kitchen-field[data-field="kitchen.mixers[0].leastG"] .fault');
    await faulty.getByText('the least load is more than the most').waitFor();
    await desk.page.locator('draft-bar').getByText('Spiral: the least load is more than the most').waitFor();
    expect(await least.getAttribute('aria-invalid')).toBe('true');
    await least.fill('');
    await faulty.getByText('a number is needed').waitFor();
    expect((await stateOf()).kitchen?.version).toBe(2);
    expect(await axeFaults(desk.page)).toEqual([]);
    await desk.page.getByRole('button', { name: 'Put back as it was' }).click();
  });

  test('of two who edit at once the second takes the newer, with their own changes on it', async () => {
    await thing(phone.page, 'station bench').click();
    await field(phone.page, 'kitchen.stations[1].hands').fill('3');
    await desk.page.getByRole('button', { name: 'Add a deck to Hearth oven' }).click();
    await keep(desk.page);
    await phone.page.getByText('Somebody else has changed this meanwhile.').waitFor();
    await expectLegible(phone.page);
    await phone.page.getByRole('button', { name: 'Take theirs, with my changes on it' }).click();
    await keep(phone.page);
    await thing(desk.page, 'station bench').getByText('3 hands').waitFor();
    const { kitchen } = await stateOf();
    expect(kitchen?.version).toBe(4);
    expect(kitchen?.document.ovens[1]?.decks).toHaveLength(2);
  });

  test('the settings of the house change how everything reads', async () => {
    await phone.page.getByRole('button', { name: 'House and settings' }).click();
    await phone.page.getByText(/Local codes and licensed advice come before any of these/).waitFor();
    await phone.page.locator('kitchen-field[data-field="house.units.temperature"] select').selectOption('F');
    await field(phone.page, 'house.zone').fill('Europe/Nowhere');
    await keep(phone.page);
    await phone.page
      .locator('kitchen-field .fault')
      .getByText(/there is no time zone "Europe\/Nowhere"/)
      .waitFor();
    await field(phone.page, 'house.zone').fill('Europe/London');
    await keep(phone.page);
    // 390 °C · 9/5 + 32
    await thing(desk.page, 'deck hearth').getByText('734 °F').waitFor();
    expect((await stateOf()).house).toMatchObject({ version: 2, document: { units: { temperature: 'F' } } });
  });

  test('without its server the page says so, and shows what it knows', async () => {
    const { port } = server;
    await server.kill();
    await desk.page.getByText(/^NO LINK since /).waitFor();
    await thing(desk.page, 'mixer spiral').waitFor();
    server = await startServer(dataFolder, port, 1);
    await desk.page.getByText(/^NO LINK since /).waitFor({ state: 'detached' });
    expect([...desk.faults, ...phone.faults]).toEqual([]);
  });
});

function thing(page: Page, key: string): Locator {
  return page.locator(`[data-thing="${key}"]`);
}

function field(page: Page, path: string): Locator {
  return page.locator(`kitchen-field[data-field="${path}"] input`);
}

async function keep(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Keep changes' }).click();
}

async function stateOf(): Promise<FloorState> {
  const answer = await fetch(`http://localhost:${server.port}/api/state`);
  return ((await answer.json()) as { readonly state: FloorState }).state;
}

async function expectLegible(page: Page): Promise<void> {
  const texts = await page.evaluate(measurePage);
  expect(texts.length).toBeGreaterThan(40);
  const { width } = page.viewportSize() ?? { width: 0 };
  expect(texts.filter((text) => text.left < 0 || text.right > width).map((text) => text.text)).toEqual([]);
  expect(texts.filter((text) => text.sizePx < LEAST_TEXT_PX).map((text) => text.text)).toEqual([]);
  expect(texts.filter((text) => text.contrast < LEAST_CONTRAST).map((text) => [text.text, text.contrast])).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
}

async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const { violations } = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run(context: Document, options: RunOptions): Promise<AxeResults> } };
    return axe.run(document, { resultTypes: ['violations'] });
  });
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id} ${JSON.stringify(target)}`));
}
