import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { BOOK, CHANGES, FORMULA_FACTS, IN_OUT, SHEET, SIZE, VERSIONS } from '../../display/words/en/book.ts';
import type { BookIndex } from '../../shared/book/book-api.ts';
import { formulaSchema, type Formula, type Product } from '../../shared/documents/formula.ts';
import { demoFile } from '../domain/support/harbour.ts';
import { buildHarness } from './harness/build-harness.ts';
import { serveFolder } from './harness/serve-folder.ts';
import type { BookScene } from './harness-book/main.ts';
import { axeFaults } from './support/axe-faults.ts';
import { launchChromium } from './support/chromium.ts';

const { house, kitchen, ingredients, formulas, products } = demoFile();
const INDEX: BookIndex = { entries: formulas.map((formula) => entryOf(formula)), ingredients: [...ingredients], ingredientsVersion: 1 };
const SCENE: BookScene = { context: { kitchen, house, ingredients, entries: INDEX.entries, faults: [] }, formulas };
const faults: string[] = [];

let browser: Browser;
let served: Awaited<ReturnType<typeof serveFolder>>;
let page: Page;

beforeAll(async () => {
  const harness = await buildHarness('book-harness', 'tests/browser/harness-book/index.html');
  [browser, served] = await Promise.all([launchChromium(), serveFolder(harness.folder)]);
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await page.goto(served.origin + harness.page);
});

afterAll(async () => {
  await browser.close();
  await served.close();
  expect(faults).toEqual([]);
});

beforeEach(() => page.evaluate(() => void window.bookHarness.asked.splice(0)));

function entryOf(formula: Formula): BookIndex['entries'][number] {
  const { id, name, letters, kind } = formula;
  const ingredientIds = formula.parts.flatMap(({ items }) => items.flatMap((line) => ('item' in line ? [line.item] : [])));
  const made = products.filter((product) => product.formula === id).map((product) => ({ id: product.id, name: product.name, version: 1 }));
  return { id, name, letters, kind, version: 1, isArchived: false, atMs: null, hydrationPct: 68.4, ingredientIds, products: made };
}

const show = (tag: string, properties: Record<string, unknown>, scene: BookScene | null = null): Promise<number> =>
  page.evaluate(([tagName, given, of]) => window.bookHarness.show(tagName, given, of), [tag, properties, scene] as const);
const asked = (): Promise<unknown[]> => page.evaluate(() => window.bookHarness.asked);
const rows = (): Promise<string[]> => page.locator('[role=option] .name').allTextContents();

describe('N21 the list of the book', () => {
  test('shows every formula with its letters, kind, water, version and products; finds as one types; axe finds nothing', async () => {
    await show('book-list', { index: INDEX, openId: 'country' });
    expect(await rows()).toHaveLength(formulas.length);
    const rye = page.locator('[data-formula=rye]');
    for (const text of ['R', 'Seeded rye', '68.4 % water', 'version 1', 'Seeded rye in tins'])
      await rye.getByText(text, { exact: false }).first().waitFor();
    await page.getByLabel(BOOK.search).fill('linseed');
    expect(await rows()).toEqual(['Seeded rye']);
    expect(await page.getByRole('status').textContent()).toBe(BOOK.count(1, formulas.length));
    expect(await axeFaults(page)).toEqual([]);
    await page.getByLabel(BOOK.search).fill('zzz');
    await page.getByText(BOOK.noneFound('zzz')).waitFor();
    await page.getByRole('button', { name: BOOK.clear }).click();
    expect(await rows()).toHaveLength(formulas.length);
    await page.getByRole('button', { name: BOOK.kindsMany.ferment }).click();
    expect(await rows()).toEqual(['Liquid levain']);
  });

  test('opens, makes, duplicates and puts away, each by its own event', async () => {
    await show('book-list', { index: INDEX, openId: 'rye' });
    await page.locator('[data-formula=country]').click();
    await page.getByRole('button', { name: BOOK.newOf.prep }).click();
    await page.getByRole('button', { name: BOOK.duplicate }).click();
    await page.getByRole('button', { name: BOOK.archive, exact: true }).click();
    await page.getByRole('button', { name: BOOK.inOut }).click();
    expect(await asked()).toEqual([
      { name: 'formula-wanted', formulaId: 'country', version: null },
      { name: 'new-formula-wanted', kind: 'prep' },
      { name: 'duplicate-wanted', formulaId: 'rye' },
      { name: 'archive-wanted', formulaId: 'rye', isArchived: true },
      { name: 'import-wanted' },
    ]);
  });

  test('an empty book and one that is not here yet say so', async () => {
    await show('book-list', { index: { entries: [], ingredients: [], ingredientsVersion: 0 } });
    await page.getByText(BOOK.emptyTitle).waitFor();
    await show('book-list', {});
    await page.getByText(BOOK.loading).waitFor();
  });

  test('two thousand formulas: what is drawn grows as one goes down, and the last one is reached', async () => {
    await show('book-list', { index: manyIndex(2000) });
    expect((await rows()).length).toBeLessThan(200);
    await page.getByRole('listbox').focus();
    await page.keyboard.press('End');
    await page.locator('[role=option].active[aria-posinset="2000"]').waitFor();
    expect(await page.locator('.active').evaluate((row) => row.getBoundingClientRect().bottom <= innerHeight)).toBe(true);
    await page.getByLabel(BOOK.search).fill('1999');
    expect(await rows()).toEqual(['Formula 1999']);
  });
});

