import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Formula, Ingredient, Product } from '../../shared/documents/formula.ts';
import type { Step } from '../../shared/documents/method.ts';
import { assert } from '../../shared/result.ts';
import { demoFile } from '../domain/support/harbour.ts';
import type { StagedMethod } from './harness-method/method-harness.ts';
import { buildHarness } from './harness/build-harness.ts';
import { serveFolder } from './harness/serve-folder.ts';
import { axeFaults } from './support/axe-faults.ts';
import { launchChromium } from './support/chromium.ts';
import { tabTo } from './support/keyboard.ts';

const PICTURES = fileURLToPath(new URL('../../.build/pictures', import.meta.url));
const FILE = demoFile();
let browser: Browser;
let page: Page;
let address: string;
let close: () => Promise<void>;
const complaints: string[] = [];

beforeAll(async () => {
  const built = await buildHarness('harness-method', 'tests/browser/harness-method/method.html');
  const served = await serveFolder(built.folder);
  close = () => served.close();
  address = `${served.origin}${built.page}`;
  mkdirSync(PICTURES, { recursive: true });
  browser = await launchChromium();
});

afterAll(async () => {
  await browser.close();
  await close();
});

beforeEach(async () => {
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto(`${address}?language=en`);
});

afterEach(async () => {
  await page.close();
  expect(complaints.splice(0)).toEqual([]);
});

async function show(shown: StagedMethod['shown'], id: string, more: Partial<StagedMethod> = {}): Promise<void> {
  await page.evaluate((staged) => window.methodHarness.show(staged), { file: FILE, shown, id, ...more });
}

/** The field of a fault's path, by its control. */
function field(path: string): ReturnType<Page['locator']> {
  return page.locator(`[data-field="${path}"]`).locator('#control, input').first();
}

async function documentNow<Document>(): Promise<Document> {
  return (await page.evaluate(() => window.methodHarness.document())) as Document;
}

async function faultPaths(): Promise<readonly string[]> {
  return page.evaluate(() => window.methodHarness.faults().map(({ path }) => path));
}

function formulaOf(id: string): Formula {
  const formula = FILE.formulas.find((known) => known.id === id);
  assert(formula !== undefined, `the demo has no ${id}`);
  return formula;
}

