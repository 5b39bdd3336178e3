import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { CAUSES, DAY, DAY_SECTIONS, ORDERS, PLANNING, READING, REMEDIES, STANDING as STANDING_WORDS } from '../../display/words/en/day.ts';
import { DAY_SECTIONS as GERMAN_SECTIONS } from '../../display/words/de/day.ts';
import { TEXT_NEEDED } from '../../display/words/en/fields.ts';
import { DAY_SECTIONS as FRENCH_SECTIONS } from '../../display/words/fr/day.ts';
import type { Language } from '../../display/words/page-language.ts';
import { placeOrders } from '../../shared/floor/commands.ts';
import { proposalAskSchema } from '../../shared/plan/plan-api.ts';
import { assert } from '../../shared/result.ts';
import { idOf } from '../domain/support/ids.ts';
import { buildHarness } from './harness/build-harness.ts';
import { measurePage } from './harness/measure-page.ts';
import { serveFolder } from './harness/serve-folder.ts';
import { viewOf } from './harness/staged-wall.ts';
import {
  busyFloor,
  BOOK_ANSWERS,
  DATE,
  done,
  figures,
  offer,
  orderId,
  planAnswers,
  running,
  stagedDay,
  status,
  tooFull,
} from './harness-day/day-stage.ts';
import type { AskedRequest, StagedDay } from './harness-day/main.ts';
import { axeFaults } from './support/axe-faults.ts';
import { launchChromium } from './support/chromium.ts';
import { tabTo } from './support/keyboard.ts';

/** WCAG 2.2, 1.4.6: contrast, enhanced. */
const LEAST_CONTRAST = 7;
const LEAST_TEXT_PX = 16;
const BUSY = busyFloor();
const NOTHING_ORDERED = { ...BUSY, state: { ...BUSY.state, orders: {}, standing: null, plan: null } };
const faults: string[] = [];

let browser: Browser;
let served: Awaited<ReturnType<typeof serveFolder>>;
let address: string;
let page: Page;
let openIn: Language | null = null;

beforeAll(async () => {
  const harness = await buildHarness('day-harness', 'tests/browser/harness-day/index.html');
  [browser, served] = await Promise.all([launchChromium(), serveFolder(harness.folder)]);
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.setDefaultTimeout(6_000);
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  address = served.origin + harness.page;
});

beforeEach(() => open(1280, 800, 'en'));

afterAll(async () => {
  await browser.close();
  await served.close();
  expect(faults).toEqual([]);
});

/** The language is chosen as a page loads. */
async function open(width: number, height: number, language: Language): Promise<void> {
  await page.setViewportSize({ width, height });
  if (language === openIn) return;
  openIn = language;
  await page.goto(`${address}?language=${language}`);
}
const show = (staged: StagedDay): Promise<void> => page.evaluate((given) => window.dayHarness.show(given), staged);
const asked = async (method: string, path: string): Promise<AskedRequest[]> =>
  (await page.evaluate(() => window.dayHarness.asked)).filter((request) => request.method === method && request.path.startsWith(path));
const commands = async (): Promise<unknown[]> =>
  (await asked('POST', '/api/commands')).map(({ body }) => (body as { command: unknown }).command);
/** The same view with a little of it changed: what did not change is the very same, as a link's views are. */
async function lookOn(how: 'sequence' | 'planNews'): Promise<void> {
  await page.evaluate((key) => {
    const shown = document.querySelector('day-page');
    if (shown?.view !== null && shown?.view !== undefined) shown.view = { ...shown.view, [key]: shown.view[key] + 1 };
  }, how);
  await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
}
const button = (name: string | RegExp): Locator => page.getByRole('button', { name, exact: typeof name === 'string' });
const box = (): Locator => page.getByLabel(READING.box);

