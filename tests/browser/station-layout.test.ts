import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { FloorView } from '../../display/link/floor-link.ts';
import type { Lit } from '../../display/station/stay-lit.ts';
import { STATION } from '../../display/words/en/station.ts';
import { LANGUAGES } from '../../display/words/page-language.ts';
import { NAME_CHARACTERS, REMARK_CHARACTERS } from '../../shared/documents/names.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { harbourFile } from '../domain/support/harbour.ts';
import { idOf } from '../domain/support/ids.ts';
import { buildHarness } from './harness/build-harness.ts';
import { measurePage, type DrawnText } from './harness/measure-page.ts';
import { serveFolder } from './harness/serve-folder.ts';
import { workedFloor } from './harness/staged-wall.ts';
import { buttonBoxes, clippedTexts, tooClose } from './harness-phone/measure.ts';
import { phoneView } from './harness-phone/phone-stage.ts';
import { axeFaults } from './support/axe-faults.ts';
import { launchChromium } from './support/chromium.ts';
import { tabTo } from './support/keyboard.ts';

const PICTURES = fileURLToPath(new URL('../../.build/pictures/', import.meta.url));

/** What a floury thumb needs, in CSS px (the phone's design). */
const BIG_PX = 126;
const MIDDLING_PX = 94;
const GAP_PX = 16;
/** WCAG 2.2, 1.4.6: contrast, enhanced. */
const LEAST_CONTRAST = 7;
/** 16 arc minutes of capital height from 1 m, at 6 CSS px to the millimetre and capitals of 0.668 em. */
const GLANCE_PX = (2 * 1000 * Math.tan((16 / 60 / 2) * (Math.PI / 180)) * 6) / 0.668;

const SIZES = [
  { width: 390, height: 844 },
  { width: 844, height: 390 },
  { width: 1024, height: 768 },
  { width: 1280, height: 800 },
] as const;
type Size = (typeof SIZES)[number];

/** A floor as a station's screen is shown it. */
interface Scene {
  readonly view: FloorView;
  readonly nowMs: number;
  readonly stationId: string | null;
  readonly lit: Lit;
}

// Late and being lost at two stations, with rests and calls at the others.
const busy = workedFloor(harbourFile(), { untilMin: 210, neglected: { O1: 190, R1: 203, M1a: 150 } });
// Something in the oven, and something in a mixer.
const early = workedFloor(harbourFile(), { untilMin: 40 });
const baking = workedFloor(harbourFile(), { untilMin: 185, neglected: { O1: 150 } });

function scene(
  floor: { readonly state: FloorState; readonly nowMs: number },
  stationId: string | null,
  more: Partial<FloorView> = {},
): Scene {
  return { view: phoneView(floor.state, more), nowMs: floor.nowMs, stationId, lit: 'mayDim' };
}

const undoable = {
  commandId: idOf(3),
  command: { type: 'hearAllCalls' },
  outcome: { ok: true, sequence: 1, undoable: true },
} as const;

const SCENES: readonly (readonly [string, Scene])[] = [
  ['bench', scene(busy, 'bench')],
  ['bench-undo', scene(busy, 'bench', { undoable })],
  ['oven', scene(baking, 'oven')],
  ['mixer', scene(early, 'mixer')],
  ['nothing', scene(busy, 'fillings')],
  ['lost-link', scene(busy, 'bench', { connection: { phase: 'lost', lastContactMs: busy.nowMs - 60_000 } })],
  ['choice', scene(busy, null)],
  ['gone', scene(busy, 'cellar')],
];

let browser: Browser;
let served: Awaited<ReturnType<typeof serveFolder>>;
let address: string;
const complaints: string[] = [];

beforeAll(async () => {
  const built = await buildHarness('harness-station', 'tests/browser/harness-station/index.html');
  served = await serveFolder(built.folder);
  address = served.origin + built.page;
  mkdirSync(PICTURES, { recursive: true });
  browser = await launchChromium();
});

afterAll(async () => {
  await browser.close();
  await served.close();
});

async function newPage(language: string, look: 'light' | 'dark' = 'light', size: Size = SIZES[0]): Promise<Page> {
  const page = await browser.newPage({ viewport: size, hasTouch: true, reducedMotion: 'reduce', colorScheme: look });
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  await page.goto(`${address}?language=${language}`);
  return page;
}

