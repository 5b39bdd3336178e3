import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Look } from '../../display/parts/look.ts';
import { DEFAULT_VIEWING } from '../../display/wall/settings.ts';
import { CAPITAL_RATIO } from '../../display/wall/type-sizes.ts';
import type { Floor } from '../domain/support/floor.ts';
import { coveringArray } from './harness/covering-array.ts';
import { dayOf, workedFloor } from './harness/staged-wall.ts';
import { wallFaults } from './harness/wall-faults.ts';
import { openDoughs, stageWall, WallStage, type FontChoice } from './harness/wall-stage.ts';
import { launchChromium } from './support/chromium.ts';

/** A screen as it is bought, in CSS px, and how many px of its own make one of those. */
const SCREENS = {
  'full HD': { width: 1920, height: 1080, density: 1 },
  'small HD': { width: 1366, height: 768, density: 1 },
  '4K': { width: 3840, height: 2160, density: 1 },
  '4K, scaled twofold': { width: 1920, height: 1080, density: 2 },
} as const;
type ScreenName = keyof typeof SCREENS;

const FACTORS = {
  screen: Object.keys(SCREENS) as ScreenName[],
  inch: [32, 43, 55],
  metres: [3, 4, 5, 6],
  batches: [1, 2, 3, 5, 8, 12, 16, 20, 25, 30],
  language: ['en', 'de', 'fr'] as const,
  font: ['ours', 'fallback'] as readonly FontChoice[],
  arcmin: [20, 26],
  look: ['day', 'night'] as const,
};

const floors = new Map<number, Floor>();

/** A morning on which some doughs are left alone, so that all four roles are on the wall. */
function floorOf(batches: number): Floor {
  const known = floors.get(batches);
  if (known !== undefined) return known;
  const floor = workedFloor(dayOf(batches, 7), { untilMin: 120 + batches * 2, neglected: { R1: 100, C1: 118 + batches * 2 } });
  floors.set(batches, floor);
  return floor;
}

/** Turns a page light or dark. */
function turn(page: Page, look: Look): Promise<void> {
  return page.evaluate((wanted) => {
    document.documentElement.dataset['look'] = wanted;
  }, look);
}

let browser: Browser;
let stage: WallStage;

beforeAll(async () => {
  browser = await launchChromium();
  stage = await WallStage.build(browser);
});

afterAll(async () => {
  await stage.close();
  await browser.close();
});

describe('W-G1 the wall is legible, whole, apart and complete', () => {
  test.each(coveringArray(FACTORS, 4))(
    '$screen, $inch inch, $metres m, $arcmin minutes of arc, $batches batches, $language, font: $font, $look',
    async ({ screen, inch, metres, batches, language, font, arcmin, look }) => {
      const { width, height, density } = SCREENS[screen];
      const viewing = { inch, metres, arcmin };
      const page = await stage.page({ language, font, density }, { width, height });
      await turn(page, look);
      await stageWall(page, floorOf(batches), viewing);
      expect(await wallFaults(page, viewing, { width, height }, openDoughs(floorOf(batches)))).toEqual([]);
    },
  );

  test('what is measured would be found', async () => {
    const size = SCREENS['full HD'];
    const page = await stage.page({ language: 'en', font: 'ours', density: 1 }, size);
    await turn(page, 'day');
    const floor = floorOf(8);
    const spoil = async (host: string, part: string, style: string, value: string): Promise<string> => {
      await stageWall(page, floor, DEFAULT_VIEWING);
      await page
        .locator(`${host} ${part}`)
        .first()
        .evaluate((element, [name, text]) => (element as HTMLElement).style.setProperty(name, text), [style, value] as const);
      return (await wallFaults(page, DEFAULT_VIEWING, size, openDoughs(floor))).join('\n');
    };
    expect(await spoil('wall-row', '.countdown', 'font-size', '60px')).toContain('is too small from afar: 60 px');
    expect(await spoil('wall-strip', '.time', 'font-size', '40px')).toContain('is too small from 3 m: 40 px');
    expect(await spoil('wall-row', '.tag', 'translate', '200px 0')).toContain('overlaps');
    expect(await spoil('wall-header', '.clock', 'translate', '-60px 0')).toContain('runs off the screen');
    expect(await spoil('wall-row', '.countdown', 'color', 'rgb(110 110 110)')).toContain('has a contrast of');
    expect(await spoil('wall-strip', '.bake', 'background', 'rgb(190 190 190)')).toMatch(/wall-strip div\.bake has a contrast of/);
    expect(await spoil('wall-row', '.tag', 'display', 'none')).toMatch(/\d+ doughs are open, \d+ are on it/);
    expect(await spoil('wall-ticks', '.label', 'display', 'none')).toMatch(/\d+ doughs share rows, the axis tells of \d+/);
  });

  test.each(FACTORS.language)('%s: the wall as it comes has its axis, with eight doughs and with thirty', async (language) => {
    const page = await stage.page({ language, font: 'ours', density: 1 }, SCREENS['full HD']);
    for (const batches of [8, 30]) {
      await stageWall(page, floorOf(batches), DEFAULT_VIEWING);
      expect(await page.locator('wall-axis').count()).toBe(1);
    }
  });

  test.each(FACTORS.font)('font: %s: capitals are as high as sizes are reckoned by', async (font) => {
    const page = await stage.page({ language: 'en', font, density: 1 }, SCREENS['full HD']);
    const capitalPx = await page.evaluate(() => {
      const probe = document.createElement('div');
      probe.style.setProperty('font-size', '100px');
      // CSS Values 4: the height of a capital in the font that is used.
      probe.style.setProperty('height', '1cap');
      document.body.append(probe);
      const { height } = probe.getBoundingClientRect();
      probe.remove();
      return height;
    });
    expect(Math.abs(capitalPx - 100 * CAPITAL_RATIO)).toBeLessThan(1);
  });

  test('and the pages complained of nothing', () => {
    expect(stage.complaints).toEqual([]);
  });
});