describe('I4 the page of a day is legible and whole on every screen, in every language', () => {
  test.each([
    [1920, 1080, 'en', DAY_SECTIONS],
    [1280, 800, 'de', GERMAN_SECTIONS],
    [390, 844, 'fr', FRENCH_SECTIONS],
  ] as const)('%i × %i, %s', async (width, height, language, sections) => {
    await open(width, height, language);
    const plan = planAnswers([[tooFull(idOf(911))], [running(7_000)]], [offer(BUSY.state.plan?.moved ?? [])]);
    await show(stagedDay(BUSY, plan));
    await page.locator('order-paste textarea').fill('Milk buns\t24\n\tx\t6:30');
    await expectLegible();
    expect(await axeFaults(page)).toEqual([]);
    await button(sections.plan).click();
    await page.locator('plan-compare table').waitFor();
    await page.locator('plan-compare tbody tr:last-child button').nth(1).click();
    await page.locator('plan-reasons ol').waitFor();
    await expectLegible();
    expect(await axeFaults(page)).toEqual([]);
    expect(await page.evaluate(() => window.dayHarness.wentTo)).toEqual(['?section=plan']);
  });

  test('it says what it is waiting for, what is missing, and that the link is gone', async () => {
    await show(stagedDay({ state: null, nowMs: BUSY.nowMs }, {}, { view: viewOf(null, { connection: { phase: 'connecting' } }) }));
    await page.getByText(DAY.loading).waitFor();
    await show(stagedDay({ ...BUSY, state: { ...BUSY.state, kitchen: null } }, {}));
    await page.getByText(DAY.emptyTitle).waitFor();
    await show({ ...stagedDay(BUSY, {}), answers: {} });
    await page.getByText(DAY.failedTitle).waitFor();
    await page.evaluate(
      (view) => window.dayHarness.look(view),
      viewOf(BUSY.state, { connection: { phase: 'lost', lastContactMs: BUSY.nowMs } }),
    );
    await page.getByText(DAY.noLinkMore).waitFor();
    await show(stagedDay(NOTHING_ORDERED, {}));
    await page.getByText(ORDERS.none, { exact: true }).waitFor();
    await show(stagedDay({ ...BUSY, state: { ...BUSY.state, closedDates: [DATE], serviceDate: DATE } }, {}, { search: `?date=${DATE}` }));
    await page.getByText(DAY.closed).waitFor();
    expect(await page.locator('order-entry:visible, order-paste:visible').count()).toBe(0);
  });

  test('another date is another address; today and tomorrow are one press away', async () => {
    await show(stagedDay(BUSY, {}));
    await button(DAY.tomorrow).click();
    await page.getByRole('heading', { level: 1, name: /8 March/ }).waitFor();
    await button(DAY.dayAfter).click();
    await page.locator('input[type=date]').fill('2026-04-01');
    await page.getByRole('heading', { level: 1, name: /1 April/ }).waitFor();
    expect(await page.evaluate(() => window.dayHarness.wentTo)).toEqual(['?date=2026-03-08', '?date=2026-03-09', '?date=2026-04-01']);
  });
});

