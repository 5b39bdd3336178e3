import { HouseClock, anchorForStart } from '../../../server/clock/house-clock.ts';
import { RealTime } from '../../../server/clock/real-time.ts';
import { NOBODY_JOINS } from '../../../shared/wire/joining.ts';
import type { Timers } from '../../../server/floor/alarm-clock.ts';
import { Caller } from '../../../server/floor/caller.ts';
import { Floor } from '../../../server/floor/floor.ts';
import { HOUSE_DEVICE_ID } from '../../../server/floor/house-device.ts';
import { SoundTester } from '../../../server/floor/sound-tester.ts';
import { Sounder, type SoundOrder } from '../../../server/floor/sounder.ts';
import type { Journal } from '../../../server/journal/journal.ts';
import { LiveHub, type Connection, type DeviceBook } from '../../../server/live/live-hub.ts';
import type { Peer } from '../../../server/live/peer.ts';
import { ClockWatch } from '../../../server/main/clock-watch.ts';
import { loadState } from '../../../server/main/load-state.ts';
import { SnapshotKeeper } from '../../../server/main/snapshot-keeper.ts';
import type { CommandOf } from '../../../shared/floor/commands.ts';
import type { RecordedEvent } from '../../../shared/floor/events.ts';
import type { Outcome } from '../../../shared/floor/refusals.ts';
import { assert } from '../../../shared/result.ts';
import { HEARTBEAT_MS } from '../../../shared/wire/protocol.ts';
import type { Host } from './host.ts';
import type { Machine } from './machine.ts';
import type { Plant } from './plant.ts';

export interface SimServerOptions {
  readonly host: Host;
  readonly machine: Machine;
  readonly journal: Journal;
  readonly kitchenId: string;
  readonly devices: DeviceBook;
  readonly pace: number;
  readonly newId: () => string;
  /** Where a snapshot is looked for; null to fold the whole journal. */
  readonly readSnapshotPath: string | null;
  readonly snapshotPath: string;
  readonly day: { readonly commandId: string; readonly commandAt: (nowMs: number) => CommandOf<'bringInDay'> };
  readonly plant: Plant;
}

const silentLog = { warn: () => {}, info: () => {}, error: () => {} };

/** What comes to life once the house's clock is in the journal. */
interface Parts {
  readonly hub: LiveHub;
  readonly sounder: Sounder;
  readonly tester: SoundTester;
  readonly caller: Caller;
  readonly watch: ClockWatch;
}

/** One life of the server: the parts that `house.ts` puts together, in its order, without the files and the sockets. */
export class SimServer {
  readonly host: Host;
  readonly floor: Floor;
  readonly clock: HouseClock;
  readonly isFromSnapshot: boolean;
  readonly #options: SimServerOptions;
  readonly #real: RealTime;
  readonly #recent: readonly RecordedEvent[];
  readonly #snapshots: SnapshotKeeper;
  #parts: Parts | null = null;
  #isClosing = false;

  /** Loads what is on the disk. It listens once `begin` has been through. */
  static async load(options: SimServerOptions): Promise<SimServer> {
    const { journal, kitchenId, readSnapshotPath } = options;
    return new SimServer(options, await loadState(journal, kitchenId, readSnapshotPath, silentLog));
  }

