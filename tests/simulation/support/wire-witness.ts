import { isDeepStrictEqual } from 'node:util';
import { canonicalJson } from '../../../server/journal/canonical-json.ts';
import type { MemoryDisk } from '../../../server/journal/memory-journal.ts';
import type { RecordedEvent } from '../../../shared/floor/events.ts';
import type { Outcome } from '../../../shared/floor/refusals.ts';
import type { DownMessage } from '../../../shared/wire/down.ts';
import type { LineWatch } from './network.ts';
import type { UpMessage } from '../../../shared/wire/up.ts';
import type { TapBook } from './tap-book.ts';
import type { Violations } from './violation.ts';
import type { VirtualTime } from './virtual-time.ts';

/** Two bursts are never closer than this, in one life of the server. Real time. */
const SPACING_MS = 3_000;
/** So long an order may go unanswered before the next, in one life of the server. Real time. */
const ANSWER_MS = 4_000;

type SoundOrder = Extract<DownMessage, { type: 'sound' }>;

interface Ordered {
  readonly order: SoundOrder;
  readonly askedIds: Set<string>;
  readonly soundedBy: Set<string>;
}

/**
 * Hears every word on the network: what the server tells before it is on the disk, whether it ever says two things of one
 * command, whom it asks to sound.
 */
export class WireWitness implements LineWatch {
  readonly #time: VirtualTime;
  readonly #disk: MemoryDisk;
  readonly #taps: TapBook;
  readonly #violations: Violations;
  readonly #told = new Map<string, string>();
  readonly #orders = new Map<string, Ordered>();
  #lastOrderMs = Number.NEGATIVE_INFINITY;
  /** The order that is out: not answered yet. */
  #outId: string | null = null;
  #readText = '';
  #readEvents: readonly RecordedEvent[] = [];
  /** Told when an outcome that changed something goes out: the moment between acknowledging and publishing. */
  onAcknowledged: () => void = () => {};

  constructor(time: VirtualTime, disk: MemoryDisk, taps: TapBook, violations: Violations) {
    this.#time = time;
    this.#disk = disk;
    this.#taps = taps;
    this.#violations = violations;
  }

  /** Commands whose outcome somebody has been told. */
  isTold(commandId: string): boolean {
    return this.#told.has(commandId);
  }

  toPage(deviceId: string, text: string): void {
    if (text.startsWith('{"type":"events"')) this.#checkEvents(text);
    else if (text.startsWith('{"type":"outcome"')) this.#checkOutcome(JSON.parse(text) as Extract<DownMessage, { type: 'outcome' }>);
    else if (text.startsWith('{"type":"sound"')) this.#checkOrder(deviceId, JSON.parse(text) as SoundOrder);
  }

  arrived(deviceId: string, line: number, text: string): void {
    if (text.startsWith('{"type":"sounded"')) this.#answered(deviceId, JSON.parse(text) as Extract<UpMessage, { type: 'sounded' }>);
    if (!text.startsWith('{"type":"command"')) return;
    const message = JSON.parse(text) as Extract<UpMessage, { type: 'command' }>;
    const tap = this.#taps.get(message.commandId);
    this.#violations.demand('bug', tap?.deviceId === deviceId, () => `line ${line} carries a command that its device never gave`);
    tap?.arrivals.push({ atMs: this.#time.nowMs, tap: message.tap });
  }

  /** The server's process begins anew, and with it its count of bursts. */
  serverStarted(): void {
    this.#lastOrderMs = Number.NEGATIVE_INFINITY;
    this.#outId = null;
  }

  /** A device has made a burst heard. */
  madeSound(deviceId: string, soundId: string): void {
    this.#orders.get(soundId)?.soundedBy.add(deviceId);
  }

  checkSounded({ commandId, deviceId, event }: RecordedEvent): void {
    const ordered = this.#orders.get(commandId);
    if (event.type === 'soundTestSounded') {
      this.#violations.demand(
        'S14',
        ordered?.order.isTest === true && ordered.soundedBy.has(event.byDeviceId) && deviceId === event.byDeviceId,
        () => `test ${commandId} counts as sounded, and was not asked of that device or not sounded by it`,
      );
    }
    if (event.type !== 'callSounded') return;
    this.#violations.demand('S6', ordered !== undefined, () => `burst ${commandId} counts as sounded, and nobody was asked for it`);
    if (ordered === undefined) return;
    this.#violations.demand(
      'S6',
      ordered.soundedBy.has(deviceId),
      () => `burst ${commandId} counts as sounded by a device that did not sound it`,
    );
    const isSame = event.burst === ordered.order.burst && isDeepStrictEqual(event.calls, ordered.order.calls);
    this.#violations.demand('S6', isSame, () => `burst ${commandId} counts for other calls than were asked for`);
  }

