import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startLinks as german } from '../../display/words/de/start.ts';
import { startLinks as english } from '../../display/words/en/start.ts';
import { startLinks as french } from '../../display/words/fr/start.ts';
import { measurePage } from './harness/measure-page.ts';
import { axeFaults } from './support/axe-faults.ts';
import { launchForHouse } from './support/house-pages.ts';
import { startServer, type RealServer } from './support/real-server.ts';

/** WCAG 2.2, 1.4.6: contrast, enhanced. */
const LEAST_CONTRAST = 7;
const LINKS = { en: english, de: german, fr: french } as const;

let browser: Browser;
let server: RealServer;
let dataFolder: string;
const faults: string[] = [];

beforeAll(async () => {
  dataFolder = await mkdtemp(join(tmpdir(), 'ovenward-start-'));
  [browser, server] = await Promise.all([launchForHouse(), startServer(dataFolder, 0, 1)]);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  await rm(dataFolder, { recursive: true, force: true });
});

async function open(options: BrowserContextOptions, query = ''): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
  const page = await context.newPage();
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await page.goto(`http://localhost:${server.port}/${query}`);
  await page.locator('nav a').first().waitFor();
  return page;
}

const names = (page: Page): Promise<string[]> => page.locator('nav a strong').allTextContents();

describe('T10 the start page leads everywhere, in every language', () => {
  test.each(['en', 'de', 'fr'] as const)('a browser that asks for %s is spoken to in it', async (language) => {
    const page = await open({ locale: language });
    expect(await names(page)).toEqual(LINKS[language]().map(({ name }) => name));
    expect(await page.evaluate(() => document.documentElement.lang)).toBe(language);
    await page.getByText(`http://localhost:${server.port}`, { exact: true }).waitFor();
    await page.context().close();
  });

  test('every page that it leads to is there', async () => {
    for (const { href } of english()) expect([href, (await fetch(`http://localhost:${server.port}${href}`)).status]).toEqual([href, 200]);
  });

  test('another language is chosen and kept, by keyboard alone', async () => {
    const page = await open({ locale: 'en' });
    const language = page.locator('select[name=language]');
    await language.focus();
    await page.keyboard.press('ArrowDown');
    await page.waitForFunction(() => document.documentElement.lang === 'de');
    await page.locator('nav a').first().waitFor();
    expect(await names(page)).toEqual(german().map(({ name }) => name));
    await page.goto(`http://localhost:${server.port}/`);
    await page.locator('nav a').first().waitFor();
    expect(await names(page)).toEqual(german().map(({ name }) => name));
    await page.context().close();
  });

  test('light or dark is chosen at once and kept', async () => {
    const page = await open({ locale: 'en', colorScheme: 'light' });
    const paper = (): Promise<string> => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    const day = await paper();
    await page.locator('select[name=look]').selectOption('night');
    const night = await paper();
    expect(night).not.toBe(day);
    await page.reload();
    await page.locator('nav a').first().waitFor();
    expect([await paper(), await page.locator('select[name=look]').inputValue()]).toEqual([night, 'night']);
    await page.locator('select[name=look]').selectOption('browser');
    expect(await paper()).toBe(day);
    await page.emulateMedia({ colorScheme: 'dark' });
    // The browser tells its pages with the next frame.
    await page.waitForFunction((dark) => getComputedStyle(document.documentElement).backgroundColor === dark, night);
    await page.context().close();
  });

  // WCAG 2.2, 1.4.10: 320 CSS px wide; 1.4.4: 1280 × 800 at 200 % is 640 × 400.
  test.each([
    ['light', 1280, 800],
    ['dark', 1280, 800],
    ['light', 640, 400],
    ['dark', 320, 640],
  ] as const)('axe finds nothing, text has its contrast and nothing is cut off: %s, %i × %i', async (colorScheme, width, height) => {
    for (const language of ['en', 'de', 'fr']) {
      const page = await open({ colorScheme, viewport: { width, height } }, `?language=${language}`);
      // What axe looks at is the same in every language, and it takes its time.
      if (language === 'en') expect(await axeFaults(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
      const drawn = (await page.evaluate(measurePage)).filter((text) => text.bottom <= height);
      expect(drawn.length).toBeGreaterThan(3);
      expect(drawn.filter((text) => text.contrast < LEAST_CONTRAST)).toEqual([]);
      expect(drawn.filter((text) => text.left < 0 || text.right > width)).toEqual([]);
      await page.context().close();
    }
  });

  test('nothing went wrong', () => {
    expect(faults).toEqual([]);
  });
});
