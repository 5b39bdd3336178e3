import { fileURLToPath } from 'node:url';
import { join, resolve } from 'node:path';
import { pino, type Logger } from 'pino';
import { accepted, refused, type Result } from '../../shared/result.ts';
import { JournalError } from '../journal/journal.ts';
import { backupInThread } from '../backup/backup-thread.ts';
import { backupAt } from '../backup/restore.ts';
import { OpenError, type OpenErrorCode } from '../journal/open-error.ts';
import { startJournalWorker } from '../journal/start-journal-thread.ts';
import { startRecordsWorker } from '../records/start-records-thread.ts';
import { localNetworkAddresses, machineNames } from '../main/addresses.ts';
import { HELP, readArguments, type ServeArguments } from '../main/arguments.ts';
import { defaultDataFolder } from '../main/data-folder.ts';
import { nodeTimers } from '../floor/alarm-clock.ts';
import { openHouse, type House } from '../main/house.ts';
import type { SecureServer } from '../tls/secure-server.ts';
import { keepWatchdog, systemdNotify } from '../main/watchdog.ts';
import { portFault } from '../main/port-probe.ts';
import { readBakehouse, type ReadBakehouse } from '../main/read-bakehouse.ts';

const ROOT = fileURLToPath(new URL('../../../../', import.meta.url));
const DEMO_FILE = resolve(ROOT, 'fixtures/harbour.json');
/** What a file is that was torn or damaged; everything else has another remedy. */
const DAMAGED: ReadonlySet<OpenErrorCode> = new Set<OpenErrorCode>([
  'notADatabase',
  'databaseFailed',
  'databaseDamaged',
  'databaseMissing',
]);
const PAGES_FOLDER = resolve(ROOT, '.build/pages');

/** `npm start`: serves the wall and the phones until it is told to stop. Resolves with the exit code. */
export async function main(args: readonly string[]): Promise<number> {
  const read = readArguments(args);
  if (!read.ok) return fail(`${read.fault} The options: npm start -- --help`);
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
  const host = options.isHereOnly ? '127.0.0.1' : '0.0.0.0';
  const taken = await portFault(options.port, host);
  if (taken !== null) return fail(listenFault(taken, options.port));
  const lanAddresses = options.isHereOnly ? [] : localNetworkAddresses();
  const stopped = stopSignal();
  const addresses: string[] = [];
  const names = [...machineNames(), ...options.names];
  let secure: { readonly server: SecureServer; readonly port: number } | null = null;
  const backupsFolder = resolve(options.backups ?? join(dataFolder, 'backups'));
  let house: House;
  try {
    house = await openHouse({
      dataFolder,
      pace: options.pace,
      log,
      pagesFolder: PAGES_FOLDER,
      addresses,
      isClaimedAnew: options.isClaimedAnew,
      isTls: options.tls,
      names,
      trusted: () =>
        secure === null
          ? null
          : { root: secure.server.authority.root, fingerprint: secure.server.authority.fingerprint, port: secure.port },
      startJournalThread: startJournalWorker,
      startRecordsThread: startRecordsWorker,
      backups: { folder: backupsFolder, make: (nowMs) => backupInThread(dataFolder, backupsFolder, nowMs) },
    });
  } catch (error) {
    if (error instanceof OpenError || error instanceof JournalError)
      return fail([error.message, ...wayBack(error, dataFolder, backupsFolder)].join('\n'));
    throw error;
  }
  try {
    await house.app.listen({ port: options.port, host });
  } catch (error) {
    await house.close();
    return fail(listenFault(error, options.port));
  }
  const port = portOf(house, options);
  if (options.tls) {
    try {
      secure = await listenSecurely(house, options, names, join(dataFolder, 'tls'), host, log);
    } catch (error) {
      await house.close();
      return fail(secureFault(error, options.tlsPort, join(dataFolder, 'tls')));
    }
  }
  addresses.push(...(lanAddresses.length > 0 ? lanAddresses : ['localhost']).map((address) => `http://${address}:${port}`));
  const told = await bringIn(house, wanted);
  if (!told.ok) {
    await house.close();
    return fail(told.fault);
  }
  process.stdout.write(
    `${[...told.value, ...greeting(port, options, lanAddresses, dataFolder, house.access.consoleCode, secure)].join('\n')}\n`,
  );
  const endWatchdog = keepWatchdog({
    watchdogUsec: process.env['WATCHDOG_USEC'],
    notify: systemdNotify(process.env, (error) => log.warn({ err: error }, 'systemd could not be told')),
    timers: nodeTimers,
    probe: () => house.askJournal(),
  });
  await stopped;
  endWatchdog();
  secure?.server.close();
  await house.close();
  return 0;
}