describe('N11 a method', () => {
  test('is written from nothing with the keyboard: a run of steps, one more by its verb, its place in the order', async () => {
    await show('method', 'country', { document: { ...formulaOf('country'), method: [] } });
    expect(await faultPaths()).toEqual(['formula.method']);
    await tabTo(page, 'Add the run');
    await page.keyboard.press('Enter');
    await expect.poll(faultPaths).toEqual([]);
    const verbs = async (): Promise<readonly string[]> => (await documentNow<Formula>()).method.map(({ verb }) => verb);
    expect(await verbs()).toEqual(['add', 'firstSpeed', 'stand', 'secondSpeed', 'turnOut']);
    // The first of them has the keyboard: down to the verb that is added.
    await tabTo(page, 'What is done');
    await page.keyboard.type('fold');
    await tabTo(page, 'Add the step');
    await page.keyboard.press('Enter');
    await page.locator('[data-step="fold"][aria-expanded="true"]').waitFor();
    await tabTo(page, 'Earlier');
    await page.keyboard.press('Enter');
    expect(await verbs()).toEqual(['add', 'firstSpeed', 'stand', 'secondSpeed', 'fold', 'turnOut']);
    await tabTo(page, 'Duplicate');
    await page.keyboard.press('Enter');
    await tabTo(page, 'Remove step');
    await page.keyboard.press('Enter');
    expect((await documentNow<Formula>()).method.map(({ id }) => id)).toEqual([
      'add',
      'first-speed',
      'stand',
      'second-speed',
      'fold',
      'turn-out',
    ]);
    expect(await page.evaluate(() => document.querySelector('method-editor')?.shadowRoot?.activeElement?.getAttribute('data-step'))).toBe(
      'turn-out',
    );
  });

  test('says each fault at its field, and what is put right is right at once', async () => {
    await show('method', 'country');
    await page.locator('[data-step="first-speed"]').click();
    await field('formula.method[2].minutes.latest').fill('1');
    await expect.poll(faultPaths).toEqual(['formula.method[2].minutes.latest']);
    expect(await field('formula.method[2].minutes.latest').getAttribute('aria-invalid')).toBe('true');
    await field('formula.method[2].minutes.latest').fill('9');
    await field('formula.method[2].check').fill('');
    await expect.poll(faultPaths).toEqual(['formula.method[2].check']);
    await page.locator('[data-step="first-speed"]').click();
    expect(await page.locator('[data-step="first-speed"] .wrong').count()).toBe(1);
    expect(await page.evaluate(() => window.methodHarness.focusFault('formula.method[2].check'))).toBe(true);
    await page.keyboard.type('No dry flour.');
    await expect.poll(faultPaths).toEqual([]);
    expect((await documentNow<Formula>()).method[2]).toMatchObject({
      check: 'No dry flour.',
      minutes: { earliest: 3, target: 4, latest: 9 },
    });
    expect(await page.evaluate(() => window.methodHarness.focusFault('formula.name'))).toBe(false);
  });

  test('takes what goes in, per cent or as written, and what it is made in', async () => {
    await show('method', 'country');
    await page.locator('[data-step="salt"]').click();
    const additions = page.locator('step-additions');
    await additions.getByRole('button', { name: 'Add what goes in' }).click();
    const third = additions.locator('li').nth(2);
    await third.locator('select').first().selectOption('item:wheat-flour');
    await third.locator('select').nth(1).selectOption('pct');
    await third.locator('input').first().fill('1,5');
    await expect
      .poll(async () => (await documentNow<Formula>()).method[4]?.additions[2])
      .toEqual({ item: 'wheat-flour', pct: 1.5, heldBack: false });
    await additions.getByRole('button', { name: 'Remove Salt' }).click();
    const claims = page.locator('step-claims');
    await claims.locator('select').first().selectOption('vessel');
    await claims.getByRole('checkbox', { name: 'Tub' }).check();
    await claims.locator('select').nth(1).selectOption('byPieces');
    await expect
      .poll(async () => (await documentNow<Formula>()).method[4]?.claims)
      .toEqual([{ kind: 'vessel', ids: ['tub'], count: 1, perPieces: 1 }]);
    expect((await documentNow<Formula>()).method[4]?.additions.map(({ item }) => item)).toEqual(['water', 'wheat-flour']);
    await page.getByText('Order and ripening').click();
    await page.getByLabel('Begins by itself').check();
    await page.getByRole('button', { name: 'Follow an earlier step' }).click();
    await page.locator('step-ripening select').selectOption('cardinal');
    await expect
      .poll(async () => (await documentNow<Formula>()).method[4])
      .toMatchObject({
        beginsByItself: true,
        after: [{ step: 'stand', from: 'end', earliestMin: 0, targetMin: 0 }],
        ripening: { model: 'cardinal', referenceC: 26 },
      });
    expect(await faultPaths()).toEqual([]);
  });
});

describe('N14 a bake', () => {
  test('lasts as long as its phases, whichever is typed, and shows the oven in °F where the house does', async () => {
    const house = { ...FILE.house, units: { temperature: 'F', weight: 'lb' } as const };
    await show('product', 'olive-flat', { file: { ...FILE, house } });
    await page.locator('[data-step="part-bake"]').click();
    const oven = page.locator('step-bake desk-field[data-field$=".bake[0].temperatureC"] input');
    expect(await oven.inputValue()).toBe('473');
    await oven.fill('482');
    await page.locator('step-bake desk-field[data-field$=".bake[1].minutes"] input').fill('6');
    const way = async (): Promise<Step | undefined> => (await documentNow<Product>()).way[5];
    await expect.poll(async () => (await way())?.minutes.target).toBe(8);
    await field('product.way[5].minutes.target').fill('9.5');
    await expect.poll(async () => (await way())?.bake?.map(({ minutes }) => minutes)).toEqual([2, 7.5]);
    expect((await way())?.bake?.[0]?.temperatureC).toBe(250);
    expect(await faultPaths()).toEqual([]);
  });
});

