import { fileURLToPath } from 'node:url';
import { resolve } from 'node:path';
import { pino } from 'pino';
import { OpenError } from '../journal/open-error.ts';
import { localNetworkAddresses } from '../main/addresses.ts';
import { HELP, readArguments, type ServeArguments } from '../main/arguments.ts';
import { defaultDataFolder } from '../main/data-folder.ts';
import { openHouse, type House } from '../main/house.ts';
import { readBakehouse, type ReadBakehouse } from '../main/read-bakehouse.ts';

const ROOT = fileURLToPath(new URL('../../../../', import.meta.url));
const DEMO_FILE = resolve(ROOT, 'fixtures/harbour.json');
const PAGES_FOLDER = resolve(ROOT, '.build/pages');

/** `npm start`: serves the wall and the phones until it is told to stop. Resolves with the exit code. */
export async function main(args: readonly string[]): Promise<number> {
  const read = readArguments(args);
  if (!read.ok) return fail(`${read.fault}\n${HELP}`);
  if (read.value.help) {
    process.stdout.write(`${HELP}\n`);
    return 0;
  }
  return serve(read.value);
}

async function serve(options: ServeArguments): Promise<number> {
  const dataFolder = resolve(options.data ?? defaultDataFolder(process.env));
  const log = pino({ level: 'warn' }, pino.destination(2));
  // Before anything is opened: a file with faults must leave nothing behind.
  const wanted = options.bakehouse === null ? null : await readOrExplain(resolve(options.bakehouse));
  if (wanted === 'faulty') return 1;
  const lanAddresses = options.lan ? localNetworkAddresses() : [];
  const stopped = stopSignal();
  let house: House;
  try {
    const addresses = (lanAddresses.length > 0 ? lanAddresses : ['localhost']).map((address) => `http://${address}:${options.port}`);
    house = await openHouse({ dataFolder, pace: options.pace, log, pagesFolder: PAGES_FOLDER, addresses });
  } catch (error) {
    if (error instanceof OpenError) return fail(error.message);
    throw error;
  }
  try {
    await house.app.listen({ port: options.port, host: options.lan ? '0.0.0.0' : '127.0.0.1' });
  } catch (error) {
    await house.close();
    return fail(listenFault(error, options.port));
  }
  const told = await bringIn(house, wanted);
  if (told !== null) process.stdout.write(`${told}\n`);
  process.stdout.write(`${greeting(house, options, lanAddresses, dataFolder)}\n`);
  await stopped;
  await house.close();
  return 0;
}

async function bringIn(house: House, wanted: ReadBakehouse | null): Promise<string | null> {
  let bakehouse = wanted;
  if (bakehouse === null) {
    if (house.floor.state.house !== null) return null;
    const demo = await readBakehouse(DEMO_FILE);
    if (!demo.ok) throw new Error(`the demo bakehouse has faults: ${JSON.stringify(demo.fault)}`);
    bakehouse = demo.value;
  }
  const outcome = await house.bringIn(bakehouse);
  if (outcome.ok) return `Brought in: ${bakehouse.file.house.name}, ${bakehouse.file.day.batches.length} batches.`;
  if (outcome.refusal.code === 'dayAlreadyOpen') return `The day ${outcome.refusal.serviceDate} is planned already; the file was left as it is.`;
  throw new Error(`the day could not be brought in: ${JSON.stringify(outcome.refusal)}`);
}

async function readOrExplain(path: string): Promise<ReadBakehouse | 'faulty'> {
  const read = await readBakehouse(path);
  if (read.ok) return read.value;
  const faults = read.fault.map((fault) => `  ${fault.path}: ${fault.message}`).join('\n');
  fail(`${path} is not a bakehouse file as it should be:\n${faults}`);
  return 'faulty';
}

function greeting(house: House, options: ServeArguments, lanAddresses: readonly string[], dataFolder: string): string {
  const address = house.app.server.address();
  const port = typeof address === 'object' && address !== null ? address.port : options.port;
  const hosts = ['localhost', ...lanAddresses];
  const lines = [`Wall   http://localhost:${port}/wall`, ...hosts.map((host) => `Phone  http://${host}:${port}/phone`), `Data   ${dataFolder}`];
  if (options.pace !== 1) lines.push(`Pace   ×${options.pace}: the house runs ${options.pace} times faster than the day. Never bake by it.`);
  if (options.lan) lines.push('', 'OPEN TO THE LOCAL NETWORK: anybody on it can see this floor and tap on it. There is no access control yet.');
  return lines.join('\n');
}

function listenFault(error: unknown, port: number): string {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  if (code === 'EADDRINUSE') return `Port ${port} is taken by another program; choose another with --port.`;
  if (code === 'EACCES') return `Port ${port} may not be used by you; choose one above 1023 with --port.`;
  throw error;
}

function stopSignal(): Promise<void> {
  return new Promise((resolvePromise) => {
    process.once('SIGINT', () => resolvePromise());
    process.once('SIGTERM', () => resolvePromise());
  });
}

function fail(message: string): number {
  process.stderr.write(`${message}\n`);
  return 1;
}
