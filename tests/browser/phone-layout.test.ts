import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { AnsweredTap, FloorView } from '../../display/link/floor-link.ts';
import { NAME_CHARACTERS, REMARK_CHARACTERS } from '../../shared/documents/names.ts';
import type { Due } from '../../shared/floor/due.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { Floor } from '../domain/support/floor.ts';
import { harbourFile } from '../domain/support/harbour.ts';
import { idOf, OTHER_PHONE } from '../domain/support/ids.ts';
import { buildHarness } from './harness/build-harness.ts';
import { serveFolder } from './harness/serve-folder.ts';
import { workedFloor } from './harness/staged-wall.ts';
import { buttonBoxes, clippedTexts, tooClose } from './harness-phone/measure.ts';
import { phoneView, untilSome } from './harness-phone/phone-stage.ts';
import { launchChromium } from './support/chromium.ts';

const PICTURES = fileURLToPath(new URL('../../.build/pictures/', import.meta.url));
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const MINUTE_MS = 60_000;

/** What a thumb needs, in CSS px (the phone's design). */
const BIG_PX = 126;
const MIDDLING_PX = 94;
const GAP_PX = 16;

const SIZES = [
  { name: '390x844', width: 390, height: 844 },
  { name: '360x640', width: 360, height: 640 },
] as const;
type Size = (typeof SIZES)[number];

let browser: Browser;
/** For how things look; its clock is the browser's. */
let page: Page;
/** For how things are tapped; its clock moves only when a test says so, since what the tap guard times is not left to the machine. */
let thumb: Page;
let served: Awaited<ReturnType<typeof serveFolder>>;
const complaints: string[] = [];

beforeAll(async () => {
  const built = await buildHarness('harness-phone', 'tests/browser/harness-phone/index.html');
  served = await serveFolder(built.folder);
  mkdirSync(PICTURES, { recursive: true });
  browser = await launchChromium();
  [page, thumb] = await Promise.all([newPage(), newPage()]);
  await thumb.clock.install();
  await Promise.all([page, thumb].map((each) => each.goto(served.origin + built.page)));
  await thumb.clock.pauseAt((await thumb.evaluate(() => Date.now())) + 60_000);
});

afterAll(async () => {
  await browser.close();
  await served.close();
});

async function newPage(): Promise<Page> {
  const made = await browser.newPage({ viewport: SIZES[0], hasTouch: true, reducedMotion: 'reduce' });
  made.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  made.on('pageerror', (error) => complaints.push(String(error)));
  return made;
}

/** A picture's subject: what the phone is told, and what it is made to show. */
interface Scene {
  readonly view: FloorView;
  readonly nowMs: number;
  readonly workpieceId: string | null;
  readonly panel?: 'other' | 'skip';
}

async function show(scene: Scene, size: Size = SIZES[0], on: Page = page): Promise<void> {
  await on.setViewportSize(size);
  await on.evaluate(async ({ view, nowMs, workpieceId, panel }) => {
    const element = document.querySelector('phone-page');
    if (element === null) throw new Error('no phone-page');
    element.screen = { kind: 'list' };
    await window.phoneHarness.show(view, nowMs);
    if (workpieceId !== null) element.screen = { kind: 'card', workpieceId };
    await element.updateComplete;
    if (panel !== undefined) element.dispatchEvent(new Event(`${panel}-wanted`));
    await element.updateComplete;
    await document.fonts.ready;
  }, scene);
}

function showToThumb(scene: Scene): Promise<void> {
  return show(scene, SIZES[0], thumb);
}

/** A real touch, after everything on the screen has stood for long enough to be meant. */
async function tapOn(text: string): Promise<void> {
  await thumb.clock.runFor(1_000);
  await touch(text);
}

async function touch(text: string): Promise<void> {
  const box = (await buttonBoxes(thumb)).find((candidate) => candidate.text.includes(text));
  if (box === undefined) throw new Error(`no button says ${text}`);
  await thumb.touchscreen.tap((box.left + box.right) / 2, (box.top + box.bottom) / 2);
}

