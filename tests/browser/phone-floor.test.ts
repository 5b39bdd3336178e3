import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { AnsweredTap, FloorView } from '../../display/link/floor-link.ts';
import type { Panel, Screen } from '../../display/phone/phone-events.ts';
import { BROADEST_THUMB_PX, STRAY_TOUCHES } from '../../display/phone/tap-guard.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { NAME_CHARACTERS } from '../../shared/documents/names.ts';
import { Floor } from '../domain/support/floor.ts';
import { harbourFile } from '../domain/support/harbour.ts';
import { idOf, OTHER_PHONE } from '../domain/support/ids.ts';
import { buildHarness } from './harness/build-harness.ts';
import { serveFolder } from './harness/serve-folder.ts';
import { workedFloor } from './harness/staged-wall.ts';
import { boxInView, buttonBoxes, clippedTexts } from './harness-phone/measure.ts';
import { axeFaultsOf, openPhone, showOn, type Shown } from './harness-phone/phone-browser.ts';
import { phoneView, untilSome } from './harness-phone/phone-stage.ts';
import { launchChromium } from './support/chromium.ts';

const PICTURES = fileURLToPath(new URL('../../.build/pictures/', import.meta.url));
const SIZES = [
  { width: 390, height: 844 },
  { width: 360, height: 640 },
] as const;
const LANGUAGES = ['en', 'de', 'fr'] as const;
const PANELS: readonly Panel[] = [
  'actions',
  'other',
  'skip',
  'more',
  'where',
  'howFar',
  'handOver',
  'putRight',
  'count',
  'inputs',
  'extra',
  'feed',
  'planFeed',
  'move',
  'loads',
  'join',
  'putBack',
  'loss',
  'discard',
  'temperature',
  'minutes',
  'add',
];

const day = workedFloor(harbourFile(), { untilMin: 210, neglected: { O1: 190, R1: 203, M1a: 150 } });
const { nowMs } = day;
const view = (state: FloorState = day.state, more: Partial<FloorView> = {}): FloorView => phoneView(state, more);
const oven = Floor.harbour();
const inOven = untilSome(oven, (due) => due.step.kind === 'bake').workpiece;
const lateId = day.id('O1');

const refusal = (n: number, tag: string): AnsweredTap => ({
  commandId: idOf(700 + n),
  command: { type: 'finishStep', workpieceId: day.id(tag), stepId: 'weigh' },
  outcome: {
    ok: false,
    refusal: {
      code: 'stepAlreadyDone',
      tag,
      stepId: 'weigh',
      atMs: nowMs - n * 60_000,
      deviceId: OTHER_PHONE,
      stationId: 'bench',
      skipped: false,
    },
  },
});

/** The same floor with the longest names that documents may hold. */
function longNames(state: FloorState): FloorState {
  const longName = 'Roggenvollkornsauerteiggebäck und Saatenmischbrote'.padEnd(NAME_CHARACTERS, 'w').slice(0, NAME_CHARACTERS);
  return JSON.parse(
    JSON.stringify(state, (key: string, value: unknown) => {
      if (key === 'name' && typeof value === 'string') return longName;
      return key === 'tag' && typeof value === 'string' ? 'Ww1234b' : value;
    }),
  ) as FloorState;
}

const card = (workpieceId: string): Screen => ({ kind: 'card', workpieceId });
const screens: readonly (readonly [string, Shown])[] = [
  ['list', { view: view(), nowMs, screen: { kind: 'list' } }],
  ['places', { view: view(), nowMs, screen: { kind: 'places', workpieceId: lateId } }],
  ['device', { view: view(), nowMs, screen: { kind: 'device' } }],
  ['day-end', { view: view(), nowMs, screen: { kind: 'dayEnd' } }],
  ...PANELS.map((panel) => [`late-${panel}`, { view: view(), nowMs, screen: card(lateId), panel }] as const),
  ...(['actions', 'temperature', 'other'] as const).map(
    (panel) => [`oven-${panel}`, { view: view(oven.state), nowMs: oven.nowMs, screen: card(inOven.id), panel }] as const,
  ),
];

let browser: Browser;
let served: Awaited<ReturnType<typeof serveFolder>>;
let address = '';
/** In each language, with the browser's own clock: how things look. */
const looks = new Map<string, { readonly page: Page; readonly complaints: readonly string[] }>();
/** With a clock that only a test moves: how things are touched. */
let thumb: Page;

