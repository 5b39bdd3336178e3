import { existsSync } from 'node:fs';
import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { faultMessage } from '../../shared/documents/fault-facts.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { faultWords as faultInGerman } from '../../display/words/de/faults.ts';
import { KITCHEN as GERMAN } from '../../display/words/de/kitchen.ts';
import { faultWords as faultInFrench } from '../../display/words/fr/faults.ts';
import { KITCHEN as FRENCH } from '../../display/words/fr/kitchen.ts';
import { measurePage } from './harness/measure-page.ts';
import { axeFaults } from './support/axe-faults.ts';
import { letContextIn, INSECURE_HOST, launchForHouse, openDevice, type DevicePage } from './support/house-pages.ts';
import { tabTo } from './support/keyboard.ts';
import { startServer, type RealServer } from './support/real-server.ts';

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
    await desk.page.getByRole('button', { name: /^Block it: cleaning$/ }).click();
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
    const faulty = desk.page.locator('desk-field[data-field="kitchen.mixers[0].leastG"] .fault');
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
    await phone.page.locator('desk-field[data-field="house.units.temperature"] select').selectOption('F');
    await field(phone.page, 'house.zone').fill('Europe/Nowhere');
    await keep(phone.page);
    await phone.page
      .locator('desk-field .fault')
      .getByText(/there is no time zone "Europe\/Nowhere"/)
      .waitFor();
    await field(phone.page, 'house.zone').fill('Europe/London');
    await keep(phone.page);
    // 390 °C · 9/5 + 32
    await thing(desk.page, 'deck hearth').getByText('734 °F').waitFor();
    expect((await stateOf()).house).toMatchObject({ version: 2, document: { units: { temperature: 'F' } } });
  });

  test('U8 the water’s custom, the ice, what may get in and a mixer’s first rise are kept, in the house’s degrees', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'House and settings' }).click();
    await page.locator('desk-field[data-field="house.water.form"] select').selectOption('base');
    await field(page, 'house.water.iceC').fill('41');
    await keep(page);
    // Ice is at its melting point at most: 0 °C is 32 °F.
    await page.locator('desk-field[data-field="house.water.iceC"] .fault').getByText('from -22 to 32 °F').waitFor();
    await field(page, 'house.water.iceC').fill('14');
    const may = page.locator('may-contain-fields');
    await may.getByLabel('sesame').check();
    await may.getByLabel('almonds').check();
    await may.getByLabel('In your own words').fill('Seeds are milled in the same room.');
    expect(await axeFaults(page)).toEqual([]);
    await expectLegible(page);
    await keep(page);
    await page.locator('draft-bar .bar').waitFor({ state: 'detached' });
    await thing(page, 'mixer spiral').click();
    await field(page, 'kitchen.mixers[0].riseK').fill('18');
    await keep(page);
    await page.locator('draft-bar .bar').waitFor({ state: 'detached' });
    const { house, kitchen } = await stateOf();
    // (14 − 32) · 5/9 = −10 °C; a difference of 18 °F is one of 10 K.
    expect(house?.document.water).toEqual({ form: 'base', iceC: -10 });
    expect(kitchen?.document.mayContain).toEqual({ allergens: ['almond', 'sesame'], note: 'Seeds are milled in the same room.' });
    expect(kitchen?.document.mixers[0]?.riseK).toBe(10);
    await page.getByRole('button', { name: 'House and settings' }).click();
    await may.getByLabel('sesame').uncheck();
    await may.getByLabel('almonds').uncheck();
    await may.getByLabel('In your own words').fill('');
    await keep(page);
    await page.locator('draft-bar .bar').waitFor({ state: 'detached' });
    expect((await stateOf()).kitchen?.document).not.toHaveProperty('mayContain');
    await page.keyboard.press('Escape');
  });

  test('BK6 how the backups stand is told under the house’s settings, and one more is made by keyboard', async () => {
    const { page } = desk;
    await page.getByRole('button', { name: 'House and settings' }).click();
    const backups = page.locator('house-backups');
    await backups.locator('.last').waitFor();
    const before = await keptBackups();
    await tabTo(page, 'Back up now');
    await page.keyboard.press('Enter');
    await backups.getByText(`1 kept in ${join(dataFolder, 'backups')}`).waitFor();
    await backups.getByText(/^Last backup \d\d:\d\d$/).waitFor();
    expect([before, await keptBackups()]).toEqual([[], [expect.stringMatching(/^\d{4}-\d\d-\d\dT\d\d-\d\d-\d\dZ$/)]]);
    expect(await axeFaults(page)).toEqual([]);
    await expectLegible(page);
    // A folder that is none: told with its reason, and what was kept still counts.
    await rm(join(dataFolder, 'backups'), { recursive: true });
    await writeFile(join(dataFolder, 'backups'), 'not a folder');
    await page.keyboard.press('Enter');
    await backups.getByText(/^The last try failed: E(EXIST|NOTDIR)/).waitFor();
    await rm(join(dataFolder, 'backups'));
    await page.keyboard.press('Enter');
    await backups.getByText(/^1 kept in /).waitFor();
    expect(await backups.locator('.fault').count()).toBe(0);
    // The browser says on its console what the page has told.
    expect(desk.faults.splice(0)).toEqual([expect.stringContaining('503 (Service Unavailable)')]);
  });

  test('Y4 hours, breaks, speeds, the bench and a cleaning are typed and kept; what cannot be is told there and loses nothing', async () => {
    const device = await openDevice(browser, `http://localhost:${server.port}/kitchen`, 1280, 800);
    const { page } = device;
    await thing(page, 'station oven').click();
    const hours = page.locator('hours-fields').first();
    await hours.getByRole('button', { name: 'Add hours' }).click();
    const from = field(page, 'kitchen.stations[2].hours[0].from');
    await from.fill('4 am');
    await field(page, 'kitchen.stations[2].hours[0].to').fill('13.30');
    await hours.locator('select').selectOption('some');
    await hours.getByLabel('Sat', { exact: true }).check();
    await page.locator('hours-fields').nth(1).getByRole('button', { name: 'Add a break' }).click();
    await keep(page);
    await page.locator('desk-field[data-field="kitchen.stations[2].hours[0].from"] .fault').getByText('a time is needed').waitFor();
    await page.locator('draft-bar').getByText('Oven: a time is needed, such as 05:00').waitFor();
    expect(await from.inputValue()).toBe('4 am');
    expect(await axeFaults(page)).toEqual([]);
    await expectLegible(page);
    await from.fill('4');
    await thing(page, 'mixer spiral').click();
    await field(page, 'kitchen.mixers[0].speeds').fill('2');
    await thing(page, 'deck top').click();
    await field(page, 'kitchen.ovens[0].decks[0].coolKPerMin').fill('0');
    // The house reads °F by now: 100 K/min is 180 °F/min.
    await page
      .locator('desk-field[data-field="kitchen.ovens[0].decks[0].coolKPerMin"] .fault')
      .getByText('from 0.2 to 180 °F/min')
      .waitFor();
    await field(page, 'kitchen.ovens[0].decks[0].coolKPerMin').fill('5.4');
    await thing(page, 'bench').focus();
    await page.keyboard.press('Enter');
    await field(page, 'kitchen.bench.room').fill('2');
    await field(page, 'kitchen.bench.changeOverMin').fill('5');
    await page.getByRole('button', { name: 'Add a cleaning' }).click();
    await page.getByRole('heading', { name: 'Cleaning 1' }).waitFor();
    await page.getByLabel('What is cleaned').selectOption({ label: 'Deck oven, Top' });
    await page.getByText('A deck that was hot stays hot').waitFor();
    const minutes = field(page, 'kitchen.cleanings[0].minutes');
    await minutes.fill('300');
    await field(page, 'kitchen.cleanings[0].to').fill('1800');
    await keep(page);
    const tooLong = faultMessage({ code: 'cleaningTooLong', minutes: 300, windowMin: 120 });
    await page.locator('desk-field[data-field="kitchen.cleanings[0].minutes"] .fault').getByText(tooLong).waitFor();
    await minutes.fill('25');
    await keep(page);
    await page.locator('draft-bar .bar').waitFor({ state: 'detached' });
    const kitchen = (await stateOf()).kitchen?.document;
    expect(kitchen?.stations[2]).toMatchObject({
      hours: [{ from: '04:00', to: '13:30', weekdays: [1, 2, 3, 4, 5, 6] }],
      breaks: [{ from: '08:00', to: '08:20' }],
    });
    expect(kitchen?.mixers[0]?.speeds).toBe(2);
    expect(kitchen?.ovens[0]?.decks[0]).toMatchObject({ coolKPerMin: 3 });
    expect(kitchen?.bench).toEqual({ room: 2, changeOverMin: 5 });
    expect(kitchen?.cleanings).toMatchObject([{ resource: { kind: 'deck', id: 'top' }, minutes: 25, from: '16:00', to: '18:00' }]);
    expect(device.faults).toEqual([]);
    await device.context.close();
  });

  test.each([
    ['de', GERMAN, faultInGerman],
    ['fr', FRENCH, faultInFrench],
  ] as const)('T1 in %s the page and what is wrong with a kitchen are told in it', async (language, words, faultWords) => {
    const device = await openDevice(browser, `http://localhost:${server.port}/kitchen?language=${language}`, 1280, 900);
    const { page } = device;
    await thing(page, 'mixer spiral').waitFor();
    expect(await page.evaluate(() => [document.documentElement.lang, document.title])).toEqual([language, `${words.title} · Ovenward`]);
    await thing(page, 'mixer spiral').click();
    await field(page, 'kitchen.mixers[0].leastG').fill('50');
    await page.getByRole('button', { name: words.keep }).click();
    const said = faultWords({ code: 'leastOverMost' });
    await page.locator('desk-field[data-field="kitchen.mixers[0].leastG"] .fault').getByText(said).waitFor();
    await page.locator('draft-bar').getByText(said).waitFor();
    await thing(page, 'restPlace cold-room').click();
    await page.getByRole('button', { name: words.remove }).click();
    const needed = faultWords({ code: 'stillNeeded', name: 'Cold room', by: ['#'] }).split('#')[0] ?? '';
    await page.locator('.places .fault').getByText(needed).waitFor();
    await expectLegible(page);
    await page.getByRole('button', { name: words.putBack }).click();
    expect(device.faults).toEqual([]);
    await device.context.close();
  });

  test('T11 every action is there for the keyboard alone, and where it is can be seen', async () => {
    const device = await openDevice(browser, `http://localhost:${server.port}/kitchen`, 1280, 900);
    const { page } = device;
    await thing(page, 'mixer spiral').waitFor();
    const before = (await stateOf()).kitchen;
    await tabTo(page, /^Add a bowl for Spiral$/);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Bowl 4' }).waitFor();
    await tabTo(page, 'Volume');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('30');
    await tabTo(page, 'Key in the bakehouse file');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('quay-bowl');
    await tabTo(page, 'One place earlier');
    await page.keyboard.press('Enter');
    await tabTo(page, 'Keep changes');
    await page.keyboard.press('Enter');
    await page.locator('draft-bar .bar').waitFor({ state: 'detached' });
    const kept = (await stateOf()).kitchen;
    expect(kept?.version).toBe((before?.version ?? 0) + 1);
    expect(kept?.document.bowls.find((bowl) => bowl.id === 'quay-bowl')?.litres).toBe(30);
    expect(kept?.document.bowls.at(-1)?.id).not.toBe('quay-bowl');
    await page.keyboard.press('Escape');
    await tabTo(page, /^Bowl 4 ?30/);
    await page.keyboard.press('Enter');
    await tabTo(page, '30 min');
    await page.keyboard.press('Enter');
    await tabTo(page, 'Block it: cleaning');
    await page.keyboard.press('Enter');
    await thing(page, 'bowl quay-bowl')
      .getByText(/^cleaning till /)
      .waitFor();
    await tabTo(page, 'Free it');
    await page.keyboard.press('Space');
    await thing(page, 'bowl quay-bowl')
      .getByText(/^cleaning/)
      .waitFor({ state: 'detached' });
    await tabTo(page, 'Take out of the kitchen');
    await page.keyboard.press('Enter');
    await tabTo(page, 'Keep changes');
    await page.keyboard.press('Enter');
    await page.locator('draft-bar .bar').waitFor({ state: 'detached' });
    expect((await stateOf()).kitchen?.document).toEqual(before?.document);
    await tabTo(page, 'House and settings', 'Shift+Tab');
    await page.keyboard.press('Enter');
    await page.getByText(/Local codes and licensed advice come before any of these/).waitFor();
    expect(device.faults).toEqual([]);
    await device.context.close();
  });

  test('T14 another language does not cost what was changed and not kept: the browser asks first', async () => {
    const device = await openDevice(browser, `http://localhost:${server.port}/kitchen`, 1280, 900);
    const { page } = device;
    await thing(page, 'vessel board').click();
    const name = field(page, 'kitchen.vessels[4].name');
    await name.fill('Quay board');
    const asked = new Promise<string>((resolve) => {
      page.once('dialog', (dialog) => {
        resolve(dialog.type());
        void dialog.dismiss();
      });
    });
    await page.locator('select[name=language]').selectOption('fr');
    expect(await asked).toBe('beforeunload');
    expect(await name.inputValue()).toBe('Quay board');
    await page.getByRole('button', { name: 'Put back as it was' }).click();
    await page.locator('select[name=language]').selectOption('de');
    await page.waitForFunction(() => document.documentElement.lang === 'de');
    await page.getByRole('heading', { name: GERMAN.title, level: 1 }).waitFor();
    expect(device.faults).toEqual([]);
    await device.context.close();
  });

  // WCAG 2.2: 1.4.4, text at 200 % (1920 × 1080 is 960 × 540 then); 1.4.10, reflow at 320 CSS px.
  test.each([
    [960, 540],
    [320, 640],
  ])('T12 at %i × %i nothing is lost and nothing scrolls sideways, in every language', async (width, height) => {
    for (const language of ['en', 'de', 'fr']) {
      const device = await openDevice(browser, `http://localhost:${server.port}/kitchen?language=${language}`, width, height);
      const { page } = device;
      await thing(page, 'mixer spiral').click();
      await page.locator('thing-panel h2').waitFor();
      await field(page, 'kitchen.mixers[0].name').fill('Spiral at the quay');
      await page.locator('draft-bar .bar').waitFor();
      await expectLegible(page);
      // What sticks to the foot leaves room for what is worked on.
      const bar = await page.locator('draft-bar .bar').boundingBox();
      expect(bar?.height ?? height).toBeLessThan(height / 2);
      await page.locator('draft-bar button').first().click();
      await page.locator('draft-bar .bar').waitFor({ state: 'detached' });
      expect(device.faults).toEqual([]);
      await device.context.close();
    }
  });

  // High enough for all of it: what lies under text can only be measured in sight.
  test('T13 by night the page has its contrast and axe finds nothing', async () => {
    const context = await browser.newContext({ viewport: { width: 1280, height: 2400 }, colorScheme: 'dark', reducedMotion: 'reduce' });
    await letContextIn(context, `http://localhost:${server.port}/kitchen`);
    const page = await context.newPage();
    await page.goto(`http://localhost:${server.port}/kitchen`);
    await thing(page, 'mixer spiral').click();
    await page.locator('thing-panel h2').waitFor();
    await field(page, 'kitchen.mixers[0].leastG').fill('');
    await keep(page);
    await page.locator('draft-bar li').first().waitFor();
    expect(await page.evaluate(() => document.documentElement.dataset['look'])).toBe('night');
    await expectLegible(page);
    expect(await axeFaults(page)).toEqual([]);
    await page.screenshot({ path: '.build/pictures/kitchen-night.png' });
    await context.close();
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
  return page.locator(`desk-field[data-field="${path}"] input`);
}

async function keep(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Keep changes' }).click();
}

/** The names in the folder of backups; none where nothing was made yet. */
async function keptBackups(): Promise<string[]> {
  const folder = join(dataFolder, 'backups');
  return existsSync(folder) ? readdir(folder) : [];
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
