import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { BOOK, SIZE } from '../../display/words/en/book.ts';
import { FORMULAS, PARTS, SAVE, TEMPLATE_NAMES, TOTALS } from '../../display/words/en/formulas.ts';
import { PRODUCT } from '../../display/words/en/method.ts';
import type { Formula } from '../../shared/documents/formula.ts';
import { axeFaults } from './support/axe-faults.ts';
import { eventually, stateOf } from './support/floor-of-server.ts';
import { launchForHouse, openDevice, type DevicePage } from './support/house-pages.ts';
import { startServer, type RealServer } from './support/real-server.ts';

const DESK = { width: 1280, height: 800 } as const;

let browser: Browser;
let server: RealServer;
let american: RealServer;
let folder: string;
const opened: DevicePage[] = [];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'ovenward-formulas-'));
  const file = JSON.parse(await readFile(new URL('../../fixtures/harbour.json', import.meta.url), 'utf8')) as { house: { units: unknown } };
  file.house.units = { temperature: 'F', weight: 'lb' };
  const inPounds = join(folder, 'pounds.json');
  await writeFile(inPounds, JSON.stringify(file));
  [browser, server] = await Promise.all([launchForHouse(), startServer(join(folder, 'metric'), 0, 1, 'fixtures/harbour.json')]);
  american = await startServer(join(folder, 'pounds'), 0, 1, inPounds);
});

afterAll(async () => {
  await browser.close();
  await Promise.all([server.stop(), american.stop()]);
  await rm(folder, { recursive: true, force: true });
});

/** The page at an address of the book, on a device of its own. */
async function open(search: string, at: RealServer = server, width: number = DESK.width): Promise<Page> {
  const device = await openDevice(browser, `http://localhost:${at.port}/formulas${search}`, width, DESK.height);
  opened.push(device);
  return device.page;
}

/** The newest version of a formula as the server has it. */
async function kept(id: string, at: RealServer = server): Promise<{ formula: Formula; version: number } | null> {
  const answer = await fetch(`http://127.0.0.1:${at.port}/api/book/formulas/${id}`);
  return answer.ok ? ((await answer.json()) as { formula: Formula; version: number }) : null;
}

function grams(page: Page, name: string, part = 'Dough'): ReturnType<Page['getByLabel']> {
  return page.getByLabel(PARTS.gramsOf(name, part), { exact: true });
}

function percent(page: Page, name: string, part = 'Dough'): ReturnType<Page['getByLabel']> {
  return page.getByLabel(PARTS.percentOf(name, part), { exact: true });
}

/** The figures beside the formula, by what they are called. */
async function total(page: Page, name: string): Promise<string> {
  const rows = page.locator('totals-panel').getByText(name, { exact: true }).first();
  return (await rows.locator('xpath=..').innerText())
    .replace(name, '')
    .replaceAll(/[\s\u00a0\u202f]+/g, ' ')
    .trim();
}

/** What is seen of a part of the page, through its shadow trees, with plain spaces. */
async function said(page: Page, selector: string): Promise<string> {
  const text = await page.locator(selector).evaluate((element) => {
    const seen = (node: Node): string => {
      if (node instanceof Text) return node.data;
      if (!(node instanceof Element) || node.matches('style, script') || !node.checkVisibility()) return '';
      return ` ${[...(node.shadowRoot ?? node).childNodes].map((child) => seen(child)).join('')} `;
    };
    return seen(element);
  });
  return text.replaceAll(/[\s\u00a0\u202f]+/g, ' ').trim();
}

/** Types over what stands in a field, as somebody at a desk does. */
async function type(field: ReturnType<Page['getByLabel']>, text: string): Promise<void> {
  await field.click();
  await field.fill('');
  await field.pressSequentially(text);
}

async function addLine(page: Page, name: string): Promise<void> {
  await page.getByLabel(PARTS.addTo('Dough'), { exact: true }).fill(name);
  await page.keyboard.press('Enter');
  await grams(page, name).waitFor();
}

