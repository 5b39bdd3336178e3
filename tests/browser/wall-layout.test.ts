import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Viewing } from '../../display/wall/settings.ts';
import type { SoundReadiness } from '../../shared/wire/up.ts';
import type { FloorView } from '../../display/link/floor-link.ts';
import type { Floor } from '../domain/support/floor.ts';
import { bringInCommand, harbourFile } from '../domain/support/harbour.ts';
import { SERVER_DEVICE } from '../domain/support/ids.ts';
import { feedPot, levainFloor, POT } from '../domain/support/levain-house.ts';
import { buildHarness } from './harness/build-harness.ts';
import { measurePage } from './harness/measure-page.ts';
import { serveFolder } from './harness/serve-folder.ts';
import { dayOf, viewOf, workedFloor } from './harness/staged-wall.ts';
import { textFaults, wallFaults, type Size } from './harness/wall-faults.ts';
import { openDoughs } from './harness/wall-stage.ts';
import { launchChromium } from './support/chromium.ts';

const PICTURES = fileURLToPath(new URL('../../.build/pictures', import.meta.url));
const WALL: Viewing = { inch: 43, metres: 5, arcmin: 20 };
const SIZE = { width: 1920, height: 1080 };
let browser: Browser;
let page: Page;
let served: Awaited<ReturnType<typeof serveFolder>>;
const complaints: string[] = [];

beforeAll(async () => {
  const built = await buildHarness('harness', 'tests/browser/harness/wall.html');
  served = await serveFolder(built.folder);
  mkdirSync(PICTURES, { recursive: true });
  browser = await launchChromium();
  page = await browser.newPage({ viewport: SIZE });
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(`${served.origin}${built.page}`);
});

afterAll(async () => {
  await browser.close();
  await served.close();
});

async function show(
  floor: Pick<Floor, 'nowMs'> & { readonly state: FloorView['state'] },
  more: Partial<FloorView> = {},
  viewing = WALL,
  sound: SoundReadiness = 'on',
): Promise<void> {
  const staged = { view: viewOf(floor.state, more), nowMs: floor.nowMs, viewing, sound };
  await page.evaluate((given) => window.wallHarness.show(given), staged);
}

async function picture(name: string): Promise<void> {
  await page.screenshot({ path: `${PICTURES}/${name}.png` });
}

