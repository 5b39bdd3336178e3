import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import type { Logger } from 'pino';
import type { Outcome } from '../../shared/floor/refusals.ts';
import { ID_BYTES, idFromBytes } from '../../shared/ids.ts';
import { HEARTBEAT_MS } from '../../shared/wire/protocol.ts';
import { KitchenAccess } from '../access/kitchen-access.ts';
import { looksWhereTheServerIs, type RoleOfGuest } from '../access/roles.ts';
import { anchorForStart, HouseClock } from '../clock/house-clock.ts';
import { JUMP_MS, machineClocks, RealTime, type MachineClocks } from '../clock/real-time.ts';
import { BackupKeeper, type MakeBackup } from '../backup/backup-keeper.ts';
import { DEVICES_DATABASE, DEVICES_FILE } from '../devices/devices-schema.ts';
import { Devices } from '../devices/devices.ts';
import { nodeTimers, type Timers } from '../floor/alarm-clock.ts';
import { Caller } from '../floor/caller.ts';
import { Floor } from '../floor/floor.ts';
import { HOUSE_DEVICE_ID } from '../floor/house-device.ts';
import { SoundTester } from '../floor/sound-tester.ts';
import { Sounder } from '../floor/sounder.ts';
import { buildApp } from '../http/app.ts';
import { Door } from '../http/device-cookie.ts';
import type { TrustedRoot } from '../http/trust-route.ts';
import { lockFolder } from '../journal/folder-lock.ts';
import { JOURNAL_DATABASE } from '../journal/journal-schema.ts';
import { checkIntegrity } from '../journal/integrity.ts';
import { JournalError, type Journal } from '../journal/journal.ts';
import { SNAPSHOT_FILE } from '../journal/snapshot-file.ts';
import { JOURNAL_FILE, SqliteJournal } from '../journal/sqlite-journal.ts';
import type { StartJournalThread } from '../journal/start-journal-thread.ts';
import { ThreadedJournal } from '../journal/threaded-journal.ts';
import { LiveHub } from '../live/live-hub.ts';
import { Records } from '../records/records.ts';
import type { StartRecordsThread } from '../records/start-records-thread.ts';
import { Planning, type PlanningOptions } from '../plan/planning.ts';
import { ClockWatch } from './clock-watch.ts';
import { lastKnownHouseMs } from './clock-went-back.ts';
import { loadState } from './load-state.ts';
import { commandOfFile } from './planned-starts.ts';
import { commandIdOf, type ReadBakehouse } from './read-bakehouse.ts';
import { SnapshotKeeper } from './snapshot-keeper.ts';

export interface HouseOptions {
  readonly dataFolder: string;
  readonly pace: number;
  readonly log: Logger;
  readonly pagesFolder: string | null;
  /** How phones reach the server; read anew for each client, so that it may be filled in once the port is known. */
  readonly addresses: readonly string[];
  /** The machine's clocks and timers, unless tests bring their own. */
  readonly clocks?: MachineClocks;
  readonly timers?: Timers;
  readonly newId?: () => string;
  /** What may be done by those whom nobody let in; without it, walls on this machine may look. */
  readonly roleOfGuest?: RoleOfGuest;
  /** A code for the console is wanted, though the kitchen is claimed: every phone that manages it is lost. */
  readonly isClaimedAnew?: boolean;
  /** Names by which this machine is reached, in lower case, beside localhost and its addresses. */
  readonly names?: readonly string[];
  /** Everybody but this machine comes by TLS. */
  readonly isTls?: boolean;
  /** The bakehouse's authority, read anew with each request; without it, or null: no TLS. */
  readonly trusted?: () => TrustedRoot | null;
  /** Where tokens of devices come from, where tests bring their own. */
  readonly newToken?: (deviceId: string) => string;
  /** How the thread is started that writes down what is long; without it everything is written where the house runs. */
  readonly startJournalThread?: StartJournalThread;
  /** Where backups go and how one is made; without it none is made. */
  readonly backups?: { readonly folder: string; readonly make: MakeBackup };
  /** How the thread is started that keeps the records; without it no records are kept. */
  readonly startRecordsThread?: StartRecordsThread;
  /** How the planner's threads are started and how hard they try, where tests bring their own. */
  readonly planning?: Pick<PlanningOptions, 'startThread' | 'budgets'>;
}