async function save(page: Page, version: number): Promise<void> {
  await page.getByRole('button', { name: SAVE.saveAs(version) }).click();
}

describe('N1 N4 N5 a formula from nothing', () => {
  test('is written in grams and per cent, with a poolish, saved, and changed to its next version', async () => {
    const page = await open('?new=dough');
    await type(page.getByLabel(FORMULAS.name, { exact: true }), 'Quay white');
    for (const name of ['Wheat flour', 'Water', 'Salt', 'Fresh yeast'])
      if (!(await grams(page, name).isVisible())) await addLine(page, name);
    await type(grams(page, 'Wheat flour'), '2000');
    await type(percent(page, 'Water'), '66');
    await type(percent(page, 'Salt'), '2');
    await type(grams(page, 'Fresh yeast'), '20');
    await expect.poll(() => grams(page, 'Water').inputValue()).toBe('1320');
    await expect.poll(() => percent(page, 'Fresh yeast').inputValue()).toBe('1');
    await expect.poll(() => total(page, TOTALS.hydration)).toBe('66 %');
    await page.getByRole('button', { name: TEMPLATE_NAMES.poolish, exact: true }).click();
    await grams(page, 'Wheat flour', 'Poolish').waitFor();
    await expect.poll(() => total(page, TOTALS.hydration)).toBe('66 %');
    expect(await total(page, TOTALS.prefermented)).not.toBe('0 %');
    await save(page, 1);
    await eventually(async () => (await kept('quay-white')) !== null);
    const first = await kept('quay-white');
    expect(first?.version).toBe(1);
    expect(first?.formula.parts.map(({ name }) => name)).toEqual(['Poolish', 'Dough']);
    await expect.poll(() => new URL(page.url()).searchParams.get('formula')).toBe('quay-white');
    await type(percent(page, 'Salt'), '2.1');
    await save(page, 2);
    await eventually(async () => (await kept('quay-white'))?.version === 2);
    await page.close();
  });

  test('what is written survives a load and a house that does not answer, and is saved once', async () => {
    const page = await open('?formula=olive-flatbread');
    await type(grams(page, 'Olives, stoned'), '200');
    await page.getByText(SAVE.changed).first().waitFor();
    page.on('dialog', (dialog) => void dialog.accept());
    await page.reload();
    await expect.poll(() => grams(page, 'Olives, stoned').inputValue()).toBe('200');
    await page.route('**/api/commands', (route) => route.abort());
    await save(page, 2);
    await page.getByText(SAVE.unsent).waitFor();
    await page.unroute('**/api/commands');
    await save(page, 2);
    await page.getByText(SAVE.saved(2)).waitFor();
    expect((await stateOf(server)).formulaVersions['olive-flatbread']).toBe(2);
    await page.close();
  });
});

describe('N5 what was begun', () => {
  test('a duplicate writes over nothing that was begun before, and both are found again', async () => {
    const page = await open('?new=dough');
    await type(page.getByLabel(FORMULAS.name, { exact: true }), 'Begun before');
    await page.getByRole('button', { name: FORMULAS.book }).click();
    await page.getByRole('option').filter({ hasText: 'Seeded rye' }).first().click();
    await page.locator('formula-desk h2').filter({ hasText: 'Seeded rye' }).waitFor();
    await page.getByRole('button', { name: BOOK.duplicate, exact: true }).click();
    const copy = FORMULAS.copyOf('Seeded rye');
    await expect.poll(() => page.getByLabel(FORMULAS.name, { exact: true }).inputValue()).toBe(copy);
    await type(grams(page, 'Salt'), '93');
    await page.getByRole('button', { name: FORMULAS.book }).click();
    await page.getByRole('button', { name: 'Begun before' }).click();
    await expect.poll(() => page.getByLabel(FORMULAS.name, { exact: true }).inputValue()).toBe('Begun before');
    await page.getByRole('button', { name: FORMULAS.book }).click();
    await page.getByRole('button', { name: copy }).click();
    await expect.poll(() => grams(page, 'Salt').inputValue()).toBe('93');
    await page.close();
  });
});

