import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CALL_HEALTH as GERMAN_CALLS } from '../../display/words/de/call-health.ts';
import { LESSONS as GERMAN } from '../../display/words/de/lessons.ts';
import { CALL_HEALTH } from '../../display/words/en/call-health.ts';
import { LESSONS } from '../../display/words/en/lessons.ts';
import { RECORDS } from '../../display/words/en/records.ts';
import { CALL_HEALTH as FRENCH_CALLS } from '../../display/words/fr/call-health.ts';
import { LESSONS as FRENCH } from '../../display/words/fr/lessons.ts';
import { TWELVE, turnedOut } from '../domain/support/turned-out.ts';
import { keep } from '../server/random-history.ts';
import { letIn } from '../support/let-in.ts';
import { axeFaults } from './support/axe-faults.ts';
import { launchForHouse, openDevice, type DevicePage } from './support/house-pages.ts';
import { tabTo } from './support/keyboard.ts';
import { startServer, type RealServer } from './support/real-server.ts';

let browser: Browser;
let server: RealServer;
let folder: string;
const opened: DevicePage[] = [];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'ovenward-lessons-'));
  await keep(folder, turnedOut(TWELVE).recorded);
  [browser, server] = await Promise.all([launchForHouse(), startServer(folder, 0, 1)]);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  await rm(folder, { recursive: true, force: true });
});

async function open(search: string, width = 1280, language = ''): Promise<Page> {
  const device = await openDevice(browser, `http://localhost:${server.port}/records${search}${language}`, width, 800);
  opened.push(device);
  return device.page;
}

const USE = LESSONS.use('10 min', '3 min');

describe('LS8 what the days teach, at a desk, by keyboard alone', () => {
  test('it is found, left as it is, told as left, and taken over all the same', async () => {
    const page = await open('');
    await tabTo(page, RECORDS.menu.lessons);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: LESSONS.worth }).waitFor();
    await page.getByText(LESSONS.assumedToFound('3 min', '10 min')).waitFor();
    await tabTo(page, /: Leave it$/);
    await page.keyboard.press('Enter');
    await page.getByText(LESSONS.wasLeft).waitFor();
    await page.getByRole('heading', { name: LESSONS.left }).waitFor();
    expect(await page.getByText(LESSONS.worthNone).count()).toBe(1);
    await tabTo(page, new RegExp(`: ${USE}$`));
    await page.keyboard.press('Enter');
    await page.getByText(LESSONS.used(2)).waitFor();
    await page.getByRole('heading', { name: LESSONS.changes }).waitFor();
    const kept = (await (await fetch(`http://127.0.0.1:${server.port}/api/book/formulas/country`)).json()) as {
      version: number;
      formula: { method: { id: string; minutes: object }[] };
    };
    expect(kept.version).toBe(2);
    expect(kept.formula.method.find(({ id }) => id === 'turn-out')?.minutes).toEqual({ target: 10 });
  });

  test('who may only look is told so', async () => {
    const other = await mkdtemp(join(tmpdir(), 'ovenward-lessons-'));
    await keep(other, turnedOut(TWELVE).recorded);
    const looked = await startServer(other, 0, 1);
    const { cookieName, token } = letIn(looked.port, 'phone', 'look');
    const context = await browser.newContext();
    await context.addCookies([
      { name: cookieName, value: token, url: `http://localhost:${looked.port}`, httpOnly: true, sameSite: 'Strict' },
    ]);
    const page = await context.newPage();
    await page.goto(`http://localhost:${looked.port}/records?view=lessons`);
    for (const name of [new RegExp(`: ${USE}$`), /: Leave it$/]) {
      await page.getByRole('heading', { name: LESSONS.worth }).waitFor();
      await tabTo(page, name);
      await page.keyboard.press('Enter');
      await page.getByText(LESSONS.refused).waitFor();
    }
    await context.close();
    await looked.stop();
    await rm(other, { recursive: true, force: true });
  });
});

describe('AH3 how the calls were, at a desk, by keyboard alone', () => {
  test('figures against what is customary, what calls most, a picture and the same as a table', async () => {
    const page = await open('');
    await tabTo(page, RECORDS.menu.calls);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: CALL_HEALTH.measures }).waitFor();
    await tabTo(page, RECORDS.from);
    await page.keyboard.type('03012026');
    await tabTo(page, CALL_HEALTH.show);
    await page.keyboard.press('Enter');
    await page.waitForURL(/view=calls&from=2026-03-01/);
    await page.getByText(LESSONS.period('2026-03-01', '2026-03-19')).waitFor();
    await tabTo(page, CALL_HEALTH.measures);
    await tabTo(page, CALL_HEALTH.offenders);
    await tabTo(page, CALL_HEALTH.pictureTo);
    const rows = page.getByRole('group', { name: CALL_HEALTH.pictureTo }).getByRole('row');
    expect(await rows.count()).toBeGreaterThan(10);
    // The canvas has something drawn on it.
    const inked = await page.locator('calls-chart canvas').evaluate((canvas) => {
      if (!(canvas instanceof HTMLCanvasElement)) return 0;
      const { data } = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height) ?? { data: [] };
      return data.filter((_value, index) => index % 4 === 3 && _value > 0).length;
    });
    expect(inked).toBeGreaterThan(500);
  });

  test.each([
    ['en', LESSONS.minutes, CALL_HEALTH.measures],
    ['de', GERMAN.minutes, GERMAN_CALLS.measures],
    ['fr', FRENCH.minutes, FRENCH_CALLS.measures],
  ])('in %s, at a desk and on a phone: nothing wider than the screen, and axe finds nothing', async (language, lessons, calls) => {
    for (const [view, heading] of [
      ['lessons', lessons],
      ['calls', calls],
    ] as const) {
      const page = await open(`?view=${view}`, 1280, `&language=${language}`);
      for (const width of [1280, 320]) {
        await page.setViewportSize({ width, height: 800 });
        await page.getByRole('heading', { name: heading }).waitFor();
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
        expect(await axeFaults(page)).toEqual([]);
      }
      await page.close();
    }
  });

  test('nothing went wrong in any page', () => {
    const refusals = /status of 403/;
    expect(opened.flatMap(({ faults }) => faults).filter((fault) => !refusals.test(fault))).toEqual([]);
  });
});