/** Told of a device that was forgotten for a newer one. */
interface Forgotten {
  tell: (deviceId: string) => void;
}

/** A running house: everything but the listening socket. */
export interface House {
  readonly app: FastifyInstance;
  readonly floor: Floor;
  readonly clock: HouseClock;
  readonly hub: LiveHub;
  readonly planning: Planning;
  readonly access: KitchenAccess;
  /** Brings a bakehouse file in for its day; `dayAlreadyOpen` where that day is planned already. */
  bringIn(bakehouse: ReadBakehouse): Promise<Outcome>;
  /** Asks the journal something: it answers, or says why it cannot. */
  askJournal(): Promise<unknown>;
  /** Looks at the clock now, as it does by itself every few seconds. */
  lookAtClock(): Promise<void>;
  /** Raises what is due now, as it does by itself when its time comes. */
  callNow(): Promise<void>;
  /** Ends in good order: sockets, snapshot, journal, lock. */
  close(): Promise<void>;
}

/** Opens a data folder and brings its floor to life. Throws OpenError where the folder or a file in it is not ours to use. */
export async function openHouse(options: HouseOptions): Promise<House> {
  const { dataFolder, log, timers = nodeTimers, newId = randomId, newToken } = options;
  checkFiles(dataFolder);
  const lock = lockFolder(dataFolder);
  let journal: Journal | null = null;
  let devices: Devices | null = null;
  // The hub comes later; nobody is forgotten before anybody can be let in.
  const forgotten: Forgotten = { tell: () => {} };
  try {
    journal = openJournal(options);
    devices = new Devices(join(dataFolder, DEVICES_FILE), {
      ...(newToken === undefined ? {} : { newToken }),
      onForgotten: (deviceId) => forgotten.tell(deviceId),
      onTouchFault: (error) => log.warn({ err: error }, 'when a device was last there could not be kept'),
    });
    return await startHouse({ ...options, timers, newId }, journal, devices, forgotten, () => lock.release());
  } catch (error) {
    devices?.close();
    await journal?.close();
    lock.release();
    log.debug({ err: error }, 'the house could not be opened');
    throw error;
  }
}

function openJournal({ dataFolder, startJournalThread }: HouseOptions): Journal {
  const path = join(dataFolder, JOURNAL_FILE);
  const journal = new SqliteJournal(path);
  return startJournalThread === undefined ? journal : new ThreadedJournal(journal, path, startJournalThread);
}

/** Looks at what is there before anything is opened for writing: where one file is not ours, the others stay as they are too. */
function checkFiles(dataFolder: string): void {
  for (const [file, kind] of [
    [JOURNAL_FILE, JOURNAL_DATABASE],
    [DEVICES_FILE, DEVICES_DATABASE],
  ] as const) {
    const path = join(dataFolder, file);
    if (existsSync(path)) checkIntegrity(path, kind);
  }
}

