import { letContextIn } from '../browser/support/house-pages.ts';
import { letIn } from '../support/let-in.ts';
import { once } from 'node:events';
import { createServer } from 'node:http';
import { join } from 'node:path';
import type { Browser, Page as BrowserPage } from 'playwright-core';
import { WebSocket } from 'ws';
import { assert } from '../../shared/result.ts';
import { PROTOCOL_VERSION } from '../../shared/wire/protocol.ts';
import type { Hello } from '../../shared/wire/up.ts';
import { launchChromium } from '../browser/support/chromium.ts';
import { startServer } from './child.ts';
import { DEEP, FORMULAS, INNERMOST_GRAMS, largeBook } from './large-book.ts';
import { newId } from './pages.ts';
import { freePort, HARBOUR, inTemporaryFolder } from './places.ts';
import { interleaved, lineOf, lineWithFloor, type Line, type Round } from './report.ts';
import { median, percentile } from './statistics.ts';

/** What is looked for, a key at a time. */
const SEARCHED = 'soaker 17';
/** What is typed as grams, a key at a time. */
const TYPED = '1234567';
/** Names that the least page draws of the book: more than a screen has room for. */
const DRAWN = 60;

/**
 * What a large book costs: its list over the wire, the snapshot that a phone gets beside it, and on the page the opening,
 * the search and the typing into a deep dough. Floors: the same bytes from a server that does nothing else, the snapshot of
 * the house without the book, and pages that draw or take the same with nothing behind them.
 */
export function book(rounds: number): Promise<readonly Line[]> {
  return inTemporaryFolder(async (folder) => {
    const port = await freePort();
    const server = await startServer(join(folder, 'data'), port, ['--bakehouse', HARBOUR]);
    const browser = await launchChromium();
    try {
      const base = `http://127.0.0.1:${port}`;
      const without = await snapshotBytes(port);
      await bringIn(base, letIn(port).cookie);
      const snapshot = { value: await snapshotBytes(port), floor: without };
      return [
        lineWithFloor(`book of ${FORMULAS}: what a phone gets when it comes in`, 'B', 'as without the book', [snapshot]),
        ...(await listLines(base, rounds)),
        ...(await openLines(browser, base, rounds)),
        ...(await searchLines(browser, base, rounds)),
        ...(await typingLines(browser, base, rounds)),
      ];
    } finally {
      await browser.close();
      await server.end('SIGKILL');
    }
  });
}

async function bringIn(base: string, cookie: string): Promise<void> {
  const answer = await fetch(`${base}/api/book/import`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: base, cookie },
    body: JSON.stringify(largeBook()),
  });
  assert(answer.ok, `the book was not taken in: ${(await answer.text()).slice(0, 300)}`);
}

/** Bytes of all messages from a phone's hello until it is live. */
async function snapshotBytes(port: number): Promise<number> {
  const socket = new WebSocket(`ws://127.0.0.1:${port}/live?page=phone`, {
    perMessageDeflate: false,
    headers: { cookie: letIn(port).cookie },
  });
  await once(socket, 'open');
  const told = new Promise<number>((resolve) => {
    let bytes = 0;
    socket.on('message', (data: Buffer) => {
      bytes += data.length;
      if (data.toString('utf8').startsWith('{"type":"live"')) resolve(bytes);
    });
  });
  const hello: Hello = {
    type: 'hello',
    protocol: PROTOCOL_VERSION,
    page: 'phone',
    pageId: newId(),
    kitchenId: null,
    lastSequence: 0,
    sound: 'none',
    stationId: null,
  };
  socket.send(JSON.stringify(hello));
  const bytes = await told;
  socket.terminate();
  return bytes;
}

