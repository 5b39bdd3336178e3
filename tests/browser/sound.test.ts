import { randomBytes } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser, BrowserContext, CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { BURSTS } from '../../display/sound/bursts.ts';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { energyShare, onsetsS } from './harness-sound/onsets.ts';
import { buildHarness } from './harness/build-harness.ts';
import { serveFolder } from './harness/serve-folder.ts';
import { launchChromium } from './support/chromium.ts';
import { letIn } from '../support/let-in.ts';
import { letContextIn, launchForHouse, openDevice, type DevicePage } from './support/house-pages.ts';
import { startServer, type RealServer } from './support/real-server.ts';

/** Fast enough that calls come while the test goes on. */
const FAST = 60;
const LOOK_EVERY_MS = 50;

const peakOf = (samples: readonly number[]): number => samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);

describe('S18 the bursts, as an audio context renders them', () => {
  const RATE_HZ = 44_100;
  let browser: Browser;
  let page: Page;
  let served: Awaited<ReturnType<typeof serveFolder>>;
  const render = (burst: keyof typeof BURSTS, volumePct: number): Promise<number[]> =>
    page.evaluate(([level, rateHz, volume]) => window.soundHarness.renderBurst(level, rateHz, volume), [
      burst,
      RATE_HZ,
      volumePct,
    ] as const);

  beforeAll(async () => {
    const built = await buildHarness('harness-sound', 'tests/browser/harness-sound/index.html');
    served = await serveFolder(built.folder);
    browser = await launchChromium();
    page = await browser.newPage();
    await page.goto(`${served.origin}${built.page}`);
  });

  afterAll(async () => {
    await browser.close();
    await served.close();
  });

  test.each((['call', 'late', 'lost'] as const).flatMap((burst) => [100, 50, 20, 5].map((volumePct) => [burst, volumePct] as const)))(
    '%s at %i percent: onsets within 5 ms of the table, at least 80 percent of the energy within 500 to 2500 Hz, no overdrive',
    async (burst, volumePct) => {
      const samples = await render(burst, volumePct);
      const onsets = onsetsS(samples, RATE_HZ);
      expect(onsets).toHaveLength(BURSTS[burst].length);
      BURSTS[burst].forEach((tone, index) => expect(Math.abs((onsets[index] ?? 0) - 0.1 - tone.startS)).toBeLessThanOrEqual(0.005));
      expect(energyShare(samples, RATE_HZ, 500, 2500)).toBeGreaterThanOrEqual(0.8);
      expect(peakOf(samples)).toBeLessThanOrEqual(1);
    },
  );

  test('half the volume is 10 dB less, as loud as half in sones (ISO 532, from memory)', async () => {
    const [full, half] = [peakOf(await render('call', 100)), peakOf(await render('call', 50))];
    expect(20 * Math.log10(half / full)).toBeCloseTo(-10, 1);
  });

  test('energy is measured right: half of two equal tones lies in a band that holds one', () => {
    const samples = Array.from(
      { length: RATE_HZ },
      (_, index) => Math.sin((2 * Math.PI * 1000 * index) / RATE_HZ) + Math.sin((2 * Math.PI * 5000 * index) / RATE_HZ),
    );
    expect(energyShare(samples, RATE_HZ, 500, 2500)).toBeCloseTo(0.5, 2);
  });
});