/** What axe-core, in the page, has against it. */
async function violations(): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const results = await (globalThis as unknown as { axe: typeof axe }).axe.run(document);
    return results.violations.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`);
  });
}

async function expectLegible(viewing: Viewing, size: Size, floor: Pick<Floor, 'state'>): Promise<void> {
  expect(await wallFaults(page, viewing, size, openDoughs(floor))).toEqual([]);
}

const ONE = workedFloor(dayOf(1, 5), { untilMin: 100 });
const NINE = workedFloor(harbourFile(), { untilMin: 210, neglected: { O1: 190, R1: 203 } });
const TWENTY = workedFloor(dayOf(20, 9), { untilMin: 200, neglected: { R1: 176, C1: 195 } });
const THIRTY = workedFloor(dayOf(30, 6), { untilMin: 190 });
const DAYS = { 1: ONE, 9: NINE, 20: TWENTY, 30: THIRTY } as const;
/**
 * Saturday's doughs still under way when Sunday's day is brought in: a loaf in loads, a mixer being cleaned, a deck out
 * of order, a slot of another being cleaned; then nobody does anything for a while.
 */
function twoDays(batches: number, apartMin: number, nextBatches: number): Floor {
  const floor = workedFloor(dayOf(batches, apartMin), { untilMin: 200 });
  const proving = Object.values(floor.state.workpieces).find((workpiece) => workpiece.steps['prove']?.status === 'started');
  if (proving === undefined) throw new Error('no dough is proving');
  floor.ok({ type: 'makeLoads', workpieceId: proving.id, pieces: [2, 3] });
  floor.ok(bringInCommand(dayOf(nextBatches, 15), floor.nowMs, '2026-03-08'), { deviceId: SERVER_DEVICE });
  floor.ok({ type: 'blockResource', resource: { kind: 'mixer', id: 'spiral' }, why: 'allergenChangeOver', minutes: 40 });
  floor.ok({ type: 'blockResource', resource: { kind: 'deck', id: 'bottom' }, why: 'outOfOrder' });
  floor.ok({ type: 'blockResource', resource: { kind: 'slot', id: 'front' }, why: 'cleaning', minutes: 45 });
  floor.wait(18);
  const weighed = Object.values(floor.state.workpieces).find(({ serviceDate, tag }) => serviceDate === '2026-03-08' && tag === 'C1');
  if (weighed === undefined) throw new Error('Sunday has no C1');
  floor.ok({ type: 'finishStep', workpieceId: weighed.id, stepId: 'weigh' });
  floor.wait(6);
  floor.raiseCalls();
  return floor;
}

const OVERLAPPING = { 4: twoDays(1, 5, 1), 9: twoDays(5, 20, 1), 20: twoDays(14, 8, 3) } as const;
const NO_STATE = { state: null, nowMs: 0 };
const EMPTY = workedFloor(dayOf(1, 5), { untilMin: 5 }).only();

describe('the wall at 1920×1080', () => {
  test.each([1, 9, 20, 30] as const)('%i doughs: legible, whole, apart, and nothing that axe objects to', async (count) => {
    await page.setViewportSize(SIZE);
    await show(DAYS[count]);
    await picture(`wall-${count}`);
    await expectLegible(WALL, SIZE, DAYS[count]);
    expect(await violations()).toEqual([]);
  });

  test.each([4, 9, 20] as const)(
    'about %i doughs over two days, with loads and what cannot be used: legible, whole and apart',
    async (count) => {
      await show(OVERLAPPING[count]);
      await picture(`wall-two-days-${count}`);
      await expectLegible(WALL, SIZE, OVERLAPPING[count]);
      const texts = (await page.evaluate(measurePage)).map((text) => text.text).join(' | ');
      expect(texts).toMatch(/Sat? ?[A-Z][a-z]?\d/);
      expect(texts).toContain('Spiral change-over till');
      expect(texts).toMatch(/out of order .*out of order/);
      if (count < 20) expect(texts).toMatch(/C1 \| ADD \| \+6:00 \| Spiral change-over till 07:00 \| free 07:00 \(\+22\)/);
      expect(texts).toMatch(/front cleaning till \d\d:\d\d/);
    },
  );

  test('a ferment shows when it is ripe, preps where they join', async () => {
    const floor = levainFloor(POT, { formula: 'buns', min: 60, doughG: 5000, cuts: [{ product: 'bun', pieces: 40 }] });
    feedPot(floor, 'L1');
    floor.wait(7);
    await show(floor);
    await picture('wall-ferment');
    await expectLegible(WALL, SIZE, floor);
    const texts = (await page.evaluate(measurePage)).map((text) => text.text);
    expect(texts).toContain('Levain · ripe 09:00–17:00');
    expect(texts.filter((text) => text === 'B1').length).toBeGreaterThanOrEqual(2);
  });

  test('a day at a pace says so, and still fits', async () => {
    await show(TWENTY, { pace: 60 });
    await picture('wall-pace');
    await expectLegible(WALL, SIZE, TWENTY);
    expect((await page.evaluate(measurePage)).map((text) => text.text)).toContain('PACE ×60 · not a real day');
  });

  test('without a link it says so, with the time of the last contact, and goes on showing the doughs', async () => {
    await show(NINE, { connection: { phase: 'lost', lastContactMs: NINE.nowMs - 61_000 } });
    await picture('wall-lost');
    await expectLegible(WALL, SIZE, NINE);
    const texts = (await page.evaluate(measurePage)).map((text) => text.text).join(' ');
    expect(texts).toMatch(/NO LINK 06:29/);
    expect(texts).toContain('SHEET');
  });

  test('where no device sounds, it says so', async () => {
    await show(NINE, { soundingDeviceId: null }, WALL, 'none');
    await picture('wall-no-sound');
    await expectLegible(WALL, SIZE, NINE);
    expect((await page.evaluate(measurePage)).map((text) => text.text)).toContain('no device sounds');
  });

  test('while the sound waits for a touch, one panel covers it', async () => {
    await show(NINE, {}, WALL, 'waiting');
    await picture('wall-sound-panel');
    const covered = await page.evaluate(() => document.elementFromPoint(200, 300)?.shadowRoot?.elementFromPoint(200, 300)?.localName);
    expect(covered).toBe('sound-panel');
    expect(await violations()).toEqual([]);
  });

  test.each([
    ['wall-empty', EMPTY, {}, 'No dough on the floor'],
    ['wall-loading', NO_STATE, { connection: { phase: 'connecting' } }, 'Reaching the kitchen…'],
    ['wall-forbidden', NO_STATE, { connection: { phase: 'refused', why: 'forbidden' } }, 'This screen may not be here'],
    ['wall-other-version', NINE, { connection: { phase: 'refused', why: 'otherVersion' } }, 'This page is older than its kitchen'],
    ['wall-full', NO_STATE, { connection: { phase: 'refused', why: 'full' } }, 'No place left for another screen'],
  ] as const)('%s has a picture of its own', async (name, floor, more, heading) => {
    await show(floor, more);
    await picture(name);
    const texts = await page.evaluate(measurePage);
    expect(texts.map((text) => text.text)).toContain(heading);
    expect(textFaults(texts, WALL, SIZE)).toEqual([]);
    if (name === 'wall-empty' || name === 'wall-loading') expect(await violations()).toEqual([]);
  });

  test('calls are announced together, the most pressing first', async () => {
    await show(TWENTY);
    const said = await page.evaluate(() => document.querySelector('wall-page')?.shadowRoot?.querySelector('[role=alert]')?.textContent);
    expect(said).toMatch(/^Being lost: TIN R3, OUT R1\. Late: ADD Ch2, C6, C7\. Call: /);
  });
});

describe('other screens and distances', () => {
  test.each([
    [1920, 1080, 32, 6, 20],
    [1920, 1080, 32, 3, 26],
    [1920, 1080, 55, 3, 20],
    [1920, 1080, 55, 6, 26],
    [1366, 768, 43, 5, 20],
    [1366, 768, 14, 1, 20],
  ])('%i×%i px, %i inch, %f m, %i minutes of arc: 1 and 20 doughs are legible and whole', async (width, height, inch, metres, arcmin) => {
    const viewing = { inch, metres, arcmin };
    await page.setViewportSize({ width, height });
    for (const count of [1, 20] as const) {
      await show(DAYS[count], {}, viewing);
      await picture(`wall-${count}-${width}-${inch}in-${metres}m-${arcmin}`);
      await expectLegible(viewing, { width, height }, DAYS[count]);
    }
    await page.setViewportSize(SIZE);
  });
});

describe('the font', () => {
  test('no text is wider than the layout takes it to be', async () => {
    const wider = await page.evaluate(() => {
      const samples = [
        'PART-BAKE',
        'Ch12b·2',
        '+00:00',
        '31 min',
        'going over',
        'Seeded rye in tins',
        '2nd SPEED',
        'Überbäckerei Ø',
        'C1 × O4 08:18',
        '235 °C',
        'Milk buns, custard (½)',
        'WwMm@%&#',
      ];
      const span = document.createElement('span');
      span.className = 'sample';
      document.body.append(span);
      span.style.setProperty('font-size', '100px');
      span.style.setProperty('white-space', 'pre');
      const found: string[] = [];
      for (const weight of ['420', '550', '700']) {
        span.style.setProperty('font-weight', weight);
        for (const text of samples) {
          span.textContent = text;
          const { width } = span.getBoundingClientRect();
          const said = window.wallHarness.textWidthPx(text, 100);
          if (width > said + 0.5 || said > width * 1.2) found.push(`${text} at ${weight}: ${width} px, said to be ${said}`);
        }
      }
      span.remove();
      return found;
    });
    expect(wider).toEqual([]);
  });
});

test('the page keeps its content security policy, and complains of nothing', () => {
  expect(complaints).toEqual([]);
});