const sent = (): Promise<readonly unknown[]> => thumb.evaluate(() => window.phoneHarness.sent.splice(0));

async function axeFaults(): Promise<string[]> {
  await page.evaluate(AXE);
  const results = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run(context: Document, options: RunOptions): Promise<AxeResults> } };
    return axe.run(document, { resultTypes: ['violations'] });
  });
  return results.violations.flatMap((violation) =>
    violation.nodes.map((node) => `${violation.id}: ${node.html} ${node.failureSummary ?? ''}`),
  );
}

function staged(wanted: (due: Due, nowMs: number, floor: Floor) => boolean): { floor: Floor; due: Due } {
  const floor = Floor.harbour();
  return { floor, due: untilSome(floor, (due, nowMs) => wanted(due, nowMs, floor)) };
}

function sceneOf({ floor, due }: { floor: Floor; due: Due }, more: Partial<FloorView> = {}, laterMin = 0): Scene {
  return { view: phoneView(floor.state, more), nowMs: floor.nowMs + laterMin * MINUTE_MS, workpieceId: due.workpiece.id };
}

const fold = staged((due, nowMs) => due.action.verb === 'fold' && due.phase === 'resting' && due.dueMs <= nowMs);
const mix = staged((due, nowMs) => due.action.verb === 'secondSpeed' && due.phase === 'judging' && due.dueMs <= nowMs);
const divide = staged((due, nowMs) => due.action.verb === 'divide' && due.workpiece.productId === null && due.dueMs <= nowMs);
const load = staged(
  (due, nowMs, floor) =>
    due.action.verb === 'load' && due.dueMs <= nowMs && Object.values(floor.state.workpieces).some((piece) => piece.slotIds.length > 0),
);
const bake = staged((due) => due.step.kind === 'bake');
const day = workedFloor(harbourFile(), { untilMin: 210, neglected: { O1: 190, R1: 203, M1a: 150 } });

const undoable: AnsweredTap = {
  commandId: idOf(3),
  command: { type: 'finishStep', workpieceId: fold.due.workpiece.id, stepId: 'weigh' },
  outcome: { ok: true, sequence: 1, undoable: true },
};
const refused: AnsweredTap = {
  commandId: idOf(4),
  command: { type: 'finishStep', workpieceId: fold.due.workpiece.id, stepId: 'weigh' },
  outcome: {
    ok: false,
    refusal: {
      code: 'stepAlreadyDone',
      tag: fold.due.workpiece.tag,
      stepId: 'weigh',
      atMs: fold.floor.nowMs - MINUTE_MS,
      deviceId: OTHER_PHONE,
      stationId: 'bench',
      skipped: false,
    },
  },
};
const list: Scene = { view: phoneView(day.state), nowMs: day.nowMs, workpieceId: null };
const kept = [1, 2].map((n) => ({ commandId: idOf(n), command: undoable.command, tapMs: fold.floor.nowMs, isSent: false }));

const SCENES: readonly (readonly [string, Scene])[] = [
  ['list', list],
  ['list-undo', { ...list, view: { ...list.view, undoable: { ...undoable, command: { type: 'hearAllCalls' } } } }],
  ['list-lost', { ...list, view: { ...list.view, connection: { phase: 'lost', lastContactMs: day.nowMs - MINUTE_MS }, kept, pace: 60 } }],
  ['list-refused', { ...sceneOf(fold, { lastAnswer: refused }), workpieceId: null }],
  ['list-empty', { ...list, view: phoneView({ ...day.state, workpieces: {} }) }],
  ['loading', { ...list, view: phoneView(null, { connection: { phase: 'connecting' }, device: null }) }],
  ['refused', { ...list, view: phoneView(day.state, { connection: { phase: 'refused', why: 'full' } }) }],
  ['card-call', sceneOf(fold, { undoable })],
  ['card-late', sceneOf(fold, { lastAnswer: refused }, 11)],
  ['card-going-over', sceneOf(fold, { kept }, 31)],
  ['card-judge', sceneOf(mix, { undoable })],
  ['card-load', sceneOf(load)],
  ['card-divide', sceneOf(divide, { undoable })],
  ['card-bake', sceneOf(bake)],
  ['card-other', { ...sceneOf(fold, { undoable }), panel: 'other' }],
  ['card-skip', { ...sceneOf(fold), panel: 'skip' }],
];

