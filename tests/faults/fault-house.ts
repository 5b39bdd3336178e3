import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { dueOf } from '../../shared/floor/due.ts';
import { evolveAll } from '../../shared/floor/evolve.ts';
import { forScreens } from '../../shared/floor/for-screens.ts';
import { nextSound } from '../../shared/floor/sounding.ts';
import { EMPTY_STATE, type FloorState } from '../../shared/floor/state.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import { houseHours } from '../../server/floor/house-hours.ts';
import { canonicalJson } from '../../server/journal/canonical-json.ts';
import { JOURNAL_FILE, SqliteJournal } from '../../server/journal/sqlite-journal.ts';
import { SNAPSHOT_FILE } from '../../server/journal/snapshot-file.ts';
import { letIn } from '../support/let-in.ts';
import type { Random } from '../simulation/support/random.ts';
import { FaultClient } from './fault-client.ts';
import { FaultProxy } from './fault-proxy.ts';
import { FaultServer } from './fault-server.ts';
import type { SmallDisk } from './small-disk.ts';

/** The house runs so many times faster than the clock: a second is four minutes, and calls come all the time. */
const PACE = 240;
const PHONES = 4;
/** A round's load lasts so long, in ms. */
const LEAST_LOAD_MS = 350;
const MOST_LOAD_MS = 1400;
/** A tap of each phone every so often on average, in ms. */
const TAP_EVERY_MS = 25;
/** Everything is fine again; so long may it take until every tap is answered, in ms. */
const SETTLE_MS = 20_000;
const LOOK_EVERY_MS = 10;
const YEAR_MS = 365 * 24 * 3_600_000;
const EVENTS_AT_ONCE = 1000;

/** What rounds did and found, added up. */
export interface Counts {
  rounds: number;
  taps: number;
  acknowledged: number;
  refused: number;
  kills: number;
  stops: number;
  cuts: number;
  clockJumps: number;
  secondServers: number;
  fullDisks: number;
  notKept: number;
  snapshotsLost: number;
  reconnects: number;
  duesOnReturn: number;
  worstSoundMs: number;
  events: number;
}

export const NO_COUNTS: Counts = {
  rounds: 0,
  taps: 0,
  acknowledged: 0,
  refused: 0,
  kills: 0,
  stops: 0,
  cuts: 0,
  clockJumps: 0,
  secondServers: 0,
  fullDisks: 0,
  notKept: 0,
  snapshotsLost: 0,
  reconnects: 0,
  duesOnReturn: 0,
  worstSoundMs: 0,
  events: 0,
};

export interface FaultHouseOptions {
  readonly folder: string;
  readonly shiftFolder: string;
  readonly port: number;
  readonly random: Random;
  readonly counts: Counts;
  /** Null where none may be mounted here. */
  readonly disk: SmallDisk | null;
  /** A call that is due on return is to be asked for within so long, in ms. */
  readonly mostSoundMs: number;
  /** To see that it is found: every so many taps one is lost and acknowledged all the same. 0: none is. */
  readonly forgesEvery: number;
}

/** One data folder that lives through many rounds: a real server on it, a wall and four phones behind a network at fault. */
export class FaultHouse {
  readonly #options: FaultHouseOptions;
  readonly #proxy: FaultProxy;
  readonly #violations: string[] = [];
  #server: FaultServer | null = null;
  #clients: FaultClient[] = [];
  #proxyPort = 0;
  #isDueOnReturn = false;

  constructor(options: FaultHouseOptions) {
    this.#options = options;
    this.#proxy = new FaultProxy(() => options.port, options.random);
    this.#proxy.forgesEvery = options.forgesEvery;
  }

