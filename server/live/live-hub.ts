import type { Logger } from 'pino';
import type { ZodError } from 'zod';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';
import { forScreens } from '../../shared/floor/for-screens.ts';
import { unreachable } from '../../shared/result.ts';
import { pathText } from '../../shared/documents/path-text.ts';
import type { Device, DownMessage } from '../../shared/wire/down.ts';
import {
  CLOSE,
  MAX_BACKLOG_BYTES,
  MAX_CATCH_UP_EVENTS,
  MAX_CLIENTS,
  PROTOCOL_VERSION,
  SILENCE_MS,
  UNASKED_T1,
} from '../../shared/wire/protocol.ts';
import { upMessageSchema, type Hello, type UpMessage, type PageKind } from '../../shared/wire/up.ts';
import type { AccessRole, JoiningStatus } from '../../shared/wire/joining.ts';
import { Bucket, type Flow } from '../access/bucket.ts';
import { mayGive, mayUse } from '../access/roles.ts';
import { parseSafely } from '../http/safe-json.ts';
import type { HouseClock } from '../clock/house-clock.ts';
import type { Committed, Floor } from '../floor/floor.ts';
import type { SoundOrder } from '../floor/sounder.ts';
import { News } from './news.ts';
import type { Peer } from './peer.ts';
import { RecentEvents } from './recent-events.ts';
import type { LiveSession, Session } from './session.ts';

/** What the hub needs to know of devices. */
export interface DeviceBook {
  all(): readonly Device[];
  introduce(id: string, name: string | null, stationId: string | null): Device | null;
  touch(id: string, nowMs: number): void;
}

export interface LiveHubOptions {
  readonly floor: Floor;
  readonly clock: HouseClock;
  readonly devices: DeviceBook;
  /** How phones reach this server. */
  readonly addresses: readonly string[];
  readonly log: Pick<Logger, 'warn' | 'info'>;
  /** How letting devices in stands; walls show it. */
  readonly joining: () => JoiningStatus;
  /** Whether the last two backups were missed. */
  readonly areBackupsLate: () => boolean;
  /** A device said that it sounded an order. */
  readonly onSounded: (soundId: string, deviceId: string) => void;
  /** The device that sounds has come, gone, or changed. */
  readonly onSoundOutletChanged: () => void;
}

/** What one client may say: all that it kept while it was away, at once, and then more than any finger taps. */
const MESSAGES: Flow = { burst: 1000, perS: 100 };
/** A name is written to disk and told to everybody. */
const INTRODUCTIONS: Flow = { burst: 10, perS: 0.5 };

interface Holder {
  session: Session;
  /** When it last said anything, by the clock that nobody can set. */
  heardMonotonicMs: number;
  readonly messages: Bucket;
  readonly introductions: Bucket;
}

/** One websocket's way into the hub. */
export interface Connection {
  receive(text: string): void;
  closed(): void;
}

/**
 * All walls and phones. Each says hello with what it holds and gets what it misses, then events as they come: one
 * message per group of commands, made once for everybody. Who cannot keep up is dropped and starts from a snapshot; all
 * get one where events would name documents that screens have not.
 */
export class LiveHub {
  readonly #options: LiveHubOptions;
  readonly #sessions = new Set<Holder>();
  readonly #recent = new RecentEvents(MAX_CATCH_UP_EVENTS);
  readonly #news: News;
  readonly #stop: () => void;
  #snapshot: { readonly sequence: number; readonly text: string } | null = null;
  #nextNumber = 1;
  #soundingDeviceId: string | null = null;
  #soundingPage: PageKind | null = null;
  #toldHealth: string;
  /** Devices that said they could sound and then did not: asked last, until they do. */
  readonly #doubted = new Set<string>();

  constructor(options: LiveHubOptions, recentEvents: readonly RecordedEvent[]) {
    this.#options = options;
    this.#toldHealth = JSON.stringify(this.#health());
    this.#recent.add(recentEvents);
    this.#news = new News(options.floor.state, recentEvents);
    this.#stop = options.floor.onCommitted((committed) => this.#publish(committed));
  }

  get clientCount(): number {
    return this.#sessions.size;
  }

