import type { Browser, BrowserContext, Page } from 'playwright-core';
import { launchChromium, SOUND_WITHOUT_TOUCH } from './chromium.ts';

/** A host name that is no secure context, as every address of a local network is. */
export const INSECURE_HOST = 'bakehouse.test';

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
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' && !/WebSocket connection to|ERR_CONNECTION_REFUSED/.test(message.text())) faults.push(message.text());
  });
  await page.goto(url);
  return { page, context, faults };
}