  async open(): Promise<void> {
    this.#proxyPort = await this.#proxy.listen();
    this.#server = await this.#start();
    for (const page of ['wall', ...Array<'phone'>(PHONES).fill('phone')] as const) {
      const client = new FaultClient(page, this.#proxyPort, letIn(this.#options.port, page, page === 'wall' ? 'look' : 'manage').cookie);
      if (page === 'wall') client.onLive = (serverRealMs) => this.#lookWhatIsDue(client, serverRealMs);
      client.connect();
      this.#clients.push(client);
    }
    await this.#settled();
  }

  /** One round: load, faults, an end; then all is fine again, and everything is looked at. Returns what is wrong. */
  async round(): Promise<readonly string[]> {
    const { random, counts, disk } = this.#options;
    this.#violations.length = 0;
    counts.rounds += 1;
    const endMs = performance.now() + random.between(LEAST_LOAD_MS, MOST_LOAD_MS);
    const faults = this.#plan(endMs);
    const taps = this.#clients.filter(({ page }) => page === 'phone').map((phone) => this.#tapUntil(phone, endMs));
    await Promise.all([...faults, ...taps]);
    if (this.#server?.hasDied === true) this.#violations.push(`the server ended by itself: ${this.#server.lastWords}`);
    const end = random.weighted<'kill' | 'stop' | 'stay'>([
      ['kill', 7],
      ['stop', 2],
      ['stay', 1],
    ]);
    if (end !== 'stay') await this.#goDown(end);
    this.#proxy.clearUp();
    disk?.free();
    this.#isDueOnReturn = false;
    if (end !== 'stay') this.#server = await this.#start();
    await this.#settled();
    await this.#check(end !== 'stay');
    return [...this.#violations];
  }

  /** Ends all that was started. */
  async end(): Promise<void> {
    for (const client of this.#clients) client.end();
    await this.#server?.end('SIGTERM');
    await this.#proxy.close();
  }

  /** What is wrong with the whole hash chain, once all has ended. */
  async brokenChain(): Promise<readonly string[]> {
    const journal = new SqliteJournal(join(this.#options.folder, JOURNAL_FILE), { readOnly: true });
    try {
      const kitchenId = await journal.knownKitchenId();
      if (kitchenId === null) return ['the journal knows no kitchen'];
      const { sequence } = await journal.head(kitchenId);
      const broken = await journal.verifyChain(kitchenId, 1, sequence);
      return broken === null ? [] : [`the hash chain is broken at ${broken} of ${sequence}`];
    } finally {
      await journal.close();
    }
  }

  #start(): Promise<FaultServer> {
    const { folder, port, shiftFolder } = this.#options;
    return FaultServer.started(folder, port, PACE, shiftFolder);
  }

  /** What goes wrong in this round, and when. */
  #plan(endMs: number): readonly Promise<void>[] {
    const { random, counts, disk, folder, port } = this.#options;
    const spanMs = endMs - performance.now();
    const at = (run: () => void | Promise<void>): Promise<void> => pause(random.share() * spanMs).then(run);
    const faults: Promise<void>[] = [];
    if (random.chance(0.7))
      for (let cuts = random.whole(1, 4); cuts > 0; cuts -= 1)
        faults.push(
          at(() => {
            counts.cuts += 1;
            this.#proxy.cut(random.between(0.2, 1));
          }),
        );
    if (random.chance(0.6))
      faults.push(
        at(() => {
          this.#proxy.weather = { delayMs: random.between(0, 150), swapped: random.between(0, 0.3), doubled: random.between(0, 0.4) };
        }),
      );
    if (random.chance(0.3))
      faults.push(
        at(() => {
          counts.clockJumps += 1;
          this.#server?.setClock(random.pick([-YEAR_MS, -3_600_000, -5_000, 5_000, 3_600_000, YEAR_MS]));
        }),
      );
    if (disk !== null && random.chance(0.25))
      faults.push(
        at(() => {
          counts.fullDisks += 1;
          disk.fill(random.whole(0, 40_000));
        }),
      );
    if (random.chance(0.1))
      faults.push(
        at(async () => {
          counts.secondServers += 1;
          const { code, said } = await FaultServer.second(folder, port + 1, PACE);
          if (code !== 1 || !/in use|running|another/i.test(said))
            this.#violations.push(`a second server ended with ${code}: ${said.slice(0, 200)}`);
        }),
      );
    if (random.chance(0.2)) faults.push(at(() => random.pick(this.#clients).forget()));
    return faults;
  }

  async #goDown(how: 'kill' | 'stop'): Promise<void> {
    const { counts, random, folder } = this.#options;
    counts[how === 'kill' ? 'kills' : 'stops'] += 1;
    await this.#server?.end(how === 'kill' ? 'SIGKILL' : 'SIGTERM');
    if (random.chance(0.15)) {
      counts.snapshotsLost += 1;
      rmSync(join(folder, SNAPSHOT_FILE), { force: true });
    }
  }

  async #tapUntil(phone: FaultClient, endMs: number): Promise<void> {
    const { random, counts } = this.#options;
    for (;;) {
      await pause(random.wait(TAP_EVERY_MS));
      if (performance.now() > endMs) return;
      const command = this.#command(phone.state);
      if (command === null) continue;
      counts.taps += 1;
      phone.tap(command);
    }
  }

  #command(state: FloorState): ClientCommand | null {
    const { random } = this.#options;
    const open = Object.values(state.workpieces).filter(({ finishedMs }) => finishedMs === null);
    if (open.length === 0) return null;
    const workpiece = random.pick(open);
    const workpieceId = workpiece.id;
    const due = dueOf(state, workpiece);
    const stepId = due?.step.id ?? 'weigh';
    return random.weighted<ClientCommand>([
      [{ type: due?.startedMs === null ? 'startStep' : 'finishStep', workpieceId, stepId }, 3],
      [{ type: 'readTemperature', workpieceId, where: 'dough', celsius: random.whole(20, 30) }, 3],
      [{ type: 'giveMoreTime', workpieceId, stepId, minutes: random.pick([1, 2, 5]) }, 2],
      [{ type: 'holdWorkpiece', workpieceId, stepId, minutes: 5 }, 2],
      [{ type: 'releaseWorkpiece', workpieceId, stepId }, 1],
      [{ type: 'hearAllCalls' }, 1],
      [{ type: 'reportProgress', workpieceId, stepId, piecesDone: random.whole(0, 20) }, 1],
    ]);
  }

  /** Waits until every client is live, has the server's last event, and no tap unanswered. */
  async #settled(): Promise<void> {
    const endMs = performance.now() + SETTLE_MS;
    for (;;) {
      const isCalm = this.#clients.every((client) => client.isLive && client.kept.size === 0);
      if (isCalm) return;
      if (performance.now() > endMs) {
        const left = this.#clients.map((client) => `${client.page} ${client.isLive ? 'live' : 'not live'}, ${client.kept.size} kept`);
        this.#violations.push(`not settled after ${SETTLE_MS} ms: ${left.join('; ')}`);
        return;
      }
      await pause(LOOK_EVERY_MS);
    }
  }

  async #check(hasReturned: boolean): Promise<void> {
    const { counts } = this.#options;
    if (hasReturned) await this.#checkSound();
    const server = this.#server;
    if (server === null) throw new Error('the server is up after a round');
    const events = await this.#events(server);
    counts.events = Math.max(counts.events, events.length);
    const byCommand = new Map<string, RecordedEvent[]>();
    for (const [index, event] of events.entries()) {
      if (event.sequence !== index + 1) this.#violations.push(`event ${index + 1} has sequence ${event.sequence}`);
      const own = byCommand.get(event.commandId) ?? [];
      if (own.length > 0 && own.at(-1)?.sequence !== event.sequence - 1)
        this.#violations.push(`command ${event.commandId} is in the journal twice`);
      if (event.ordinal !== own.length) this.#violations.push(`command ${event.commandId} has no event ${own.length}`);
      byCommand.set(event.commandId, [...own, event]);
    }
    counts.acknowledged = 0;
    counts.refused = 0;
    for (const client of this.#clients) {
      for (const [commandId, outcome] of client.answered) {
        const own = byCommand.get(commandId);
        if (outcome.ok) {
          counts.acknowledged += 1;
          // A tap that changed nothing has no event; one that has, has its last where it was told.
          if (own === undefined || own.at(-1)?.sequence !== outcome.sequence)
            this.#violations.push(
              `command ${commandId} was acknowledged at ${outcome.sequence}, its events end at ${String(own?.at(-1)?.sequence)}`,
            );
        } else {
          counts.refused += 1;
          if (own !== undefined) this.#violations.push(`command ${commandId} was refused (${outcome.refusal.code}) and is in the journal`);
        }
      }
      counts.notKept += client.notKept;
      client.notKept = 0;
      counts.reconnects += client.reconnects;
      client.reconnects = 0;
      this.#violations.push(...client.faults.splice(0));
    }
    await this.#checkFolds(server, events);
  }

  /** The server's state, an independent fold of its journal, and what every client has folded are one. */
  async #checkFolds(server: FaultServer, before: readonly RecordedEvent[]): Promise<void> {
    const { state } = await server.get<{ state: FloorState }>('/api/state');
    const more = await this.#events(server, before.length);
    const all = [...before, ...more].filter(({ sequence }) => sequence <= state.sequence);
    const fold = evolveAll(EMPTY_STATE, all);
    if (canonicalJson(asSent(fold)) !== canonicalJson(state))
      this.#violations.push(`the server's state at ${state.sequence} is not the fold of its journal`);
    for (const client of this.#clients) {
      const { sequence } = client.state;
      const known = [...before, ...more];
      if (sequence > known.length) continue;
      const truth = evolveAll(EMPTY_STATE, known.slice(0, sequence));
      if (canonicalJson(asSent(forScreens(truth))) !== canonicalJson(asSent(forScreens(client.state))))
        this.#violations.push(`a ${client.page} has another state at ${sequence} than the fold of the journal`);
    }
  }

