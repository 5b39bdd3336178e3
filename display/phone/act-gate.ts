import { isTooBroad, judge, newGuard, pointerDown, pointerGone, shown, strayed, type TapGuard, type TapVerdict } from './tap-guard.ts';

/** A finger may slide so far off a button and still mean it, in CSS px. */
const SLIDE_PX = 12;
/** The browser's own click after a press comes within this; it is the same press. */
const CLICK_AFTER_MS = 700;
/** What a touch is meant for beside buttons: fields to type into, links. */
const MEANT = 'a, input, label, summary';

/** One contact, from finger down to finger up. */
interface Contact {
  readonly pointerId: number;
  readonly path: readonly EventTarget[];
  readonly downMs: number;
  /** Under the finger; null where it came down on nothing that acts. */
  readonly button: HTMLButtonElement | null;
  breadthPx: number;
}

/**
 * Stands between thumbs and buttons: under `root` a button acts when it gets the event `act`, and it gets one for every
 * press that the tap guard takes: on pointer-up, or by a key. The attribute `data-pressed` is the pressed look, at once.
 * A button with `data-goes-on` is the one that counts when the page has been in a pocket.
 */
export class ActGate {
  readonly #clock: () => number;
  readonly #pocketed: (() => void) | null;
  readonly #moved = new WeakMap<EventTarget, number>();
  readonly #listeners = new AbortController();
  #guard: TapGuard;
  #contact: Contact | null = null;
  #lastPress: { readonly button: HTMLButtonElement; readonly atMs: number } | null = null;

  /** `clock`: milliseconds that only run forward. `pocketed`: told when the page is to ask for one deliberate touch; null for a page that nobody carries. */
  constructor(root: HTMLElement, clock: () => number, pocketed: (() => void) | null = null) {
    this.#clock = clock;
    this.#pocketed = pocketed;
    this.#guard = newGuard(clock());
    const options = { capture: true, signal: this.#listeners.signal };
    root.addEventListener('pointerdown', (event) => this.#down(event), options);
    root.addEventListener('pointermove', (event) => this.#spread(event), options);
    root.addEventListener('click', (event) => this.#click(event), options);
    // Released outside the root or taken by scrolling: the window hears of it all the same.
    window.addEventListener('pointerup', (event) => this.#up(event), options);
    window.addEventListener('pointercancel', (event) => this.#gone(event), options);
    document.addEventListener('visibilitychange', () => this.#seen(), options);
  }

  /** Something else is on the screen from now on. */
  shown(): void {
    this.#guard = shown(this.#guard, this.#clock());
  }

  /** These have only just moved. */
  moved(elements: readonly EventTarget[]): void {
    for (const element of elements) this.#moved.set(element, this.#clock());
  }

  /** Lets go of the page. */
  close(): void {
    this.#listeners.abort();
  }

  /** Seen again: what came up under the finger was not meant. Out of sight: no press goes on. */
  #seen(): void {
    this.#release();
    this.shown();
  }

  #down(event: PointerEvent): void {
    this.#guard = pointerDown(this.#guard, event.pointerId);
    this.#release();
    if (event.button !== 0) return;
    const button = buttonOf(event);
    const path = event.composedPath();
    this.#contact = { pointerId: event.pointerId, path, downMs: this.#clock(), button, breadthPx: breadthPx(event) };
    if (button !== null) button.dataset['pressed'] = '';
  }

  #spread(event: PointerEvent): void {
    const contact = this.#contact;
    if (contact?.pointerId === event.pointerId) contact.breadthPx = Math.max(contact.breadthPx, breadthPx(event));
  }

  #up(event: PointerEvent): void {
    this.#spread(event);
    const contact = this.#contact;
    if (contact !== null && contact.pointerId === event.pointerId) {
      const { button } = contact;
      if (event.pointerType === 'touch' && (isTooBroad(contact.breadthPx) || isOnNothing(contact.path))) this.#strayed();
      if (button !== null) {
        this.#lastPress = { button, atMs: this.#clock() };
        if (isOn(button, event)) this.#act(button, contact.path, contact.downMs, contact.breadthPx);
      }
    }
    this.#gone(event);
  }

  #strayed(): void {
    if (this.#pocketed === null) return;
    const wasPocketed = this.#guard.isPocketed;
    this.#guard = strayed(this.#guard, this.#clock());
    if (this.#guard.isPocketed && !wasPocketed) this.#pocketed();
  }

  #gone(event: PointerEvent): void {
    this.#guard = pointerGone(this.#guard, event.pointerId);
    if (this.#contact?.pointerId === event.pointerId) this.#release();
  }

  #release(): void {
    const button = this.#contact?.button ?? null;
    if (button !== null) delete button.dataset['pressed'];
    this.#contact = null;
  }

  /** A click without a press of ours before it comes from a key or from a helper for those who cannot see or touch. */
  #click(event: MouseEvent): void {
    const button = buttonOf(event);
    if (button === null) return;
    const atMs = this.#clock();
    if (this.#lastPress?.button === button && atMs - this.#lastPress.atMs < CLICK_AFTER_MS && event.detail !== 0) return;
    this.#act(button, event.composedPath(), atMs, 0);
  }

  #act(button: HTMLButtonElement, path: readonly EventTarget[], downMs: number, breadth: number): void {
    if (button.disabled || !button.isConnected) return;
    const times = path.map((target) => this.#moved.get(target)).filter((atMs) => atMs !== undefined);
    if (this.#judge(button, downMs, breadth, times.length === 0 ? null : Math.max(...times)) === 'taken')
      button.dispatchEvent(new CustomEvent('act'));
  }

  #judge(button: HTMLButtonElement, downMs: number, breadth: number, movedMs: number | null): TapVerdict {
    const press = { downMs, upMs: this.#clock(), movedMs, breadthPx: breadth, goesOn: 'goesOn' in button.dataset };
    const { guard, verdict } = judge(this.#guard, press);
    this.#guard = guard;
    return verdict;
  }
}

/** How broad a touch is, in CSS px; 0 for a mouse or a pen, and where the browser does not say. */
function breadthPx(event: PointerEvent): number {
  return event.pointerType === 'touch' ? Math.max(event.width, event.height) : 0;
}

function buttonOf(event: Event): HTMLButtonElement | null {
  return event.composedPath().find((target) => target instanceof HTMLButtonElement) ?? null;
}

function isOnNothing(path: readonly EventTarget[]): boolean {
  return !path.some((target) => target instanceof HTMLButtonElement || (target instanceof Element && target.matches(MEANT)));
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