describe('N29 the list by keyboard alone', () => {
  test('the slash finds the search, arrows lead through the rows and back, Enter opens', async () => {
    await show('book-list', { index: INDEX });
    await page.locator('body').click({ position: { x: 900, y: 400 } });
    await page.keyboard.press('/');
    await page.keyboard.type('rye/');
    expect(await page.getByLabel(BOOK.search).inputValue()).toBe('rye/');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    const active = page.locator('[role=option].active');
    const second = (await rows())[1];
    expect(await active.locator('.name').textContent()).toBe(second);
    expect(await page.getByRole('listbox').getAttribute('aria-activedescendant')).toBe(await active.getAttribute('id'));
    await page.keyboard.press('Enter');
    expect(await asked()).toMatchObject([{ name: 'formula-wanted', formulaId: INDEX.entries.find(({ name }) => name === second)?.id }]);
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    expect(await page.getByLabel(BOOK.search).evaluate((field) => field.matches(':focus'))).toBe(true);
    await page.keyboard.press('Escape');
    expect(await page.getByLabel(BOOK.search).inputValue()).toBe('');
  });
});

describe('N22 how much is made', () => {
  test('pieces of two products become batches with a weigh-out each, and go on a day’s list', async () => {
    await show('size-panel', { ...partsOf('milk-buns'), version: 3, serviceDate: '2026-05-02' }, SCENE);
    await page.getByText(SIZE.none).waitFor();
    await page.locator('desk-field[data-field="pieces milk-bun"] input').fill('90');
    await page.locator('desk-field[data-field="pieces custard-bun"] input').fill('60');
    // 90 × 60 g and 60 × 55 g, and the planetary mixer takes 7 kg at most.
    await page.getByText(SIZE.batches(2, '4\u202f350\u00a0g')).waitFor();
    await page.getByText(SHEET.cutLine(45, 'Milk buns, plain', '60\u00a0g')).waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await page.getByLabel(SIZE.planAt).fill('03:30');
    await page.getByRole('button', { name: SIZE.planDo(2) }).click();
    const [plan] = await asked();
    // In London's summer time, an hour ahead of UTC.
    const firstMs = Date.UTC(2026, 4, 2, 2, 30);
    const starts = [firstMs, firstMs + Number(await page.getByLabel(/Next one after/).inputValue()) * 60_000];
    const cuts = [
      { productId: 'milk-bun', pieces: 45, grams: 2700 },
      { productId: 'custard-bun', pieces: 30, grams: 1650 },
    ];
    expect(plan).toEqual({
      name: 'plan-wanted',
      command: {
        type: 'planBatches',
        serviceDate: '2026-05-02',
        batches: starts.map((plannedStartMs) => ({ formulaId: 'milk-buns', plannedStartMs, grams: 4350, cuts })),
      },
    });
  });

  test('a baked weight is typed and the dough follows; what the mixer does not take is told', async () => {
    await show('size-panel', { ...partsOf('country'), version: 1 }, SCENE);
    const dough = page.locator('desk-field[data-field="pieceG country-loaf"] input');
    const loss = products.find(({ id }) => id === 'country-loaf')?.bakeLossPct ?? 0;
    await page.locator('desk-field[data-field="bakedG country-loaf"] input').fill('1000');
    expect(Number(await dough.inputValue())).toBeCloseTo(1000 / (1 - loss / 100), 1);
    await page.locator('desk-field[data-field="pieces country-loaf"] input').fill('1');
    await page.getByText(/is less than Spiral mixes well/).waitFor();
    expect(await page.locator('weigh-sheet').count()).toBe(0);
  });

  test('a house of pounds and Fahrenheit says everything in its own units', async () => {
    const american: BookScene = { ...SCENE, context: { ...SCENE.context, house: { ...house, units: { temperature: 'F', weight: 'lb' } } } };
    await show('size-panel', { ...partsOf('rye'), version: 1 }, american);
    await page.getByRole('button', { name: SIZE.modes.dough, exact: true }).click();
    await page.locator('desk-field[data-field=doughG] input').fill('20');
    // 20 lb of 453.59237 g each; 28 °C are 82.4 °F.
    await page.getByText(SIZE.oneBatch('20\u00a0lb')).waitFor();
    const text = (await page.locator('weigh-sheet').evaluate((sheet) => sheet.shadowRoot?.textContent ?? '')).replace(/\s+/g, ' ');
    expect(text).not.toMatch(/\d\s*k?g\b|°C/);
    expect(text).toMatch(/oz/);
    expect(text).toContain(SHEET.wanted('82 °F'));
  });
});