async function show(page: Page, { view, nowMs, stationId, lit }: Scene, size: Size = SIZES[0]): Promise<void> {
  await page.setViewportSize(size);
  await page.evaluate(
    async ([shown, atMs, station, isLit]) => {
      await window.stationHarness.show(shown, atMs, station, isLit);
      // Panels and pictures come once the floor shows; the last of them stands for all.
      if (shown?.state !== null) await customElements.whenDefined('where-panel');
      await document.fonts.ready;
    },
    [view, nowMs, stationId, lit] as const,
  );
}

/** The texts that are in sight: what has been scrolled away has no ground that could be measured. */
async function inSight(page: Page): Promise<DrawnText[]> {
  const drawn = await page.evaluate(measurePage);
  const areas = await Promise.all(
    (await page.locator('main, .acts, section.list').all()).map(async (area) => ({ area, box: await area.boundingBox() })),
  );
  const boxes = areas.flatMap(({ box }) => box ?? []);
  const isWithin = (text: DrawnText): boolean => {
    const around = boxes.find(
      (box) => text.left >= box.x && text.right <= box.x + box.width && text.bottom > box.y && text.top < box.y + box.height,
    );
    return around === undefined || (text.top >= around.y && text.bottom <= around.y + around.height);
  };
  const { height } = page.viewportSize() ?? { height: 0 };
  return drawn.filter((text) => text.top >= 0 && text.bottom <= height && isWithin(text));
}

/** The longest that documents may say, in words as long as they come. */
function withLongNames(state: FloorState): FloorState {
  const text = JSON.stringify(state, (key: string, value: unknown) => {
    if (key === 'name' && typeof value === 'string')
      return 'Stiff-dough wholewheat market-morning celebration loaves xl'.padEnd(NAME_CHARACTERS, 'w');
    if (key === 'check' || key === 'caution')
      return 'Unmistakeablyovergrown, '
        .repeat(12)
        .slice(0, REMARK_CHARACTERS - 1)
        .trimEnd();
    if (key === 'tag' && typeof value === 'string') return 'Ww1234b';
    return value;
  });
  return JSON.parse(text) as FloorState;
}