/** Brings in the file that was asked for, or the demo where the house is empty: what to say of it, or why it could not be kept. */
async function bringIn(house: House, wanted: ReadBakehouse | null): Promise<Result<readonly string[], string>> {
  let bakehouse = wanted;
  if (bakehouse === null) {
    if (house.floor.state.house !== null) return accepted([]);
    const demo = await readBakehouse(DEMO_FILE);
    if (!demo.ok) throw new Error(`the demo bakehouse has faults: ${JSON.stringify(demo.fault)}`);
    bakehouse = demo.value;
  }
  const outcome = await house.bringIn(bakehouse);
  if (outcome.ok) return accepted([`Brought in: ${bakehouse.file.house.name}, ${bakehouse.file.day.batches.length} batches.`]);
  if (outcome.refusal.code === 'dayAlreadyOpen')
    return accepted([`The day ${outcome.refusal.serviceDate} is planned already; the file was left as it is.`]);
  if (outcome.refusal.code === 'notKept')
    return refused('The day could not be brought in: the journal could not keep it. Look whether the disk is full.');
  throw new Error(`the day could not be brought in: ${JSON.stringify(outcome.refusal)}`);
}

async function readOrExplain(path: string): Promise<ReadBakehouse | 'faulty'> {
  const read = await readBakehouse(path);
  if (read.ok) return read.value;
  const faults = read.fault.map((fault) => `  ${fault.path}: ${fault.message}`).join('\n');
  fail(`${path} is not a bakehouse file as it should be:\n${faults}`);
  return 'faulty';
}

/** Where a file is damaged: the last state that is known to be good, and how to have it back. The damaged file stays as it is. */
function wayBack(error: OpenError | JournalError, dataFolder: string, backupsFolder: string): readonly string[] {
  if (error instanceof OpenError && !DAMAGED.has(error.code)) return [];
  const backup = backupAt(backupsFolder);
  if (backup === null) return [];
  return [
    `The last backup is of ${new Date(backup.madeMs).toISOString()}, event ${backup.sequence}. To have it back:`,
    `  npm run restore -- --from ${backup.folder} --data ${dataFolder}`,
  ];
}

function portOf(house: House, options: ServeArguments): number {
  const address = house.app.server.address();
  return typeof address === 'object' && address !== null ? address.port : options.port;
}

function greeting(
  port: number,
  options: ServeArguments,
  lanAddresses: readonly string[],
  dataFolder: string,
  code: string | null,
  secure: { readonly server: SecureServer; readonly port: number } | null,
): readonly string[] {
  const hosts = ['localhost', ...lanAddresses];
  const lines = [
    `Wall   http://localhost:${port}/wall`,
    ...hosts.map((host) => `Phone  http://${host}:${port}/phone`),
    ...(code === null ? [] : [`Code   ${code}   whoever types it on a phone’s page manages this kitchen and lets others in`]),
    ...(secure === null ? [] : secureLines(port, secure.port, hosts, secure.server.authority.fingerprint)),
    `Data   ${dataFolder}`,
  ];
  if (options.pace !== 1)
    lines.push(`Pace   ×${options.pace}: the house runs ${options.pace} times faster than the day. Never bake by it.`);
  return lines;
}

/** The second way in: the same over TLS. Loaded only where it is wanted: nobody else waits for it. */
async function listenSecurely(
  house: House,
  options: ServeArguments,
  names: readonly string[],
  folder: string,
  host: string,
  log: Logger,
): Promise<{ readonly server: SecureServer; readonly port: number }> {
  const { SecureServer: Secure } = await import('../tls/secure-server.ts');
  const addresses = (): readonly string[] => (options.isHereOnly ? [] : localNetworkAddresses());
  const server = await Secure.open({ app: house.app, folder, names, addresses, wallMs: () => Date.now(), timers: nodeTimers, log });
  return { server, port: await server.listen(options.tlsPort, host) };
}

function secureLines(port: number, tlsPort: number, hosts: readonly string[], fingerprint: string): readonly string[] {
  return [
    ...hosts.map((host) => `TLS    https://${host}:${tlsPort}/`),
    `Trust  ${hosts
      .slice(-1)
      .map((host) => `http://${host}:${port}/trust`)
      .join('')}   how a phone takes in this bakehouse’s root; its SHA-256:`,
    `       ${fingerprint}`,
  ];
}

function secureFault(error: unknown, port: number, folder: string): string {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  if (code === 'EADDRINUSE') return `Port ${port} is taken by another program; choose another with --tls-port.`;
  if (code === 'EACCES' && error instanceof Error && 'syscall' in error && error.syscall === 'listen')
    return `Port ${port} may not be used by you; choose one above 1023 with --tls-port.`;
  return `The bakehouse’s authority in ${folder} cannot be used: ${error instanceof Error ? error.message : String(error)}`;
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