describe('N24 two versions side by side', () => {
  test('what differs is marked by a shape and a word, what is the same can be shown too, and other versions asked for', async () => {
    const formula = formulas.find(({ id }) => id === 'country');
    if (formula === undefined) throw new Error('the demo house has a country dough');
    const history = [1, 2, 3].map((version) => ({ version, atMs: null }));
    const left = { formula, version: 1, newestVersion: 3, isArchived: false, history, needs: [], products: [] };
    const parts = formula.parts.map((part) => ({ ...part, items: part.items.filter((line) => !('item' in line) || line.item !== 'salt') }));
    const right = { ...left, version: 3, formula: { ...formula, doughC: 30, parts, method: formula.method.slice(1) } };
    await show('version-compare', { left, right }, SCENE);
    const salt = page.getByRole('row', { name: 'Salt' });
    expect(await salt.locator('.mark').textContent()).toBe('−');
    await salt.getByText(CHANGES.removed).waitFor();
    await page.getByRole('row', { name: FORMULA_FACTS.doughC }).getByText('30 °C').waitFor();
    // Salt, the sum of the dough, its temperature, the step that weighs.
    await page.getByText(VERSIONS.count(4)).waitFor();
    expect(await page.getByRole('row', { name: 'Water' }).count()).toBe(0);
    await page.getByRole('button', { name: VERSIONS.onlyChanges }).click();
    await page.getByRole('row', { name: 'Water' }).getByText(CHANGES.same).waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await page.getByLabel(VERSIONS.left).selectOption('2');
    expect(await asked()).toEqual([{ name: 'versions-wanted', leftVersion: 2, rightVersion: 3 }]);
    await show('version-compare', { left, right: left }, SCENE);
    await page.getByText(VERSIONS.same).waitFor();
  });
});

describe('N28 a weigh-out on paper', () => {
  test.each(['A4', 'Letter'] as const)('on %s: one page a batch, nothing but the sheets, nothing cut off', async (format) => {
    await show('size-panel', { ...partsOf('rye'), version: 2 }, SCENE);
    await page.getByRole('button', { name: SIZE.modes.dough, exact: true }).click();
    await page.locator('desk-field[data-field=doughG] input').fill('20');
    await page.getByRole('button', { name: SIZE.print }).click();
    await page.waitForFunction(() => document.querySelectorAll('.on-paper weigh-sheet').length === 2);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('main').isVisible()).toBe(false);
    const sheet = page.locator('.on-paper weigh-sheet').first();
    const text = (await sheet.evaluate((element) => element.shadowRoot?.textContent ?? '')).replace(/\s+/g, ' ');
    for (const part of ['Seeded rye (R)', SHEET.version(2), SIZE.batchOf(1, 2), SHEET.lot, SHEET.allergens, SHEET.date])
      expect(text).toContain(part);
    expect(await sheet.evaluate(cutOff)).toEqual([]);
    await page.emulateMedia({ media: null });
    // Chromium says that it is done with the paper, and the sheets are taken off the page.
    const pdf = await page.pdf({ format, preferCSSPageSize: false });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(2);
    expect(await page.locator('.on-paper').count()).toBe(0);
  });

  test('the same as a file for a spreadsheet', async () => {
    await show('size-panel', { ...partsOf('rye'), version: 2 }, SCENE);
    await page.getByRole('button', { name: SIZE.modes.dough, exact: true }).click();
    await page.locator('desk-field[data-field=doughG] input').fill('9.4');
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: SIZE.csv }).click()]);
    expect(download.suggestedFilename()).toBe(`${SIZE.fileName}-rye.csv`);
    const chunks: Buffer[] = [];
    for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
    const lines = Buffer.concat(chunks).toString('utf8').split('\r\n');
    const written = formulas.find(({ id }) => id === 'rye')?.parts.flatMap(({ items }) => items).length ?? 0;
    expect(lines).toHaveLength(written + 2);
    expect(lines[0]).toBe(Object.values(SHEET.columns).join(','));
    expect(lines[1]).toMatch(/^Seeded rye,2,1,Seed soaker,Sunflower seeds,\d+(\.\d)?,/);
  });
});

