import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { JUMP_MS } from '../../../server/clock/real-time.ts';
import { JournalError, type Journal } from '../../../server/journal/journal.ts';
import { MemoryJournal, type MemoryDisk } from '../../../server/journal/memory-journal.ts';
import { SlowJournal, type AppendFault, type AppendMoment } from '../../../server/journal/slow-journal.ts';
import type { BakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import { ID_BYTES, idFromBytes } from '../../../shared/ids.ts';
import { bringInCommand } from '../../domain/support/harbour.ts';
import type { Counts } from './counts.ts';
import type { MemoryDeviceBook } from './device-book.ts';
import { differenceOf } from './difference.ts';
import { Host } from './host.ts';
import type { HouseTruth } from './house-truth.ts';
import type { Ledger } from './ledger.ts';
import type { Machine } from './machine.ts';
import type { Network } from './network.ts';
import type { Plant } from './plant.ts';
import type { Random } from './random.ts';
import { SimServer } from './sim-server.ts';
import type { Violations } from './violation.ts';
import type { VirtualTime } from './virtual-time.ts';
import type { WireWitness } from './wire-witness.ts';
import { WitnessedJournal } from './witnessed-journal.ts';

/** Where a process can be made to die. */
export type CrashPoint = 'now' | 'beforeAppend' | 'afterAppend' | 'afterAcknowledge';

export interface ServerRoomOptions {
  readonly time: VirtualTime;
  readonly random: Random;
  readonly ids: Random;
  readonly disk: MemoryDisk;
  readonly ledger: Ledger;
  readonly truth: HouseTruth;
  readonly wire: WireWitness;
  readonly network: Network;
  readonly machine: Machine;
  readonly devices: MemoryDeviceBook;
  readonly pace: number;
  readonly snapshotPath: string;
  /** The house whose day it is. */
  readonly file: BakehouseFile;
  readonly plant: Plant;
  readonly violations: Violations;
  readonly counts: Counts;
}

/** How long after a sleep the server is sure to have noticed it: two looks at its clock. Real time. */
const NOTICED_AFTER_MS = 12_000;

/** The server's lives, one after another on the same disk, and what goes wrong with them. */
export class ServerRoom {
  readonly #options: ServerRoomOptions;
  readonly #dayCommandId: string;
  #server: SimServer | null = null;
  #crashPoint: CrashPoint | null = null;
  #downMs = 0;
  #nextAppendFails = false;
  /** True while the disk has more than the process knows of: it can append no more until it is started again. */
  #isBehindDisk = false;
  isDiskFull = false;
  isDiskSlow = false;
  #troubledMs = 0;
  clockRightSinceMs = 0;
  /** When its present life began to listen, in true time. */
  servingSinceMs = 0;

  constructor(options: ServerRoomOptions) {
    this.#options = options;
    this.#dayCommandId = idFromBytes(options.ids.bytes(ID_BYTES));
    options.wire.onAcknowledged = () => {
      if (this.#crashPoint === 'afterAcknowledge') this.#crashed();
    };
  }

  /** The server, while one is serving. */
  get serving(): SimServer | null {
    return this.#server?.isServing === true ? this.#server : null;
  }

  /** Since when all has been well with it, in true time; Infinity while something is wrong. */
  get steadySinceMs(): number {
    const isWrong = this.serving === null || this.isDiskFull || this.isDiskSlow || this.#isBehindDisk;
    return isWrong ? Number.POSITIVE_INFINITY : this.#troubledMs;
  }

  get isBehindDisk(): boolean {
    return this.#isBehindDisk;
  }

  async start(): Promise<void> {
    const { time, machine, disk, ids, pace, network, wire, ledger, counts, plant, violations, devices, snapshotPath } = this.#options;
    plant.boot?.(disk);
    const host = new Host(time, 'byPromises');
    this.#isBehindDisk = false;
    this.clockRightSinceMs = time.nowMs;
    wire.serverStarted();
    const server = await SimServer.load({
      host,
      machine,
      journal: this.#journalOf(host),
      kitchenId: disk.kitchenId,
      devices,
      pace,
      newId: () => idFromBytes(ids.bytes(ID_BYTES)),
      readSnapshotPath: this.#chooseSnapshot(),
      snapshotPath,
      day: { commandId: this.#dayCommandId, commandAt: (nowMs) => bringInCommand(this.#options.file, nowMs) },
      plant,
    });
    this.#server = server;
    counts.starts += 1;
    if (server.isFromSnapshot) counts.startsFromSnapshot += 1;
    const difference = differenceOf(server.floor.state, ledger.state);
    violations.demand('S1', difference === null, () => `the server starts from another state than its journal's: ${difference ?? ''}`);
    server
      .begin(() => {
        network.listener = { host, accept: (peer, deviceId) => server.accept(peer, deviceId) };
        this.disturbed();
        this.servingSinceMs = time.nowMs;
        // After the hub, so that what the hub tells too early is noticed as that.
        server.floor.onCommitted(({ state }) => {
          violations.demand(
            'S1',
            state.sequence === ledger.sequence,
            () => `the server has ${state.sequence} events, its disk ${ledger.sequence}`,
          );
        });
      })
      .catch((error: unknown) => violations.report('bug', `the server threw on starting: ${String(error)}`));
  }

  /** Has the process die at a point, and starts it again a while after. */
  crash(point: CrashPoint, downMs: number): void {
    if (this.#server?.host.isAwake !== true) return;
    this.#crashPoint = point;
    this.#downMs = downMs;
    if (point === 'now') this.#crashed();
  }

  /** Has the server go down in good order, and starts it again a while after. */
  stop(downMs: number): void {
    const { time, network, counts } = this.#options;
    const server = this.serving;
    if (server?.host.isAwake !== true) return;
    counts.stops += 1;
    network.listener = null;
    void server.close().then(() => {
      time.after(1, async () => {
        if (!server.host.isAlive) return;
        await server.writeSnapshot();
        this.#gone(server.host, downMs);
      });
    });
  }

  /** The next append fails for the server, though the disk keeps it; the process dies a while after. */
  failNextAppend(): void {
    if (this.serving !== null) this.#nextAppendFails = true;
  }

  /** Nothing more goes wrong, and what is down is started. */
  heal(): void {
    this.#crashPoint = null;
    this.#nextAppendFails = false;
    this.isDiskFull = false;
    this.isDiskSlow = false;
    if (this.#isBehindDisk) this.crash('now', 500);
    this.disturbed();
  }

  sleep(ms: number): void {
    const { counts, time } = this.#options;
    // A shorter one need not be noticed: the clock may be so far behind.
    if (this.serving?.host.isAwake !== true || ms < 2 * JUMP_MS) return;
    counts.serverSleeps += 1;
    this.serving.host.sleep(ms);
    this.clockRightSinceMs = time.nowMs + ms + NOTICED_AFTER_MS;
    this.#troubledMs = this.clockRightSinceMs;
  }

  setClock(byMs: number): void {
    const { machine } = this.#options;
    if (this.serving?.host.isAwake !== true) return;
    machine.wallErrorMs += byMs;
    this.disturbed();
  }

  async writeSnapshot(): Promise<void> {
    await this.serving?.writeSnapshot();
  }

  disturbed(): void {
    this.#troubledMs = Math.max(this.#troubledMs, this.#options.time.nowMs);
  }

  #crashed(): void {
    const { counts } = this.#options;
    const point = this.#crashPoint;
    const host = this.#server?.host;
    if (host === undefined || point === null) return;
    counts.crashes += 1;
    if (point === 'beforeAppend') counts.crashBeforeAppend += 1;
    if (point === 'afterAppend') counts.crashAfterAppend += 1;
    if (point === 'afterAcknowledge') counts.crashAfterAcknowledge += 1;
    this.#gone(host, this.#downMs);
  }

  #gone(host: Host, downMs: number): void {
    const { time, network, machine, truth } = this.#options;
    this.#crashPoint = null;
    host.die();
    network.listener = null;
    network.serverDied(host);
    // A jump that nobody was there to notice cannot be told from time that went by: somebody sets the clock right meanwhile.
    if (truth.isAnchored) machine.wallErrorMs = truth.notedWallErrorMs;
    time.after(downMs, () => this.start());
  }

  #journalOf(host: Host): Journal {
    const { disk, ledger, plant } = this.#options;
    const witnessed = new WitnessedJournal(new MemoryJournal(disk), (group) => ledger.kept(group));
    const slow = new SlowJournal(witnessed, {
      delay: (moment) => this.#appendDelay(host, moment),
      fault: (moment) => this.#appendFault(host, moment),
    });
    return plant.journal?.(slow, host) ?? slow;
  }

  #appendDelay(host: Host, moment: AppendMoment): Promise<void> {
    const { random } = this.#options;
    const slowMs = this.isDiskSlow && moment === 'beforeAppend' ? random.between(100, 3_000) : random.between(0, 4);
    return new Promise((resolve) => host.after(slowMs, resolve));
  }

  #appendFault(host: Host, moment: AppendMoment): AppendFault {
    if (!host.isAlive) return 'noAnswer';
    if (this.#crashPoint === moment) {
      this.#crashed();
      return 'noAnswer';
    }
    if (moment === 'beforeAppend') return this.isDiskFull ? new JournalError('diskFull', 'the disk is full') : null;
    if (!this.#nextAppendFails) return null;
    this.#nextAppendFails = false;
    this.#isBehindDisk = true;
    this.#options.counts.keptThoughFailed += 1;
    return new JournalError('journalFailed', 'the disk says that it failed, and has kept it');
  }

  /** A start reads the snapshot, or does without; now and then it finds half of one. */
  #chooseSnapshot(): string | null {
    const { random, snapshotPath } = this.#options;
    if (!existsSync(snapshotPath) || random.chance(0.4)) return null;
    if (random.chance(0.1)) writeFileSync(snapshotPath, readFileSync(snapshotPath, 'utf8').slice(0, -random.whole(1, 500)));
    return snapshotPath;
  }
}