beforeAll(async () => {
  const built = await buildHarness('harness-phone-floor', 'tests/browser/harness-phone/index.html');
  served = await serveFolder(built.folder);
  address = served.origin + built.page;
  mkdirSync(PICTURES, { recursive: true });
  browser = await launchChromium();
  for (const language of LANGUAGES) looks.set(language, await openPhone(browser, address, language));
  thumb = await browser.newPage({ viewport: SIZES[0], hasTouch: true, reducedMotion: 'reduce' });
  await thumb.clock.install();
  await thumb.goto(`${address}?language=en`);
  await thumb.clock.pauseAt((await thumb.evaluate(() => Date.now())) + 60_000);
});

afterAll(async () => {
  await browser.close();
  await served.close();
});

function pageIn(language: string): Page {
  const opened = looks.get(language);
  if (opened === undefined) throw new Error(`no page speaks ${language}`);
  return opened.page;
}

async function tapOn(text: string): Promise<void> {
  await thumb.clock.runFor(1_000);
  const box = await boxInView(thumb, text);
  await thumb.touchscreen.tap((box.left + box.right) / 2, (box.top + box.bottom) / 2);
}

const sent = (): Promise<readonly unknown[]> => thumb.evaluate(() => window.phoneHarness.sent.splice(0));
const buttons = async (): Promise<readonly string[]> => (await buttonBoxes(thumb)).map((box) => box.text);
const screen = (): Promise<Screen | undefined> => thumb.evaluate(() => document.querySelector('phone-page')?.screen);

describe.each(LANGUAGES)('in %s', (language) => {
  // Where words are longest the smaller screen is what they may not fit on.
  test.each(language === 'en' ? SIZES : SIZES.slice(1))(
    'nothing is clipped at $width × $height, also with the longest names',
    async (size) => {
      const page = pageIn(language);
      await page.setViewportSize(size);
      expect(await page.evaluate(() => document.documentElement.lang)).toBe(language);
      for (const [name, shown] of screens) {
        await showOn(page, shown);
        if (size.width === 360 || language === 'en')
          await page.screenshot({ path: `${PICTURES}phone-floor-${name}-${language}-${size.width}x${size.height}.png` });
        expect(await clippedTexts(page), name).toEqual([]);
        const state = longNames(shown.view.state ?? day.state);
        await showOn(page, { ...shown, view: view(state) });
        expect(await clippedTexts(page), `${name}, long`).toEqual([]);
      }
      expect(looks.get(language)?.complaints).toEqual([]);
    },
  );
});

