import { readdirSync, readFileSync } from 'node:fs';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { lostWords, ROLES } from '../../display/words/en/roles.ts';
import { VERBS } from '../../display/words/en/verbs.ts';
import { serveElements } from '../pictures/elements/build-elements.ts';
import { movedProperties, runningAnimations, shownSpecimens, shownTags } from './harness-elements/look-through.ts';
import { overlap, silhouette, type Silhouette } from './harness-elements/silhouette.ts';
import { launchChromium } from './support/chromium.ts';

/** Whole screens have tests of their own. */
const PARTS =
  'access,colours,marks,icons,common,wall,phone,kitchen,weigh,formulas-book,formulas-method,day,day-sheet,records,records-trace,records-learned';
const DISPLAY = new URL('../../display/', import.meta.url);
const LOOKS = ['day', 'night'] as const;
type Look = (typeof LOOKS)[number];
/** The design's limits; WCAG 2.2's 2.3.1 allows three flashes a second. */
const MOST_HZ = { late: 0.6, lost: 2 } as const;
/** Our own measure: of what two shapes cover together, both may cover so much. */
const MOST_OVERLAP = 0.6;
/** Whole screens that between them hold every element that only a page arranges. */
const SCREENS = [
  ['wall', 'things in the way, over two days'],
  ['wall', 'thirty doughs'],
  ['wall', "a station's own"],
  ['setup', 'no dough'],
  ['phone', 'in touch'],
  ['card', 'to be divided'],
  ['station', 'mixer'],
  ['station', 'none'],
  ['kitchen', 'kitchen'],
  ['weigh', 'half in'],
  ['formulas', 'no server'],
  ['day', 'no server'],
  ['start', 'start'],
] as const;

let browser: Browser;
let served: Awaited<ReturnType<typeof serveElements>>;
const pages = {} as Record<Look | 'still', Page>;
const complaints: string[] = [];

beforeAll(async () => {
  [browser, served] = await Promise.all([launchChromium(), serveElements()]);
  await Promise.all([open('day', 'day', 'no-preference'), open('night', 'night', 'no-preference'), open('still', 'day', 'reduce')]);
});

afterAll(async () => {
  await browser.close();
  await served.close();
});

async function open(name: keyof typeof pages, look: Look, reducedMotion: 'reduce' | 'no-preference'): Promise<void> {
  const page = await browser.newPage({ viewport: { width: 2_000, height: 1_200 }, reducedMotion });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto(`${served.address}?look=${look}&only=${PARTS}`);
  await page.waitForSelector('body[data-shown]');
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  pages[name] = page;
}

describe('L4 the page of elements', () => {
  test.each(LOOKS)('shows something for every element in every state, by %s', async (look) => {
    const shown = await pages[look].evaluate(shownSpecimens);
    expect(shown.length).toBeGreaterThan(150);
    expect(shown.filter(({ text, isSwatch }) => text === '' && !isSwatch).map(({ name }) => name)).toEqual([]);
    expect(complaints).toEqual([]);
  });

  test('leaves no element of the pages out', async () => {
    const shown = new Set(await pages.day.evaluate(shownTags));
    const page = await browser.newPage({ viewport: { width: 1_920, height: 1_080 } });
    for (const [screen, scene] of SCREENS) {
      await page.goto(`${served.address}?${new URLSearchParams({ screen, scene }).toString()}`);
      await page.waitForSelector('body[data-shown]');
      for (const tag of await page.evaluate(shownTags)) shown.add(tag);
    }
    await page.close();
    const tags = ownTags();
    expect(tags.length).toBeGreaterThan(50);
    expect(tags.filter((tag) => !shown.has(tag))).toEqual([]);
  });

  test.each(LOOKS)('gives axe nothing to say by %s, contrast of 7:1 and the sizes of targets among it', async (look) => {
    expect(await axeFaults(pages[look])).toEqual([]);
  });
});

