import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { pino } from 'pino';
import type { Browser, Page } from 'playwright-core';
import { runnerImport } from 'vite';
import { openHouse } from '../../server/main/house.ts';
import { readBakehouse } from '../../server/main/read-bakehouse.ts';
import { instantOf } from '../../server/main/planned-starts.ts';
import { launchChromium, SOUND_WITHOUT_TOUCH } from '../browser/support/chromium.ts';
import { StagedClocks } from './staged-clocks.ts';
import { stepBack, tap, workThrough } from './staged-day.ts';

const ROOT = fileURLToPath(new URL('../../../../', import.meta.url));
/** A winter Saturday of the demo house, long enough ago to be nobody's. */
const STAGED_DATE = '2026-02-07';
const STAGED_TIME = '02:40';

/**
 * `npm run pictures`: a staged demo day on the real server, the pages in real Chromium, pictures of wall and phone into
 * `.build/pictures/`; with `--keep` the README's into `display/pictures/` as well. Then every element in every state,
 * by day and by night and as colour-blind eyes see it, as `elements-*.png`.
 */
export async function main(args: readonly string[]): Promise<number> {
  const folder = resolve(ROOT, '.build/pictures');
  const kept = args.includes('--keep') ? resolve(ROOT, 'display/pictures') : null;
  for (const target of [folder, ...(kept === null ? [] : [kept])]) await mkdir(target, { recursive: true });
  const dataFolder = await mkdtemp(join(tmpdir(), 'ovenward-pictures-'));
  const bakehouse = await readBakehouse(resolve(ROOT, 'fixtures/harbour-plain.json'));
  if (!bakehouse.ok) throw new Error(JSON.stringify(bakehouse.fault));
  const clocks = new StagedClocks(instantOf(bakehouse.value.file.house.zone, STAGED_DATE, STAGED_TIME));
  const house = await openHouse({
    dataFolder,
    pace: 1,
    log: pino({ level: 'error' }),
    pagesFolder: resolve(ROOT, '.build/pages'),
    addresses: [],
    // Nobody else is on this machine's port while the pictures are taken.
    roleOfGuest: () => 'manage',
    clocks,
  });
  const browser = await launchChromium([SOUND_WITHOUT_TOUCH]);
  try {
    const base = await house.app.listen({ port: 0, host: '127.0.0.1' });
    await house.bringIn(bakehouse.value);
    // The kitchen's own id serves as the device of the staged hands: it is an id, and nobody else's.
    const device = house.floor.kitchenId;
    const shots: string[] = [];
    const take = async (name: string, isKept: boolean): Promise<void> => {
      for (const target of [folder, ...(isKept && kept !== null ? [kept] : [])])
        shots.push(...(await pictures(browser, base, target, name)));
      // An open wall has its loudspeaker tested; somebody in the house heard it.
      await tap(house, device, { type: 'answerSoundTest', heard: true });
    };
    await take('start', false);
    await workThrough(house, clocks, device, 150);
    await take('calm', false);
    await workThrough(house, clocks, device, 25);
    await stepBack(house, clocks, 9);
    await take('busy', true);
    shots.push(...(await elementPictures(browser, folder)));
    process.stdout.write(`${shots.join('\n')}\n`);
    return 0;
  } finally {
    await browser.close();
    await house.close();
    await rm(dataFolder, { recursive: true, force: true });
  }
}

/** Loaded from its sources: it draws on the pages' own, which vite builds and nobody compiles. */
async function elementPictures(browser: Browser, folder: string): Promise<readonly string[]> {
  interface Taker {
    takeElementPictures(browser: Browser, folder: string): Promise<readonly string[]>;
  }
  const taker = resolve(ROOT, 'tests/pictures/elements/take-pictures.ts');
  const { module } = await runnerImport<Taker>(taker, { root: ROOT, configFile: false, logLevel: 'error' });
  return module.takeElementPictures(browser, folder);
}

async function pictures(browser: Browser, base: string, folder: string, name: string): Promise<string[]> {
  const wall = join(folder, `wall-${name}.png`);
  const list = join(folder, `phone-list-${name}.png`);
  const card = join(folder, `phone-card-${name}.png`);
  const station = join(folder, `station-${name}.png`);
  await withPage(browser, `${base}/wall`, 1920, 1080, 1, async (page) => {
    await page.screenshot({ path: wall });
    // The wall stays open meanwhile: without one, the next best device would sound and say so.
    await withPage(browser, `${base}/phone`, 390, 844, 2, async (phone) => {
      await phone.screenshot({ path: list });
      await phone.locator('phone-row').first().locator('button').click();
      await phone.waitForTimeout(600);
      await phone.screenshot({ path: card });
    });
    await withPage(browser, `${base}/station?station=bench`, 1280, 800, 1, async (screen) => {
      await screen.screenshot({ path: station });
    });
  });
  return [wall, list, card, station];
}

async function withPage(
  browser: Browser,
  url: string,
  width: number,
  height: number,
  deviceScaleFactor: number,
  look: (page: Page) => Promise<void>,
): Promise<void> {
  // A still picture of a blinking mark would show it dim as often as not.
  const context = await browser.newContext({ viewport: { width, height }, deviceScaleFactor, reducedMotion: 'reduce' });
  const page = await context.newPage();
  page.on('pageerror', (error) => process.stderr.write(`${url}: ${error.message}\n`));
  page.on('console', (message) => {
    if (message.type() === 'error') process.stderr.write(`${url}: ${message.text()}\n`);
  });
  await page.goto(url);
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  await page.waitForTimeout(1200);
  await look(page);
  await context.close();
}
