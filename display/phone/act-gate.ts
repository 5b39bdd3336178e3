import { judge, newGuard, pointerDown, pointerGone, shown, type TapGuard } from './tap-guard.ts';

/** A finger may slide so far off a button and still mean it, in CSS px. */
const SLIDE_PX = 12;
/** The browser's own click after a press comes within this; it is the same press. */
const CLICK_AFTER_MS = 700;

interface Pressed {
  readonly button: HTMLButtonElement;
  readonly path: readonly EventTarget[];
  readonly pointerId: number;
  readonly downMs: number;
}

/**
 * Stands between thumbs and buttons: under `root` a button acts when it gets the event `act`, and it gets one for every
 * press that the tap guard takes: on pointer-up, or by a key. The attribute `data-pressed` is the pressed look, at once.
 */
export class ActGate {
  readonly #clock: () => number;
  readonly #moved = new WeakMap<EventTarget, number>();
  #guard: TapGuard;
  #pressed: Pressed | null = null;
  #lastPress: { readonly button: HTMLButtonElement; readonly atMs: number } | null = null;

  /** `clock`: milliseconds that only run forward. */
  constructor(root: HTMLElement, clock: () => number) {
    this.#clock = clock;
    this.#guard = newGuard(clock());
    root.addEventListener('pointerdown', (event) => this.#down(event), { capture: true });
    root.addEventListener('click', (event) => this.#click(event), { capture: true });
    // Released outside the root or taken by scrolling: the window hears of it all the same.
    window.addEventListener('pointerup', (event) => this.#up(event), { capture: true });
    window.addEventListener('pointercancel', (event) => this.#gone(event), { capture: true });
  }

  /** Something else is on the screen from now on. */
  shown(): void {
    this.#guard = shown(this.#guard, this.#clock());
  }

  /** These have only just moved. */
  moved(elements: readonly EventTarget[]): void {
    for (const element of elements) this.#moved.set(element, this.#clock());
  }

  #down(event: PointerEvent): void {
    this.#guard = pointerDown(this.#guard, event.pointerId);
    this.#release();
    const button = event.button === 0 ? buttonOf(event) : null;
    if (button === null) return;
    this.#pressed = { button, path: event.composedPath(), pointerId: event.pointerId, downMs: this.#clock() };
    button.dataset['pressed'] = '';
  }

  #up(event: PointerEvent): void {
    const pressed = this.#pressed;
    if (pressed !== null && pressed.pointerId === event.pointerId) {
      this.#lastPress = { button: pressed.button, atMs: this.#clock() };
      if (isOn(pressed.button, event)) this.#act(pressed.button, pressed.path, pressed.downMs);
    }
    this.#gone(event);
  }

  #gone(event: PointerEvent): void {
    this.#guard = pointerGone(this.#guard, event.pointerId);
    if (this.#pressed?.pointerId === event.pointerId) this.#release();
  }

  #release(): void {
    if (this.#pressed !== null) delete this.#pressed.button.dataset['pressed'];
    this.#pressed = null;
  }

  /** A click without a press of ours before it comes from a key or from a helper for those who cannot see or touch. */
  #click(event: MouseEvent): void {
    const button = buttonOf(event);
    if (button === null) return;
    const atMs = this.#clock();
    if (this.#lastPress?.button === button && atMs - this.#lastPress.atMs < CLICK_AFTER_MS && event.detail !== 0) return;
    this.#act(button, event.composedPath(), atMs);
  }

  #act(button: HTMLButtonElement, path: readonly EventTarget[], downMs: number): void {
    if (button.disabled || !button.isConnected) return;
    const times = path.map((target) => this.#moved.get(target)).filter((atMs) => atMs !== undefined);
    const { guard, verdict } = judge(this.#guard, { downMs, upMs: this.#clock(), movedMs: times.length === 0 ? null : Math.max(...times) });
    this.#guard = guard;
    if (verdict === 'taken') button.dispatchEvent(new CustomEvent('act'));
  }
}

function buttonOf(event: Event): HTMLButtonElement | null {
  return event.composedPath().find((target) => target instanceof HTMLButtonElement) ?? null;
}

function isOn(button: HTMLButtonElement, event: PointerEvent): boolean {
  const box = button.getBoundingClientRect();
  return (
    event.clientX >= box.left - SLIDE_PX &&
    event.clientX <= box.right + SLIDE_PX &&
    event.clientY >= box.top - SLIDE_PX &&
    event.clientY <= box.bottom + SLIDE_PX
  );
}