describe('I5 an order is typed, changed, withdrawn, put back', () => {
  test('by keyboard alone, product by name, ready for the next; what is not right is told at its field', async () => {
    await show(stagedDay(NOTHING_ORDERED, {}));
    await tabTo(page, 'Product');
    await page.keyboard.type('milk buns, PLAIN');
    await page.keyboard.press('Tab');
    await page.keyboard.type('x');
    await page.keyboard.press('Enter');
    await page.locator('[data-field=pieces] .fault').waitFor();
    expect(await page.locator('[data-field=readyAt] .fault').textContent()).toBe(TEXT_NEEDED);
    expect(await commands()).toEqual([]);
    await page.keyboard.press('Backspace');
    await page.keyboard.type('24');
    await page.keyboard.press('Tab');
    await page.keyboard.type('25');
    await page.keyboard.press('Enter');
    await page.getByText(ORDERS.needClock).waitFor();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('6.30');
    await page.keyboard.press('Enter');
    await page.getByText(ORDERS.placed(1)).waitFor();
    const [command] = await commands();
    expect(placeOrders.parse(command)).toEqual({
      type: 'placeOrders',
      serviceDate: DATE,
      // The demo house's clocks are those of UTC in March.
      orders: [{ productId: 'milk-bun', pieces: 24, readyMs: Date.UTC(2026, 2, 7, 6, 30), form: 'cooled', weight: 1 }],
    });
    expect(await page.locator('order-entry [data-field=readyAt] input').inputValue()).toBe('6.30');
    await page.keyboard.type('Rye');
    expect(await page.locator('order-entry [data-field=product] input').inputValue()).toBe('Rye');
  });

  test('changed in its row, and taken by its id; what was withdrawn can be put back', async () => {
    await show(stagedDay(BUSY, {}));
    const row = page.locator(`[data-order="${orderId(3)}"]`);
    expect(await row.locator('.standing').textContent()).toContain(ORDERS.late(20));
    await row.getByRole('button', { name: /^Change/ }).click();
    await row.locator('[data-field=pieces] input').fill('36');
    await row.getByRole('button', { name: ORDERS.keep }).click();
    await page.getByText(ORDERS.changed).waitFor();
    const before = BUSY.state.orders[orderId(3)];
    assert(before !== undefined, 'the order is there');
    const { serviceDate: _date, ...kept } = before;
    expect((await commands())[0]).toEqual({ type: 'placeOrders', serviceDate: DATE, orders: [{ ...kept, pieces: 36 }] });
    await row.getByRole('button', { name: /^Withdraw/ }).click();
    await button(ORDERS.putBack).click();
    await page.getByText(ORDERS.placed(1)).waitFor();
    const [, withdrawn, again] = await commands();
    expect(withdrawn).toEqual({ type: 'withdrawOrders', orderIds: [orderId(3)] });
    const { id: _id, ...wanted } = kept;
    expect(again).toEqual({ type: 'placeOrders', serviceDate: DATE, orders: [wanted] });
  });

  test('what the house refuses is told in its words, and what nobody answered is said again under the same id', async () => {
    const refusal = { code: 'productUnknown', productId: 'rye-tin' };
    await show(stagedDay(BUSY, { 'POST /api/commands': [{ status: 409, body: { refusal } }] }));
    await page
      .locator(`[data-order="${orderId(6)}"]`)
      .getByRole('button', { name: /^Withdraw/ })
      .click();
    await page.locator('.said', { hasText: DAY.refused }).waitFor();
    await show(
      stagedDay(BUSY, {
        'POST /api/commands': [
          { status: 503, body: {} },
          { status: 200, body: {} },
        ],
      }),
    );
    const withdraw = page.locator(`[data-order="${orderId(6)}"]`).getByRole('button', { name: /^Withdraw/ });
    await withdraw.click();
    await page.getByText(DAY.unsent).waitFor();
    await withdraw.click();
    await button(ORDERS.putBack).waitFor();
    const ids = (await asked('POST', '/api/commands')).map(({ body }) => (body as { commandId: string }).commandId);
    expect(new Set(ids).size).toBe(1);
  });
});

describe('I6 orders are pasted; the good ones are taken, the others stay', () => {
  const TEXT = [
    'Product\tPieces\tReady by\tFor whom',
    'milk-bun\t24\t6:30\tShop',
    'Milk rolls\t12\t6:30\tShop',
    'Country loaf\t8\t25:00\tVan',
  ];

  test('faults lead to their line; the taken lines leave the box', async () => {
    await show(stagedDay(NOTHING_ORDERED, {}));
    await box().fill(TEXT.join('\n'));
    await page.getByText(READING.read(1)).waitFor();
    await page.getByText(READING.faults(2)).waitFor();
    await button(READING.at(4, 3)).click();
    expect(await box().evaluate((element: HTMLTextAreaElement) => element.value.slice(element.selectionStart, element.selectionEnd))).toBe(
      TEXT[3],
    );
    await button(READING.take(1)).click();
    await page.getByText(ORDERS.placed(1)).waitFor();
    expect(await box().inputValue()).toBe([TEXT[0], TEXT[2], TEXT[3]].join('\n'));
    expect(placeOrders.parse((await commands())[0]).orders).toMatchObject([{ productId: 'milk-bun', pieces: 24, label: 'Shop' }]);
  });

  test('a file says the same, in the encodings that spreadsheets write; what was not taken stays whole', async () => {
    await show(stagedDay(NOTHING_ORDERED, { 'POST /api/commands': [{ status: 503, body: {} }] }));
    const csv = 'Produkt;Stück;Fertig bis\r\nCountry loaf;20;7.00\r\n';
    await page.locator('input[type=file]').setInputFiles({ name: 'orders.csv', mimeType: 'text/csv', buffer: Buffer.from(csv, 'latin1') });
    await button(READING.take(1)).click();
    await page.getByText(DAY.unsent).waitFor();
    expect(await box().inputValue()).toBe(csv.replaceAll('\r\n', '\n'));
  });

  test('what is typed and pasted outlives a look at the plan and whatever happens on the floor', async () => {
    await show(stagedDay(BUSY, {}));
    const row = page.locator(`[data-order="${orderId(3)}"]`);
    await row.getByRole('button', { name: /^Change/ }).click();
    await row.locator('[data-field=pieces] input').fill('36');
    await box().fill('half a line');
    await button(DAY_SECTIONS.plan).click();
    await page.evaluate((view) => window.dayHarness.look(view), viewOf({ ...BUSY.state, sequence: BUSY.state.sequence + 1 }));
    await button(/^Orders/).click();
    expect(await row.locator('[data-field=pieces] input').inputValue()).toBe('36');
    expect(await box().inputValue()).toBe('half a line');
  });

  test('what stands already is told before it is made twice', async () => {
    await show(stagedDay(BUSY, {}));
    await box().fill('country-loaf,10,13:00,,,,van');
    await page.getByText(READING.known(1)).waitFor();
  });
});

