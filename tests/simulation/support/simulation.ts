import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { hashText, ZERO_HASH } from '../../../server/journal/chain-hash.ts';
import { emptyMemoryDisk, type MemoryDisk } from '../../../server/journal/memory-journal.ts';
import type { ClientCommand } from '../../../shared/floor/commands.ts';
import { ID_BYTES, idFromBytes } from '../../../shared/ids.ts';
import { OPENING_MS } from '../../domain/support/harbour.ts';
import { houseFile } from '../../domain/support/random-house.ts';
import { noCounts, type Counts, type WordCounts } from './counts.ts';
import { MemoryDeviceBook } from './device-book.ts';
import { checkEnd } from './final-checks.ts';
import { HouseTruth } from './house-truth.ts';
import { Ledger } from './ledger.ts';
import { Machine } from './machine.ts';
import { Network } from './network.ts';
import type { Plant } from './plant.ts';
import { Random } from './random.ts';
import { ServerRoom } from './server-room.ts';
import { SimDevice } from './sim-device.ts';
import { SteadyChecks } from './steady-checks.ts';
import { TapBook } from './tap-book.ts';
import { Thumb } from './thumb.ts';
import { Troubles } from './troubles.ts';
import { Violations, type Violation } from './violation.ts';
import { VirtualTime } from './virtual-time.ts';
import { WireWitness } from './wire-witness.ts';

/** Before this nothing goes wrong: the day is brought in, the pages come through. Real time. */
const QUIET_MS = 5_000;
/** Healing takes as long as somebody still waits to try again, at most so long: longer than the longest pause. Real time. */
const HEALING_MOST_MS = 150_000;
/** And at least so long: a line that broke without a word is noticed by the silence. */
const HEALING_LEAST_MS = 30_000;
const HEALING_STEP_MS = 5_000;
const LOOK_EVERY_MS = 5_000;
/** Waiting for a moment with nothing under way, after the healing. */
const MOMENT_MS = 50;
const MOMENTS = 400;

export interface Report {
  readonly seed: number;
  readonly counts: Counts;
  readonly words: WordCounts;
  readonly violation: Violation | null;
  /** Hash of the journal's last event: the same seed, the same day. */
  readonly journalHash: string;
}

export interface SimulationOptions {
  readonly seed: number;
  /** Where snapshots go. */
  readonly folder: string;
  readonly plant?: Plant;
}

/**
 * Runs one day of the demo house with everything that can go wrong, then heals it, and looks at every invariant all along.
 * The domain, the floor, the hub, the caller, the sounder and the pages' link are the real ones; time, network, clocks, storage
 * and disk are made here, all by the seed.
 */
