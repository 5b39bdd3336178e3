import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import axe from 'axe-core';
import jsQR from 'jsqr';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { FloorView } from '../../display/link/floor-link.ts';
import { DEFAULT_WALL_LOOK, type WallLook } from '../../display/wall/wall-look.ts';
import type { WallSettings } from '../../display/wall/wall-settings.ts';
import { LANGUAGES, type Language } from '../../display/words/page-language.ts';
import { boardRows } from '../../shared/floor/board.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { harbourFile } from '../domain/support/harbour.ts';
import { buildHarness } from './harness/build-harness.ts';
import { measurePage } from './harness/measure-page.ts';
import { serveFolder } from './harness/serve-folder.ts';
import { dayOf, viewOf, workedFloor } from './harness/staged-wall.ts';
import type { StagedSetup } from './harness-setup/setup-harness.ts';
import { launchChromium } from './support/chromium.ts';

const PICTURES = fileURLToPath(new URL('../../.build/pictures', import.meta.url));
const SIZE = { width: 1920, height: 1080 };
const VIEWING = { inch: 43, metres: 5, arcmin: 20 };
const PHONE_URL = 'http://192.168.1.20:4810/phone';
const LOOPBACK = ['http://localhost:8420'];
const FIVE_MINUTES_MS = 5 * 60_000;

interface Floor {
  readonly state: FloorState | null;
  readonly nowMs: number;
}

const NINE = workedFloor(harbourFile(), { untilMin: 210, neglected: { O1: 190, R1: 203 } });
const TWENTY = workedFloor(dayOf(20, 9), { untilMin: 200, neglected: { R1: 176, C1: 195 } });
const ONE = workedFloor(dayOf(1, 5), { untilMin: 102 });
const EMPTY = workedFloor(dayOf(1, 5), { untilMin: 5 }).only();

let browser: Browser;
let page: Page;
let decoder: Page;
let address: string;
let close: () => Promise<void>;
const complaints: string[] = [];

beforeAll(async () => {
  const built = await buildHarness('harness-setup', 'tests/browser/harness-setup/setup.html');
  const served = await serveFolder(built.folder);
  close = () => served.close();
  address = `${served.origin}${built.page}`;
  mkdirSync(PICTURES, { recursive: true });
  browser = await launchChromium();
  page = await browser.newPage({ viewport: SIZE });
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  decoder = await browser.newPage();
  await speak('en');
});

afterAll(async () => {
  await browser.close();
  await close();
});

beforeEach(async () => {
  await page.setViewportSize(SIZE);
  if ((await page.evaluate(() => document.documentElement.lang)) !== 'en') await speak('en');
});

async function speak(language: Language): Promise<void> {
  await page.goto(`${address}?language=${language}`);
}

async function show(
  kind: 'showSetup' | 'showWall',
  floor: Floor,
  settings: Partial<WallSettings> = {},
  more: Partial<FloorView> = {},
  browserLook: StagedSetup['browserLook'] = 'day',
): Promise<void> {
  const staged: StagedSetup = {
    view: viewOf(floor.state, more),
    nowMs: floor.nowMs,
    settings: { viewing: VIEWING, look: DEFAULT_WALL_LOOK, stationId: null, ...settings },
    gaps: ['up', 'right', 'left', 'down', 'down', 'up', 'left', 'right'],
    browserLook,
  };
  await page.evaluate(([name, given]) => window.setupHarness[name](given), [kind, staged] as const);
}

const night: WallLook = { ...DEFAULT_WALL_LOOK, choice: 'night' };

/** The last settings that the page said. */
async function saidSettings(): Promise<WallSettings | undefined> {
  const said = await page.evaluate(() => window.setupHarness.said);
  return said.filter((one) => typeof one !== 'string').at(-1);
}

async function saidNames(): Promise<string[]> {
  const said = await page.evaluate(() => window.setupHarness.said);
  return said.filter((one) => typeof one === 'string');
}