async function listLines(base: string, rounds: number): Promise<readonly Line[]> {
  const text = await (await fetch(`${base}/api/book`)).text();
  const bytes = Buffer.from(text);
  const bare = createServer((_request, response) => response.end(bytes));
  bare.listen(0, '127.0.0.1');
  await once(bare, 'listening');
  const address = bare.address();
  assert(typeof address === 'object' && address !== null, 'the bare server has a port');
  const times = await interleaved(
    rounds,
    () => timeOf(`${base}/api/book`),
    () => timeOf(`http://127.0.0.1:${address.port}/`),
  );
  bare.close();
  bare.closeAllConnections();
  return [
    lineWithFloor(`book of ${FORMULAS}: GET /api/book`, 'ms', '≤ 50 ms', times),
    lineOf(`book of ${FORMULAS}: GET /api/book, as sent`, 'B', 'under 1 MB', [bytes.length]),
  ];
}

async function timeOf(url: string): Promise<number> {
  const startMs = performance.now();
  await (await fetch(url)).arrayBuffer();
  return performance.now() - startMs;
}

async function openLines(browser: Browser, base: string, rounds: number): Promise<readonly Line[]> {
  const times: Round[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const value = await opened(browser, `${base}/formulas`);
    const floor = await opened(browser, `${base}/health`, leastThatLists);
    times.push({ value, floor });
  }
  return [lineWithFloor(`book of ${FORMULAS}: from its answer to the frame with its list`, 'ms', '≤ 100 ms', times)];
}

/** From the end of the book's answer to the first frame that shows an entry, in ms. */
async function opened(browser: Browser, url: string, draw?: (drawn: number) => void): Promise<number> {
  const page = await newPage(browser, url);
  if (draw !== undefined) await page.evaluate(draw, DRAWN);
  await page.waitForFunction(() => window.listedMs !== null);
  const tookMs = await page.evaluate(() => {
    const answers = performance.getEntriesByType('resource').filter((entry) => new URL(entry.name).pathname === '/api/book');
    const answer = answers[0] as PerformanceResourceTiming | undefined;
    return answer === undefined || window.listedMs === null ? null : window.listedMs - answer.responseEnd;
  });
  assert(tookMs !== null, 'the page fetched the book');
  await page.context().close();
  return tookMs;
}

async function searchLines(browser: Browser, base: string, rounds: number): Promise<readonly Line[]> {
  const page = await newPage(browser, `${base}/formulas`);
  const least = await newPage(browser, `${base}/health`);
  await least.evaluate(leastThatTakesText);
  const search = page.locator('book-list input[type="search"]');
  await search.waitFor();
  await page.waitForFunction(() => window.listedMs !== null);
  const own: number[] = [];
  const other: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    await search.fill('');
    own.push(...(await keysIn(page, search, SEARCHED)).map(({ frameMs }) => frameMs));
    other.push(...(await keysIn(least, least.locator('input'), SEARCHED)).map(({ frameMs }) => frameMs));
  }
  await page.context().close();
  await least.context().close();
  return [
    lineWithFloor(`book of ${FORMULAS}: a key of the search to its frame, p50`, 'ms', '≤ 100 ms', [pairOf(own, other, median)]),
    lineWithFloor(`book of ${FORMULAS}: a key of the search to its frame, p95`, 'ms', '≤ 100 ms', [
      pairOf(own, other, (times) => percentile(times, 0.95)),
    ]),
  ];
}

async function typingLines(browser: Browser, base: string, rounds: number): Promise<readonly Line[]> {
  const page = await newPage(browser, `${base}/formulas?formula=${DEEP.id}`);
  const least = await newPage(browser, `${base}/health`);
  await least.evaluate(leastThatTakesText);
  const grams = page.locator(`[data-field="${INNERMOST_GRAMS}"]`);
  await grams.waitFor();
  const own: number[] = [];
  const other: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    await grams.fill('');
    own.push(...(await keysIn(page, grams, TYPED)).map(({ workMs }) => workMs));
    await least.locator('input').fill('');
    other.push(...(await keysIn(least, least.locator('input'), TYPED)).map(({ workMs }) => workMs));
  }
  await page.context().close();
  await least.context().close();
  const what = `typing grams into ${DEEP.items} items, ${DEEP.levels} levels deep: work of a key with its layout`;
  return [
    lineWithFloor(`${what}, p50`, 'ms', '≤ 16 ms', [pairOf(own, other, median)]),
    lineWithFloor(`${what}, p95`, 'ms', '≤ 16 ms', [pairOf(own, other, (times) => percentile(times, 0.95))]),
  ];
}