test('axe finds nothing on any screen or panel, by day and by night', async () => {
  const page = pageIn('en');
  await page.setViewportSize(SIZES[0]);
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    // By night only the colours are others, and those are the same on every panel: every third will do, and each whole screen.
    const seen = colorScheme === 'light' ? screens : screens.filter(([, { screen }], index) => screen.kind !== 'card' || index % 3 === 0);
    for (const [name, shown] of seen) {
      await showOn(page, shown);
      if (name === 'places') await page.screenshot({ path: `${PICTURES}phone-floor-${name}-${colorScheme}.png` });
      expect(await axeFaultsOf(page), `${name}, ${colorScheme}`).toEqual([]);
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
});

describe('P15 the list of one station', () => {
  test('is chosen with two touches, says what waits elsewhere, and is kept on the device', async () => {
    await showOn(thumb, { view: view(), nowMs, screen: { kind: 'list' } });
    await tapOn('All doughs');
    const chips = (await buttonBoxes(thumb)).filter((box) => box.host === 'station-filter');
    expect(chips.map((box) => box.text)).toEqual(['Bench', 'All', 'Mixer', 'Oven', 'Fillings']);
    for (const chip of chips) expect(chip.bottom - chip.top).toBeGreaterThanOrEqual(94);
    await tapOn('Oven');
    expect((await buttons()).some((text) => text.includes('elsewhere'))).toBe(true);
    await thumb.screenshot({ path: `${PICTURES}phone-floor-filtered.png` });
    await thumb.reload();
    await showOn(thumb, { view: view(), nowMs, screen: { kind: 'list' } });
    expect((await buttons()).some((text) => text.includes('elsewhere'))).toBe(true);
    await tapOn('elsewhere');
    expect((await buttons()).some((text) => text.includes('elsewhere'))).toBe(false);
    expect(await buttons()).toContain('All doughs');
  });
});

describe('P16 where everything stands', () => {
  test('is reached from the list and from a card, which it shows; a touch opens a dough, and back leads the same way', async () => {
    await showOn(thumb, { view: view(), nowMs, screen: { kind: 'list' } });
    await tapOn('Places');
    await tapOn('O1');
    expect(await screen()).toEqual(card(lateId));
    for (const words of ['Other…', 'Where…']) await tapOn(words);
    expect(await screen()).toEqual({ kind: 'places', workpieceId: lateId });
    const shown = await thumb.evaluate(() => {
      const drawing = document.querySelector('phone-page')?.shadowRoot?.querySelector('places-view');
      const found = drawing?.shadowRoot?.querySelector('[aria-current]');
      const box = found?.getBoundingClientRect();
      return { text: found?.textContent ?? '', isSeen: box !== undefined && box.top >= 0 && box.bottom <= innerHeight };
    });
    expect(shown.text).toContain('O1');
    expect(shown.isSeen).toBe(true);
    for (const wanted of [card(lateId), { kind: 'places', workpieceId: null }]) {
      await tapOn('Back');
      await expect.poll(screen).toEqual(wanted);
    }
    await tapOn('Doughs');
    await expect.poll(screen).toEqual({ kind: 'list' });
  });
});

describe('P17 numbers by one touch', () => {
  test('a temperature is said in one touch; what cannot be is refused with its range', async () => {
    await showOn(thumb, { view: view(), nowMs, screen: card(lateId), panel: 'temperature' });
    await sent();
    await tapOn('25.5');
    expect(await sent()).toEqual([{ type: 'readTemperature', workpieceId: lateId, where: 'dough', celsius: 25.5 }]);
    await showOn(thumb, { view: view(), nowMs, screen: card(lateId), panel: 'temperature' });
    await tapOn('Another…');
    const field = thumb.locator('number-stepper input');
    await field.fill('250');
    await field.press('Enter');
    expect(await thumb.locator('number-stepper [role=alert]').textContent()).toContain('250 will not do: from −25 to 50\u00a0°C.');
    await field.fill('24,7');
    await field.press('Enter');
    await tapOn('It reads 24.7');
    expect(await sent()).toEqual([{ type: 'readTemperature', workpieceId: lateId, where: 'dough', celsius: 24.7 }]);
  });
});

describe('P18 what came of taps', () => {
  test('several refused taps are told, each, until they are put away', async () => {
    await showOn(thumb, { view: view(), nowMs, screen: { kind: 'list' } });
    for (const [n, tag] of ['C1', 'R1', 'Ch1'].entries())
      await showOn(thumb, { view: view(day.state, { lastAnswer: refusal(n + 1, tag) }), nowMs, screen: { kind: 'list' } });
    await showOn(thumb, { view: view(), nowMs, screen: { kind: 'list' } });
    const told = thumb.locator('answer-note li');
    expect(await told.count()).toBe(3);
    expect(await told.allTextContents()).toEqual([
      expect.stringContaining('C1'),
      expect.stringContaining('R1'),
      expect.stringContaining('Ch1'),
    ]);
    await thumb.screenshot({ path: `${PICTURES}phone-floor-refusals.png` });
    await tapOn('Read, put away');
    expect(await told.count()).toBe(0);
  });
});

test('P19 back closes the panel that was opened last, then its card', async () => {
  await showOn(thumb, { view: view(), nowMs, screen: { kind: 'list' } });
  for (const words of ['O1', 'Other…', 'More…', 'It is already…']) await tapOn(words);
  const panel = (): Promise<string | undefined> =>
    thumb.evaluate(() => document.querySelector('phone-page')?.shadowRoot?.querySelector('.actions > *')?.localName);
  for (const wanted of ['where-panel', 'more-panel', 'other-panel', 'card-actions']) {
    expect(await panel()).toBe(wanted);
    await tapOn(wanted === 'card-actions' ? 'Doughs' : 'Back');
  }
  await expect.poll(screen).toEqual({ kind: 'list' });
});

describe('P14 pockets and aprons', () => {
  test('a contact broader than a thumb says nothing', async () => {
    await showOn(thumb, { view: view(), nowMs, screen: card(lateId) });
    await thumb.clock.runFor(1_000);
    await sent();
    const box = (await buttonBoxes(thumb)).find((candidate) => candidate.classes.includes('big'));
    const point = { x: 195, y: ((box?.top ?? 0) + (box?.bottom ?? 0)) / 2 };
    const session = await thumb.context().newCDPSession(thumb);
    const press = async (radius: number): Promise<void> => {
      await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ ...point, radiusX: radius, radiusY: radius }] });
      await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    };
    await press(BROADEST_THUMB_PX);
    expect(await sent()).toEqual([]);
    await thumb.clock.runFor(1_000);
    await press(BROADEST_THUMB_PX / 4);
    expect((await sent()).length).toBe(1);
  });

  test('a page that is seen again does not act on what came up under the finger', async () => {
    await showOn(thumb, { view: view(), nowMs, screen: card(lateId) });
    await thumb.clock.runFor(5_000);
    await sent();
    await thumb.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    await thumb.touchscreen.tap(195, 600);
    const big = (await buttonBoxes(thumb)).find((candidate) => candidate.classes.includes('big'));
    await thumb.touchscreen.tap(195, ((big?.top ?? 0) + (big?.bottom ?? 0)) / 2);
    expect(await sent()).toEqual([]);
  });

  test('touches on nothing cover the page, until one deliberate touch', async () => {
    await showOn(thumb, { view: view(), nowMs, screen: card(lateId) });
    await thumb.clock.runFor(5_000);
    await sent();
    for (let touch = 0; touch < STRAY_TOUCHES; touch += 1) await thumb.touchscreen.tap(60, 90);
    const cover = (await buttonBoxes(thumb)).find((box) => box.host === 'pocket-cover');
    expect((cover?.bottom ?? 0) - (cover?.top ?? 0)).toBeGreaterThanOrEqual(126);
    await thumb.screenshot({ path: `${PICTURES}phone-floor-pocketed.png` });
    await thumb.clock.runFor(1_000);
    await thumb.touchscreen.tap(195, 700);
    expect(await sent()).toEqual([]);
    await tapOn('Touch here to go on');
    expect((await buttonBoxes(thumb)).some((box) => box.host === 'pocket-cover')).toBe(false);
    await thumb.clock.runFor(1_000);
    const big = (await buttonBoxes(thumb)).find((box) => box.classes.includes('big'));
    await thumb.touchscreen.tap(195, ((big?.top ?? 0) + (big?.bottom ?? 0)) / 2);
    expect((await sent()).length).toBe(1);
  });
});