describe('T6 a station’s screen holds its words at every size and in every language', () => {
  test.each(LANGUAGES)('nothing is clipped, %s', async (language) => {
    const page = await newPage(language);
    for (const size of SIZES) {
      for (const [name, each] of SCENES) {
        await show(page, each, size);
        if (language === 'de') await page.screenshot({ path: `${PICTURES}station-${name}-${size.width}x${size.height}.png` });
        expect(await clippedTexts(page), `${name} at ${size.width}`).toEqual([]);
        const reach = await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.scrollHeight]);
        expect(reach, `${name} at ${size.width}`).toEqual([size.width, size.height]);
      }
      for (const station of ['bench', 'oven']) {
        const long = scene({ state: withLongNames(busy.state), nowMs: busy.nowMs }, station);
        await show(page, long, size);
        expect(await clippedTexts(page), `long names at ${size.width}`).toEqual([]);
      }
    }
    await page.close();
  });

  test.each(SIZES)('the most pressing dough stands open with its buttons, large and apart, at $width×$height', async (size) => {
    const page = await newPage('en');
    for (const [name, each] of SCENES.filter(([, { stationId, view }]) => stationId === 'bench' && view.undoable === null)) {
      await show(page, each, size);
      const boxes = (await buttonBoxes(page)).filter((box) => box.host === 'card-actions');
      const big = boxes.filter((box) => box.classes.includes('big'));
      expect(big, name).toHaveLength(1);
      expect(big[0]?.text, name).toBe('O1 SHEETED');
      for (const box of boxes) {
        expect(box.bottom - box.top, box.text).toBeGreaterThanOrEqual(box.classes.includes('big') ? BIG_PX : MIDDLING_PX);
        expect(box.bottom, `${name}: ${box.text}`).toBeLessThanOrEqual(size.height);
      }
      expect(tooClose(boxes, GAP_PX)).toEqual([]);
    }
    await page.close();
  });

  test.each(SIZES)('what has to be done is read from a metre, and what to look for stands beside it, at $width×$height', async (size) => {
    const page = await newPage('en');
    await show(page, scene(busy, 'bench'), size);
    const drawn = await page.evaluate(measurePage);
    const scale = await page.locator('dough-card').evaluate((card) => Number(getComputedStyle(card).zoom));
    const sizeOf = (text: string): number =>
      (drawn.find((each) => each.text === text && each.where.startsWith('dough-card'))?.sizePx ?? 0) * scale;
    // On a phone that lies there is no room for more than its own size.
    const leastPx = size.height < 560 ? 40 : GLANCE_PX;
    for (const text of ['O1', '+15:12']) expect(sizeOf(text), text).toBeGreaterThanOrEqual(leastPx);
    const check = await page.locator('dough-card .check').boundingBox();
    const area = await page.locator('main.card').boundingBox();
    expect(check?.y ?? size.height).toBeLessThan((area?.y ?? 0) + (area?.height ?? 0) - 40);
    await page.close();
  });

  test.each(SIZES)('a panel that is opened is legible and its buttons are in reach, at $width×$height', async (size) => {
    const page = await newPage('de');
    await show(page, scene(busy, 'bench'), size);
    for (const panel of ['other', 'skip', 'more', 'where', 'move'] as const) {
      await page.evaluate(async (wanted) => {
        const station = document.querySelector('station-page');
        station?.dispatchEvent(Object.assign(new Event('panel-wanted'), { panel: wanted }));
        await station?.updateComplete;
      }, panel);
      if (panel === 'where') await page.screenshot({ path: `${PICTURES}station-panel-${size.width}x${size.height}.png` });
      expect(await clippedTexts(page), panel).toEqual([]);
      const boxes = await buttonBoxes(page);
      const inPanel = boxes.filter((box) => box.host.endsWith('-panel'));
      expect(inPanel.length, panel).toBeGreaterThan(0);
      for (const box of inPanel) expect(box.bottom - box.top, `${panel}: ${box.text}`).toBeGreaterThanOrEqual(MIDDLING_PX);
      const back = boxes.find((box) => box.text.includes('Zurück'));
      expect(back?.bottom ?? Infinity, panel).toBeLessThanOrEqual(size.height);
    }
    await page.close();
  });

  test('side by side on a tablet, one above the other on a phone', async () => {
    const page = await newPage('en');
    const placed = async (size: Size): Promise<'beside' | 'below'> => {
      await show(page, scene(busy, 'bench'), size);
      const [card, list] = await Promise.all([page.locator('main.card').boundingBox(), page.locator('section.list').boundingBox()]);
      if (card === null || list === null) throw new Error('card and list are not both there');
      return list.x >= card.x + card.width ? 'beside' : 'below';
    };
    expect([await placed(SIZES[0]), await placed(SIZES[2]), await placed(SIZES[3])]).toEqual(['below', 'beside', 'beside']);
    await page.close();
  });

  test.each(['light', 'dark'] as const)('axe finds nothing and text has its contrast, %s', async (look) => {
    const page = await newPage('en', look);
    for (const [name, each] of SCENES) {
      await show(page, each, SIZES[2]);
      if (look === 'dark') await page.screenshot({ path: `${PICTURES}station-${name}-dark.png` });
      expect(await axeFaults(page), name).toEqual([]);
      const drawn = await inSight(page);
      expect(drawn.length, name).toBeGreaterThan(5);
      expect(drawn.filter(({ contrast }) => contrast < LEAST_CONTRAST).map(({ text, contrast }) => [name, text, contrast])).toEqual([]);
    }
    await page.close();
  });
});

describe('T7 a station’s screen shows its own work, and says what presses elsewhere', () => {
  test('its rows and nobody’s, the mixers of a mixer station, the decks of an oven station', async () => {
    const page = await newPage('en');
    await show(page, scene(early, 'mixer'), SIZES[3]);
    await page.locator('station-machines').getByText('Spiral', { exact: true }).waitFor();
    expect(await page.locator('station-machines').getByText('Hearth', { exact: true }).count()).toBe(0);
    await show(page, scene(baking, 'oven'), SIZES[3]);
    await page.locator('station-machines').getByText('Hearth', { exact: true }).waitFor();
    expect(await page.locator('station-machines').getByText('Spiral', { exact: true }).count()).toBe(0);
    await page.close();
  });

  test('one line for the worst elsewhere; a tap opens it, and the way back leads to the own work', async () => {
    const page = await newPage('en');
    await show(page, scene(busy, 'oven'), SIZES[3]);
    const line = page.locator('elsewhere-line button');
    expect((await line.textContent())?.replace(/\s+/g, ' ')).toMatch(/Elsewhere M1a WASH \+39:12 going over/);
    const own = await page.locator('dough-card h1').textContent();
    await page.waitForTimeout(450);
    await line.click();
    await page.locator('dough-card h1', { hasText: 'M1a' }).waitFor();
    expect(await line.count()).toBe(1);
    await page.waitForTimeout(650);
    await page.getByRole('button', { name: 'Back' }).click();
    await page.locator('dough-card h1', { hasText: own ?? '' }).waitFor();
    await page.close();
  });

  test('the browser that cannot keep the screen lit says so; one that can says nothing', async () => {
    const page = await newPage('en');
    await show(page, scene(busy, 'bench'), SIZES[3]);
    await page.getByText(STATION.mayDim).waitFor();
    await show(page, { ...scene(busy, 'bench'), lit: 'lit' }, SIZES[3]);
    expect(await page.getByText(STATION.mayDim).count()).toBe(0);
    await page.close();
  });
});