function pairOf(own: readonly number[], other: readonly number[], of: (times: readonly number[]) => number): Round {
  return { value: of(own), floor: of(other) };
}

/** Types a text key by key, each when the frame of the one before is drawn. */
async function keysIn(
  page: BrowserPage,
  field: ReturnType<BrowserPage['locator']>,
  text: string,
): Promise<readonly { workMs: number; frameMs: number }[]> {
  await field.focus();
  await page.evaluate(() => window.keys.splice(0));
  for (const [index, key] of text.split('').entries()) {
    await page.keyboard.press(key === ' ' ? 'Space' : key);
    await page.waitForFunction((count) => window.keys.length > count, index);
  }
  return page.evaluate(() => window.keys);
}

async function newPage(browser: Browser, url: string): Promise<BrowserPage> {
  const context = await browser.newContext({ viewport: { width: 1920, height: 1080 } });
  await letContextIn(context, url);
  const page = await context.newPage();
  await page.addInitScript(watchPage);
  await page.goto(url);
  return page;
}

declare global {
  interface Window {
    listedMs: number | null;
    keys: { workMs: number; frameMs: number }[];
  }
}

/**
 * Runs in the page before anything of its own: takes note of the first frame that shows an entry of a list, and of every key:
 * its work until all that follows from it is laid out, and its frame.
 */
function watchPage(): void {
  window.listedMs = null;
  window.keys = [];
  const optionIn = (root: ParentNode): boolean =>
    root.querySelector('[role="option"]') !== null ||
    [...root.querySelectorAll('*')].some((element) => element.shadowRoot !== null && optionIn(element.shadowRoot));
  const afterTask = (call: () => void): void => {
    const channel = new MessageChannel();
    channel.port1.addEventListener('message', call);
    channel.port1.start();
    channel.port2.postMessage(null);
  };
  // Elements update one within the other, a turn of the microtasks each: none of them nests so deep. A task would come after the
  // frame, for which an idle browser waits.
  const turnsLater = async (): Promise<void> => {
    for (let turn = 0; turn < 300; turn += 1) await Promise.resolve();
  };
  const look = (): void => {
    if (optionIn(document)) afterTask(() => (window.listedMs = performance.now()));
    else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
  let startMs = 0;
  window.addEventListener('input', () => (startMs = performance.now()), { capture: true });
  // The last to hear of it: what the key has set going by then stands before these turns in the queue.
  window.addEventListener('input', () => {
    let workMs = 0;
    void turnsLater().then(() => {
      document.body.getBoundingClientRect();
      workMs = performance.now() - startMs;
    });
    requestAnimationFrame(() => afterTask(() => window.keys.push({ workMs, frameMs: performance.now() - startMs })));
  });
}

/** Runs in the page: the least that fetches the book and lists some of it. */
function leastThatLists(drawn: number): void {
  void fetch('/api/book')
    .then((answer) => answer.json())
    .then((index: { entries: { name: string }[] }) => {
      document.body.replaceChildren(
        ...index.entries.slice(0, drawn).map(({ name }) => {
          const row = document.createElement('div');
          row.role = 'option';
          row.textContent = name;
          return row;
        }),
      );
    });
}

/** Runs in the page: the least that takes a text and says it again. */
function leastThatTakesText(): void {
  const input = document.createElement('input');
  const said = document.createElement('output');
  document.body.replaceChildren(input, said);
  input.addEventListener('input', () => (said.textContent = input.value));
}