describe('I7 standing orders', () => {
  test('are taken over for the date, each once', async () => {
    await show(stagedDay(BUSY, {}));
    await button(STANDING_WORDS.takeOver(2, 'Sat 7 March')).click();
    await page.getByText(ORDERS.placed(2)).waitFor();
    const { orders } = placeOrders.parse((await commands())[0]);
    expect(orders.map(({ standingId, readyMs }) => [standingId, readyMs])).toEqual([
      ['country-loaf', Date.UTC(2026, 2, 7, 7)],
      ['olive-flat', Date.UTC(2026, 2, 7, 9, 30)],
    ]);
  });

  test('are not offered once the time at which they are wanted is past', async () => {
    await show(stagedDay({ ...BUSY, nowMs: Date.UTC(2026, 2, 7, 7) }, {}));
    await button(STANDING_WORDS.takeOver(1, 'Sat 7 March')).waitFor();
    await show(stagedDay({ ...BUSY, nowMs: Date.UTC(2026, 2, 7, 9, 30) }, {}));
    await page.getByText(STANDING_WORDS.tooLate('Sat 7 March')).waitFor();
  });

  test('are added from the version that was seen, with their days', async () => {
    await show(stagedDay(BUSY, {}));
    await button(STANDING_WORDS.add).click();
    const form = page.locator('standing-orders order-entry');
    await form.locator('[data-field=product] input').fill('Cheese boats');
    await form.locator('[data-field=pieces] input').fill('16');
    await form.locator('[data-field=readyAt] input').fill('8');
    await form.getByRole('button', { name: STANDING_WORDS.take }).click();
    await form.getByText(STANDING_WORDS.needDays).waitFor();
    await form.getByLabel('Sat').check();
    await form.getByRole('button', { name: STANDING_WORDS.take }).click();
    await page.getByText(STANDING_WORDS.kept).waitFor();
    const [command] = (await commands()) as [{ fromVersion: number; standing: unknown[] }];
    expect(command.fromVersion).toBe(1);
    expect(command.standing.at(-1)).toEqual({
      id: 'cheese-boat',
      weekdays: [6],
      readyAt: '08:00',
      productId: 'cheese-boat',
      pieces: 16,
      form: 'cooled',
      weight: 1,
    });
  });
});