describe('N16 a product', () => {
  test('has its dough follow from what it weighs baked, in ounces where the house weighs so, and its topping on a step', async () => {
    const house = { ...FILE.house, units: { temperature: 'F', weight: 'lb' } as const };
    await show('product', 'olive-flat', { file: { ...FILE, house } });
    // 340 g are 11.99 oz (28.349523125 g each).
    expect(await field('product.pieceG').inputValue()).toBe('11.99');
    await field('product.bakedG').fill('11');
    // 11 oz ÷ (1 − 12 %) = 12.5 oz = 354.37 g.
    await expect.poll(async () => (await documentNow<Product>()).pieceG).toBe(354.37);
    expect(await field('product.pieceG').inputValue()).toBe('12.5');
    await field('product.bakeLossPct').fill('20');
    expect(await field('product.bakedG').inputValue()).toBe('10');
    await page.getByRole('button', { name: 'Add a topping' }).click();
    await page.locator('product-toppings li').nth(1).locator('select').first().selectOption('item:salt');
    await page.locator('product-toppings li').nth(1).locator('input').fill('0.1');
    await expect
      .poll(async () => (await documentNow<Product>()).way.find(({ verb }) => verb === 'top')?.additions[1])
      .toEqual({ item: 'salt', gPerPiece: 2.835, heldBack: false });
    await page.getByLabel('Goes on in loads').check();
    await expect
      .poll(async () => (await documentNow<Product>()).loads)
      .toEqual({ after: (await documentNow<Product>()).way[0]?.id, pieces: 12 });
    await field('product.name').fill('');
    await expect.poll(faultPaths).toEqual(['product.name']);
  });
});

describe('N17 an ingredient', () => {
  test('has its allergens chosen by name, and a form of yeast as long as it is yeast', async () => {
    await show('ingredient', 'yeast');
    await field('ingredient.yeastForm').selectOption('instant');
    await page.getByLabel('sulphites').check();
    await page.getByLabel('wheat').check();
    await expect.poll(() => documentNow<Ingredient>()).toMatchObject({ yeastForm: 'instant', allergens: ['wheat', 'sulphites'] });
    await field('ingredient.kind').selectOption('dairy');
    await field('ingredient.waterPct').fill('88');
    await expect.poll(() => documentNow<Ingredient>()).toMatchObject({ kind: 'dairy', waterPct: 88 });
    expect(await documentNow<Ingredient>()).not.toHaveProperty('yeastForm');
    expect(await faultPaths()).toEqual([]);
  });
});

describe('N18 what is made beside it and what goes back in', () => {
  test('each is added, changed and taken out', async () => {
    await show('sides', 'country');
    await page.getByRole('button', { name: 'Remove trim' }).click();
    await page.getByRole('button', { name: 'Let something go back in' }).click();
    await field('formula.takesBack[2].ageMin').fill('12');
    await expect
      .poll(async () => (await documentNow<Formula>()).takesBack.map(({ what, ageMin }) => [what, ageMin]))
      .toEqual([
        ['oldDough', 1440],
        ['oldBread', 1440],
        ['scrap', 720],
      ]);
    await page.getByRole('button', { name: 'Add a side prep' }).click();
    // No step takes it yet: the fault stands at the field that says where it joins.
    await expect.poll(faultPaths).toEqual(['formula.sidePreps[0].joins']);
    expect(await field('formula.sidePreps[0].joins').getAttribute('aria-invalid')).toBe('true');
    await field('formula.sidePreps[0].withinMin').fill('30');
    await expect.poll(async () => (await documentNow<Formula>()).sidePreps[0]?.withinMin).toBe(30);
  });
});

describe('N19 on a desk and on a phone, by day and by night', () => {
  test.each([
    [1280, 'day', 'en'],
    [1280, 'night', 'fr'],
    [390, 'day', 'de'],
    [390, 'night', 'en'],
    [390, 'day', 'fr'],
  ] as const)('nothing is wider than %i, and axe has nothing to say, by %s in "%s"', async (width, look, language) => {
    await page.goto(`${address}?language=${language}`);
    await page.setViewportSize({ width, height: 900 });
    const looks: readonly (readonly [StagedMethod['shown'], string, string | null])[] = [
      ['method', 'country', 'salt'],
      ['product', 'olive-flat', 'part-bake'],
      ['product', 'custard-bun', 'fill'],
      ['ingredient', 'milk', null],
      ['sides', 'country', null],
    ];
    for (const [shown, id, step] of looks) {
      await show(shown, id, { look });
      if (step !== null) await page.locator(`[data-step="${step}"]`).click();
      await page.screenshot({ path: `${PICTURES}/method-${shown}-${id}-${width}-${look}-${language}.png`, fullPage: true });
      expect(await page.evaluate(() => document.documentElement.scrollWidth), `${shown} ${id}`).toBeLessThanOrEqual(width);
      expect(await axeFaults(page), `${shown} ${id}`).toEqual([]);
    }
  });
});