describe('N6 faults', () => {
  test('stand at their field and in the bar, lead there, and nothing is saved until they are mended', async () => {
    const page = await open('?formula=cheese-boats');
    const letters = page.getByLabel(FORMULAS.letters, { exact: true });
    await type(letters, 'C');
    const saving = page.getByRole('button', { name: SAVE.saveAs(2) });
    await expect.poll(() => saving.isDisabled()).toBe(true);
    expect(await letters.getAttribute('aria-invalid')).toBe('true');
    const told = page.locator('save-bar button.fault').first();
    expect(await told.innerText()).toContain('"C" already belongs to formula "country"');
    await told.click();
    await expect.poll(() => letters.evaluate((field) => (field.getRootNode() as ShadowRoot).activeElement === field)).toBe(true);
    await type(letters, 'Cb');
    await expect.poll(() => saving.isDisabled()).toBe(false);
    await saving.click();
    await page.getByText(SAVE.saved(2)).waitFor();
    expect((await kept('cheese-boats'))?.formula.letters).toBe('Cb');
    await page.close();
  });

  test('what only a mistake leaves is said and may be saved: salt over 4 %', async () => {
    const page = await open('?formula=rye');
    await type(percent(page, 'Salt'), '9');
    await page.locator('totals-panel').getByText(TOTALS.remarks).waitFor();
    expect(await page.getByRole('button', { name: SAVE.saveAs(2) }).isEnabled()).toBe(true);
    await page.getByRole('button', { name: SAVE.putBack }).click();
    await page.close();
  });
});

describe('Y5 what a plan has to know of a product', () => {
  test('pieces by deck, slots best first and how long it keeps are kept; what is no length is told and stays', async () => {
    const page = await open('?formula=cheese-boats&section=products');
    const oven = page.locator('product-oven').first();
    const keeps = oven.getByLabel(PRODUCT.keeps, { exact: true });
    await type(keeps, '1 hx');
    await type(oven.getByLabel('Hearth oven, Hearth', { exact: true }), '4');
    await oven.getByText(PRODUCT.lengthNeeded).waitFor();
    expect(await keeps.inputValue()).toBe('1 hx');
    const { version = 0 } = (await kept('cheese-boats')) ?? {};
    const saving = page.getByRole('button', { name: SAVE.saveAs(version + 1) });
    expect(await saving.isDisabled()).toBe(true);
    await type(keeps, '1 h 30');
    await oven.getByLabel('Hearth oven, Hearth, front', { exact: true }).check();
    await oven.getByLabel('Deck oven, Top, right', { exact: true }).check();
    await oven.getByText(PRODUCT.prefersOrder(['Hearth oven, Hearth, front', 'Deck oven, Top, right'])).waitFor();
    await saving.click();
    // The formula itself says what it said: only its product has a next version.
    await page.getByText(SAVE.saved(version)).waitFor();
    const product = Object.values((await stateOf(server)).products)
      .filter(({ id }) => id === 'cheese-boat')
      .at(-1);
    expect(product).toMatchObject({
      deckRoom: [{ deck: 'hearth', piecesPerSlot: 4 }],
      prefersSlots: ['front', 'top-right'],
      keepsMin: 90,
    });
    await page.close();
  });
});

