import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openDues } from '../../shared/floor/due.ts';
import { harbourFile } from '../domain/support/harbour.ts';
import { buildHarness } from './harness/build-harness.ts';
import { serveFolder } from './harness/serve-folder.ts';
import { dayOf, viewOf, workedFloor } from './harness/staged-wall.ts';
import { launchChromium } from './support/chromium.ts';

declare global {
  interface Window {
    /** Timers that are set and have neither rung nor been cleared. */
    liveTimers(): number;
  }
}

const THIRTY = workedFloor(dayOf(30, 6), { untilMin: 190 });
const NINE = workedFloor(harbourFile(), { untilMin: 210 });

let browser: Browser;
const closing: (() => Promise<void>)[] = [];

beforeAll(async () => {
  browser = await launchChromium();
});

afterAll(async () => {
  await browser.close();
  for (const close of closing) await close();
});

async function open(name: string, html: string): Promise<Page> {
  const built = await buildHarness(name, html);
  const served = await serveFolder(built.folder);
  closing.push(() => served.close());
  const page = await browser.newPage({ viewport: { width: 1920, height: 1080 } });
  await page.addInitScript(countTimers);
  await page.goto(`${served.origin}${built.page}`);
  return page;
}

/** Runs in the page before anything of its own. */
function countTimers(): void {
  const live = new Set<number>();
  const { setTimeout: set, clearTimeout: clear, setInterval: repeat, clearInterval: end } = window;
  const bound = { set: set.bind(window), clear: clear.bind(window), repeat: repeat.bind(window), end: end.bind(window) };
  const counted = (handler: TimerHandler, ms?: number, ...given: unknown[]): number => {
    const id: number = bound.set(() => {
      live.delete(id);
      if (typeof handler === 'function') (handler as (...all: unknown[]) => void)(...given);
    }, ms);
    live.add(id);
    return id;
  };
  const repeated = (handler: TimerHandler, ms?: number, ...given: unknown[]): number => {
    const id = bound.repeat(handler, ms, ...given);
    live.add(id);
    return id;
  };
  const cleared = (id?: number): void => {
    if (id !== undefined) live.delete(id);
    bound.clear(id);
  };
  Object.assign(window, { setTimeout: counted, clearTimeout: cleared, setInterval: repeated, clearInterval: cleared });
  window.liveTimers = () => live.size;
}

describe('B one timer a page', () => {
  test('a wall of thirty doughs waits on one, and a page that is gone on none', async () => {
    const page = await open('harness-timers-wall', 'tests/browser/harness/wall.html');
    const staged = (floor: typeof THIRTY) => ({
      view: viewOf(floor.state),
      nowMs: floor.nowMs,
      viewing: { inch: 43, metres: 5, arcmin: 20 },
      sound: 'on' as const,
    });
    expect(openDues(THIRTY.state).length).toBeGreaterThanOrEqual(20);
    for (const floor of [THIRTY, NINE, THIRTY]) {
      await page.evaluate((given) => window.wallHarness.show(given), staged(floor));
      expect(await page.evaluate(() => window.liveTimers())).toBe(1);
    }
    await page.evaluate(() => document.querySelector('wall-page')?.remove());
    expect(await page.evaluate(() => window.liveTimers())).toBe(0);
  });

  test('a phone with its list and with a card waits on one', async () => {
    const page = await open('harness-timers-phone', 'tests/browser/harness-phone/index.html');
    await page.evaluate(([view, nowMs]) => window.phoneHarness.show(view, nowMs), [viewOf(THIRTY.state), THIRTY.nowMs] as const);
    expect(await page.evaluate(() => window.liveTimers())).toBe(1);
    const [due] = openDues(THIRTY.state);
    if (due === undefined) throw new Error('no dough is open');
    await page.evaluate((workpieceId) => {
      const phone = document.querySelector('phone-page');
      if (phone !== null) phone.screen = { kind: 'card', workpieceId };
      return phone?.updateComplete;
    }, due.workpiece.id);
    expect(await page.evaluate(() => window.liveTimers())).toBe(1);
  });
});