describe('L5 what the eye is told without colour', () => {
  test.each(LOOKS)('by %s the shapes of the four roles differ in grey, large and small', async (look) => {
    const page = pages[look];
    const session = await page.context().newCDPSession(page);
    await session.send('Emulation.setEmulatedVisionDeficiency', { type: 'achromatopsia' });
    const decoder = await browser.newPage();
    const roles = Object.keys(ROLES);
    for (const size of ['role-mark', '.small role-mark', '.least role-mark']) {
      const shapes = new Map<string, Silhouette>();
      for (const role of roles)
        shapes.set(role, await silhouette(decoder, page, page.locator(`[data-specimen="${role} heard"] ${size}`).first()));
      const alike = roles.flatMap((a, index) =>
        roles.slice(index + 1).flatMap((b) => {
          const share = overlap(shapes.get(a), shapes.get(b));
          return share > MOST_OVERLAP ? [`${a} and ${b} share ${share.toFixed(2)}`] : [];
        }),
      );
      expect(alike, size).toEqual([]);
    }
    await session.send('Emulation.setEmulatedVisionDeficiency', { type: 'none' });
    await decoder.close();
  });

  test.each([
    ['wall-row, running', [ROLES.running, VERBS.fold.running]],
    ['wall-row, call', [ROLES.call, VERBS.fold.call]],
    ['wall-row, late', [ROLES.late, VERBS.fold.call]],
    ['wall-row, being lost', [lostWords('bulk'), VERBS.fold.call]],
    ['wall-row, being lost in the oven', [lostWords('oven')]],
    ['wall-group, call', [ROLES.call]],
    ['wall-group, late', [ROLES.late]],
    ['wall-group, lost', [ROLES.lost]],
    ['phone-row, running', [VERBS.fold.running]],
    ['phone-row, call', [ROLES.call, VERBS.fold.call]],
    ['phone-row, late', [ROLES.late, VERBS.fold.call]],
    ['phone-row, being lost', [lostWords('bulk'), VERBS.fold.call]],
    ['dough-card, resting', [VERBS.fold.running]],
    ['dough-card, call', [ROLES.call, VERBS.fold.call]],
    ['dough-card, late', [ROLES.late, VERBS.fold.call]],
    ['dough-card, being lost', [lostWords('bulk'), VERBS.fold.call]],
  ] as const)('%s has the words of its role beside its shape', async (name, words) => {
    const specimen = (await pages.day.evaluate(shownSpecimens)).find((shown) => shown.name === name);
    expect(specimen).toMatchObject({ marks: 1 });
    for (const word of words) expect(specimen?.text).toContain(word);
  });
});

describe('L6 motion', () => {
  test('only the shape of what is late or being lost blinks until somebody heard it, and slowly', async () => {
    const found = await pages.day.evaluate(runningAnimations);
    const unheard = await pages.day
      .locator('role-mark:is([level=late], [level=lost])')
      .evaluateAll((marks) => marks.filter((mark) => !(mark as HTMLElement & { heard: boolean }).heard).length);
    expect(unheard).toBeGreaterThan(10);
    expect(found).toHaveLength(unheard);
    for (const { host, target, level, isHeard, properties, dips, durationMs } of found) {
      expect({ host, target, isHeard, properties, dips }).toEqual({
        host: 'role-mark',
        target: 'svg',
        isHeard: false,
        properties: ['opacity'],
        dips: 1,
      });
      const mostHz = level === 'late' || level === 'lost' ? MOST_HZ[level] : 0;
      expect(1_000 / durationMs).toBeLessThanOrEqual(mostHz);
    }
  });

  test('nothing else on any page fades, slides or waits', async () => {
    expect(await pages.day.evaluate(movedProperties)).toEqual([]);
    expect(await pages.night.evaluate(movedProperties)).toEqual([]);
  });

  test('nothing moves for those who ask for less motion', async () => {
    expect(await pages.still.locator('role-mark[blinks]').count()).toBeGreaterThan(10);
    expect(await pages.still.evaluate(runningAnimations)).toEqual([]);
  });
});

/** The names of all elements that the pages' sources define. */
function ownTags(): readonly string[] {
  const sources = readdirSync(DISPLAY, { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.ts'));
  return sources.flatMap((path) =>
    [...readFileSync(new URL(path, DISPLAY), 'utf8').matchAll(/@customElement\('([a-z-]+)'\)/g)].map(([, tag = '']) => tag),
  );
}

/** What axe-core, in the page, has against it. Rules about a page's outline are left to the pages: here many stand side by side. */
async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const results = await (globalThis as unknown as { axe: typeof axe }).axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag2aaa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
      resultTypes: ['violations'],
    });
    return results.violations.flatMap(({ id, nodes }) =>
      nodes.map(({ target, html, failureSummary }) => `${id}: ${target.flat().join(' ')} ${html.slice(0, 100)} ${failureSummary ?? ''}`),
    );
  });
}