describe('I8 a day is planned, compared, tried otherwise, kept', () => {
  const LATER = { kind: 'readyLater', orderId: orderId(3), minutes: 25 } as const;

  test('the bar tells how far the search is; what was found is shown, and why it does not fit', async () => {
    const found = tooFull(idOf(901));
    const answers = planAnswers([[running(7_000), found]]);
    await show(
      stagedDay(
        BUSY,
        {
          ...answers,
          'GET /api/plan': [{ status: 200, body: status([]) }],
          'POST /api/plan/proposals': [{ status: 200, body: running(0) }],
        },
        { search: '?section=plan' },
      ),
    );
    await button(PLANNING.plan).click();
    const bar = page.getByRole('progressbar');
    await page.getByText(PLANNING.bestSoFar(4, 6)).waitFor();
    expect(await bar.getAttribute('aria-valuenow')).toBe('7000');
    expect(await bar.getAttribute('aria-valuetext')).toBe(PLANNING.progress('7,000', '20,000'));
    expect(await button(PLANNING.plan).isDisabled()).toBe(true);
    await page.evaluate(() => window.dayHarness.askAgain());
    await page.locator('[data-figure=ordersOnTime]').getByText('4 of 6').waitFor();
    expect(await bar.count()).toBe(0);
    const [body] = await asked('POST', '/api/plan/proposals');
    expect(proposalAskSchema.parse(body?.body)).toMatchObject({ serviceDate: DATE, changes: [], pins: [], firstOrderIds: [] });
    // The deck, the step that has it and the clock, by the names of the kitchen.
    await page.getByText(CAUSES.busy('M2a load', 'Deck oven, Top', 'C4 load', '06:10')).waitFor();
  });

  test('each remedy is a button that plans the day with it; what only the kitchen can give leads there', async () => {
    await show(
      stagedDay(
        BUSY,
        { ...planAnswers([[tooFull(idOf(911))]]), 'POST /api/plan/proposals': [{ status: 200, body: running(0) }] },
        { search: '?section=plan' },
      ),
    );
    await button(PLANNING.showOne(PLANNING.proposal('A'))).click();
    const remedies = page.locator('plan-reasons li li');
    expect(await remedies.count()).toBe(4);
    expect(await page.getByRole('link', { name: REMEDIES.inKitchen }).getAttribute('href')).toBe('/kitchen');
    await remedies.nth(0).getByRole('button').click();
    await page.getByRole('progressbar').waitFor();
    const [first] = await asked('POST', '/api/plan/proposals');
    expect(proposalAskSchema.parse(first?.body).changes).toEqual([LATER]);
    await page.getByText(PLANNING.later('30 Milk buns, plain, 07:30', 25)).first().waitFor();
    await remedies.nth(3).getByRole('button').click();
    const last = (await asked('POST', '/api/plan/proposals')).at(-1);
    expect(proposalAskSchema.parse(last?.body)).toMatchObject({ changes: [LATER], pins: [{ key: 'country#1|||weigh' }] });
  });

  test('an order is tried later, with fewer pieces, left out, first of all; and not so after all', async () => {
    await show(stagedDay(BUSY, { 'POST /api/plan/proposals': [{ status: 200, body: running(0) }] }, { search: '?section=plan' }));
    await page.getByText(PLANNING.tryTitle).click();
    await page.locator('plan-tries').getByLabel(PLANNING.order, { exact: true }).selectOption(orderId(3));
    await page.locator('plan-tries [data-field=laterMin] input').fill('25');
    await button(PLANNING.tryLater).click();
    await page.locator('plan-tries [data-field=pieces] input').fill('18');
    await button(PLANNING.tryFewer).click();
    await button(PLANNING.tryFirst).click();
    await button(PLANNING.takeBack(PLANNING.fewer('30 Milk buns, plain, 07:30', 18))).click();
    await button(PLANNING.again).click();
    const [body] = await asked('POST', '/api/plan/proposals');
    expect(proposalAskSchema.parse(body?.body)).toMatchObject({ changes: [LATER], firstOrderIds: [orderId(3)] });
  });

  test('days stand side by side with the one in force; one is kept, one dropped, an old one cannot be kept', async () => {
    const answers = planAnswers([[tooFull(idOf(911))], [done(idOf(912), {}, [LATER])], [done(idOf(913), { isOutdated: true })]]);
    const kept = { [`POST /api/plan/proposals/${idOf(912)}/keep`]: [{ status: 200, body: { sequence: 9 } }] };
    const dropped = { [`DELETE /api/plan/proposals/${idOf(911)}`]: [{ status: 204, body: null }] };
    await show(stagedDay(BUSY, { ...answers, ...kept, ...dropped }, { search: '?section=plan' }));
    const onTime = page.locator('[data-figure=ordersOnTime] td');
    await onTime.nth(3).waitFor();
    // In force five of six: the plan's own warning names one that is late.
    expect(await onTime.allTextContents()).toEqual(
      ['5 of 6', '4 of 6', '6 of 6', '6 of 6'].map((text) => expect.stringContaining(text) as string),
    );
    expect(await button(PLANNING.keepOne(PLANNING.proposal('C'))).isDisabled()).toBe(true);
    await button(PLANNING.dropOne(PLANNING.proposal('A'))).click();
    await expect.poll(() => onTime.count()).toBe(3);
    await button(PLANNING.keepOne(PLANNING.proposal('B'))).click();
    await page.getByText(PLANNING.kept).waitFor();
  });

  test('a day that cannot be planned, and a planner that is away, are told', async () => {
    const failed = {
      ...running(0),
      status: 'failed',
      faults: [{ code: 'noMixer', message: '', formulaId: 'milk-buns', productId: null, grams: 64_000 }],
    } as const;
    const { progress: _progress, ...proposal } = failed as typeof failed & { progress: unknown };
    await show(
      stagedDay(
        BUSY,
        {
          'POST /api/plan/proposals': [{ status: 200, body: proposal }],
          [`GET /api/plan/proposals/${proposal.id}`]: [{ status: 200, body: proposal }],
        },
        { search: '?section=plan' },
      ),
    );
    await button(PLANNING.plan).click();
    await page.getByText('Milk buns: no mixer takes 64\u00a0kg').waitFor();
    await show({ ...stagedDay(BUSY, {}, { search: '?section=plan' }), answers: BOOK_ANSWERS });
    await page.getByText(PLANNING.statusFailed).waitFor();
    await button(PLANNING.plan).click();
    await page.getByText(DAY.unsent).waitFor();
  });
});