  private constructor(options: SimServerOptions, { state, snapshotSequence, recent }: Awaited<ReturnType<typeof loadState>>) {
    const { host, machine, journal, kitchenId, pace, plant } = options;
    this.#options = options;
    this.#recent = recent;
    this.host = host;
    this.isFromSnapshot = snapshotSequence > 0;
    this.#real = new RealTime(machine.clocksOf(host));
    this.clock = new HouseClock(this.#real, anchorForStart(state.clock, pace, this.#real.nowMs()));
    const nowMs = (): number => this.clock.nowMs() + (plant.floorAheadMs ?? 0);
    this.floor = new Floor({ kitchenId, journal, state, clock: { nowMs, pace }, log: silentLog, defer: (run) => void host.after(0, run) });
    this.#snapshots = new SnapshotKeeper(this.floor, journal, options.snapshotPath, snapshotSequence, silentLog);
  }

  get isServing(): boolean {
    return this.#parts !== null && !this.#isClosing && this.host.isAlive;
  }

  /** Comes to life, as the server does on starting, says when it listens, and brings in the day. */
  async begin(onServing: () => void): Promise<void> {
    const { pace, newId, day, plant } = this.#options;
    const { anchor } = this.clock;
    if (this.floor.state.clock?.pace !== pace) await this.#house(newId(), { type: 'anchorClock', ...anchor });
    const parts = this.#build();
    this.host.after(HEARTBEAT_MS, () => this.#tick(parts));
    if (plant.raisesCalls === false) parts.caller.stop();
    else await parts.caller.look();
    parts.sounder.look();
    this.#parts = parts;
    onServing();
    await this.#house(day.commandId, day.commandAt(this.clock.nowMs()));
  }

  accept(peer: Peer, deviceId: string): Connection | null {
    const device = this.#options.devices.all().find((candidate) => candidate.id === deviceId);
    assert(device !== undefined && this.#parts !== null, 'a device has its cookie before it connects, to a server that listens');
    return this.#parts.hub.connect(
      this.#options.plant.peer?.(peer) ?? peer,
      device,
      'manage',
      device.name.startsWith('wall') ? 'wall' : 'phone',
    );
  }

  /** A snapshot, as one is written every thousand events and on going down in good order. */
  async writeSnapshot(): Promise<void> {
    await this.#snapshots.finish();
  }

  /** Begins to go down in good order, as the server does when it is told to; what is left to do then is a last snapshot. */
  async close(): Promise<void> {
    this.#isClosing = true;
    this.#parts?.caller.stop();
    this.#parts?.sounder.stop();
    this.#parts?.tester.stop();
    this.#parts?.hub.stop();
    await this.floor.settled();
  }

  #build(): Parts {
    const { host, devices, newId, plant } = this.#options;
    const { floor, clock } = this;
    // Whole milliseconds and never none, as Node's own timers have it.
    const timers: Timers = { set: (run, delayMs) => ({ cancel: host.after(Math.max(1, Math.trunc(delayMs)), run) }) };
    const hub = new LiveHub(
      {
        floor,
        clock,
        devices,
        addresses: [],
        log: silentLog,
        joining: () => NOBODY_JOINS,
        areBackupsLate: () => false,
        onSounded: (soundId, deviceId) => void sounder.sounded(soundId, deviceId),
        onSoundOutletChanged: () => {
          sounder.look();
          tester.look();
        },
      },
      this.#recent,
    );
    const order = plant.order ?? ((asked: SoundOrder, give: (asked: SoundOrder) => string | null) => give(asked));
    const sounder = new Sounder(
      floor,
      clock,
      timers,
      newId,
      (asked) => order(asked, (given) => hub.sound(given)),
      (deviceId) => hub.doubt(deviceId),
    );
    const tester = new SoundTester(floor, clock, timers, newId, () => hub.soundingDeviceId !== null);
    const aheadMs = plant.floorAheadMs ?? 0;
    const callerClock = { nowMs: () => clock.nowMs() + aheadMs, realUntilMs: (atMs: number) => clock.realUntilMs(atMs - aheadMs) };
    const caller = new Caller(floor, callerClock, timers, newId);
    const watch = new ClockWatch(this.#real, clock, floor, newId, silentLog, () => {
      hub.clockChanged();
      sounder.look();
      tester.look();
      void caller.look();
    });
    return { hub, sounder, tester, caller, watch };
  }

  #tick(parts: Parts): void {
    parts.hub.sweep();
    if (this.#options.plant.noticesJumps !== false) void parts.watch.look();
    if (!this.#isClosing) this.host.after(HEARTBEAT_MS, () => this.#tick(parts));
  }

  #house(commandId: string, command: CommandOf<'anchorClock'> | CommandOf<'bringInDay'>): Promise<Outcome> {
    return this.floor.submit({ commandId, deviceId: HOUSE_DEVICE_ID, stationId: null, tap: null, command });
  }
}