describe('S15 one device sounds, on a real server with real pages', () => {
  let browser: Browser;
  let server: RealServer;
  let folder: string;
  let wall: DevicePage;
  let phone: DevicePage;
  const openWall = (): Promise<DevicePage> => openDevice(browser, `http://localhost:${server.port}/wall`, 1920, 1080);
  let phoneId = '';
  let testsSeen = 1;
  const testSounders = async (): Promise<readonly string[]> =>
    (await eventsOf(server)).flatMap(({ event }) => (event.type === 'soundTestSounded' ? [event.byDeviceId] : []));
  const testSounder = async (): Promise<string> => (await testSounders())[testsSeen - 1] ?? '';
  /** Who sounds the test that was asked for last. */
  const nextTestSounder = async (): Promise<string> => {
    testsSeen += 1;
    await eventually(async () => (await testSounders()).length >= testsSeen);
    return testSounder();
  };
  const askTest = async (): Promise<void> => {
    const body = JSON.stringify({ commandId: randomBytes(16).toString('base64url'), command: { type: 'askSoundTest' } });
    const url = `http://127.0.0.1:${server.port}/api/commands`;
    const answer = await fetch(url, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie: letIn(server.port).cookie },
      body,
    });
    expect(answer.status).toBe(200);
  };
  const voice = (): ReturnType<Page['getByText']> => phone.page.getByText('this phone sounds');

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'ovenward-sound-'));
    [browser, server] = await Promise.all([launchForHouse(), startServer(folder, 0, 1)]);
    wall = await openWall();
    phone = await openDevice(browser, `http://localhost:${server.port}/phone`, 390, 844);
  });

  afterAll(async () => {
    await browser.close();
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  });

  test('as long as a wall is there, the phone is silent, and asks whether the first test was heard', async () => {
    await eventually(async () => typeof (await stateOf(server)).soundTest?.soundedMs === 'number');
    expect((await stateOf(server)).soundTest?.why).toBe('daily');
    await phone.page.getByRole('button', { name: 'Heard', exact: true }).waitFor();
    expect(await voice().count()).toBe(0);
    expect(await violations(phone.page)).toEqual([]);
    await wall.page.getByText('sound not tested').waitFor();
  });

  test('S14 one answer, and the wall says that the sound is in order', async () => {
    await eventually(async () => {
      const heard = phone.page.getByRole('button', { name: 'Heard', exact: true });
      if (await heard.isVisible()) await heard.click();
      return (await stateOf(server)).soundHeardMs !== null;
    });
    await wall.page.getByText(/^\s*sound ok \d\d:\d\d/).waitFor();
    await phone.page.getByRole('button', { name: 'Not heard' }).waitFor({ state: 'detached' });
  });

  test('the wall is closed: the phone sounds what is to sound, and says so', async () => {
    const wallId = await testSounder();
    await phone.page.evaluate(() => {
      navigator.vibrate = (pattern) => {
        document.body.dataset['felt'] = JSON.stringify(pattern);
        return true;
      };
    });
    await wall.context.close();
    await voice().waitFor();
    await askTest();
    phoneId = await nextTestSounder();
    expect(phoneId).not.toBe(wallId);
    // The call's three tones of 200 ms, 300 ms from one to the next, as the design's table has them.
    expect(await phone.page.evaluate(() => document.body.dataset['felt'])).toBe('[200,100,200,100,200]');
  });

  test('the wall is back: it sounds at once, and the phone is silent', async () => {
    wall = await openWall();
    await voice().waitFor({ state: 'detached' });
    await askTest();
    expect(await nextTestSounder()).not.toBe(phoneId);
  });

  test('S13 quiet hours and volumes are set in the kitchen, and the wall says calmly till when', async () => {
    const kitchen = await openDevice(browser, `http://localhost:${server.port}/kitchen`, 1280, 900);
    await kitchen.page.getByRole('button', { name: 'House and settings' }).click();
    const fields = kitchen.page.locator('sound-fields');
    const hour = Number(new Intl.DateTimeFormat('en-GB', { hour: '2-digit', hour12: false, timeZone: 'Europe/London' }).format(Date.now()));
    const clock = (hours: number): string => `${String((hour + hours + 24) % 24).padStart(2, '0')}:00`;
    await fields.getByRole('checkbox', { name: /Quiet hours/ }).check();
    await fields.getByLabel('Quiet from').fill(clock(-1));
    await fields.getByLabel('till', { exact: true }).fill(clock(3));
    await fields.getByLabel('Volume from 00:00').fill('60');
    await fields.getByLabel('Daily sound test at').fill('nonsense');
    await fields.getByText('a time is needed').waitFor();
    await fields.getByLabel('Daily sound test at').fill('5.30');
    expect(await violations(kitchen.page)).toEqual([]);
    await kitchen.page.getByRole('button', { name: 'Keep changes' }).click();
    const sound = { volumes: [{ from: '00:00', volumePct: 60 }], quiet: { from: clock(-1), to: clock(3) }, testAt: '05:30' };
    await eventually(async () => (await stateOf(server)).house?.document.sound.quiet !== null);
    expect((await stateOf(server)).house?.document.sound).toEqual(sound);
    await wall.page.getByText(`quiet till ${clock(3)}`).waitFor();
    expect(kitchen.faults).toEqual([]);
    await kitchen.context.close();
  });

  test('a phone that nobody looks at is no voice; seen again, it is', async () => {
    await wall.context.close();
    await voice().waitFor();
    await look(phone.page, 'hidden');
    await eventually(async () => (await phone.page.getByText('no device sounds').count()) > 0);
    await look(phone.page, 'visible');
    await voice().waitFor();
  });

  test('nothing went wrong in the phone', () => {
    expect(phone.faults).toEqual([]);
  });
});

