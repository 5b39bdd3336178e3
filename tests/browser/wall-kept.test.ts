import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchForHouse, openDevice, type DevicePage } from './support/house-pages.ts';
import { startServer, type RealServer } from './support/real-server.ts';

let browser: Browser;
let server: RealServer;
let dataFolder: string;
let screen: DevicePage;
let origin: string;

beforeAll(async () => {
  dataFolder = await mkdtemp(join(tmpdir(), 'ovenward-wall-'));
  [browser, server] = await Promise.all([launchForHouse(), startServer(dataFolder, 0, 1, 'fixtures/harbour.json')]);
  origin = `http://localhost:${server.port}`;
  screen = await openDevice(browser, `${origin}/wall`, 1920, 1080);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  await rm(dataFolder, { recursive: true, force: true });
});

/** How the page is: light or dark, its language, and the size of its clock, which the distance makes. */
async function howItIs(): Promise<{ readonly look: string; readonly language: string; readonly clockPx: number }> {
  await screen.page.locator('wall-header time').waitFor();
  return screen.page.evaluate(() => {
    const time = document.querySelector('wall-page')?.shadowRoot?.querySelector('wall-header')?.shadowRoot?.querySelector('time');
    return {
      look: document.documentElement.dataset['look'] ?? '',
      language: document.documentElement.lang,
      clockPx: time instanceof HTMLElement ? Number.parseFloat(getComputedStyle(time).fontSize) : 0,
    };
  });
}

describe('a wall and the page that sets it up, from a real server', () => {
  test('V19 what is set on the one holds on the other, and at every next load', async () => {
    const { page } = screen;
    const before = await howItIs();
    expect(before).toMatchObject({ look: 'day', language: 'en' });
    await page.getByRole('link', { name: 'Set up this wall' }).click();
    await page.getByRole('button', { name: 'Farthest bench: nearer' }).click();
    await page.getByLabel('dark', { exact: true }).check();
    await page.getByLabel('Doughs of').selectOption('oven');
    await page.getByLabel('Language').selectOption('de');
    await page.getByRole('heading', { name: 'Diese Wand einrichten' }).waitFor();
    await page.getByRole('link', { name: 'Zurück zur Wand' }).click();
    for (let load = 0; load < 2; load += 1) {
      const after = await howItIs();
      expect(after).toMatchObject({ look: 'night', language: 'de' });
      // Half a metre nearer than five: letters a tenth smaller.
      expect(after.clockPx / before.clockPx).toBeCloseTo(0.9, 2);
      await page.locator('wall-elsewhere').waitFor();
      await page.reload();
    }
  });

  test('V19 a second wall of the same browser has its settings in its address, and neither changes the other', async () => {
    const { page } = screen;
    await page.goto(`${origin}/wall?station=&look=day&inch=43&metres=10&language=en`);
    const second = await howItIs();
    expect(second.look).toBe('day');
    expect(await page.locator('wall-elsewhere').count()).toBe(0);
    await page.getByRole('link', { name: 'Set up this wall' }).click();
    await page.getByLabel('Doughs of').selectOption('mixer');
    await page.getByRole('link', { name: 'Back to the wall' }).click();
    await page.locator('wall-elsewhere').waitFor();
    expect(new URL(page.url()).searchParams.get('station')).toBe('mixer');
    expect((await howItIs()).clockPx).toBe(second.clockPx);
    await page.goto(`${origin}/wall`);
    expect((await howItIs()).look).toBe('night');
  });

  test('V19 a server that only its own machine reaches shows no code that leads nowhere', async () => {
    const { page } = screen;
    await page.goto(`${origin}/wall/setup?language=en`);
    await page.getByText('npm start').waitFor();
    expect(await page.locator('phones-code').count()).toBe(0);
    expect(screen.faults).toEqual([]);
  });
});