async function startHouse(
  options: HouseOptions & { timers: Timers; newId: () => string },
  journal: Journal,
  devices: Devices,
  forgotten: Forgotten,
  unlock: () => void,
): Promise<House> {
  const { dataFolder, log, pace, timers, newId, addresses, pagesFolder, roleOfGuest = looksWhereTheServerIs } = options;
  const snapshotPath = join(dataFolder, SNAPSHOT_FILE);
  const kitchenId = await journal.kitchenId();
  const { state, snapshotSequence, recent } = await loadState(journal, kitchenId, snapshotPath, log);
  const real = new RealTime(options.clocks ?? machineClocks);
  const clock = new HouseClock(real, anchorForStart(state.clock, pace, real.nowMs()));
  const floor = new Floor({ kitchenId, journal, state, clock, log, defer: (run) => setImmediate(run) });
  const house = (commandId: string, command: Parameters<Floor['submit']>[0]['command']): Promise<Outcome> =>
    floor.submit({ commandId, deviceId: HOUSE_DEVICE_ID, stationId: null, tap: null, command });
  const { anchor } = clock;
  if (state.clock?.pace !== pace) {
    const anchored = await house(newId(), { type: 'anchorClock', ...anchor });
    // Without its anchor on disk the house would come back at another time than it left.
    if (!anchored.ok)
      throw new JournalError('journalFailed', 'The data folder takes nothing: its journal could not keep when the house began.');
  }

  const backups =
    options.backups === undefined
      ? null
      : new BackupKeeper(options.backups.folder, options.backups.make, timers, () => (options.clocks ?? machineClocks).wallMs(), log);
  const records = options.startRecordsThread === undefined ? null : new Records({ dataFolder, start: options.startRecordsThread, log });
  floor.onCommitted(({ events }) => {
    if (events.length > 0) records?.news();
  });
  const access = new KitchenAccess({
    devices,
    clock,
    timers,
    isClaimedAnew: options.isClaimedAnew === true,
    isTls: options.isTls === true,
  });
  const hub = new LiveHub(
    {
      floor,
      clock,
      devices,
      addresses,
      log,
      joining: () => access.joining,
      areBackupsLate: () => backups?.isLate === true,
      onSounded: (soundId, deviceId) => void sounder.sounded(soundId, deviceId),
      onSoundOutletChanged: () => {
        sounder.look();
        tester.look();
      },
    },
    recent,
  );
  forgotten.tell = (deviceId) => hub.accessChanged(deviceId, null);
  access.onJoiningChanged(() => hub.joiningChanged());
  access.onRoleChanged((deviceId) => hub.accessChanged(deviceId, devices.find(deviceId)?.role ?? null));
  const door = new Door({ devices, roleOfGuest, clock });
  const sounder = new Sounder(
    floor,
    clock,
    timers,
    newId,
    (order) => hub.sound(order),
    (deviceId) => hub.doubt(deviceId),
  );
  const tester = new SoundTester(floor, clock, timers, newId, () => hub.soundingDeviceId !== null);
  const caller = new Caller(floor, clock, timers, newId);
  const planning = new Planning({ floor, clock, timers, newId, log, onNews: () => hub.planChanged(), ...options.planning });
  const snapshots = new SnapshotKeeper(floor, journal, snapshotPath, snapshotSequence, log);
  const watch = new ClockWatch(real, clock, floor, newId, log, () => {
    hub.clockChanged();
    sounder.look();
    tester.look();
    void caller.look();
    planning.replanner.look();
  });
  const app = await buildApp({
    backups,
    records,
    hub,
    access,
    devices,
    planning,
    log,
    pagesFolder,
    floor,
    journal,
    door,
    clock,
    newId,
    names: options.names ?? [],
    trusted: options.trusted ?? (() => null),
  });
  await noteClockThatWentBack();
  let everyFewSeconds = timers.set(tick, HEARTBEAT_MS);
  function tick(): void {
    hub.sweep();
    hub.lookAtHealth();
    void watch.look();
    everyFewSeconds = timers.set(tick, HEARTBEAT_MS);
  }
  /** A clock that lost its battery while the server was away: what is open keeps the time that it had left, as when a clock is set beside a running house. */
  async function noteClockThatWentBack(): Promise<void> {
    const knownMs = lastKnownHouseMs(recent);
    const byMs = clock.nowMs() - (knownMs ?? Number.NEGATIVE_INFINITY);
    if (byMs >= -JUMP_MS) return;
    log.warn({ byMs }, 'the clock of this machine is behind what the journal knows; everything on the floor keeps the time it had left');
    await house(newId(), { type: 'noteClockJump', byMs });
  }

  await caller.look();
  sounder.look();
  planning.replanner.look();

  return {
    app,
    floor,
    clock,
    hub,
    planning,
    access,
    bringIn: ({ file, digest }) => {
      const command = commandOfFile(file, clock.nowMs());
      return house(commandIdOf(digest, command.serviceDate), command);
    },
    askJournal: () => journal.head(kitchenId),
    lookAtClock: () => watch.look(),
    callNow: () => caller.look(),
    close: async () => {
      everyFewSeconds.cancel();
      caller.stop();
      sounder.stop();
      tester.stop();
      access.stop();
      await planning.stop();
      await backups?.stop();
      await records?.stop();
      hub.stop();
      await app.close();
      await floor.settled();
      await snapshots.finish();
      devices.close();
      await journal.close();
      unlock();
    },
  };
}

function randomId(): string {
  return idFromBytes(randomBytes(ID_BYTES));
}