describe('N7 two who edit', () => {
  test('the second is told, and takes the first one’s with the own changes on it', async () => {
    const [one, two] = await Promise.all([open('?formula=milk-buns'), open('?formula=milk-buns')]);
    await type(grams(two, 'Sugar'), '220');
    await type(grams(one, 'Butter'), '400');
    await save(one, 2);
    await one.getByText(SAVE.saved(2)).waitFor();
    await two.getByText(SAVE.overtaken).waitFor();
    await two.getByRole('button', { name: SAVE.takeNewer }).click();
    await expect.poll(() => grams(two, 'Butter').inputValue()).toBe('400');
    await expect.poll(() => grams(two, 'Sugar').inputValue()).toBe('220');
    await save(two, 3);
    await two.getByText(SAVE.saved(3)).waitFor();
    await Promise.all([one.close(), two.close()]);
  });
});

describe('N8 a house in pounds and °F', () => {
  test('writes and reads its own units, and grams and °C are kept', async () => {
    const page = await open('?formula=olive-flatbread', american);
    const temperature = page.getByLabel(FORMULAS.doughC, { exact: true });
    await expect.poll(() => temperature.inputValue()).toBe('77');
    await type(temperature, '79');
    // The international pound of 1959 is 453.59237 g; an ounce is a sixteenth of it.
    await type(grams(page, 'Water'), '2 lb');
    await page.keyboard.press('Tab');
    await save(page, 2);
    await page.getByText(SAVE.saved(2)).waitFor();
    const formula = (await kept('olive-flatbread', american))?.formula;
    expect(formula?.doughC).toBeCloseTo(26.11, 1);
    const water = formula?.parts.at(-1)?.items.find((line) => 'item' in line && line.item === 'water');
    expect(water?.g).toBeCloseTo(907.18474, 1);
    const words = await said(page, 'formula-desk');
    expect(words).toContain('°F');
    expect(words).toContain('Water');
    expect(words.match(/\d (?:g|kg)\b|°C/g) ?? []).toEqual([]);
    await page.close();
  });
});

describe('N22 how much, and onto the day', () => {
  test('pieces of two products are split by the mixer, weighed out, and stand on the floor', async () => {
    const page = await open('?formula=milk-buns&section=size');
    const pieces = page.getByLabel(SIZE.pieces, { exact: true });
    await type(pieces.nth(0), '90');
    await type(pieces.nth(1), '60');
    // 90 × 60 g and 60 × 55 g are 8.7 kg; the planetary takes 7: two even batches.
    await page
      .getByText(/^2 batches of/)
      .first()
      .waitFor();
    const before = Object.values((await stateOf(server)).workpieces).filter(({ formulaId }) => formulaId === 'milk-buns').length;
    await page.getByLabel(SIZE.planAt).fill('23:50');
    await page.getByRole('button', { name: SIZE.planDo(2) }).click();
    await page.getByText(FORMULAS.planned).waitFor();
    const planned = Object.values((await stateOf(server)).workpieces).filter(({ formulaId }) => formulaId === 'milk-buns');
    expect(planned.length).toBe(before + 2);
    const added = planned.toSorted((a, b) => b.plannedStartMs - a.plannedStartMs).slice(0, 2);
    expect(added.map(({ cuts }) => cuts.map((cut) => cut.pieces))).toEqual([
      [45, 30],
      [45, 30],
    ]);
    expect(added.map(({ grams: batchG }) => batchG)).toEqual([4350, 4350]);
    await page.close();
  });
});

describe('N19 every section', () => {
  test.each(['parts', 'method', 'products', 'size', 'versions'])(
    '%s: axe is silent, and nothing is wider than a phone',
    async (section) => {
      const page = await open(`?formula=country&section=${section}`);
      await page.locator('totals-panel').first().waitFor();
      expect(await axeFaults(page)).toEqual([]);
      await page.setViewportSize({ width: 390, height: 844 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
      await page.close();
    },
  );
});

test('nothing went wrong in any of the pages, save the requests that were cut off on purpose', () => {
  expect(opened.length).toBeGreaterThan(10);
  expect(opened.flatMap(({ faults }) => faults).filter((fault) => !fault.includes('net::ERR_FAILED'))).toEqual([]);
});
