import type { Browser, BrowserContext, Page } from 'playwright-core';
import { isServerOfTests, letIn } from '../../support/let-in.ts';
import { INSECURE_HOST } from './insecure-host.ts';
import { launchChromium, SOUND_WITHOUT_TOUCH } from './chromium.ts';

export { INSECURE_HOST };

/** Chromium with sound allowed as a wall's browser has it, and a host name of the house. */
export function launchForHouse(): Promise<Browser> {
  return launchChromium([SOUND_WITHOUT_TOUCH, `--host-resolver-rules=MAP ${INSECURE_HOST} 127.0.0.1`]);
}

/** A page of its own device, with everything that goes wrong in it. */
export interface DevicePage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Uncaught errors and faults on the console, save those of a server that is away. */
  readonly faults: string[];
}

/** Opens a page in a context of its own, as another device would. */
export async function openDevice(browser: Browser, url: string, width: number, height: number): Promise<DevicePage> {
  const context = await browser.newContext({ viewport: { width, height }, reducedMotion: 'reduce' });
  await letContextIn(context, url);
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' && !/WebSocket connection to|ERR_CONNECTION_REFUSED/.test(message.text())) faults.push(message.text());
  });
  await page.goto(url);
  return { page, context, faults };
}

/**
 * Lets a browser's pages, save walls, into the house that an address leads to, where that is a server in a process of its own. Walls on its
 * machine need nobody for that.
 */
export async function letContextIn(context: BrowserContext, url: string): Promise<void> {
  const { port, origin, pathname } = new URL(url);
  if (!isServerOfTests(Number(port)) || /^\/wall(?:\/|$)/.test(pathname) || pathname === '/') return;
  const { cookieName, token } = letIn(Number(port));
  await context.addCookies([{ name: cookieName, value: token, url: origin, httpOnly: true, sameSite: 'Strict' }]);
}