  /** Only the device that was asked is believed. */
  #answered(deviceId: string, { soundId }: Extract<UpMessage, { type: 'sounded' }>): void {
    if (soundId === this.#outId && this.#orders.get(soundId)?.askedIds.has(deviceId) === true) this.#outId = null;
  }

  #checkEvents(text: string): void {
    if (text !== this.#readText) {
      this.#readText = text;
      this.#readEvents = (JSON.parse(text) as Extract<DownMessage, { type: 'events' }>).events;
    }
    for (const recorded of this.#readEvents) {
      const kept = this.#disk.events[recorded.sequence - 1]?.recorded;
      const isKept =
        kept !== undefined &&
        kept.commandId === recorded.commandId &&
        kept.ordinal === recorded.ordinal &&
        kept.event.type === recorded.event.type;
      this.#violations.demand('S2', isKept, () => `event ${recorded.sequence} (${recorded.event.type}) is told and not on the disk`);
    }
  }

  #checkOutcome({ commandId, outcome }: { readonly commandId: string; readonly outcome: Outcome }): void {
    // That nothing was kept is no outcome: the tap is sent again.
    if (!outcome.ok && outcome.refusal.code === 'notKept') return;
    const kept = this.#disk.outcomes.get(commandId);
    const said = canonicalJson(outcome);
    this.#violations.demand('S2', kept !== undefined, () => `command ${commandId} is answered (${said}), and that is not on the disk`);
    this.#violations.demand(
      'S3',
      kept === undefined || canonicalJson(kept) === said,
      () => `command ${commandId} is answered ${said}, the disk has another outcome`,
    );
    const before = this.#told.get(commandId);
    this.#violations.demand(
      'S3',
      before === undefined || before === said,
      () => `command ${commandId} is answered ${said}, and was answered ${before ?? ''}`,
    );
    this.#told.set(commandId, said);
    if (!outcome.ok) return;
    this.#violations.demand(
      'S2',
      this.#disk.events[outcome.sequence - 1]?.recorded.commandId === commandId,
      () => `command ${commandId} is acknowledged, and its events are not on the disk`,
    );
    this.onAcknowledged();
  }

  #checkOrder(deviceId: string, order: SoundOrder): void {
    const ordered = this.#orders.get(order.soundId) ?? { order, askedIds: new Set(), soundedBy: new Set() };
    this.#orders.set(order.soundId, ordered);
    ordered.askedIds.add(deviceId);
    this.#violations.demand('S6', ordered.askedIds.size === 1, () => `burst ${order.soundId} was asked of two devices`);
    this.#violations.demand(
      'S16',
      this.#outId === null || this.#time.nowMs - this.#lastOrderMs >= ANSWER_MS - 1,
      () => `burst ${order.soundId} was asked for while ${this.#outId ?? ''} was out`,
    );
    this.#violations.demand(
      'S6',
      order.isTest === (order.calls.length === 0),
      () => `burst ${order.soundId} is of a test with calls, or of none`,
    );
    this.#outId = order.soundId;
    const apartMs = this.#time.nowMs - this.#lastOrderMs;
    this.#violations.demand('S6', apartMs >= SPACING_MS - 1, () => `two bursts were asked for ${apartMs} ms apart`);
    this.#lastOrderMs = this.#time.nowMs;
  }
}
