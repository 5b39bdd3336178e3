import type { Counts } from './counts.ts';
import type { Break, Network } from './network.ts';
import type { Random } from './random.ts';
import type { CrashPoint, ServerRoom } from './server-room.ts';
import type { SimDevice } from './sim-device.ts';
import type { VirtualTime } from './virtual-time.ts';

const SECOND_MS = 1_000;
const MINUTE_MS = 60_000;
const HOUR_MS = 3_600_000;

export interface TroublesOptions {
  readonly time: VirtualTime;
  readonly random: Random;
  readonly room: ServerRoom;
  readonly network: Network;
  readonly devices: readonly SimDevice[];
  readonly counts: Counts;
  /** In true time: from then on nothing goes wrong any more. */
  readonly untilMs: number;
}

/** What goes wrong in a run: for each seed some kinds of trouble and not others, so that each also shows without the rest. */
export class Troubles {
  readonly #options: TroublesOptions;

  constructor(options: TroublesOptions) {
    this.#options = options;
  }

  begin(): void {
    const { random, network, room } = this.#options;
    network.doublesUp = random.chance(0.3);
    network.holdUps = random.pick([0, 0.01, 0.05]);
    const kinds: readonly (readonly [meanMs: number, run: () => void | Promise<void>])[] = [
      [25 * SECOND_MS, () => this.#breakLine()],
      [70 * SECOND_MS, () => this.#outOfReach()],
      [60 * SECOND_MS, () => this.#reload()],
      [80 * SECOND_MS, () => this.#phoneSleeps()],
      [60 * SECOND_MS, () => this.#setPhoneClock()],
      [50 * SECOND_MS, () => this.#touchSound()],
      [70 * SECOND_MS, () => this.#crash()],
      [150 * SECOND_MS, () => this.#failAppend()],
      [120 * SECOND_MS, () => this.#spell(5 * SECOND_MS, 50 * SECOND_MS, (isOn) => this.#fillDisk(isOn))],
      [90 * SECOND_MS, () => this.#spell(3 * SECOND_MS, 20 * SECOND_MS, (isOn) => this.#slowDisk(isOn))],
      [
        70 * SECOND_MS,
        () => room.setClock(random.pick([HOUR_MS, -HOUR_MS, 10 * MINUTE_MS, -10 * MINUTE_MS, 90 * SECOND_MS, -90 * SECOND_MS])),
      ],
      [150 * SECOND_MS, () => room.sleep(this.#spellMs(10 * SECOND_MS, 300 * SECOND_MS))],
      [80 * SECOND_MS, () => room.writeSnapshot()],
      [120 * SECOND_MS, () => room.stop(this.#spellMs(200, 30 * SECOND_MS))],
    ];
    for (const [meanMs, run] of kinds) if (random.chance(0.65)) this.#every(meanMs, run);
  }

  #every(meanMs: number, run: () => void | Promise<void>): void {
    const { time, random, untilMs } = this.#options;
    const atMs = time.nowMs + random.wait(meanMs);
    if (atMs >= untilMs) return;
    time.at(atMs, async () => {
      await run();
      this.#every(meanMs, run);
    });
  }

  /** Something that lasts, but never beyond the troubles themselves. */
  #spell(leastMs: number, mostMs: number, set: (isOn: boolean) => void): void {
    set(true);
    this.#options.time.after(this.#spellMs(leastMs, mostMs), () => set(false));
  }

  #spellMs(leastMs: number, mostMs: number): number {
    const { time, random, untilMs } = this.#options;
    return Math.min(random.between(leastMs, mostMs), untilMs - time.nowMs);
  }

  #breakLine(): void {
    const { random, network, devices, counts } = this.#options;
    counts.brokenLines += 1;
    const device = random.pick(devices);
    device.disturbed();
    network.break(device.id, random.pick<Break>(['cut', 'pageFirst', 'stalled', 'deafPage']));
  }

  #outOfReach(): void {
    const { random, network, devices } = this.#options;
    const device = random.pick(devices);
    this.#spell(10 * SECOND_MS, 4 * MINUTE_MS, (isOut) => {
      device.disturbed();
      network.setReach(device.id, !isOut);
      if (isOut) network.break(device.id, random.pick<Break>(['cut', 'stalled', 'pageFirst']));
      else if (random.chance(0.7)) device.wake();
    });
  }

  #reload(): void {
    const { random, devices, counts } = this.#options;
    counts.reloads += 1;
    random.pick(devices).reload(random.chance(0.6));
  }

  #phoneSleeps(): void {
    const { random, devices, time } = this.#options;
    const device = random.pick(devices);
    const { host } = device;
    const ms = this.#spellMs(SECOND_MS, 2 * MINUTE_MS);
    device.disturbed();
    host.sleep(ms);
    time.after(ms, () => {
      device.disturbed();
      if (random.chance(0.7)) device.wake();
    });
  }

  #setPhoneClock(): void {
    const { random, devices, counts } = this.#options;
    counts.phoneClockSets += 1;
    random.pick(devices).wallErrorMs = random.pick([0, HOUR_MS, -HOUR_MS, 5 * MINUTE_MS, -24 * HOUR_MS, 5 * SECOND_MS]);
  }

  #touchSound(): void {
    const { random, devices } = this.#options;
    const device = random.pick(devices);
    device.setSound(
      random.weighted([
        ['on', 5],
        ['waiting', 2],
        ['none', 1],
      ]),
    );
    device.failsToSound = random.pick([0, 0, 0.2, 1]);
  }

  #crash(): void {
    const { random, room } = this.#options;
    const downMs = this.#spellMs(200, random.pick([2 * SECOND_MS, 20 * SECOND_MS, 2 * MINUTE_MS]));
    room.crash(random.pick<CrashPoint>(['now', 'beforeAppend', 'afterAppend', 'afterAcknowledge']), downMs);
  }

  #failAppend(): void {
    const { time, room } = this.#options;
    room.failNextAppend();
    const watch = (): void => {
      if (room.isBehindDisk) room.crash('now', this.#spellMs(200, 10 * SECOND_MS));
    };
    time.after(this.#spellMs(5 * SECOND_MS, 25 * SECOND_MS), watch);
  }

  #fillDisk(isFull: boolean): void {
    const { room, counts } = this.#options;
    if (isFull) counts.diskFull += 1;
    room.isDiskFull = isFull;
    room.disturbed();
  }

  #slowDisk(isSlow: boolean): void {
    const { room } = this.#options;
    room.isDiskSlow = isSlow;
    room.disturbed();
  }
}