test('the keyboard alone goes from the list to a card, says done, undoes, and goes back', async () => {
  const undoable: AnsweredTap = {
    commandId: idOf(3),
    command: { type: 'finishStep', workpieceId: lateId, stepId: 'weigh' },
    outcome: { ok: true, sequence: 1, undoable: true },
  };
  await showOn(thumb, { view: view(day.state, { undoable }), nowMs, screen: { kind: 'list' } });
  await sent();
  const focused = (): Promise<string> =>
    thumb.evaluate(() => {
      let active = document.activeElement;
      for (let within = active?.shadowRoot?.activeElement ?? null; within !== null; within = active.shadowRoot?.activeElement ?? null)
        active = within;
      return active?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
    });
  const tabTo = async (text: string): Promise<void> => {
    for (let stops = 0; stops < 60; stops += 1) {
      await thumb.keyboard.press('Tab');
      if ((await focused()).includes(text)) return;
    }
    throw new Error(`no Tab leads to ${text}`);
  };
  const press = async (): Promise<void> => {
    await thumb.clock.runFor(1_000);
    await thumb.keyboard.press('Enter');
  };
  await tabTo('O1');
  await press();
  expect(await screen()).toEqual(card(lateId));
  const done = await thumb.evaluate(
    () =>
      document
        .querySelector('phone-page')
        ?.shadowRoot?.querySelector('card-actions')
        ?.shadowRoot?.querySelector('button.big')
        ?.textContent?.trim() ?? '',
  );
  await tabTo(done.split(/\s+/).slice(0, 2).join(' '));
  await press();
  await tabTo('Undo');
  await press();
  expect(await sent()).toMatchObject([
    { type: 'finishStep', workpieceId: lateId },
    { type: 'undoCommand', commandId: undoable.commandId },
  ]);
  await tabTo('Doughs');
  await press();
  await expect.poll(screen).toEqual({ kind: 'list' });
});
