import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Where a page's time comes from, and where it waits for it. */
export interface ClockSource {
  /** House time now, in ms. */
  nowMs(): number;
  /** How much faster than real time the house runs. */
  pace(): number;
}

/** Texts that change closer together than this change together. Real ms. */
const LEAST_WAIT_MS = 50;
/** At a pace, digits that nobody could read are not drawn. Real ms. */
const LEAST_WAIT_PACED_MS = 200;
/** The longest sleep: whatever is missed otherwise is a minute old at most. Real ms. */
const MOST_WAIT_MS = 1000;

/**
 * A page's one clock. It holds the house time that everything on the page is drawn for, and asks for an update when the
 * next text changes: `nextChangeMs` answers when that is, given the time now.
 */
export class TickingClock implements ReactiveController {
  private timer: ReturnType<typeof setTimeout> | null = null;
  private shownMs = 0;
  private readonly host: ReactiveControllerHost;
  private readonly source: () => ClockSource | null;
  private readonly nextChangeMs: (nowMs: number) => number;

  constructor(host: ReactiveControllerHost, source: () => ClockSource | null, nextChangeMs: (nowMs: number) => number) {
    this.host = host;
    this.source = source;
    this.nextChangeMs = nextChangeMs;
    host.addController(this);
  }

  /** The house time that is drawn. */
  get nowMs(): number {
    return this.shownMs;
  }

  hostUpdate(): void {
    const source = this.source();
    if (source !== null) this.shownMs = source.nowMs();
  }

  hostUpdated(): void {
    this.wait();
  }

  hostDisconnected(): void {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
  }

  private wait(): void {
    this.hostDisconnected();
    const source = this.source();
    if (source === null) return;
    const pace = source.pace();
    const leastMs = pace === 1 ? LEAST_WAIT_MS : LEAST_WAIT_PACED_MS;
    const wantedMs = (this.nextChangeMs(this.shownMs) - source.nowMs()) / pace;
    // One more, since timers may fire a fraction of a millisecond early and would then draw the old text again.
    const waitMs = Math.min(MOST_WAIT_MS, Math.max(leastMs, wantedMs + 1));
    this.timer = setTimeout(() => this.host.requestUpdate(), waitMs);
  }
}