describe('N21 on a phone', () => {
  test.each(['book-list', 'book-in-out', 'size-panel'])('%s fits a width of 390 px', async (tag) => {
    await page.setViewportSize({ width: 390, height: 844 });
    await show(tag, { index: INDEX, openId: 'rye', ...partsOf('milk-buns'), version: 1 }, SCENE);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await page.setViewportSize({ width: 1280, height: 800 });
  });
});

describe('N25 the book and recipes come in', () => {
  test('a pasted page with a recipe becomes a draft; what was not read is listed', async () => {
    await show('book-in-out', { index: INDEX });
    const recipe = {
      '@context': 'https://schema.org',
      '@graph': [
        { '@type': 'Recipe', name: 'Pier loaf', recipeIngredient: ['1 kg wheat flour', '2 tsp salt'], recipeInstructions: 'Mix.' },
      ],
    };
    await page.getByLabel(IN_OUT.paste).fill(`<html><script type="application/ld+json">${JSON.stringify(recipe)}</script></html>`);
    await page.getByRole('button', { name: IN_OUT.read, exact: true }).click();
    await page.getByText(IN_OUT.recipeTitle('Pier loaf')).waitFor();
    await page.getByText('2 tsp salt').waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await page.getByRole('button', { name: IN_OUT.open }).click();
    const [draft] = (await asked()) as { formula: unknown }[];
    expect(formulaSchema.safeParse(draft?.formula).success).toBe(true);
    expect(draft).toMatchObject({
      name: 'draft-wanted',
      formula: { name: 'Pier loaf', parts: [{ items: [{ item: 'wheat-flour', g: 1000 }] }] },
    });
  });

  test('a book is sent whole; the server’s counts and its faults are told', async () => {
    const answers: unknown[] = [
      { status: 400, body: { type: 'about:blank', title: 'Bad', faults: [{ path: 'formulas[3].parts', message: 'there is no flour' }] } },
      { status: 200, body: { sequence: 9, ingredients: counts(1, 0, 4), formulas: counts(2, 3, 5), products: counts(0, 0, 6) } },
    ];
    const sent: unknown[] = [];
    await page.route('**/api/book/import', async (route) => {
      sent.push(route.request().postDataJSON());
      const { status, body } = answers.shift() as { status: number; body: unknown };
      await route.fulfill({ status, json: body });
    });
    const book = { format: 1, ingredients, formulas, products, archived: [] };
    await show('book-in-out', { index: INDEX });
    await page
      .getByLabel(IN_OUT.pick)
      .setInputFiles({ name: 'book.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(book)) });
    await page.getByText(IN_OUT.bookHolds(formulas.length, products.length, ingredients.length)).waitFor();
    await page.getByRole('button', { name: IN_OUT.bringIn, exact: true }).click();
    await page.getByText('formulas[3].parts').waitFor();
    faults.splice(0, faults.length, ...faults.filter((fault) => !fault.includes('400')));
    expect(await asked()).toEqual([]);
    await page
      .getByLabel(IN_OUT.pick)
      .setInputFiles({ name: 'book.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(book)) });
    await page.getByRole('button', { name: IN_OUT.bringIn, exact: true }).click();
    await page.getByText(IN_OUT.counts(3, 3, 15)).waitFor();
    expect(await asked()).toEqual([{ name: 'book-changed' }]);
    expect(sent).toEqual([book, book]);
    await page.unroute('**/api/book/import');
  });

  test('what is neither is told', async () => {
    await show('book-in-out', { index: INDEX });
    await page.getByLabel(IN_OUT.paste).fill('hello');
    await page.getByRole('button', { name: IN_OUT.read, exact: true }).click();
    await page.getByText('There is no JSON in this that can be read.').waitFor();
  });
});

function partsOf(formulaId: string): { formula: Formula | undefined; products: readonly Product[] } {
  return { formula: formulas.find(({ id }) => id === formulaId), products: products.filter(({ formula }) => formula === formulaId) };
}

function counts(added: number, changed: number, unchanged: number): { new: number; changed: number; unchanged: number } {
  return { new: added, changed, unchanged };
}

function manyIndex(count: number): BookIndex {
  const entries = Array.from({ length: count }, (_each, at) => ({
    ...entryOf(formulas[at % formulas.length] as Formula),
    id: `formula-${at}`,
    name: `Formula ${at}`,
  }));
  return { ...INDEX, entries };
}

/** Texts of a sheet that stick out of it or of the paper. */
function cutOff(sheet: Element): string[] {
  const cells = [...(sheet.shadowRoot?.querySelectorAll('td, th, p, h3, h4, span') ?? [])];
  return cells.filter((cell) => cell.scrollWidth > cell.clientWidth + 1 && cell.clientWidth > 0).map((cell) => cell.textContent ?? '');
}