  /** Takes in a websocket whose device is known; null, and closed with the reason, where it may not be here or there is no room. */
  connect(
    peer: Peer,
    device: (Device & { readonly isVouched?: boolean }) | null,
    role: AccessRole | null,
    page: PageKind,
  ): Connection | null {
    if (device === null || role === null || !mayUse(role, 'GET /live')) {
      peer.close(CLOSE.forbidden, 'this device may not be here');
      return null;
    }
    if (this.#sessions.size >= MAX_CLIENTS) {
      peer.close(CLOSE.full, `no more than ${MAX_CLIENTS} clients`);
      return null;
    }
    const holder: Holder = {
      session: { phase: 'greeting', peer, device: asDevice(device), role, page, isVouched: device.isVouched === true },
      heardMonotonicMs: this.#options.clock.monotonicMs(),
      messages: new Bucket(MESSAGES, this.#options.clock.monotonicMs()),
      introductions: new Bucket(INTRODUCTIONS, this.#options.clock.monotonicMs()),
    };
    this.#sessions.add(holder);
    return {
      receive: (text) => {
        if (!this.#sessions.has(holder)) return;
        holder.heardMonotonicMs = this.#options.clock.monotonicMs();
        if (holder.messages.take(holder.heardMonotonicMs) > 0) this.#drop(holder, CLOSE.tooMany, 'more messages than anybody taps');
        else this.#receive(holder, text);
      },
      closed: () => {
        if (this.#sessions.delete(holder)) this.#electSounding();
      },
    };
  }

  /** Which device sounds at present; null where none can. */
  get soundingDeviceId(): string | null {
    return this.#soundingDeviceId;
  }

  /** Makes the device that sounds sound; says which one, null where none can. */
  sound(order: SoundOrder): string | null {
    const session = this.#soundingSession();
    if (session === null) return null;
    this.#send(session, { type: 'sound', ...order, calls: [...order.calls] });
    return session.device.id;
  }

  /** A device was asked to sound and has not said that it did: whoever else can is asked before it from now on. */
  doubt(deviceId: string): void {
    this.#doubted.add(deviceId);
    this.#electSounding();
  }

  /** Tells everybody that the house's clock was set. */
  clockChanged(): void {
    const { anchor } = this.#options.clock;
    const realMs = this.#options.clock.realMs();
    this.#toAll({ type: 'pong', t1: UNASKED_T1, t2: realMs, t3: realMs, clock: { ...anchor } });
  }

  /** Tells everybody that the planner has something new which stands in no event: pages that show it ask for it. */
  planChanged(): void {
    this.#toAll({ type: 'planNews' });
  }

  /** Tells walls where the house is not as well as it was, or well again. Call it every few seconds. */
  lookAtHealth(): void {
    const text = JSON.stringify(this.#health());
    if (text === this.#toldHealth) return;
    this.#toldHealth = text;
    for (const { session } of this.#sessions) if (session.phase === 'live' && session.page === 'wall') session.peer.send(text);
  }

  /** Tells walls how letting devices in stands. Nobody else gets the code, and the picture only walls that somebody vouched for. */
  joiningChanged(): void {
    for (const { session } of this.#sessions)
      if (session.phase === 'live' && session.page === 'wall') this.#send(session, this.#joining(session.isVouched));
  }

  /** A device may do something else than till now: its sockets are closed at once, and come back with what it may do; or not, where it was shut out. */
  accessChanged(deviceId: string, role: AccessRole | null): void {
    for (const holder of this.#sessions) {
      if (holder.session.device.id !== deviceId) continue;
      if (role === null) this.#drop(holder, CLOSE.forbidden, 'this device was shut out');
      else this.#drop(holder, CLOSE.accessChanged, 'what this device may do was changed');
    }
  }

  /** The devices that are connected now. */
  get connectedDevices(): ReadonlySet<string> {
    return new Set([...this.#sessions].map(({ session }) => session.device.id));
  }

  /** Lets go of clients that have said nothing for too long: a stalled socket is not noticed otherwise. */
  sweep(): void {
    const monotonicMs = this.#options.clock.monotonicMs();
    for (const holder of this.#sessions) {
      if (monotonicMs - holder.heardMonotonicMs > SILENCE_MS) this.#drop(holder, CLOSE.silent, `silent for ${SILENCE_MS} ms`);
    }
  }

  /** Sends everybody away in good order. */
  stop(): void {
    this.#stop();
    for (const { session } of this.#sessions) session.peer.close(CLOSE.goingDown, 'the server is going down');
    this.#sessions.clear();
  }

  #receive(holder: Holder, text: string): void {
    const { session } = holder;
    const message = parse(text);
    if (!message.ok) {
      this.#options.log.warn({ deviceId: session.device.id, fault: message.fault }, 'a client sent what this protocol does not know');
      this.#drop(holder, CLOSE.badMessage, message.fault);
      return;
    }
    if (message.value.type === 'hello') {
      if (session.phase === 'greeting') this.#greet(holder, message.value);
      else this.#drop(holder, CLOSE.badMessage, 'hello was said already');
      return;
    }
    if (session.phase === 'greeting') {
      this.#drop(holder, CLOSE.badMessage, `hello comes first, not ${message.value.type}`);
      return;
    }
    this.#hear(holder, session, message.value);
  }

  #hear(holder: Holder, session: LiveSession, message: Exclude<UpMessage, Hello>): void {
    const { clock, devices } = this.#options;
    switch (message.type) {
      case 'command':
        void this.#command(holder, session, message);
        return;
      case 'ping': {
        const t2 = clock.realMs();
        devices.touch(session.device.id, t2);
        this.#send(session, { type: 'pong', t1: message.t1, t2, t3: clock.realMs(), clock: { ...clock.anchor } });
        return;
      }
      case 'soundChanged':
        holder.session = { ...session, sound: message.sound };
        // It has looked at its loudspeaker anew.
        this.#doubted.delete(session.device.id);
        this.#electSounding();
        return;
      case 'sounded':
        if (this.#doubted.delete(session.device.id)) this.#electSounding();
        this.#options.onSounded(message.soundId, session.device.id);
        return;
      case 'introduce': {
        const { name, stationId } = session.device;
        if (message.name === name && message.stationId === stationId) return;
        if (holder.introductions.take(clock.monotonicMs()) > 0) {
          this.#drop(holder, CLOSE.tooMany, 'more names than anything is called');
          return;
        }
        const device = devices.introduce(session.device.id, message.name, message.stationId);
        if (device === null) return;
        for (const other of this.#sessions) {
          if (other.session.device.id === device.id) other.session = { ...other.session, device: asDevice(device) };
        }
        this.#toAll({ type: 'devices', devices: devices.all().map(asDevice) });
        return;
      }
      default:
        unreachable(message);
    }
  }

  async #command(holder: Holder, session: LiveSession, message: Extract<UpMessage, { type: 'command' }>): Promise<void> {
    const { commandId, command, tap } = message;
    const outcome: Outcome = mayGive(session.role, command.type)
      ? await this.#options.floor.submit({ commandId, deviceId: session.device.id, stationId: session.device.stationId, command, tap })
      : { ok: false, refusal: { code: 'forbidden' } };
    if (this.#sessions.has(holder)) this.#send(session, { type: 'outcome', commandId, outcome });
  }

  #greet(holder: Holder, hello: Hello): void {
    const { peer, role, page, isVouched } = holder.session;
    if (hello.protocol !== PROTOCOL_VERSION) {
      this.#drop(holder, CLOSE.otherVersion, `this server speaks version ${PROTOCOL_VERSION}`);
      return;
    }
    if (hello.page !== page) {
      this.#drop(holder, CLOSE.badMessage, `hello.page: this socket was opened as a ${page}`);
      return;
    }
    const { floor, devices, clock, addresses } = this.#options;
    // Where a page says on connecting that it stands holds for this connection; what is remembered is said by introducing.
    const known = holder.session.device;
    const device = hello.stationId === null ? known : { ...known, stationId: hello.stationId };
    const session: LiveSession = { phase: 'live', peer, device, role, page, isVouched, sound: hello.sound, number: this.#nextNumber };
    this.#nextNumber += 1;
    holder.session = session;
    // A page that comes anew gets another chance.
    this.#doubted.delete(device.id);
    this.#send(session, {
      type: 'welcome',
      protocol: PROTOCOL_VERSION,
      kitchenId: floor.kitchenId,
      device,
      clock: { ...clock.anchor },
      devices: devices.all().map(asDevice),
      addresses: [...addresses],
    });
    const { sequence } = floor.state;
    const goesOn = hello.kitchenId === floor.kitchenId && hello.lastSequence > 0 && this.#news.canGoOnFrom(hello.lastSequence);
    const missing = goesOn ? this.#recent.after(hello.lastSequence, sequence) : null;
    if (missing === null) peer.send(this.#snapshotText());
    else if (missing.length > 0) this.#send(session, { type: 'events', events: [...missing] });
    this.#send(session, { type: 'live', sequence });
    this.#send(session, this.#soundStatus());
    if (session.page === 'wall') {
      this.#send(session, this.#joining(isVouched));
      this.#send(session, this.#health());
    }
    this.#electSounding();
  }

  #publish(committed: Committed): void {
    this.#recent.add(committed.events);
    const text = this.#news.tell(committed.state, committed.events) ?? this.#snapshotText();
    for (const holder of this.#sessions) {
      if (holder.session.phase !== 'live') continue;
      if (holder.session.peer.backlogBytes > MAX_BACKLOG_BYTES) {
        this.#options.log.warn({ deviceId: holder.session.device.id }, 'a client fell too far behind; it starts again from a snapshot');
        this.#drop(holder, CLOSE.tooSlow, 'too far behind');
      } else {
        holder.session.peer.send(text);
      }
    }
  }

  #snapshotText(): string {
    const { state } = this.#options.floor;
    if (this.#snapshot?.sequence !== state.sequence) {
      this.#snapshot = {
        sequence: state.sequence,
        text: JSON.stringify({ type: 'snapshot', sequence: state.sequence, state: forScreens(state) } satisfies DownMessage),
      };
    }
    return this.#snapshot.text;
  }

  #soundingSession(): LiveSession | null {
    let best: LiveSession | null = null;
    for (const { session } of this.#sessions) {
      if (session.phase !== 'live' || session.sound !== 'on') continue;
      if (best === null || this.#soundsBefore(session, best)) best = session;
    }
    return best;
  }

  /** Who is not doubted before who is; loudspeakers that hang on a wall before those of a bench, those before what somebody may carry away; then who came first. */
  #soundsBefore(a: LiveSession, b: LiveSession): boolean {
    const byDoubt = Number(this.#doubted.has(a.device.id)) - Number(this.#doubted.has(b.device.id));
    const byKind = SOUNDS_FIRST[a.page] - SOUNDS_FIRST[b.page];
    return (byDoubt || byKind || a.number - b.number) < 0;
  }

  #joining(isVouched: boolean): DownMessage {
    const { joining, lockedUntilMs } = this.#options.joining();
    // With the digits alone a screen was let in to look: the picture would let it in as more.
    const shown = joining === null || isVouched ? joining : { ...joining, ticket: null };
    return { type: 'joining', status: { joining: shown, lockedUntilMs } };
  }

  #health(): DownMessage {
    return { type: 'health', isKept: this.#options.floor.isWritable, areBackupsLate: this.#options.areBackupsLate() };
  }

  #soundStatus(): DownMessage {
    return { type: 'soundStatus', soundingDeviceId: this.#soundingDeviceId, page: this.#soundingPage };
  }

  #electSounding(): void {
    const { device, page = null } = this.#soundingSession() ?? {};
    const deviceId = device?.id ?? null;
    if (deviceId !== this.#soundingDeviceId || page !== this.#soundingPage) {
      this.#soundingDeviceId = deviceId;
      this.#soundingPage = page;
      this.#toAll(this.#soundStatus());
    }
    this.#options.onSoundOutletChanged();
  }

  #toAll(message: DownMessage): void {
    const text = JSON.stringify(message);
    for (const holder of this.#sessions) {
      if (holder.session.phase !== 'live') continue;
      if (holder.session.peer.backlogBytes > MAX_BACKLOG_BYTES) this.#drop(holder, CLOSE.tooSlow, 'too far behind');
      else holder.session.peer.send(text);
    }
  }

  #send(session: Session, message: DownMessage): void {
    session.peer.send(JSON.stringify(message));
  }

  #drop(holder: Holder, code: number, reason: string): void {
    this.#sessions.delete(holder);
    holder.session.peer.close(code, reasonThatFits(reason));
    this.#electSounding();
  }
}

const SOUNDS_FIRST: Readonly<Record<PageKind, number>> = { wall: 0, station: 1, phone: 2 };

/** A close reason takes 123 bytes (RFC 6455 section 5.5: control frames carry at most 125, two of them the code). */
const MAX_REASON_BYTES = 123;

/** A reason may quote what a client sent, in whatever script; it is cut at a whole character. */
function reasonThatFits(reason: string): string {
  const { read } = new TextEncoder().encodeInto(reason, new Uint8Array(MAX_REASON_BYTES));
  return reason.slice(0, read);
}

function asDevice(device: Device): Device {
  return { id: device.id, name: device.name, stationId: device.stationId };
}

function parse(text: string): { readonly ok: true; readonly value: UpMessage } | { readonly ok: false; readonly fault: string } {
  let value: unknown;
  try {
    value = parseSafely(text);
  } catch (error) {
    if (error instanceof SyntaxError) return { ok: false, fault: 'the message is not JSON' };
    throw error;
  }
  const read = upMessageSchema.safeParse(value);
  return read.success ? { ok: true, value: read.data } : { ok: false, fault: faultIn(value, read.error) };
}

/** The first thing that is wrong with a message, with what it calls itself. */
function faultIn(value: unknown, error: ZodError): string {
  const issue = error.issues[0];
  const path = issue?.path ?? [];
  const found = path.reduce<unknown>(
    (part, key) => (typeof part === 'object' && part !== null ? Reflect.get(part, key) : undefined),
    value,
  );
  // A list of all that would be right does not fit; what was sent does.
  if (issue?.code === 'invalid_union' && path.at(-1) === 'type') return `${pathText(path)} ${saidIn(found)} is not known here`;
  const where = path.length === 0 ? 'the message' : pathText(path);
  return `${where}: ${issue?.message ?? 'not understood'}`;
}

/** What was sent, as far as a reason has room for it: what is deep or long is named and not repeated. */
function saidIn(found: unknown): string {
  if (found === undefined) return 'missing';
  return typeof found === 'object' && found !== null ? `(${Array.isArray(found) ? 'a list' : 'an object'})` : JSON.stringify(found);
}
