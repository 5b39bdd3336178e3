import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildHarness } from './harness/build-harness.ts';
import { serveFolder } from './harness/serve-folder.ts';
import { buttonBoxes, clippedTexts, tooClose } from './harness-phone/measure.ts';
import { weighScenes } from './harness-weigh/weigh-stage.ts';
import { axeFaults } from './support/axe-faults.ts';
import { launchChromium } from './support/chromium.ts';

const PICTURES = fileURLToPath(new URL('../../.build/pictures/', import.meta.url));
const LANGUAGES = ['en', 'de', 'fr'] as const;
const SIZES = [
  { width: 360, height: 640 },
  { width: 390, height: 844 },
  { width: 1280, height: 800 },
] as const;
/** What a thumb needs, in CSS px (the phone's design). */
const BIG_PX = 126;
const MIDDLING_PX = 94;
const GAP_PX = 16;

const SCENES = weighScenes();
/** A scene, a view of it, and what stands over that. */
const SHOWN = [
  ['half in', 'line', null],
  ['half in', 'list', null],
  ['half in', 'water', null],
  ['half in', 'line', 'short'],
  ['half in', 'water', 'tap'],
  ['half in', 'water', 'forget'],
  ['mixed', 'dough', null],
  ['wild', 'dough', null],
  ['pounds', 'line', null],
  ['pounds', 'list', null],
  ['pounds', 'water', null],
] as const;

let browser: Browser;
let served: Awaited<ReturnType<typeof serveFolder>>;
let address = '';
const complaints: string[] = [];
let page: Page;

beforeAll(async () => {
  const built = await buildHarness('harness-weigh', 'tests/browser/harness-weigh/index.html');
  served = await serveFolder(built.folder);
  address = served.origin + built.page;
  mkdirSync(PICTURES, { recursive: true });
  browser = await launchChromium();
  page = await browser.newPage({ hasTouch: true, reducedMotion: 'reduce' });
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
});

afterAll(async () => {
  await browser.close();
  await served.close();
});

async function show([name, view, over]: (typeof SHOWN)[number], language: string): Promise<void> {
  const scene = SCENES[name];
  if (scene === undefined) throw new Error(`there is no scene ${name}`);
  await page.goto(`${address}?language=${language}&piece=${scene.workpieceId}`);
  await page.evaluate(
    async ({ view: told, nowMs, wanted, wantedOver }) => {
      const element = document.querySelector('weigh-page');
      if (element === null) throw new Error('no weigh-page');
      await window.weighHarness.show(told, nowMs);
      element.dispatchEvent(Object.assign(new Event('view-wanted'), { view: wanted, lineId: null }));
      await element.updateComplete;
      if (wantedOver === 'short') element.dispatchEvent(new Event('short-wanted'));
      else if (wantedOver !== null) element.dispatchEvent(Object.assign(new Event('water-panel-wanted'), { panel: wantedOver }));
      await element.updateComplete;
      await document.fonts.ready;
    },
    { view: scene.view, nowMs: scene.nowMs, wanted: view, wantedOver: over },
  );
}

describe.each(LANGUAGES)('G7 in %s', (language) => {
  // Where words are longest the smallest screen is what they may not fit on.
  test.each(language === 'en' ? SIZES : SIZES.filter(({ width }) => width === 360))(
    'nothing is clipped at $width × $height, and thumbs find what they need',
    async (size) => {
      await page.setViewportSize(size);
      for (const shown of SHOWN) {
        const name = shown.filter((part) => part !== null).join(' ');
        await show(shown, language);
        await page.screenshot({ path: `${PICTURES}weigh-${name.replaceAll(' ', '-')}-${language}-${size.width}x${size.height}.png` });
        expect(await clippedTexts(page), name).toEqual([]);
        const boxes = (await buttonBoxes(page)).filter((box) => box.bottom > box.top);
        expect(boxes.length, name).toBeGreaterThan(1);
        for (const box of boxes) {
          const leastPx = box.classes.includes('big') ? BIG_PX : MIDDLING_PX;
          expect(box.bottom - box.top, `${name}: ${box.text}`).toBeGreaterThanOrEqual(leastPx - 0.5);
        }
        for (const host of new Set(boxes.map((box) => box.host)))
          expect(
            tooClose(
              boxes.filter((box) => box.host === host),
              GAP_PX,
            ),
            name,
          ).toEqual([]);
        // The main button is in reach of the thumb.
        const big = boxes.filter((box) => box.classes.includes('big'));
        for (const box of big) expect(box.top, name).toBeGreaterThanOrEqual(size.height / 2 - 100);
      }
      expect(complaints).toEqual([]);
    },
  );
});

describe('G8 to eyes and ears that need more', () => {
  test.each(['light', 'dark'] as const)('axe has nothing to say in the %s look', async (colorScheme) => {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize(SIZES[1]);
    for (const shown of SHOWN) {
      await show(shown, 'en');
      expect(await axeFaults(page), shown.join(' ')).toEqual([]);
    }
  });

  test('a big weight is heard as whole words', async () => {
    await show(SHOWN[0], 'en');
    expect(await page.getByRole('status').allInnerTexts()).toContainEqual(expect.stringMatching(/^Rye flour, 300 grams$/));
  });

  test('by the keyboard alone a line is ticked off, once', async () => {
    await show(SHOWN[0], 'en');
    await page.clock.install();
    await show(SHOWN[0], 'en');
    await page.clock.runFor(1_000);
    const button = page.getByRole('button', { name: 'In the bowl' });
    await button.focus();
    await page.keyboard.press('Enter');
    const sent = await page.evaluate(() => window.weighHarness.sent.splice(0));
    expect(sent).toMatchObject([{ type: 'weighIngredient', lineId: '0-2', grams: 300, lotNumbers: [] }]);
  });
});