const CARDS = SCENES.filter(([, scene]) => scene.workpieceId !== null);

/** The longest that documents may say, in words as long as they come. */
function withLongNames(state: FloorState): FloorState {
  const longName = 'Stiff-dough wholewheat market-morning celebration loaves xl'.padEnd(NAME_CHARACTERS, 'w').slice(0, NAME_CHARACTERS);
  const longRemark = 'Unmistakeablyovergrown, '
    .repeat(12)
    .slice(0, REMARK_CHARACTERS - 1)
    .trimEnd();
  const text = JSON.stringify(state, (key: string, value: unknown) => {
    if (key === 'name' && typeof value === 'string') return longName;
    if (key === 'check' || key === 'caution') return longRemark;
    if (key === 'tag' && typeof value === 'string') return 'Ww1234b';
    return value;
  });
  return JSON.parse(text) as FloorState;
}

describe.each(SIZES)('phone at $name', (size) => {
  test.each(SCENES)('%s is legible: nothing clipped, no complaint of axe', async (name, scene) => {
    await show(scene, size);
    await page.screenshot({ path: `${PICTURES}phone-${name}-${size.name}.png` });
    expect(await clippedTexts(page)).toEqual([]);
    // What axe looks at is the same at every size, and it takes its time.
    if (size === SIZES[0]) expect(await axeFaults()).toEqual([]);
  });

  test.each(CARDS)('%s has its buttons in reach of a thumb, large and apart', async (_name, scene) => {
    await show(scene, size);
    const boxes = await buttonBoxes(page);
    const big = boxes.filter((box) => box.classes.includes('big'));
    const middling = boxes.filter((box) => box.classes.includes('middling'));
    const lower = boxes.filter((box) => ['card-actions', 'other-panel', 'skip-panel', 'bottom-bar'].includes(box.host));
    expect(big.length).toBe(scene.panel === undefined ? 1 : 0);
    for (const box of big) {
      expect(box.bottom - box.top).toBeGreaterThanOrEqual(BIG_PX);
      expect(box.right - box.left).toBeGreaterThanOrEqual(size.width - 2 * GAP_PX);
      expect(box.top).toBeGreaterThanOrEqual(size.name === '390x844' ? size.height / 2 : 0);
    }
    expect(middling.length).toBeGreaterThan(0);
    for (const box of middling) expect(box.bottom - box.top).toBeGreaterThanOrEqual(MIDDLING_PX);
    // Reached without scrolling.
    for (const box of lower) {
      expect(box.top).toBeGreaterThanOrEqual(0);
      expect(box.bottom).toBeLessThanOrEqual(size.height);
    }
    expect(
      tooClose(
        boxes.filter((box) => ['card-actions', 'other-panel', 'skip-panel'].includes(box.host)),
        GAP_PX,
      ),
    ).toEqual([]);
    expect(
      tooClose(
        boxes.filter((box) => box.host === 'slot-picker'),
        GAP_PX,
      ),
    ).toEqual([]);
    expect(
      tooClose(
        boxes.filter((box) => box.host === 'bottom-bar'),
        GAP_PX,
      ),
    ).toEqual([]);
  });

  test('every row of the list is tall enough for a thumb and shows shape, tag, verb and countdown', async () => {
    await show(list, size);
    const rows = (await buttonBoxes(page)).filter((box) => box.host === 'phone-row');
    expect(rows.length).toBeGreaterThan(5);
    for (const row of rows) {
      expect(row.bottom - row.top).toBeGreaterThanOrEqual(72);
      expect(row.text).toMatch(/^[A-Z][a-z]?\d+[a-z]? .*(\d:\d\d|min)/);
    }
  });

  test.each([
    ['list', list],
    ['card-call', sceneOf(fold, { undoable, lastAnswer: refused })],
    ['card-judge', sceneOf(mix)],
    ['card-load', sceneOf(load)],
    ['card-divide', sceneOf(divide)],
  ] as const)('%s holds the longest names', async (name, scene) => {
    const { state } = scene.view;
    await show({ ...scene, view: { ...scene.view, state: state === null ? null : withLongNames(state) } }, size);
    await page.screenshot({ path: `${PICTURES}phone-${name}-long-${size.name}.png` });
    expect(await clippedTexts(page)).toEqual([]);
    for (const box of (await buttonBoxes(page)).filter((candidate) => ['card-actions', 'bottom-bar'].includes(candidate.host)))
      expect(box.bottom).toBeLessThanOrEqual(size.height);
  });
});