describe('I9 the plan in force tells what moved and why, what is ahead, and what is on offer', () => {
  test('one line each; an offer is kept by a button', async () => {
    const moved = BUSY.state.plan?.moved ?? [];
    const given = offer(moved);
    const answers = {
      ...planAnswers([], [given]),
      [`POST /api/plan/proposals/${given.id}/keep`]: [{ status: 200, body: { sequence: 9 } }],
    };
    await show(stagedDay(BUSY, answers, { search: '?section=plan' }));
    const news = page.locator('plan-news');
    await news.getByText('Spiral is taken').first().waitFor();
    expect(await news.locator('.times').first().textContent()).toBe('08:15 → 08:40');
    await news.getByText('30 Milk buns, plain, 07:30: ready at 07:50, 20 min late').waitFor();
    await news.getByText('in 3 h 35').waitFor();
    await news.getByText(PLANNING.offerGain('4 of 6', '6 of 6')).waitFor();
    await news.getByRole('button', { name: /^Keep/ }).click();
    await page.getByText(PLANNING.kept).waitFor();
    expect(figures().orders).toBe(given.after.orders);
  });

  test('a better way that is found later is told to the page, which asks for it then and not before', async () => {
    const given = offer(BUSY.state.plan?.moved ?? []);
    const found = [status([]), status([], [given])].map((body) => ({ status: 200, body }));
    await show(stagedDay(BUSY, { ...planAnswers([]), 'GET /api/plan': found }, { search: '?section=plan' }));
    const offered = page.locator('plan-news').getByText(PLANNING.offersTitle);
    const times = async (): Promise<number> => (await asked('GET', '/api/plan')).filter(({ path }) => path === '/api/plan').length;
    // The floor goes on, and nothing of it has to do with the plan.
    await lookOn('sequence');
    expect([await times(), await offered.count()]).toEqual([1, 0]);
    await lookOn('planNews');
    await offered.waitFor();
    expect(await times()).toBe(2);
  });

  test('where fillings are planned the rule set of the house is named, and that others come first', async () => {
    await show(stagedDay(BUSY, {}, { search: '?section=plan' }));
    await page.getByText(DAY.held('England')).waitFor();
    const { workpieces } = BUSY.state;
    const doughs = Object.fromEntries(Object.entries(workpieces).filter(([, { kind }]) => kind !== 'prep'));
    await page.evaluate((view) => window.dayHarness.look(view), viewOf({ ...BUSY.state, workpieces: doughs }));
    expect(await page.locator('plan-panel .caution').count()).toBe(0);
  });
});

async function expectLegible(): Promise<void> {
  const { width: wide, height } = page.viewportSize() ?? { width: 0, height: 0 };
  // What is folded is to be legible too, and what lies below the edge can only be looked at above it.
  await page.evaluate(() => {
    const unfold = (root: ParentNode): void => {
      for (const details of root.querySelectorAll('details')) details.open = true;
      for (const element of root.querySelectorAll('*')) if (element.shadowRoot !== null) unfold(element.shadowRoot);
    };
    unfold(document);
  });
  await page.setViewportSize({ width: wide, height: await page.evaluate(() => document.documentElement.scrollHeight) });
  const drawn = await page.evaluate(measurePage);
  const width = await page.evaluate(() => document.documentElement.clientWidth);
  const text = drawn.filter(({ where }) => !where.startsWith('day-sheet'));
  expect(text.length).toBeGreaterThan(20);
  expect(text.filter(({ sizePx }) => sizePx < LEAST_TEXT_PX)).toEqual([]);
  expect(text.filter(({ contrast, where }) => contrast < LEAST_CONTRAST && !where.includes('disabled'))).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  await page.setViewportSize({ width: wide, height });
}
