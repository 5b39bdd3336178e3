import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { pino } from 'pino';
import { readBakehouseFile, type BakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import { assert } from '../../../shared/result.ts';
import { ensureBuilt } from '../../../server/cli/build.mjs';
import { BUILD, ROOT } from '../../../server/cli/places.mjs';
import type * as server from '../../../server/main/house.ts';
import { INSECURE_HOST } from './insecure-host.ts';

type Server = typeof server;

/** A market Saturday, 03:00 by the clocks of the demo house. */
export const SATURDAY_MS = Date.UTC(2026, 2, 7, 3, 0, 0);

/** The demo house as it is built for users, its planner's threads and pages too, on a port of its own. */
export interface ClockedHouse {
  readonly house: server.House;
  readonly port: number;
  /** Lets so much time go by in which nobody does anything. What falls due meanwhile, and the plan, are looked at. */
  pass(ms: number): Promise<void>;
  close(): Promise<void>;
}

/**
 * Opens the demo house in a folder, in this process, with a day of no batches. Its clock shows `nowMs` at first and goes on by
 * itself. Time is let pass as by a machine that sleeps: pages do not lose their link by it.
 */
export async function openClockedHouse(dataFolder: string, nowMs: number): Promise<ClockedHouse> {
  await ensureBuilt(['server', 'pages'], () => {});
  const { openHouse } = await builtServer();
  const startMs = performance.now();
  const ranMs = (): number => performance.now() - startMs;
  let sleptMs = 0;
  const house = await openHouse({
    dataFolder,
    pace: 1,
    log: pino({ level: 'error' }, pino.destination(2)),
    pagesFolder: join(BUILD, 'pages'),
    addresses: [],
    // Whoever comes is let in: by codes is tested elsewhere.
    roleOfGuest: () => 'manage',
    names: [INSECURE_HOST],
    clocks: { wallMs: () => nowMs + ranMs() + sleptMs, monotonicMs: ranMs, uptimeMs: () => ranMs() + sleptMs },
  });
  const brought = await house.bringIn(await demoWithoutBatches());
  assert(brought.ok, `the demo house is brought in: ${JSON.stringify(brought)}`);
  await house.app.listen({ port: 0, host: '127.0.0.1' });
  const address = house.app.server.address();
  assert(typeof address === 'object' && address !== null, 'the house listens');
  return {
    house,
    port: address.port,
    pass: async (ms) => {
      sleptMs += ms;
      await house.lookAtClock();
    },
    close: () => house.close(),
  };
}

/** The planner's threads run built code only, so that all of the server is. */
async function builtServer(): Promise<Server> {
  const path = pathToFileURL(join(BUILD, 'js/server/main/house.js')).href;
  return (await import(/* @vite-ignore */ path)) as Server;
}

async function demoWithoutBatches(): Promise<{ readonly file: BakehouseFile; readonly digest: Uint8Array }> {
  const bytes = await readFile(join(ROOT, 'fixtures/harbour.json'));
  const read = readBakehouseFile(JSON.parse(bytes.toString('utf8')));
  assert(read.ok, 'the demo bakehouse is a bakehouse file');
  const { day, ...file } = read.value;
  return { file: { ...file, day: { ...day, batches: [], orders: [] } }, digest: createHash('sha256').update(bytes).digest() };
}