describe('S20 a wall in a browser that wants a touch first', () => {
  let browser: Browser;
  let server: RealServer;
  let folder: string;

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'ovenward-touch-'));
    [browser, server] = await Promise.all([launchChromium(), startServer(folder, 0, FAST)]);
  });

  afterAll(async () => {
    await browser.close();
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  });

  test('is covered while nobody touches it and sounds nothing; a touch uncovers it, and it sounds', async () => {
    const { context, page, untouched } = await openUntouched(browser, server);
    await eventually(() => isCovered(untouched));
    // Long enough for a resume that stays pending to have been given up, and for a call to have been ordered, had it been ready.
    await eventually(async () => (await eventsOf(server)).filter(({ event }) => event.type === 'callRaised').length > 1);
    expect(await isCovered(untouched)).toBe(true);
    expect(await soundersOf(server)).toEqual([]);
    expect(await isActivated(untouched)).toBe(false);
    await page.mouse.click(400, 300);
    await eventually(async () => !(await isCovered(untouched)));
    await eventually(async () => (await soundersOf(server)).length > 0);
    await context.close();
  });

  test('S15 a phone too waits for its first touch, says so, and is the house’s voice from then on', async () => {
    const { context, page, untouched } = await openUntouched(browser, server, 'phone');
    const strip = async (): Promise<string> =>
      String(
        await evaluated(
          untouched,
          "document.querySelector('phone-page')?.shadowRoot?.querySelector('sound-strip')?.shadowRoot?.textContent",
        ),
      );
    await eventually(async () => (await strip()).includes('no device sounds'));
    await page.mouse.click(200, 40);
    await eventually(async () => (await strip()).includes('this phone sounds'));
    await context.close();
  });

  test('any key uncovers it and says nothing else; the next one says heard, once', async () => {
    const { context, page, untouched, said } = await openUntouched(browser, server);
    await eventually(() => isCovered(untouched));
    await page.keyboard.press('Enter');
    await eventually(async () => !(await isCovered(untouched)));
    expect(hears(said)).toBe(0);
    await page.keyboard.press('Enter');
    await eventually(() => Promise.resolve(hears(said) > 0));
    expect(hears(said)).toBe(1);
    await context.close();
  });

  test('a key for a button is the button’s, once, and hears nothing', async () => {
    const { context, page, untouched, said } = await openUntouched(browser, server);
    await eventually(() => isCovered(untouched));
    await page.mouse.click(400, 300);
    await eventually(async () => !(await isCovered(untouched)));
    await page.evaluate(() => {
      const button = document.createElement('button');
      button.addEventListener('click', () => (button.dataset['clicks'] = String(Number(button.dataset['clicks'] ?? 0) + 1)));
      document.body.append(button);
      button.focus();
    });
    await page.keyboard.press('Enter');
    await page.keyboard.press(' ');
    expect(await page.evaluate(() => document.querySelector('button')?.dataset['clicks'])).toBe('2');
    expect(hears(said)).toBe(0);
    await page.evaluate(() => document.querySelector('button')?.blur());
    await page.keyboard.press(' ');
    await eventually(() => Promise.resolve(hears(said) > 0));
    expect(hears(said)).toBe(1);
    await context.close();
  });
});

/** A page that nobody has touched: playwright's own looks at a page count as a touch there, so that this one looks without. */
async function openUntouched(
  browser: Browser,
  { port }: RealServer,
  path: 'wall' | 'phone' = 'wall',
): Promise<{ readonly context: BrowserContext; readonly page: Page; readonly untouched: CDPSession; readonly said: readonly string[] }> {
  const context = await browser.newContext({ viewport: { width: 1920, height: 1080 } });
  await letContextIn(context, `http://localhost:${port}/${path}`);
  const page = await context.newPage();
  const said: string[] = [];
  page.on('websocket', (socket) => socket.on('framesent', ({ payload }) => said.push(String(payload))));
  await page.goto(`http://localhost:${port}/${path}`);
  return { context, page, untouched: await context.newCDPSession(page), said };
}

/** What axe-core, in the page, has against it. */
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const results = await (globalThis as unknown as { axe: typeof axe }).axe.run(document);
    return results.violations.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`);
  });
}

async function evaluated(session: CDPSession, expression: string): Promise<unknown> {
  const { result } = await session.send('Runtime.evaluate', { expression, returnByValue: true, userGesture: false });
  return result.value;
}

async function isCovered(session: CDPSession): Promise<boolean> {
  return (await evaluated(session, "document.querySelector('wall-page')?.shadowRoot?.querySelector('sound-panel') != null")) === true;
}

async function isActivated(session: CDPSession): Promise<boolean> {
  return (await evaluated(session, 'navigator.userActivation.hasBeenActive')) === true;
}

/** As if the page went into the background or came back: headless Chromium never hides one. */
async function look(page: Page, visibility: 'hidden' | 'visible'): Promise<void> {
  await page.evaluate((state) => {
    Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => state });
    document.dispatchEvent(new Event('visibilitychange'));
  }, visibility);
}

async function stateOf({ port }: RealServer): Promise<FloorState> {
  const answer = (await (await fetch(`http://127.0.0.1:${port}/api/state`)).json()) as { state: FloorState };
  return answer.state;
}

async function eventsOf({ port }: RealServer): Promise<readonly RecordedEvent[]> {
  const all: RecordedEvent[] = [];
  for (;;) {
    const answer = (await (await fetch(`http://127.0.0.1:${port}/api/events?after=${all.length}`)).json()) as { events: RecordedEvent[] };
    all.push(...answer.events);
    if (answer.events.length === 0) return all;
  }
}

/** Who sounded each burst of a call so far. */
async function soundersOf(server: RealServer): Promise<readonly string[]> {
  return (await eventsOf(server)).flatMap(({ event, deviceId }) => (event.type === 'callSounded' ? [deviceId] : []));
}

/** How often a page said that everything is heard. */
function hears(said: readonly string[]): number {
  return said.filter((text) => text.includes('"hearAllCalls"')).length;
}

/** Polls a condition of another process until it holds; the suite's time limit is the only clock. */
async function eventually(holds: () => Promise<boolean>): Promise<void> {
  while (!(await holds())) await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS));
}
