import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { NUMBERS } from '../../display/words/en/numbers.ts';
import { WEIGH } from '../../display/words/en/weigh.ts';
import { eventsOf, eventually, press, stateOf, workpieceOf } from './support/floor-of-server.ts';
import { INSECURE_HOST, launchForHouse, openDevice, type DevicePage } from './support/house-pages.ts';
import { startServer, type RealServer } from './support/real-server.ts';

const NARROW = ['\u00a0', '\u202f'] as const;

let browser: Browser;
let server: RealServer;
let american: RealServer;
let folder: string;
let phone: DevicePage;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'ovenward-weigh-'));
  const file = JSON.parse(await readFile(new URL('../../fixtures/harbour-plain.json', import.meta.url), 'utf8')) as {
    house: { units: unknown; water?: unknown };
  };
  const inPounds = join(folder, 'pounds.json');
  file.house.units = { temperature: 'F', weight: 'lb' };
  file.house.water = { form: 'friction', iceC: 0 };
  await writeFile(inPounds, JSON.stringify(file));
  [browser, server] = await Promise.all([launchForHouse(), startServer(join(folder, 'metric'), 0, 1)]);
  american = await startServer(join(folder, 'pounds'), 0, 1, inPounds);
  phone = await openDevice(browser, `http://${INSECURE_HOST}:${server.port}/weigh`, 390, 844);
});

afterAll(async () => {
  await browser.close();
  await Promise.all([server.stop(), american.stop()]);
  await rm(folder, { recursive: true, force: true });
});

/** What is seen of parts of the page, through their shadow trees, with plain spaces. */
async function said(page: Page, selector: string): Promise<string> {
  const texts = await page.locator(selector).evaluateAll((elements) => {
    const seen = (node: Node): string => {
      if (node instanceof Text) return node.data;
      if (!(node instanceof Element)) return '';
      if (node instanceof HTMLElement && (node.matches('style, script, .unseen') || !node.checkVisibility())) return '';
      const within = node instanceof HTMLSlotElement ? node.assignedNodes({ flatten: true }) : [...(node.shadowRoot ?? node).childNodes];
      return ` ${within.map((child) => seen(child)).join('')} `;
    };
    return elements.map((element) => seen(element));
  });
  return NARROW.reduce((text, space) => text.replaceAll(space, ' '), texts.join(' '))
    .replace(/\s+/g, ' ')
    .trim();
}

function heading(page: Page): Promise<string> {
  return said(page, 'main h2');
}

async function shows(page: Page, selector: string, words: RegExp): Promise<void> {
  await eventually(async () => words.test(await said(page, selector)));
}

/** The phone dies; whoever finds another battery opens the same address on the same phone. */
async function dieAndComeBack(dead: DevicePage, meanwhile: () => Promise<void> = async () => undefined): Promise<DevicePage> {
  const url = dead.page.url();
  await dead.page.close();
  await meanwhile();
  const page = await dead.context.newPage();
  page.on('pageerror', (error) => dead.faults.push(error.message));
  await page.goto(url);
  return { ...dead, page };
}

async function tick(page: Page): Promise<void> {
  const before = await heading(page);
  await press(page, WEIGH.inBowl, async () => (await heading(page)) !== before);
}

