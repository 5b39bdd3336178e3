import { join } from 'node:path';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { serveElements } from './build-elements.ts';

const LOOKS = ['day', 'night'] as const;
const SECTIONS = [
  'colours',
  'marks',
  'icons',
  'common',
  'wall',
  'phone',
  'kitchen',
  'formulas-book',
  'formulas-method',
  'weigh',
  'screens',
] as const;
/** What Chromium calls the eyes that it can show a page to, and what we call the pictures. */
const EYES = [
  ['none', ''],
  ['achromatopsia', '-greyscale'],
  ['protanopia', '-protan'],
  ['deuteranopia', '-deutan'],
  ['tritanopia', '-tritan'],
] as const;
/** Sections in which colour says something. */
const TELLING: readonly string[] = ['colours', 'marks', 'wall', 'phone', 'screens'] satisfies readonly (typeof SECTIONS)[number][];
const WIDTH_PX = 2_000;

/**
 * Pictures of the page of elements into `folder`: each section by day and by night as it is, and where colour says
 * something also as colour-blind eyes see it. Returns their paths.
 */
export async function takeElementPictures(browser: Browser, folder: string): Promise<readonly string[]> {
  const { address, close } = await serveElements();
  const shots: string[] = [];
  try {
    for (const look of LOOKS) {
      for (const section of SECTIONS)
        shots.push(...(await takeSection(browser, `${address}?look=${look}&only=${section}`, folder, section, look)));
    }
    return shots;
  } finally {
    await close();
  }
}

async function takeSection(browser: Browser, url: string, folder: string, section: string, look: string): Promise<readonly string[]> {
  // What blinks is taken while it stands.
  const context = await browser.newContext({ viewport: { width: WIDTH_PX, height: 1_000 }, reducedMotion: 'reduce' });
  const page = await context.newPage();
  page.on('pageerror', (error) => process.stderr.write(`${url}: ${error.message}\n`));
  await page.goto(url);
  await everythingIsShown(page);
  const session = await context.newCDPSession(page);
  const shots: string[] = [];
  for (const [eye, ending] of TELLING.includes(section) ? EYES : EYES.slice(0, 1)) {
    await seenBy(session, eye);
    const path = join(folder, `elements-${section}-${look}${ending}.png`);
    await page.locator(`#${section}`).screenshot({ path });
    shots.push(path);
  }
  await context.close();
  return shots;
}

async function everythingIsShown(page: Page): Promise<void> {
  for (const frame of page.frames()) {
    await frame.waitForSelector('body[data-shown]');
    await frame.evaluate(() => document.fonts.ready.then(() => undefined));
  }
}

async function seenBy(session: CDPSession, type: (typeof EYES)[number][0]): Promise<void> {
  await session.send('Emulation.setEmulatedVisionDeficiency', { type });
}
