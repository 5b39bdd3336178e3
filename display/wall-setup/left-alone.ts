import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { ClockSource } from '../parts/ticking-clock.ts';
import { LeftAloneEvent } from './setup-events.ts';

/** So long without a touch or a key, and nobody is there. Real ms. */
const LEFT_ALONE_MS = 5 * 60_000;
const SIGNS_OF_LIFE = ['pointerdown', 'keydown', 'wheel'] as const;

/** Says `left-alone` from its host, once, when nobody has touched the page for a good while by the page's own clock. */
export class LeftAlone implements ReactiveController {
  private readonly host: ReactiveControllerHost & EventTarget;
  private readonly source: () => ClockSource | null;
  private touchedMs: number | null = null;
  private readonly touched = (): void => {
    this.touchedMs = null;
  };

  constructor(host: ReactiveControllerHost & EventTarget, source: () => ClockSource | null) {
    this.host = host;
    this.source = source;
  }

  hostConnected(): void {
    for (const sign of SIGNS_OF_LIFE) window.addEventListener(sign, this.touched, { capture: true, passive: true });
  }

  hostDisconnected(): void {
    for (const sign of SIGNS_OF_LIFE) window.removeEventListener(sign, this.touched, { capture: true });
  }

  hostUpdated(): void {
    const source = this.source();
    if (source === null) return;
    const nowMs = source.nowMs();
    this.touchedMs ??= nowMs;
    if ((nowMs - this.touchedMs) / source.pace() < LEFT_ALONE_MS) return;
    this.touchedMs = nowMs;
    this.host.dispatchEvent(new LeftAloneEvent());
  }
}