export async function simulate(options: SimulationOptions): Promise<Report> {
  const simulation = new Simulation(options);
  // Nobody waits for the floor's writer or the hub's commands: what they throw comes out here.
  const onRejection = (error: unknown): void =>
    simulation.violations.report('bug', `something threw: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  process.on('unhandledRejection', onRejection);
  try {
    return await simulation.run();
  } finally {
    process.off('unhandledRejection', onRejection);
  }
}

class Simulation {
  readonly violations = new Violations();
  readonly #seed: number;
  readonly #counts = noCounts();
  readonly #time = new VirtualTime(OPENING_MS);
  readonly #random: Random;
  readonly #disk: MemoryDisk;
  readonly #ledger: Ledger;
  readonly #wire: WireWitness;
  readonly #network: Network;
  readonly #room: ServerRoom;
  readonly #taps = new TapBook();
  readonly #devices: readonly SimDevice[];
  readonly #checks: SteadyChecks;
  readonly #pace: number;
  readonly #troubledUntilMs: number;

  constructor({ seed, folder, plant = {} }: SimulationOptions) {
    this.#seed = seed;
    const random = new Random(seed, 'plan');
    this.#random = random;
    this.#pace = random.pick([1, 20, 60, 60, 120]);
    this.#troubledUntilMs = this.#time.nowMs + random.between(60_000, 200_000);
    const ids = new Random(seed, 'ids');
    this.#disk = emptyMemoryDisk(idFromBytes(ids.bytes(ID_BYTES)));
    const machine = new Machine(this.#time, random.pick([0, 0, -3_600_000, 12_345_678]));
    const truth = new HouseTruth(() => machine.wallErrorMs);
    const shared = { time: this.#time, disk: this.#disk, taps: this.#taps, violations: this.violations, counts: this.#counts, truth };
    this.#ledger = new Ledger({ ...shared, clockRightSinceMs: () => this.#room.clockRightSinceMs });
    this.#wire = new WireWitness(this.#time, this.#disk, this.#taps, this.violations);
    this.#ledger.sounds = this.#wire;
    this.#network = new Network(this.#time, new Random(seed, 'network'), this.#wire);
    const book = new MemoryDeviceBook();
    const snapshotPath = join(folder, `snapshot-${seed}.json`);
    rmSync(snapshotPath, { force: true });
    this.#room = new ServerRoom({
      ...shared,
      random: new Random(seed, 'server'),
      ids,
      ledger: this.#ledger,
      wire: this.#wire,
      network: this.#network,
      machine,
      devices: book,
      pace: this.#pace,
      snapshotPath,
      file: houseFile(seed),
      plant,
    });
    this.#devices = this.#makeDevices(book, plant);
    this.#checks = new SteadyChecks({ ...shared, room: this.#room, ledger: this.#ledger, devices: this.#devices, network: this.#network });
  }

  async run(): Promise<Report> {
    const time = this.#time;
    await this.#room.start();
    time.after(LOOK_EVERY_MS, () => this.#look());
    await this.#pass(QUIET_MS);
    for (const device of this.#devices) this.#tapOn(device, new Thumb(device, new Random(this.#seed, `thumb of ${device.name}`)));
    new Troubles({
      time,
      random: new Random(this.#seed, 'troubles'),
      room: this.#room,
      network: this.#network,
      devices: this.#devices,
      counts: this.#counts,
      untilMs: this.#troubledUntilMs,
    }).begin();
    // A moment longer, so that whatever slept until then is awake.
    await this.#pass(this.#troubledUntilMs - time.nowMs + 1);
    this.#heal();
    await this.#awaitHealing();
    await this.#awaitMoment();
    if (this.violations.first === null)
      checkEnd({
        disk: this.#disk,
        room: this.#room,
        ledger: this.#ledger,
        wire: this.#wire,
        taps: this.#taps,
        devices: this.#devices,
        pace: this.#pace,
        violations: this.violations,
      });
    const counts = {
      ...this.#counts,
      steps: time.steps,
      taps: this.#taps.all().length,
      doubledMessages: this.#network.doubled,
      repeatedCommands: this.#repeated(),
    };
    return {
      seed: this.#seed,
      counts,
      words: this.#ledger.words,
      violation: this.violations.first,
      journalHash: hashText(this.#disk.events.at(-1)?.hash ?? ZERO_HASH),
    };
  }

  #makeDevices(book: MemoryDeviceBook, plant: Plant): readonly SimDevice[] {
    const random = this.#random;
    const phones = random.whole(2, 4);
    const walls = random.whole(1, 2);
    const names = [
      ...Array.from({ length: phones }, (_, index) => `phone ${index + 1}`),
      ...Array.from({ length: walls }, (_, index) => `wall ${index + 1}`),
    ];
    return names.map((name) => {
      const ids = new Random(this.#seed, name);
      const stationId = name.startsWith('phone') ? random.pick([null, 'bench', 'oven']) : null;
      const device = { id: idFromBytes(ids.bytes(ID_BYTES)), name, stationId };
      book.add(device);
      const page = name.startsWith('wall') ? 'wall' : 'phone';
      const made = new SimDevice({
        time: this.#time,
        random: ids,
        network: this.#network,
        device,
        page,
        wire: this.#wire,
        taps: this.#taps,
        violations: this.violations,
        plant,
      });
      if (page === 'wall') made.setSound(random.pick(['on', 'on', 'waiting']));
      return made;
    });
  }

  /** Taps now and then, as long as things go wrong. */
  #tapOn(device: SimDevice, thumb: Thumb): void {
    const random = this.#random;
    const meanMs = device.page === 'wall' ? 60_000 : 9_000;
    const next = (): void => {
      const atMs = this.#time.nowMs + 300 + random.wait(meanMs);
      if (atMs >= this.#troubledUntilMs) return;
      this.#time.at(atMs, () => {
        if (device.host.isAwake) this.#tap(device, thumb.choose());
        next();
      });
    };
    next();
  }

  #tap(device: SimDevice, command: ClientCommand | null): void {
    if (command === null) return;
    device.tap(command);
    const random = this.#random;
    const others = this.#devices.filter((other) => other !== device && other.page === 'phone');
    const isStep = command.type === 'finishStep' || command.type === 'startStep' || command.type === 'skipStep';
    if (!isStep || others.length === 0 || !random.chance(0.25)) return;
    // Somebody at another bench saw the same row, and has not seen yet that it is done.
    const other = random.pick(others);
    this.#time.after(random.between(0, 1_500), () => {
      if (other.host.isAwake) other.tap(command);
    });
  }

  #heal(): void {
    this.#network.holdUps = 0;
    this.#network.doublesUp = false;
    this.#room.heal();
    for (const device of this.#devices) {
      this.#network.setReach(device.id, true);
      device.failsToSound = 0;
      if (device.page === 'wall') device.setSound('on');
      device.wake();
    }
  }

  async #awaitHealing(): Promise<void> {
    const startMs = this.#time.nowMs;
    const isHealed = (): boolean =>
      this.#room.serving !== null &&
      this.#devices.every(({ isLive, storedTaps, client }) => isLive && storedTaps === 0 && client.view.kept.length === 0);
    await this.#pass(HEALING_LEAST_MS);
    while (!isHealed() && this.violations.first === null && this.#time.nowMs - startMs < HEALING_MOST_MS) await this.#pass(HEALING_STEP_MS);
  }

  async #awaitMoment(): Promise<void> {
    for (let moment = 0; moment < MOMENTS; moment += 1) {
      const sequence = this.#room.serving?.floor.state.sequence;
      if (sequence === this.#ledger.sequence && this.#devices.every((device) => device.client.view.sequence === sequence)) return;
      await this.#pass(MOMENT_MS);
    }
  }

  #look(): void {
    this.#checks.look();
    this.#time.after(LOOK_EVERY_MS, () => this.#look());
  }

  async #pass(ms: number): Promise<void> {
    if (this.violations.first === null) await this.#time.runUntil(this.#time.nowMs + ms, () => this.violations.first !== null);
  }

  /** Commands that came to the server more than once. */
  #repeated(): number {
    return this.#taps.all().filter((tap) => tap.arrivals.length > 1).length;
  }
}