describe('G1 a dough is weighed with the phone dying in the middle', () => {
  test('what waits is listed by planned start, and opens', async () => {
    const { page } = phone;
    await page.locator('waiting-list button').first().waitFor();
    expect(await said(page, 'waiting-list li:first-child')).toContain('C1 Country sourdough');
    await press(page, /^C1 /, async () => page.url().includes('piece='));
    await shows(page, 'main h2', /^Wheat flour$/);
  });

  test('a typed lot and two lines are kept by the server', async () => {
    const { page } = phone;
    await press(page, WEIGH.otherLot, () => page.getByLabel(WEIGH.typedLot).isVisible());
    await page.getByLabel(WEIGH.typedLot).fill('WF-2231');
    await press(page, WEIGH.lotDone, () => page.getByRole('button', { name: 'WF-2231', pressed: true }).isVisible());
    await tick(page);
    await tick(page);
    const { weighed } = await workpieceOf(server, 'C1');
    expect(Object.keys(weighed)).toHaveLength(2);
    expect(weighed['0-0']?.lotNumbers).toEqual(['WF-2231']);
  });

  test('after its death the phone goes on at the third line', async () => {
    phone = await dieAndComeBack(phone);
    await phone.page.locator('weigh-line').waitFor();
    expect(await said(phone.page, '.title')).toContain('3 of');
    await press(phone.page, WEIGH.list, () => phone.page.locator('weigh-list').isVisible());
    expect(await phone.page.locator('list-line button[aria-pressed="true"]').count()).toBe(2);
    expect(await said(phone.page, 'weigh-list')).toContain(WEIGH.lotOf('WF-2231'));
  });

  test('ticks without a link are kept through another death, and count once', async () => {
    const { page } = phone;
    await server.kill();
    await page
      .getByText(/No link since/)
      .first()
      .waitFor();
    await press(page, WEIGH.oneByOne, () => page.locator('weigh-line').isVisible());
    await tick(page);
    await tick(page);
    await shows(page, 'phone-header', /2 taps kept/);
    await press(page, WEIGH.before, async () => (await said(page, 'weigh-line')).includes(WEIGH.notSent));
    phone = await dieAndComeBack(phone, async () => {
      server = await startServer(join(folder, 'metric'), server.port, 1);
    });
    await eventually(async () => Object.keys((await workpieceOf(server, 'C1')).weighed).length === 4);
    await shows(phone.page, '.title', /5 of/);
    const lines = (await eventsOf(server)).flatMap(({ event }) => (event.type === 'ingredientWeighed' ? [event.lineId] : []));
    expect(lines).toHaveLength(4);
    expect(new Set(lines).size).toBe(4);
    expect(await said(phone.page, 'phone-header')).not.toMatch(/kept/);
  });

  test('what was ticked by mistake is taken back, and undo takes that back', async () => {
    const { page } = phone;
    await press(page, WEIGH.before, () => page.getByRole('button', { name: WEIGH.notIn, exact: true }).isVisible());
    await press(page, WEIGH.notIn, async () => Object.keys((await workpieceOf(server, 'C1')).weighed).length === 3);
    await press(page, /^Undo: /, async () => Object.keys((await workpieceOf(server, 'C1')).weighed).length === 4);
  });
});

describe('G2 lot numbers are offered, the last used first', () => {
  test('the newest stands before the one before it, and is taken with one touch', async () => {
    const { page } = phone;
    await openPiece(page, 'O1');
    await shows(page, 'main h2', /^Wheat flour$/);
    expect(await lotChips(page)).toEqual(['WF-2231']);
    await press(page, WEIGH.otherLot, () => page.getByLabel(WEIGH.typedLot).isVisible());
    await page.getByLabel(WEIGH.typedLot).fill('WF-2240');
    await press(page, WEIGH.lotDone, () => page.getByRole('button', { name: 'WF-2240', pressed: true }).isVisible());
    await tick(page);
    await openPiece(page, 'M1');
    expect(await lotChips(page)).toEqual(['WF-2240', 'WF-2231']);
    await tick(page);
    // The phone goes on before the server has answered.
    await eventually(async () => (await workpieceOf(server, 'M1')).weighed['0-0']?.lotNumbers.join() === 'WF-2240');
  });
});

describe('G3 short of something, the rest is scaled to it', () => {
  test('what it means is said first: fewer loaves, and what comes out again', async () => {
    const { page } = phone;
    await openPiece(page, 'C3');
    await shows(page, 'main h2', /^Wheat flour$/);
    await tick(page);
    await tick(page);
    const before = await workpieceOf(server, 'C3');
    const line = await heading(page);
    await press(page, WEIGH.short, () => page.locator('short-panel').isVisible());
    expect(await said(page, 'short-panel h2')).toBe(WEIGH.shortTitle(line));
    const chip = page.locator('short-panel number-choice button').nth(3);
    const amount = (await chip.innerText()).trim();
    await press(page, amount, () => page.locator('short-panel .means p').first().isVisible());
    const means = await said(page, 'short-panel .means');
    const told = /: (\d+) instead of (\d+), (\d+) fewer/.exec(means);
    expect(Number(told?.[2])).toBe(before.cuts[0]?.pieces);
    expect(Number(told?.[3])).toBeGreaterThan(0);
    expect((await workpieceOf(server, 'C3')).cuts).toEqual(before.cuts);
    await press(page, /^Scale to/, async () => (await workpieceOf(server, 'C3')).scaledToG < before.scaledToG);
    const after = await workpieceOf(server, 'C3');
    expect(after.cuts[0]?.pieces).toBe(Number(told?.[1]));
    // There is four fifths of the line, so four fifths of the whole, to the scale's division.
    expect(after.scaledToG / before.scaledToG).toBeCloseTo(0.8, 2);
    await press(page, WEIGH.list, () => page.locator('weigh-list').isVisible());
    await shows(page, 'weigh-list', /Take out \d+ g/);
  });
});