describe('a thumb on the phone', () => {
  const done = { type: 'finishStep', workpieceId: fold.due.workpiece.id, stepId: fold.due.action.id };

  test('says done with one touch, and a bounce is the same touch', async () => {
    await showToThumb(sceneOf(fold));
    await sent();
    await tapOn('FOLDED');
    await touch('FOLDED');
    expect(await sent()).toEqual([done]);
    await thumb.clock.runFor(700);
    await touch('FOLDED');
    expect(await sent()).toEqual([done]);
  });

  test('is not heard before the card has stood for a moment', async () => {
    await showToThumb(sceneOf(fold));
    await sent();
    await thumb.clock.runFor(399);
    await touch('FOLDED');
    expect(await sent()).toEqual([]);
  });

  test('is not heard when the step under it has just become another', async () => {
    await showToThumb(sceneOf(fold));
    await thumb.clock.runFor(5_000);
    await sent();
    const next = { ...fold.floor.state };
    const floor = new Floor(next, fold.floor.nowMs);
    floor.finish(fold.due.workpiece.tag);
    await thumb.evaluate(([view, nowMs]) => window.phoneHarness.show(view, nowMs), [phoneView(floor.state), floor.nowMs] as const);
    await thumb.touchscreen.tap(195, 560);
    expect(await sent()).toEqual([]);
  });

  test('is not heard on a row that has just moved, nor on the one that took its place', async () => {
    const floor = Floor.harbour().wait(3);
    await showToThumb({ ...list, view: phoneView(floor.state), nowMs: floor.nowMs });
    await thumb.clock.runFor(5_000);
    const rows = async (): Promise<readonly string[]> =>
      (await buttonBoxes(thumb)).filter((box) => box.host === 'phone-row').map((box) => box.text.split(' ')[0] ?? '');
    expect((await rows()).slice(0, 2)).toEqual(['C1', 'R1']);
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id('C1'), stepId: 'weigh', minutes: 60 });
    await thumb.evaluate(([view, nowMs]) => window.phoneHarness.show(view, nowMs), [phoneView(floor.state), floor.nowMs] as const);
    expect((await rows())[0]).toBe('R1');
    const screen = (): Promise<string | undefined> => thumb.evaluate(() => document.querySelector('phone-page')?.screen.kind);
    await touch('R1');
    await touch('C1');
    expect(await screen()).toBe('list');
    await tapOn('C1');
    expect(await screen()).toBe('card');
  });

  test('is not heard while a second finger is down', async () => {
    await showToThumb(sceneOf(fold));
    await thumb.clock.runFor(1_000);
    await sent();
    const box = (await buttonBoxes(thumb)).find((candidate) => candidate.text.includes('FOLDED'));
    const x = ((box?.left ?? 0) + (box?.right ?? 0)) / 2;
    const y = ((box?.top ?? 0) + (box?.bottom ?? 0)) / 2;
    const session = await thumb.context().newCDPSession(thumb);
    await session.send('Input.dispatchTouchEvent', {
      type: 'touchStart',
      touchPoints: [
        { x, y, id: 1 },
        { x: 40, y: 200, id: 2 },
      ],
    });
    await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    expect(await sent()).toEqual([]);
  });

  test('shows at once that it presses', async () => {
    await showToThumb(sceneOf(fold));
    await thumb.clock.runFor(1_000);
    const box = (await buttonBoxes(thumb)).find((candidate) => candidate.text.includes('FOLDED'));
    const point = { x: ((box?.left ?? 0) + (box?.right ?? 0)) / 2, y: ((box?.top ?? 0) + (box?.bottom ?? 0)) / 2 };
    const session = await thumb.context().newCDPSession(thumb);
    await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [point] });
    const isPressed = (): Promise<boolean> =>
      thumb.evaluate(() => {
        const actions = document.querySelector('phone-page')?.shadowRoot?.querySelector('card-actions');
        return actions?.shadowRoot?.querySelector('button.big')?.matches('[data-pressed]') ?? false;
      });
    expect(await isPressed()).toBe(true);
    await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    expect(await isPressed()).toBe(false);
  });

  test('is not needed: the keyboard says it too', async () => {
    await showToThumb(sceneOf(fold));
    await thumb.clock.runFor(1_000);
    await sent();
    await thumb.evaluate(() => {
      const actions = document.querySelector('phone-page')?.shadowRoot?.querySelector('card-actions');
      actions?.shadowRoot?.querySelector<HTMLButtonElement>('button.big')?.focus();
    });
    await thumb.keyboard.press('Enter');
    expect(await sent()).toEqual([done]);
    await thumb.clock.runFor(1_000);
    await thumb.keyboard.press('Space');
    expect(await sent()).toEqual([done]);
  });

  test('chooses slots: what is free beforehand, what it wants instead', async () => {
    await showToThumb(sceneOf(load));
    await sent();
    await tapOn('free');
    await tapOn('LOADED');
    const [command] = await sent();
    expect(command).toMatchObject({ type: 'finishStep', workpieceId: load.due.workpiece.id, slotIds: [expect.any(String) as string] });
  });

  test('gives a little more, holds, skips with a reason, undoes', async () => {
    await showToThumb(sceneOf(mix));
    await sent();
    await tapOn('+2');
    const onMix = { workpieceId: mix.due.workpiece.id, stepId: mix.due.action.id };
    expect(await sent()).toEqual([{ type: 'giveMoreTime', ...onMix, minutes: 2 }]);
    await showToThumb({ ...sceneOf(mix), panel: 'other' });
    await tapOn('10 min');
    expect(await sent()).toEqual([{ type: 'holdWorkpiece', ...onMix, minutes: 10 }]);
    await showToThumb({ ...sceneOf(mix), panel: 'skip' });
    await tapOn('Done another way');
    expect(await sent()).toEqual([{ type: 'skipStep', ...onMix, reason: 'Done another way' }]);
    await showToThumb(sceneOf(mix, { undoable }));
    await tapOn('Undo: C1 weighed out');
    expect(await sent()).toEqual([{ type: 'undoCommand', commandId: undoable.commandId }]);
  });

  test('tells this phone’s name and station', async () => {
    await showToThumb(list);
    await tapOn('Bench phone');
    await tapOn('Oven');
    await tapOn('Save');
    expect(await thumb.evaluate(() => window.phoneHarness.introduced.splice(0))).toEqual([{ name: 'Bench phone', stationId: 'oven' }]);
  });
});

test('the phone’s own panel is legible', async () => {
  for (const size of SIZES) {
    await show(list, size);
    await page.evaluate(async () => {
      const element = document.querySelector('phone-page');
      if (element === null) throw new Error('no phone-page');
      element.screen = { kind: 'device' };
      await element.updateComplete;
    });
    await page.screenshot({ path: `${PICTURES}phone-device-${size.name}.png` });
    expect(await clippedTexts(page)).toEqual([]);
  }
  expect(await axeFaults()).toEqual([]);
});

test('is legible in the dark too', async () => {
  await page.emulateMedia({ colorScheme: 'dark' });
  for (const [name, scene] of [['list', list] as const, ['card-call', sceneOf(fold, { undoable })] as const]) {
    await show(scene);
    await page.screenshot({ path: `${PICTURES}phone-${name}-dark.png` });
    expect(await axeFaults()).toEqual([]);
  }
  await page.emulateMedia({ colorScheme: 'light' });
});

test('nothing in all this made the browser complain', () => {
  expect(complaints).toEqual([]);
});