describe('T8 a station’s screen is worked by touch and by keyboard, and goes back by itself', () => {
  const sent = (page: Page): Promise<readonly ClientCommand[]> => page.evaluate(() => window.stationHarness.sent.splice(0));

  /** A page whose clock moves only when the test says so. */
  async function stilled(): Promise<Page> {
    const page = await browser.newPage({ viewport: SIZES[3], hasTouch: true, reducedMotion: 'reduce' });
    await page.clock.install();
    await page.goto(`${address}?language=en`);
    await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 60_000);
    await show(page, scene(busy, 'bench'), SIZES[3]);
    // Rows that the font has moved when it came count as moved when the page next looks.
    await page.clock.runFor(2_500);
    return page;
  }

  const openTag = (page: Page): Promise<string | null> => page.locator('dough-card h1').textContent();

  async function touch(page: Page, what: ReturnType<Page['locator']>): Promise<void> {
    await what.tap();
    await page.clock.runFor(700);
  }

  test('what is most pressing is done with one touch', async () => {
    const page = await stilled();
    await touch(page, page.getByRole('button', { name: 'O1 SHEETED' }));
    expect(await sent(page)).toMatchObject([{ type: 'finishStep' }]);
    await page.close();
  });

  test('another dough is opened from the list, and after sixty seconds without a touch the most pressing one is back', async () => {
    const page = await stilled();
    await touch(page, page.locator('phone-row', { hasText: 'R2' }).getByRole('button'));
    expect(await openTag(page)).toBe('R2');
    await page.clock.runFor(57_000);
    expect(await openTag(page)).toBe('R2');
    await page.locator('station-header').tap();
    await page.clock.runFor(57_000);
    expect(await openTag(page)).toBe('R2');
    await page.clock.runFor(4_000);
    expect(await openTag(page)).toBe('O1');
    await page.close();
  });

  test('a panel that was left open closes too, and so does the question where the screen is', async () => {
    const page = await stilled();
    await touch(page, page.getByRole('button', { name: 'Other…' }));
    expect(await page.locator('other-panel').count()).toBe(1);
    await page.clock.runFor(61_000);
    expect(await page.locator('other-panel').count()).toBe(0);
    await touch(page, page.getByRole('button', { name: 'Station: Bench' }));
    expect(await page.getByText(STATION.chooseTitle).count()).toBe(1);
    await page.clock.runFor(61_000);
    expect(await page.getByText(STATION.chooseTitle).count()).toBe(0);
    await page.close();
  });

  test('another station is chosen by keyboard alone, and its work is done so', async () => {
    const page = await stilled();
    await page.getByRole('button', { name: 'Station: Bench' }).focus();
    await page.keyboard.press('Enter');
    await page.clock.runFor(700);
    await tabTo(page, 'Oven');
    await page.keyboard.press('Enter');
    await page.clock.runFor(700);
    await page.getByRole('button', { name: 'Station: Oven' }).waitFor();
    expect(await page.evaluate(() => window.stationHarness.introduced.at(-1))).toEqual({ name: 'Oven', stationId: 'oven' });
    await tabTo(page, /^[A-Z][a-z]?\d+[a-z]? [A-Z ]+$/);
    await page.keyboard.press('Enter');
    expect(await sent(page)).toMatchObject([{ type: 'finishStep' }]);
    await page.close();
  });

  test('nothing went wrong on any page', () => {
    expect(complaints).toEqual([]);
  });
});