  /** Whether what was due when the wall came back was asked of it, and how soon. */
  async #checkSound(): Promise<void> {
    const { counts, mostSoundMs } = this.#options;
    const wall = this.#clients[0];
    if (wall === undefined || !this.#isDueOnReturn) return;
    const endMs = performance.now() + SETTLE_MS;
    while (Number.isNaN(wall.askedToSoundMs) && performance.now() < endMs) await pause(LOOK_EVERY_MS);
    counts.duesOnReturn += 1;
    const tookMs = Math.max(0, wall.askedToSoundMs - wall.liveMs);
    if (Number.isNaN(tookMs)) this.#violations.push('what was due was never asked of the wall that was back');
    else counts.worstSoundMs = Math.max(counts.worstSoundMs, Math.round(tookMs));
    if (tookMs > mostSoundMs) this.#violations.push(`what was due was asked of the wall ${Math.round(tookMs)} ms after it was back`);
  }

  /** A wall is back: whether anything has to sound at that moment, by the state that it was told and the server's own time. */
  #lookWhatIsDue(wall: FaultClient, serverRealMs: number): void {
    const { clock, state } = wall;
    if (clock === null) return;
    const nowMs = clock.houseMs + clock.pace * (serverRealMs - clock.realMs);
    const next = nextSound(state, nowMs, houseHours(state.house?.document ?? null));
    this.#isDueOnReturn = next !== null && next.atMs <= nowMs;
  }

  async #events(server: FaultServer, after = 0): Promise<readonly RecordedEvent[]> {
    const all: RecordedEvent[] = [];
    for (let next = after; ;) {
      const page = await server.get<{ events: readonly RecordedEvent[]; next: number }>(
        `/api/events?after=${next}&limit=${EVENTS_AT_ONCE}`,
      );
      all.push(...page.events);
      if (page.events.length < EVENTS_AT_ONCE) return all;
      next = page.next;
    }
  }
}

/** As it comes over the wire: what is undefined is not there. */
function asSent(state: FloorState): FloorState {
  return JSON.parse(JSON.stringify(state)) as FloorState;
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
