import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { AnsweredTap, FloorView } from '../../display/link/floor-link.ts';
import type { Panel } from '../../display/phone/phone-events.ts';
import { NAME_CHARACTERS, REMARK_CHARACTERS } from '../../shared/documents/names.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { Due } from '../../shared/floor/due.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { Floor } from '../domain/support/floor.ts';
import { harbourFile } from '../domain/support/harbour.ts';
import { idOf, OTHER_PHONE } from '../domain/support/ids.ts';
import { buildHarness } from './harness/build-harness.ts';
import { serveFolder } from './harness/serve-folder.ts';
import { workedFloor } from './harness/staged-wall.ts';
import { boxInView, buttonBoxes, clippedTexts, tooClose, type Box } from './harness-phone/measure.ts';
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
  readonly panel?: Panel;
}

async function show(scene: Scene, size: Size = SIZES[0], on: Page = page): Promise<void> {
  await on.setViewportSize(size);
  await on.evaluate(async ({ view, nowMs, workpieceId, panel }) => {
    const element = document.querySelector('phone-page');
    if (element === null) throw new Error('no phone-page');
    element.screen = { kind: 'list' };
    await window.phoneHarness.show(view, nowMs);
    // Panels and pictures come once the floor shows; the last of them stands for all.
    if (view.state !== null) await customElements.whenDefined('where-panel');
    if (workpieceId !== null) element.screen = { kind: 'card', workpieceId };
    await element.updateComplete;
    if (panel !== undefined) element.dispatchEvent(Object.assign(new Event('panel-wanted'), { panel }));
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
  const box = await boxInView(thumb, text);
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

/** A pot, scrap, a second mix and work of yesterday, so that every panel has something to show. */
function richState(): FloorState {
  const { state } = divide.floor;
  const dough = divide.due.workpiece;
  const others = Object.values(state.workpieces).filter((other) => other.id !== dough.id && other.finishedMs === null);
  const [pot, twin, bowl] = others.slice(-3);
  if (pot === undefined || twin === undefined || bowl === undefined) throw new Error('the day has too few doughs');
  const life = {
    status: 'done',
    startedMs: divide.floor.nowMs - 40 * MINUTE_MS,
    endedMs: divide.floor.nowMs - 10 * MINUTE_MS,
    startedBy: OTHER_PHONE,
    endedBy: OTHER_PHONE,
    stationId: 'bench',
    helperIds: ['oven'],
    moreMin: 0,
    phaseDone: null,
    isMoved: false,
    pins: null,
    piecesDone: null,
    inferred: true,
    despite: ['changeOver'],
    reason: null,
  } as const;
  return {
    ...state,
    workpieces: {
      ...state.workpieces,
      [pot.id]: {
        ...pot,
        kind: 'ferment',
        tag: 'L1',
        serviceDate: '2026-03-06',
        grams: 1500,
        stock: { seedG: 150, fedMs: null, plannedFeeds: [{ feedMs: divide.floor.nowMs + 3 * 3_600_000, grams: 2000 }] },
      },
      [dough.id]: {
        ...dough,
        serviceDate: '2026-03-06',
        steps: { ...dough.steps, weigh: life },
        corrections: [
          {
            what: 'end',
            stepId: 'weigh',
            from: life.endedMs,
            to: life.startedMs,
            atMs: divide.floor.nowMs,
            deviceId: OTHER_PHONE,
          },
        ],
      },
      [twin.id]: { ...twin, formulaId: dough.formulaId, formulaVersion: dough.formulaVersion, steps: dough.steps, tag: 'M7' },
    },
  };
}

const rich = richState();
const PANEL_SCENES: readonly (readonly [Panel, string])[] = (
  ['more', 'where', 'putRight', 'count', 'inputs', 'extra', 'move', 'join', 'loss', 'discard'] as const
).map((panel) => [panel, divide.due.workpiece.id]);
const potId = Object.values(rich.workpieces).find((workpiece) => workpiece.tag === 'L1')?.id ?? '';
const work = staged((due) => due.action.verb === 'shape');
const worked = new Floor(work.floor.state, work.floor.nowMs);
worked.ok({ type: 'startStep', workpieceId: work.due.workpiece.id, stepId: work.due.action.id }, { stationId: 'oven' });
const WORK_PANELS: readonly Panel[] = ['actions', 'howFar', 'handOver', 'loads'];

describe('the panels behind the card', () => {
  const scenes: readonly (readonly [Panel, Scene])[] = [
    ...PANEL_SCENES.map(
      ([panel, workpieceId]) => [panel, { view: phoneView(rich), nowMs: divide.floor.nowMs, workpieceId, panel }] as const,
    ),
    ...(['actions', 'feed', 'planFeed'] as const).map(
      (panel) => [panel, { view: phoneView(rich), nowMs: divide.floor.nowMs, workpieceId: potId, panel }] as const,
    ),
    ...WORK_PANELS.map(
      (panel) => [panel, { view: phoneView(worked.state), nowMs: worked.nowMs, workpieceId: work.due.workpiece.id, panel }] as const,
    ),
  ];

  test.each(SIZES)('are legible at $name, their buttons large and apart', async (size) => {
    for (const [index, [panel, scene]] of scenes.entries()) {
      await show(scene, size);
      await page.screenshot({ path: `${PICTURES}phone-panel-${index}-${panel}-${size.name}.png` });
      expect(await clippedTexts(page), panel).toEqual([]);
      const boxes = await buttonBoxes(page);
      const inPanel = boxes.filter(
        (box) => box.host.endsWith('-panel') || ['number-stepper', 'number-choice', 'card-actions', 'step-asides'].includes(box.host),
      );
      expect(inPanel.length, panel).toBeGreaterThan(0);
      for (const box of inPanel) expect(box.bottom - box.top, `${panel}: ${box.text}`).toBeGreaterThanOrEqual(MIDDLING_PX);
      // What lies above scrolls behind the panel.
      const isAside = (box: Box): boolean => box.host === 'step-asides';
      expect(tooClose(inPanel.filter(isAside), GAP_PX), panel).toEqual([]);
      expect(
        tooClose(
          inPanel.filter((box) => !isAside(box)),
          GAP_PX,
        ),
        panel,
      ).toEqual([]);
    }
  });

  test('give axe nothing to say', async () => {
    for (const [panel, scene] of scenes.filter(([each]) => ['putRight', 'count', 'planFeed', 'howFar'].includes(each))) {
      await show(scene);
      expect(await axeFaults(), panel).toEqual([]);
    }
  });

  test('what is in the way is told, with ways out that the floor accepts', async () => {
    const { floor, due } = load;
    const holder = Object.values(floor.state.workpieces).find((other) => other.slotIds.length > 0);
    if (holder === undefined) throw new Error('nothing is in the oven');
    const slots = (floor.state.kitchen?.document.ovens ?? []).flatMap((oven) => oven.decks.flatMap((deck) => deck.slots));
    const full = {
      ...floor.state,
      workpieces: { ...floor.state.workpieces, [holder.id]: { ...holder, slotIds: slots.map((slot) => slot.id) } },
    };
    const scene: Scene = { view: phoneView(full), nowMs: floor.nowMs, workpieceId: due.workpiece.id };
    for (const size of SIZES) {
      await show(scene, size);
      await page.screenshot({ path: `${PICTURES}phone-card-blocked-${size.name}.png` });
      expect(await clippedTexts(page)).toEqual([]);
    }
    await showToThumb(scene);
    await sent();
    const ways = (await buttonBoxes(thumb)).filter((box) => box.host === 'ways-list');
    expect(ways.length).toBeGreaterThan(0);
    for (const box of ways) expect(box.bottom - box.top).toBeGreaterThanOrEqual(MIDDLING_PX);
    await tapOn(ways[0]?.text ?? '');
    const [command] = (await sent()) as ClientCommand[];
    if (command === undefined) throw new Error('nothing was said');
    expect(new Floor(full, floor.nowMs).give(command).decision.ok).toBe(true);
  });

  test('the end of the day says what goes over, and ends it with the second step', async () => {
    const over: Scene = { ...list, view: phoneView(rich) };
    await show(over);
    await page.evaluate(async () => {
      const element = document.querySelector('phone-page');
      if (element === null) throw new Error('no phone-page');
      element.screen = { kind: 'dayEnd' };
      await element.updateComplete;
    });
    await page.screenshot({ path: `${PICTURES}phone-day-end-390x844.png` });
    expect(await clippedTexts(page)).toEqual([]);
    await showToThumb(over);
    await sent();
    await tapOn('Bench phone');
    await tapOn('End of the day');
    await tapOn('End Sat now');
    expect(await sent()).toEqual([{ type: 'closeDay', serviceDate: '2026-03-07' }]);
  });
});

describe('a thumb behind the card', () => {
  const workpieceId = divide.due.workpiece.id;
  const over = (panel: Panel): Scene => ({ view: phoneView(rich), nowMs: divide.floor.nowMs, workpieceId, panel });

  test('reaches a panel in three touches, and says where the dough is in two more', async () => {
    await showToThumb(sceneOf(fold));
    await sent();
    for (const words of ['Other…', 'More…', 'It is already…', 'divide', '15 min']) await tapOn(words);
    expect(await sent()).toEqual([{ type: 'sayWhere', workpieceId: fold.due.workpiece.id, stepId: 'divide', sinceMin: 15 }]);
  });

  test('counts at the divide', async () => {
    await showToThumb(over('count'));
    await sent();
    await tapOn(String((divide.due.workpiece.cuts[0]?.pieces ?? 0) - 1));
    await tapOn('as counted');
    const planned = divide.due.workpiece.cuts.map(({ productId, pieces }) => ({ productId, pieces }));
    const [first, ...others] = planned;
    expect(await sent()).toEqual([
      {
        type: 'finishStep',
        workpieceId,
        stepId: divide.due.action.id,
        cuts: [{ productId: first?.productId, pieces: (first?.pieces ?? 0) - 1 }, ...others],
      },
    ]);
  });

  test('discards only with a reason, in two steps', async () => {
    await showToThumb(over('discard'));
    await sent();
    await tapOn('Discard all');
    expect(await sent()).toEqual([]);
    await tapOn('Burnt');
    await tapOn('Discard all');
    expect(await sent()).toEqual([{ type: 'discardWorkpiece', workpieceId, reason: 'Burnt' }]);
  });

  test('says that it works on it too, and how far that is', async () => {
    const view = phoneView(worked.state);
    const onWork: Scene = { view, nowMs: worked.nowMs, workpieceId: work.due.workpiece.id };
    const key = { workpieceId: work.due.workpiece.id, stepId: work.due.action.id };
    await showToThumb(onWork);
    await sent();
    await tapOn('I’m on it too');
    expect(await sent()).toEqual([{ type: 'helpStep', ...key }]);
    await showToThumb({ ...onWork, panel: 'howFar' });
    const half = Math.ceil((worked.state.workpieces[key.workpieceId]?.pieces ?? 0) / 2);
    await tapOn(String(half));
    expect(await sent()).toEqual([{ type: 'reportProgress', ...key, piecesDone: half }]);
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
