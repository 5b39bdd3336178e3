import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { STATION } from '../../display/words/en/station.ts';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { axeFaults } from './support/axe-faults.ts';
import { letContextIn, INSECURE_HOST, launchForHouse, openDevice, type DevicePage } from './support/house-pages.ts';
import { startServer, type RealServer } from './support/real-server.ts';

/** What the tap guard wants between something new on the screen and a touch, and between two touches, in ms, with room. */
const SETTLE_MS = 700;

let browser: Browser;
let server: RealServer;
let dataFolder: string;
/** On a secure address, as the server's own machine has it. */
let mixer: DevicePage;
/** On a host name of the house, which is no secure context. */
let oven: DevicePage;

beforeAll(async () => {
  dataFolder = await mkdtemp(join(tmpdir(), 'ovenward-station-'));
  [browser, server] = await Promise.all([launchForHouse(), startServer(dataFolder, 0, 1)]);
  [mixer, oven] = await Promise.all([
    openDevice(browser, `http://localhost:${server.port}/station`, 1024, 768),
    openDevice(browser, `http://${INSECURE_HOST}:${server.port}/station?station=oven`, 390, 844),
  ]);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  await rm(dataFolder, { recursive: true, force: true });
});

describe('T9 a screen bolted to a station works with its server', () => {
  test('it asks once where it is, with a button for each station, and keeps the answer', async () => {
    const { page } = mixer;
    await page.getByRole('heading', { name: STATION.chooseTitle }).waitFor();
    const names = await page.locator('station-choice .stations button').allTextContents();
    expect(names.map((name) => name.trim())).toEqual((await stateOf()).kitchen?.document.stations.map(({ name }) => name));
    expect(await axeFaults(page)).toEqual([]);
    await page.waitForTimeout(SETTLE_MS);
    await page.getByRole('button', { name: 'Mixer' }).click();
    await page.locator('station-machines').getByText('Spiral', { exact: true }).waitFor();
    expect(new URL(page.url()).searchParams.get('station')).toBe('mixer');
    await page.goto(`http://localhost:${server.port}/station`);
    await page.locator('station-machines').getByText('Spiral', { exact: true }).waitFor();
  });

  test('what is due stands open, and one tap on done is an event of this station', async () => {
    const { page } = mixer;
    const tag = (await page.locator('dough-card h1').textContent())?.trim() ?? '';
    const piece = byTag(await stateOf(), tag);
    expect(piece?.finishedMs).toBeNull();
    await page.waitForTimeout(SETTLE_MS);
    const done = page.getByRole('button', { name: new RegExp(`^${tag} [A-Z ]+$`) });
    await done.click();
    await page.getByRole('button', { name: /^Undo: / }).waitFor();
    const events = (await eventsOf()).filter(({ event }) => event.type === 'stepDone' && event.workpieceId === piece?.id);
    expect(events.map(({ event }) => (event.type === 'stepDone' ? event.stationId : null))).toEqual(['mixer']);
    await page.waitForTimeout(SETTLE_MS);
    await page.getByRole('button', { name: /^Undo: / }).click();
    await page.getByRole('button', { name: /^Undo: / }).waitFor({ state: 'detached' });
    expect(Object.keys(byTag(await stateOf(), tag)?.steps ?? {})).toEqual(Object.keys(piece?.steps ?? {}));
  });

  test('the house knows it by its station', async () => {
    const { page } = mixer;
    await page.waitForFunction(() => document.querySelector('station-page')?.view?.device?.stationId === 'mixer');
    const named = (): Promise<unknown> =>
      oven.page.evaluate(() =>
        document
          .querySelector('station-page')
          ?.view?.devices.map(({ name }) => name)
          .toSorted(),
      );
    await oven.page.waitForFunction(() => document.querySelector('station-page')?.view?.devices.some(({ name }) => name === 'Mixer'));
    expect(await named()).toEqual(expect.arrayContaining(['Mixer', 'Oven']));
  });

  test('another station sees nothing of it but what is anybody’s, and says so where nothing is to be done', async () => {
    const { page } = oven;
    await page.getByRole('button', { name: 'Station: Oven' }).waitFor();
    await page.getByText(STATION.emptyTitle).waitFor();
    expect(await page.locator('phone-row').count()).toBe(0);
    await page.locator('station-machines').getByText('Hearth', { exact: true }).waitFor();
  });

  test('on a host name that is no secure context nothing is missing but the lock of the screen, which is said', async () => {
    const { page } = oven;
    expect(await page.evaluate(() => [isSecureContext, 'wakeLock' in navigator])).toEqual([false, false]);
    expect(await page.getByText(STATION.mayDim).count()).toBe(1);
    expect(await axeFaults(page)).toEqual([]);
  });

  test('where the browser has the lock it is asked for, and again when the page is seen again', async () => {
    const device = await openDevice(browser, 'about:blank', 1280, 800);
    await letContextIn(device.context, `http://localhost:${server.port}/station`);
    await device.context.addInitScript(() => {
      const asked: string[] = [];
      Object.assign(window, { asked });
      Object.defineProperty(navigator, 'wakeLock', {
        value: {
          request: (type: string) => {
            asked.push(type);
            const sentinel = new EventTarget();
            Object.assign(window, { letGo: () => sentinel.dispatchEvent(new Event('release')) });
            return Promise.resolve(sentinel);
          },
        },
      });
    });
    const { page } = device;
    await page.goto(`http://localhost:${server.port}/station?station=mixer`);
    await page.locator('dough-card').waitFor();
    const asked = (): Promise<string[]> => page.evaluate(() => (window as unknown as { asked: string[] }).asked);
    expect(await asked()).toEqual(['screen']);
    expect(await page.getByText(STATION.mayDim).count()).toBe(0);
    // As the specification has it: the browser lets go of the screen of a page that is out of sight.
    await page.evaluate(() => {
      const sight = (state: string): void => {
        Object.defineProperty(document, 'visibilityState', { value: state, configurable: true });
        document.dispatchEvent(new Event('visibilitychange'));
      };
      sight('hidden');
      (window as unknown as { letGo(): void }).letGo();
      sight('visible');
    });
    expect(await asked()).toEqual(['screen', 'screen']);
    expect(device.faults).toEqual([]);
    await device.context.close();
  });

  test('left alone for a minute by the page’s one clock it shows the most pressing work again', async () => {
    const { page } = mixer;
    const open = (): Promise<string> => page.locator('dough-card h1').innerText();
    const first = await open();
    await page.waitForTimeout(SETTLE_MS);
    await page.locator('phone-row button').last().click();
    await page.waitForFunction(
      (tag) =>
        document.querySelector('station-page')?.shadowRoot?.querySelector('dough-card')?.shadowRoot?.querySelector('h1')?.textContent !==
        tag,
      first,
    );
    const later = await open();
    expect(later).not.toBe(first);
    await page.evaluate(() => {
      const station = document.querySelector('station-page');
      const clock = station?.clock ?? null;
      if (station === null || clock === null) throw new Error('the page has no clock');
      station.clock = { nowMs: () => clock.nowMs(), pace: () => clock.pace(), monotonicMs: () => clock.monotonicMs() + 60_000 };
    });
    await page.waitForFunction(
      (tag) =>
        document.querySelector('station-page')?.shadowRoot?.querySelector('dough-card')?.shadowRoot?.querySelector('h1')?.textContent ===
        tag,
      first,
    );
  });

  test('in German and French the page says its language, its title and its words', async () => {
    for (const [language, title] of [
      ['de', 'Posten'],
      ['fr', 'Poste'],
    ] as const) {
      const device = await openDevice(browser, `http://localhost:${server.port}/station?station=mixer&language=${language}`, 390, 844);
      await device.page.locator('dough-card').waitFor();
      expect(await device.page.evaluate(() => [document.documentElement.lang, document.title])).toEqual([language, `${title} · Ovenward`]);
      expect(device.faults).toEqual([]);
      await device.context.close();
    }
  });

  test('nothing went wrong on any page', () => {
    expect([mixer.faults, oven.faults]).toEqual([[], []]);
  });
});

async function stateOf(): Promise<FloorState> {
  const answer = (await (await fetch(`http://127.0.0.1:${server.port}/api/state`)).json()) as { readonly state: FloorState };
  return answer.state;
}

async function eventsOf(): Promise<readonly RecordedEvent[]> {
  const answer = (await (await fetch(`http://127.0.0.1:${server.port}/api/events?after=0`)).json()) as {
    readonly events: readonly RecordedEvent[];
  };
  return answer.events;
}

function byTag(state: FloorState, tag: string): FloorState['workpieces'][string] | undefined {
  return Object.values(state.workpieces).find((workpiece) => workpiece.tag === tag);
}
