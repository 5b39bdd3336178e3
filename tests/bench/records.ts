import { statSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { Browser } from 'playwright-core';
import { assert } from '../../shared/result.ts';
import { launchChromium } from '../browser/support/chromium.ts';
import { letContextIn } from '../browser/support/house-pages.ts';
import { main as rebuild } from '../../server/cli/rebuild.ts';
import { SNAPSHOT_FILE, writeSnapshot } from '../../server/journal/snapshot-file.ts';
import type { FoldCheckpoint } from '../../server/records/records-fold.ts';
import { RECORDS_FILE } from '../../server/records/records-schema.ts';
import { letIn } from '../support/let-in.ts';
import { startServer } from './child.ts';
import { newId } from './pages.ts';
import { freePort, inTemporaryFolder } from './places.ts';
import { lineOf, type Line } from './report.ts';
import { percentile } from './statistics.ts';
import { writeThreeYears } from './three-years.ts';

const LAST_DATE = '2026-03-07';
const MB = 1_000_000;
const TAPS = 300;
const FIRST_PICTURE = '≤ 300 ms';
const TRACE = '≤ 200 ms';

/** Views of the page of records, each with what stands there once its answer is shown. */
const VIEWS: readonly (readonly [name: string, search: string, shown: string])[] = [
  ['batches', '', 'batches-view tbody tr'],
  ['one batch', '?view=batch&id=BATCH', 'batch-view #steps'],
  ['a day', `?view=days&date=${LAST_DATE}`, 'day-view day-picture'],
  ['weeks', '?view=weeks', 'weeks-view tbody tr'],
  ['trace of a lot', '?view=trace&lot=LOT', 'trace-view table'],
  ['lessons', '?view=lessons', 'lessons-view h2'],
  ['calls', '?view=calls', 'calls-view table'],
  ['to take out', '?view=out', 'out-view table'],
];

/**
 * Three years of a large bakehouse, about three million events: how long the records take to be made, each view until its first picture in
 * a browser, a trace, a table written out, and what a tap waits for meanwhile. Takes many minutes.
 */
export async function records(rounds: number): Promise<readonly Line[]> {
  return inTemporaryFolder(async (data) => {
    const { events } = await writeThreeYears(data, LAST_DATE);
    const startMs = performance.now();
    assert((await rebuild(['--data', data], () => {})) === 0, 'the records are made');
    const lines: Line[] = [
      lineOf(`records of ${events} events made anew`, 's', '≤ 120 s', [(performance.now() - startMs) / 1000]),
      lineOf('records of three years', 'MB', 'no aim', [statSync(join(data, RECORDS_FILE)).size / MB]),
    ];
    return [...lines, ...(await recordsAnswer(data, rounds))];
  });
}

/** The same without making the records: what a server on such a folder answers, and how soon. */
export async function recordsAnswer(data: string, rounds: number): Promise<readonly Line[]> {
  const lines: Line[] = [];
  await leaveSnapshot(data);
  const port = await freePort();
  const server = await startServer(data, port, ['--here']);
  const browser = await launchChromium([]);
  try {
    const base = `http://127.0.0.1:${port}`;
    const { cookie } = letIn(port);
    const answer = async (path: string): Promise<{ answer: never }> =>
      (await (await fetch(`${base}/api/records/${path}`, { headers: { cookie } })).json()) as { answer: never };
    const { pieces } = (await answer('batches?formula=milk-buns')).answer as { pieces: readonly { id: string }[] };
    const { lots } = (await answer(`batch?id=${pieces[0]?.id ?? ''}`)).answer as { lots: readonly { lot: string }[] };
    const [batch, lot] = [pieces[0]?.id ?? '', lots[0]?.lot ?? ''];
    for (const [name, search, shown] of VIEWS) {
      const asked = search.replace('BATCH', batch).replace('LOT', encodeURIComponent(lot));
      lines.push(
        lineOf(
          `records, ${name}: first picture`,
          'ms',
          FIRST_PICTURE,
          await firstPictures(browser, `${base}/records${asked}`, shown, rounds),
        ),
      );
    }
    const { lots: known } = (await answer('lots?ingredient=rye-flour')).answer as { lots: readonly { lot: string }[] };
    for (const [name, path] of [
      ['a lot of the last weeks, onward', `trace?lot=${encodeURIComponent(lot)}`],
      ['a flour of the pots, onward', `trace?lot=${encodeURIComponent(known.at(-1)?.lot ?? lot)}`],
      ['a product of a day, back', `trace?product=country-loaf&date=${LAST_DATE}`],
    ] as const) {
      const took: number[] = [];
      for (let round = 0; round < rounds; round += 1) {
        const fromMs = performance.now();
        await answer(path);
        took.push(performance.now() - fromMs);
      }
      lines.push(lineOf(`trace, ${name}`, 'ms', TRACE, took));
    }
    lines.push(...(await writtenOut(base, cookie)));
    return lines;
  } finally {
    await browser.close();
    await server.end('SIGINT');
  }
}

/** A server that ran all these years has left a snapshot behind: the fold that the records end with is the floor's. */
async function leaveSnapshot(data: string): Promise<void> {
  const database = new Database(join(data, RECORDS_FILE), { readonly: true });
  const row = database.prepare('SELECT kitchen, sequence, hash, fold FROM checkpoint').raw().get() as [string, number, string, string];
  database.close();
  const [kitchenId, sequence, hash, fold] = row;
  const { state } = JSON.parse(fold) as FoldCheckpoint;
  await writeSnapshot(join(data, SNAPSHOT_FILE), { kitchenId, sequence, hash, state });
}

/** From asking for the page until its answer stands there, each time in a browser that has the page's scripts but none of its answers. */
async function firstPictures(browser: Browser, url: string, shown: string, rounds: number): Promise<readonly number[]> {
  const context = await browser.newContext({ viewport: { width: 1920, height: 1080 } });
  await letContextIn(context, url);
  const took: number[] = [];
  for (let round = -1; round < rounds; round += 1) {
    const page = await context.newPage();
    const fromMs = performance.now();
    await page.goto(url, { waitUntil: 'commit' });
    await page.locator(shown).first().waitFor();
    // The first load fetches scripts and opens the records.
    if (round >= 0) took.push(performance.now() - fromMs);
    await page.close();
  }
  await context.close();
  return took;
}

/** A table written out while taps come in, and the same taps without it. */
async function writtenOut(base: string, cookie: string): Promise<readonly Line[]> {
  const tap = async (): Promise<number> => {
    const fromMs = performance.now();
    const command = { type: 'readPlace', placeId: 'warm-shelf', celsius: 27 };
    const response = await fetch(`${base}/api/commands`, {
      method: 'POST',
      headers: { cookie, 'content-type': 'application/json' },
      body: JSON.stringify({ commandId: newId(), command }),
    });
    await response.text();
    return performance.now() - fromMs;
  };
  const taps = async (): Promise<readonly number[]> => {
    const took: number[] = [];
    for (let count = 0; count < TAPS; count += 1) took.push(await tap());
    return took;
  };
  const quiet = await taps();
  const over = { is: false };
  const pouredOut = async (): Promise<number> => {
    let rows = 0;
    const fromMs = performance.now();
    const response = await fetch(`${base}/api/records-export?table=batch_steps&format=jsonl`, { headers: { cookie } });
    assert(response.ok && response.body !== null, `the table is written out: ${response.status}`);
    for await (const chunk of response.body) for (const byte of chunk as Uint8Array) if (byte === 10) rows += 1;
    over.is = true;
    return rows / ((performance.now() - fromMs) / 1000);
  };
  const meanwhile: number[] = [];
  const [rowsPerS] = await Promise.all([
    pouredOut(),
    (async () => {
      while (!over.is) meanwhile.push(await tap());
    })(),
  ]);
  const p99 = (times: readonly number[]): number => percentile(times, 0.99);
  return [
    lineOf('steps of three years written out while taps come in', 'rows/s', '≥ 100 000 rows/s', [rowsPerS]),
    lineOf('a tap by http while nothing is written out, p99', 'ms', 'the floor of the next', [p99(quiet)]),
    lineOf(`a tap by http meanwhile, p99 of ${meanwhile.length}`, 'ms', 'ratio ≤ 2', [p99(meanwhile)]),
    lineOf('a tap by http meanwhile to without, p99', 'times', '≤ 2', [p99(meanwhile) / p99(quiet)]),
  ];
}