async function violations(): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const results = await (globalThis as unknown as { axe: typeof axe }).axe.run(document);
    return results.violations.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.html.slice(0, 160)).join(' | ')}`);
  });
}

/** What a camera reads in a picture of the page; null where there is no code in it. */
async function scanned(picture: Buffer): Promise<string | null> {
  const { data, width, height } = await decoder.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    const context = canvas.getContext('2d');
    if (context === null) throw new Error('no canvas');
    context.drawImage(bitmap, 0, 0);
    const image = context.getImageData(0, 0, bitmap.width, bitmap.height);
    let text = '';
    for (let at = 0; at < image.data.length; at += 30_000) text += String.fromCharCode(...image.data.subarray(at, at + 30_000));
    return { data: btoa(text), width: bitmap.width, height: bitmap.height };
  }, picture.toString('base64'));
  return jsQR.default(new Uint8ClampedArray(Buffer.from(data, 'base64')), width, height, { inversionAttempts: 'dontInvert' })?.data ?? null;
}

/** What an element of ours says, within its shadow root. */
function wordsOf(element: Locator): Promise<string> {
  return element.evaluate((host) =>
    [...(host.shadowRoot?.querySelectorAll(':not(style)') ?? [])]
      .flatMap((part) => [...part.childNodes].filter((node) => node.nodeType === Node.TEXT_NODE).map((node) => node.textContent))
      .join(' '),
  );
}

/** CSS px of the bar from its first edge to its last. */
async function barPx(): Promise<number> {
  const box = await page.locator('millimetre-bar .bar').boundingBox();
  return box?.width ?? 0;
}

/** Every text whose contrast to its ground is below 7:1. Only what is in sight has a ground that can be found. */
async function contrastFaults(): Promise<string[]> {
  const texts = await page.evaluate(measurePage);
  expect(texts.length).toBeGreaterThan(2);
  return texts
    .filter(({ contrast }) => contrast < 7)
    .map(({ text, where, contrast }) => `"${text}" (${where}) has a contrast of ${contrast.toFixed(2)}`);
}

/** Every text that runs off a page of a width, or off a wall's height. */
async function edgeFaults(width: number): Promise<string[]> {
  const texts = await page.evaluate(measurePage);
  expect(texts.length).toBeGreaterThan(2);
  return texts
    .filter(
      ({ left, right, where, bottom }) => left < 0 || right > width + 0.5 || (where.startsWith('wall-') && bottom > SIZE.height + 0.5),
    )
    .map(({ text, where, left, right, bottom }) => `"${text}" (${where}) runs from ${left} to ${right} px, down to ${bottom}`);
}

const button = (name: string): Locator => page.getByRole('button', { name });

describe('the page that sets up a wall', () => {
  const states = [
    ['usual', NINE, {}, {}],
    [
      'night by hours, another size, no network',
      ONE,
      { look: { choice: 'hours', nightFromMin: 0, nightToMin: 1439 }, viewing: { ...VIEWING, arcmin: 23 } },
      { addresses: LOOPBACK },
    ],
    ['no link yet', { state: null, nowMs: 0 }, {}, { connection: { phase: 'connecting' }, addresses: [] }],
    ['a station that is gone', NINE, { stationId: 'cellar', look: night }, {}],
  ] as const satisfies readonly (readonly [string, Floor, Partial<WallSettings>, Partial<FloorView>])[];

  test.each(states)('V10 %s: axe finds nothing, text has a contrast of 7:1', async (name, floor, settings, more) => {
    await show('showSetup', floor, settings, more);
    await page.screenshot({ path: `${PICTURES}/setup-${name.replaceAll(/\W+/g, '-')}.png`, fullPage: true });
    expect(await violations()).toEqual([]);
    // A taller page has larger samples on it, too.
    const tall = await page.evaluate(() => document.documentElement.scrollHeight);
    await page.setViewportSize({ width: SIZE.width, height: 2 * tall });
    expect(await contrastFaults()).toEqual([]);
  });

  // WCAG 2.2 SC 1.4.4 and 1.4.10: 200 % of 1920 × 1080, and 320 CSS px wide.
  test.each(
    LANGUAGES.flatMap(
      (language) =>
        [
          [language, 960, 540],
          [language, 320, 640],
        ] as const,
    ),
  )('V10 in %s at %i × %i px nothing runs off the page, and nothing is scrolled sideways', async (language, width, height) => {
    await speak(language);
    await page.setViewportSize({ width, height });
    await show('showSetup', NINE, { look: { ...night, choice: 'hours' }, viewing: { ...VIEWING, arcmin: 23 } });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    expect(await edgeFaults(width)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.lang)).toBe(language);
  });

  test('V11 the bar is 100 mm long by diagonal and resolution, and − and + put it right', async () => {
    for (const [inch, width, height] of [
      [43, 1920, 1080],
      [32, 1366, 768],
      [14, 1920, 1200],
    ] as const) {
      await page.setViewportSize({ width, height });
      await show('showSetup', NINE, { viewing: { ...VIEWING, inch } });
      // 25.4 mm an inch; the diagonal by Pythagoras.
      expect(await barPx()).toBeCloseTo((100 * Math.sqrt(width * width + height * height)) / (inch * 25.4), 1);
    }
    await page.setViewportSize(SIZE);
    await show('showSetup', NINE);
    const before = await barPx();
    await button('Diagonal: smaller diagonal, longer bar').click();
    expect((await saidSettings())?.viewing.inch).toBe(42.9);
    expect((await barPx()) / before).toBeCloseTo(43 / 42.9, 4);
    await button('Diagonal: larger diagonal, shorter bar').click();
    await button('Diagonal: larger diagonal, shorter bar').click();
    expect((await saidSettings())?.viewing.inch).toBe(43.1);
    await page.getByLabel('Diagonal', { exact: true }).fill('31.5');
    expect(await barPx()).toBeCloseTo((before * 43) / 31.5, 1);
    await expect
      .poll(() => page.getByText('inch across').textContent())
      .toContain('31.5 inch across 1920 × 1080 px make 2.75 px a millimetre');
    // What is no size of a screen changes nothing and says so.
    await page.getByLabel('Diagonal', { exact: true }).fill('3150');
    expect((await saidSettings())?.viewing.inch).toBe(31.5);
    expect(await page.getByLabel('Diagonal', { exact: true }).getAttribute('aria-invalid')).toBe('true');
  });

  test('V11 holds in the screen’s own pixels whatever the pixel ratio: 200 % zoom halves the page’s, not the bar', async () => {
    const zoomed = await browser.newContext({
      viewport: { width: 960, height: 540 },
      screen: { width: 960, height: 540 },
      deviceScaleFactor: 2,
    });
    const other = await zoomed.newPage();
    await other.goto(address);
    const [usual] = [page];
    page = other;
    try {
      await show('showSetup', NINE);
      expect((await barPx()) * 2).toBeCloseTo((100 * Math.hypot(1920, 1080)) / (43 * 25.4), 1);
      expect(await page.getByText('inch across').textContent()).toContain(
        '43 inch across 1920 × 1080 px make 2.02 px a millimetre (pixel ratio 2)',
      );
    } finally {
      page = usual;
      await zoomed.close();
    }
  });

  test('V12 rings stand at the text’s angle from the chosen distance, with gaps of a fifth of it, as they are drawn', async () => {
    for (const [metres, arcmin] of [
      [5, 20],
      [3, 26],
      [6, 16],
    ] as const) {
      await show('showSetup', NINE, { viewing: { inch: 43, metres, arcmin } });
      const box = await page.locator('ring-line svg').first().boundingBox();
      const mm = (box?.width ?? 0) / (Math.hypot(1920, 1080) / (43 * 25.4));
      const angle = (size: number): number => (2 * Math.atan(size / 2 / (metres * 1000)) * 180 * 60) / Math.PI;
      expect(angle(mm)).toBeCloseTo(arcmin, 1);
      // The gap as the browser fills it: from its middle, half a stroke up and down is open, and no more.
      const openUnits = await page
        .locator('ring-line path')
        .first()
        .evaluate((path) => {
          const shape = path as SVGGeometryElement;
          const open = (y: number): boolean => !shape.isPointInFill(new DOMPoint(2, y));
          let units = 0;
          for (let y = -1; y <= 1; y += 0.01) if (open(y)) units += 0.01;
          return units;
        });
      expect(openUnits).toBeGreaterThan(0.97);
      expect(openUnits).toBeLessThan(1.03);
      expect(angle((mm * openUnits) / 5)).toBeCloseTo(arcmin / 5, 0);
    }
  });

  test('V12 the gaps are answered by keyboard, and the page says what that means', async () => {
    await show('showSetup', NINE);
    await button('up').focus();
    for (const key of ['ArrowUp', 'ArrowRight', 'ArrowLeft', 'ArrowDown', 'ArrowDown', 'ArrowUp', 'ArrowLeft', 'ArrowUp'])
      await page.keyboard.press(key);
    const score = page.locator('ring-line .score');
    expect(await score.textContent()).toBe('7 of 8 right: whoever stood there reads the wall.');
    // The keyboard stays where it was: on what can be done next.
    await page.keyboard.press('Enter');
    expect(await saidNames()).toContain('rings-again');
    await show('showSetup', NINE);
    for (const name of ['up', 'up', 'up', 'down', 'down', 'up', 'left', 'right']) await button(name).click();
    expect(await score.textContent()).toMatch(/^6 of 8 right: not enough\./);
    expect(await violations()).toEqual([]);
  });

  test('V10 every control is reached by Tab alone, in order, and says what it is', async () => {
    await show('showSetup', NINE, { viewing: { ...VIEWING, arcmin: 23 }, look: { ...DEFAULT_WALL_LOOK, choice: 'hours' } });
    const reached: string[] = [];
    for (let presses = 0; presses < 60; presses += 1) {
      await page.keyboard.press('Tab');
      const name = await page.evaluate(() => {
        let focused = document.activeElement;
        for (let within = focused; within !== null; within = within.shadowRoot?.activeElement ?? null) focused = within;
        if (focused === null || focused === document.body) return null;
        const control = focused as HTMLInputElement;
        return control.getAttribute('aria-label') ?? control.labels?.[0]?.textContent?.trim() ?? control.textContent?.trim() ?? '';
      });
      if (name === null) break;
      reached.push(name);
    }
    expect(reached.filter((name) => name === '')).toEqual([]);
    const order = [
      'Back to the wall',
      'Diagonal',
      'Farthest bench',
      'another size',
      'Minutes of arc',
      'up',
      'New rings',
      'dark at night, by the clock',
      'Dark from',
      'Doughs of',
      'Language',
    ];
    const places = order.map((name) => reached.findIndex((one) => one.startsWith(name)));
    expect(places.filter((place) => place === -1)).toEqual([]);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test('V13 each choice is said as the settings that it makes', async () => {
    await show('showSetup', NINE);
    await page.getByLabel('26 minutes of arc').check();
    expect((await saidSettings())?.viewing.arcmin).toBe(26);
    await page.getByLabel('another size').check();
    await button('Minutes of arc: larger text').click();
    expect((await saidSettings())?.viewing.arcmin).toBe(24);
    await button('Farthest bench: nearer').click();
    expect((await saidSettings())?.viewing.metres).toBe(4.5);
    await page.getByLabel('Doughs of').selectOption('oven');
    expect((await saidSettings())?.stationId).toBe('oven');
    await page.getByLabel('dark at night, by the clock').check();
    await page.getByLabel('Dark from').fill('21:30');
    await page.getByLabel('until').fill('05:15');
    expect((await saidSettings())?.look).toEqual({ choice: 'hours', nightFromMin: 21 * 60 + 30, nightToMin: 5 * 60 + 15 });
    const href = await page.getByRole('link', { name: /wall\?inch/ }).getAttribute('href');
    expect(href).toBe('http://localhost:8420/wall?inch=43&metres=4.5&arcmin=24&look=hours&night=21:30-05:15&station=oven');
    await page.getByLabel('Language').selectOption('de');
    expect(await saidNames()).toContain('language-chosen');
  });

  test('V14 it wants to be a wall again after five minutes in which nobody touched it, whatever the pace', async () => {
    for (const pace of [1, 60]) {
      await show('showSetup', NINE, {}, { pace });
      const goTo = (realMs: number): Promise<void> => page.evaluate((nowMs) => window.setupHarness.goTo(nowMs), NINE.nowMs + realMs * pace);
      await goTo(FIVE_MINUTES_MS - 1000);
      expect(await saidNames()).not.toContain('left-alone');
      await page.keyboard.press('Shift');
      await goTo(FIVE_MINUTES_MS + 1000);
      expect(await saidNames()).not.toContain('left-alone');
      await goTo(2 * FIVE_MINUTES_MS + 1000);
      expect(await saidNames()).toContain('left-alone');
    }
  });

  test('V14 meanwhile it announces what calls, and nothing else', async () => {
    await show('showSetup', TWENTY);
    const alert = page.getByRole('alert');
    expect(await alert.textContent()).toMatch(/^\s*On the floor: Being lost: /);
    await show('showSetup', ONE);
    expect((await alert.textContent())?.trim()).toBe('');
  });
});

describe('the night look of a wall', () => {
  test.each([
    ['twenty doughs', TWENTY, {}, {}],
    ['nine doughs', NINE, {}, {}],
    ['one dough, and the code for phones', ONE, {}, {}],
    ['an empty kitchen', EMPTY, {}, { addresses: LOOPBACK }],
    ['the oven’s wall', TWENTY, { stationId: 'oven' }, {}],
    ['a lost link, at a pace', NINE, {}, { pace: 60, connection: { phase: 'lost', lastContactMs: NINE.nowMs - 61_000 } }],
  ] as const satisfies readonly (readonly [string, Floor, Partial<WallSettings>, Partial<FloorView>])[])(
    'V15 %s: text has a contrast of 7:1, and axe finds nothing',
    async (name, floor, settings, more) => {
      await show('showWall', floor, { look: night, ...settings }, more);
      await page.screenshot({ path: `${PICTURES}/wall-night-${name.replaceAll(/\W+/g, '-')}.png` });
      expect(await page.evaluate(() => getComputedStyle(document.documentElement).colorScheme)).toBe('dark');
      expect([...(await contrastFaults()), ...(await edgeFaults(SIZE.width))]).toEqual([]);
      expect(await violations()).toEqual([]);
    },
  );

  test('V15 by hours it comes and goes in the drawing of the minute in which it begins and ends, over midnight', async () => {
    // Which hour it is, the wall's own clock says: it is the house's.
    const look: WallLook = { choice: 'hours', nightFromMin: 23 * 60, nightToMin: 4 * 60 };
    await show('showWall', ONE, { look });
    const clock = page.locator('wall-header time');
    const seen: [string, string][] = [];
    for (let minute = 0; minute < 24 * 60; minute += 1) {
      if (minute % 60 !== 0 && minute % 60 !== 59) continue;
      const nowMs = Math.ceil(ONE.nowMs / 3_600_000) * 3_600_000 + minute * 60_000;
      await page.evaluate((ms) => window.setupHarness.goTo(ms), nowMs);
      seen.push([(await clock.textContent()) ?? '', await page.evaluate(() => document.documentElement.dataset['look'] ?? '')]);
    }
    expect(seen).toHaveLength(48);
    expect(new Set(seen.map(([time]) => time)).size).toBe(48);
    for (const [time, shown] of seen) expect(shown, time).toBe(time >= '23:00' || time < '04:00' ? 'night' : 'day');
    // Once to dark and once to light, beside the look that it began with.
    expect((await saidNames()).length).toBeLessThanOrEqual(3);
  });

  test('V15 as the browser asks, at once', async () => {
    await show('showWall', ONE, { look: { ...night, choice: 'browser' } }, {}, 'night');
    expect(await saidNames()).toEqual(['night']);
  });
});

describe('the code for phones', () => {
  test.each([
    ['showWall', 'an empty wall', EMPTY, DEFAULT_WALL_LOOK],
    ['showWall', 'a calm wall', ONE, DEFAULT_WALL_LOOK],
    ['showWall', 'a calm wall by night', ONE, night],
    ['showSetup', 'the setup page', ONE, DEFAULT_WALL_LOOK],
    ['showSetup', 'the setup page by night', ONE, night],
  ] as const)('V16 %s: on %s it is read back from the screen, and stands beside its address in words', async (kind, _, floor, look) => {
    await show(kind, floor, { look });
    const panel = page.locator('phones-panel');
    expect(await scanned(await panel.screenshot())).toBe(PHONE_URL);
    expect((await wordsOf(panel)).replaceAll(/\s/g, '')).toContain(PHONE_URL);
  });

  test('V16 on a wall where something calls there is none, and none where it would lead nowhere: words say why', async () => {
    await show('showWall', TWENTY);
    expect(await page.locator('phones-panel').count()).toBe(0);
    for (const kind of ['showWall', 'showSetup'] as const) {
      await show(kind, EMPTY, {}, { addresses: LOOPBACK });
      expect(await page.locator('phones-code').count()).toBe(0);
      expect(await wordsOf(page.locator('phones-panel'))).toContain('npm start');
    }
  });
});

describe('the wall of one station', () => {
  test.each(LANGUAGES)('V17 in %s it names its station, counts what presses elsewhere, and fits', async (language) => {
    await speak(language);
    for (const viewing of [VIEWING, { inch: 32, metres: 6, arcmin: 26 }, { inch: 55, metres: 3, arcmin: 20 }]) {
      for (const [stationId, name, hasOvens] of [
        ['oven', 'Oven', true],
        ['mixer', 'Mixer', false],
      ] as const) {
        await show('showWall', TWENTY, { stationId, viewing });
        expect(await wordsOf(page.locator('wall-header'))).toContain(name);
        const counted = [...(await wordsOf(page.locator('wall-elsewhere'))).matchAll(/(?<![A-Za-z+])\d+/g)].map(([number]) =>
          Number(number),
        );
        const pressing = boardRows(TWENTY.state, TWENTY.nowMs).filter(
          (row) => (row.role === 'late' || row.role === 'lost') && !row.stationIds.includes(stationId),
        );
        expect(counted.length).toBeGreaterThan(0);
        // In words for a screen reader, and beside their marks where those find no room: the same numbers, once or twice.
        expect([pressing.length, 2 * pressing.length]).toContain(counted.reduce((sum, number) => sum + number, 0));
        expect((await page.locator('wall-deck').count()) > 0).toBe(hasOvens);
        expect([...(await contrastFaults()), ...(await edgeFaults(SIZE.width))]).toEqual([]);
      }
    }
  });

  test('V17 a station without a dough says so, and goes on counting the others', async () => {
    await show('showWall', ONE, { stationId: 'fillings' });
    await page.getByText('Nothing for this station now').waitFor();
    await page.getByText('nothing late elsewhere').waitFor();
    expect(await violations()).toEqual([]);
  });

  test('V17 it knows its stations, and says so of one that is not among them, with links to those that are', async () => {
    await show('showWall', NINE, { stationId: 'cellar' });
    await page.getByText('No station “cellar” here').waitFor();
    const links = await page.locator('wall-notice a').evaluateAll((all) => all.map((link) => link.getAttribute('href')));
    expect(links).toEqual(['/wall?station=mixer', '/wall?station=bench', '/wall?station=oven', '/wall?station=fillings', '/wall?station=']);
    expect(await violations()).toEqual([]);
  });
});

describe('a wall for everybody', () => {
  test('V18 that cannot be read from there says so whole, with the way to its setup', async () => {
    await show('showWall', NINE, { viewing: { inch: 15, metres: 15, arcmin: 40 } });
    await page.getByText('This screen is too small to be read from there').waitFor();
    expect([...(await contrastFaults()), ...(await edgeFaults(SIZE.width))]).toEqual([]);
    expect(await page.locator('wall-notice a').getAttribute('href')).toBe('/wall/setup');
  });

  test('V18 only calls are alerts; landmarks and headings are there and in order', async () => {
    for (const floor of [TWENTY, ONE, EMPTY]) {
      await show('showWall', floor);
      expect(await page.getByRole('main').count()).toBe(1);
      expect(await page.getByRole('alert').count()).toBe(1);
      expect(await page.getByRole('alert').textContent()).toMatch(floor === TWENTY ? /^Being lost: .* Late: .* Call: / : /^$/);
      expect(await page.getByRole('heading').evaluateAll((all) => all.map((heading) => heading.localName))).toEqual(['h1']);
      // Nothing that changes every second is read out by itself.
      expect(await page.locator('[aria-live], [role=status], [role=timer]').count()).toBe(0);
    }
  });

  test('V18 the way to its setup is quiet, large enough for a finger, and reached by Tab', async () => {
    await show('showWall', TWENTY);
    await page.keyboard.press('Tab');
    const link = page.getByRole('link', { name: 'Set up this wall' });
    expect(await link.evaluate((element) => element.matches(':focus-visible'))).toBe(true);
    expect(await link.getAttribute('href')).toBe('/wall/setup');
    const box = await link.boundingBox();
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(48);
  });

  test('V18 with reduced motion nothing moves', async () => {
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    await show('showWall', TWENTY);
    const running = (): Promise<number> =>
      page.evaluate(() => {
        const within = (root: Document | ShadowRoot): number =>
          [...root.querySelectorAll('*')].reduce(
            (sum, element) => sum + (element.shadowRoot === null ? 0 : within(element.shadowRoot)),
            root.getAnimations().length,
          );
        return within(document);
      });
    expect(await running()).toBeGreaterThan(0);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    expect(await running()).toBe(0);
    await page.emulateMedia({ reducedMotion: null });
  });
});

test('the pages keep their content security policy, and complain of nothing', () => {
  expect(complaints).toEqual([]);
});