describe('G4 water, and the dough out of the mixer', () => {
  test('temperatures that are said change the water at once', async () => {
    const { page } = phone;
    await openPiece(page, 'C1');
    await toWater(page);
    for (const [where, celsius] of [
      ['Flour', 21],
      ['Room', 23],
      ['Preferment', 24],
      ['Tap', 14],
    ] as const)
      await sayInput(page, where, celsius);
    const byRule = await waterByRule(page, 25, [21, 23, 24]);
    expect(await said(page, 'water-view .huge')).toContain(`${byRule} °C`);
  });

  test('the water is in, with what it was reckoned from', async () => {
    const { page } = phone;
    await press(page, WEIGH.waterIn, async () => (await workpieceOf(server, 'C1')).water !== null);
    expect((await workpieceOf(server, 'C1')).water).toMatchObject({ mixerId: 'spiral', flourC: 21, roomC: 23, prefermentC: 24 });
  });

  test('a wild reading is asked about, measured again, and the mixer learns', async () => {
    const { page } = phone;
    const { id } = await workpieceOf(server, 'C1');
    await page.goto(`http://${INSECURE_HOST}:${server.port}/phone?card=${id}`);
    await page.locator('dough-card').waitFor();
    await mixOn(page, 'C1', 'second-speed');
    await page.goto(`http://${INSECURE_HOST}:${server.port}/weigh?piece=${id}`);
    await page.locator('degrees-choice').waitFor();
    await sayDegrees(page, 34, 'C', () => page.locator('wild-ask').isVisible());
    expect(await said(page, 'wild-ask h2')).toMatch(/^Dough: 34 °C\? Expected 25(\.\d)? °C\.$/);
    expect((await eventsOf(server)).some(({ event }) => event.type === 'riseLearned')).toBe(false);
    await press(page, WEIGH.wildAgain, () => page.locator('degrees-choice').isVisible());
    await press(page, '26', async () => (await eventsOf(server)).some(({ event }) => event.type === 'riseLearned'));
    expect((await workpieceOf(server, 'C1')).readings.at(-1)).toMatchObject({ where: 'dough', celsius: 26 });
  });

  test('a wild reading that is so is taken knowingly', async () => {
    const { page } = phone;
    await sayDegrees(page, 34, 'C', () => page.locator('wild-ask').isVisible());
    await press(page, /^It is 34/, async () => (await workpieceOf(server, 'C1')).readings.at(-1)?.celsius === 34);
    const read = (await eventsOf(server)).findLast(({ event }) => event.type === 'temperatureRead')?.event;
    expect(read).toMatchObject({ celsius: 34, despite: ['wildReading'] });
  });

  test('the next dough says how many doughs its rise is from, and it is forgotten in two steps', async () => {
    const { page } = phone;
    await openPiece(page, 'C2');
    await toWater(page);
    await shows(page, 'water-view', /Spiral warms the dough by .+ learned from \d dough/i);
    await press(page, WEIGH.forget, () => page.locator('forget-panel').isVisible());
    expect(((await stateOf(server)).rises['spiral'] ?? []).length).toBeGreaterThan(0);
    await press(page, /^Forget all doughs/, async () => ((await stateOf(server)).rises['spiral'] ?? []).length === 0);
    await shows(page, 'water-view', /nothing learned yet/);
  });
});

describe('G5 a house that weighs in pounds and measures in Fahrenheit', () => {
  test('no gram and no Celsius is left on any view', async () => {
    const device = await openDevice(browser, `http://localhost:${american.port}/weigh`, 390, 844);
    const { page } = device;
    await page.locator('waiting-list button').first().waitFor();
    const seen = [await said(page, 'weigh-page')];
    await press(page, /^C1 /, async () => page.url().includes('piece='));
    await shows(page, 'weigh-line', /lb/);
    seen.push(await said(page, 'weigh-page'));
    await press(page, WEIGH.short, () => page.locator('short-panel').isVisible());
    seen.push(await said(page, 'weigh-page'));
    await press(page, 'Back', async () => !(await page.locator('short-panel').isVisible()));
    await press(page, WEIGH.list, () => page.locator('weigh-list').isVisible());
    seen.push(await said(page, 'weigh-page'));
    await press(page, WEIGH.water, () => page.locator('water-view').isVisible());
    seen.push(await said(page, 'weigh-page'));
    expect(seen.at(-1)).toMatch(/friction factor [\d.]+ °F/);
    for (const text of seen) {
      expect(text).not.toMatch(/\d (g|kg)\b/);
      expect(text).not.toMatch(/°C/);
    }
    expect(seen[1]).toMatch(/\d lb [\d.]+ oz/);
    expect(device.faults).toEqual([]);
  });

  test('degrees Fahrenheit are kept as degrees Celsius', async () => {
    const page = (await openDevice(browser, `http://localhost:${american.port}/weigh`, 390, 844)).page;
    const { id } = await workpieceOf(american, 'C1');
    await page.goto(`http://localhost:${american.port}/weigh?piece=${id}`);
    await toWater(page);
    await page.getByRole('button', { name: /^Tap/ }).waitFor();
    await press(page, /^Tap/, () => page.locator('degrees-choice').isVisible());
    await sayDegrees(page, 59, 'F', async () => (await workpieceOf(american, 'C1')).readings.length === 1);
    // 59 °F is 15 °C exactly, by the definition of the scale.
    expect((await workpieceOf(american, 'C1')).readings[0]).toMatchObject({ where: 'tap', celsius: 15 });
  });
});

describe('G6 to the card and back', () => {
  test('the link leads to the card of the same dough', async () => {
    const { page } = phone;
    await openPiece(page, 'O2');
    await page.getByRole('link', { name: WEIGH.cardOf('O2') }).click();
    await page.locator('dough-card').waitFor();
    expect(await said(page, 'dough-card')).toContain('O2');
    await page.goBack();
    await page.locator('weigh-line').waitFor();
  });

  test('nothing went wrong in the page', () => {
    expect(phone.faults).toEqual([]);
  });
});

async function openPiece(page: Page, tag: string): Promise<void> {
  const { id } = await workpieceOf(server, tag);
  await page.goto(`http://${INSECURE_HOST}:${server.port}/weigh?piece=${id}`);
  await page.locator('weigh-line, weigh-list, dough-view').first().waitFor();
}

function lotChips(page: Page): Promise<string[]> {
  return page.locator('lot-choice button:not(:last-child)').allInnerTexts();
}

async function toWater(page: Page): Promise<void> {
  await press(page, WEIGH.list, () => page.locator('weigh-list').isVisible());
  await press(page, WEIGH.water, () => page.locator('water-view').isVisible());
}

async function sayInput(page: Page, where: string, celsius: number): Promise<void> {
  await press(page, new RegExp(`^${where}`), () => page.locator('degrees-choice').isVisible());
  await sayDegrees(page, celsius, 'C', async () => (await page.locator('degrees-choice').count()) === 0);
  await shows(page, 'water-view', new RegExp(`${where} ${celsius} °C`));
}

/** Says a temperature: by its chip where there is one, else typed behind *Another…*. */
async function sayDegrees(page: Page, degrees: number, unit: 'C' | 'F', isThere: () => Promise<boolean>): Promise<void> {
  const choice = page.locator('degrees-choice');
  const chip = choice.getByRole('button', { name: String(degrees), exact: true });
  if (await chip.isVisible()) return press(page, String(degrees), isThere);
  const field = choice.getByRole('textbox');
  if (!(await field.isVisible())) await press(page, NUMBERS.another, () => field.isVisible());
  await field.fill(String(degrees));
  await field.press('Enter');
  return press(page, NUMBERS.reads(`${degrees} °${unit}`), isThere);
}

/** The water by the German form of the customary rule, N·(dough − rise) − ΣT, with the rise that the page names. */
async function waterByRule(page: Page, doughC: number, temperaturesC: readonly number[]): Promise<number> {
  const riseK = Number(/by ([\d.]+) K/.exec(await said(page, 'water-view'))?.[1]);
  const waterC = (temperaturesC.length + 1) * (doughC - riseK) - temperaturesC.reduce((sum, celsius) => sum + celsius, 0);
  return Math.round(waterC * 10) / 10;
}

/** Taps a dough's wide button on its card until a step of it is done. */
async function mixOn(page: Page, tag: string, stepId: string): Promise<void> {
  for (;;) {
    const before = await workpieceOf(server, tag);
    if (before.steps[stepId]?.status === 'done') return;
    await press(page, new RegExp(`^${tag} `), async () => (await workpieceOf(server, tag)).lastCommandId !== before.lastCommandId);
  }
}
