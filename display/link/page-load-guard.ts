import type { TextStore } from './tap-store.ts';

const KEY = 'ovenward.loaded-again';

/**
 * Lets a page load itself anew once, when it turns out to be of another version than its server, and not again before
 * it has come through: a page that is still of another version would load itself for ever.
 */
export class PageLoadGuard {
  readonly #storage: TextStore | null;

  constructor(storage: TextStore | null) {
    this.#storage = storage;
  }

  /** Whether it may load now; from then on it may not. Without storage it never may. */
  mayLoad(): boolean {
    if (this.#storage === null || this.#storage.getItem(KEY) !== null) return false;
    try {
      this.#storage.setItem(KEY, '1');
      return true;
    } catch {
      // What cannot be noted could happen for ever.
      return false;
    }
  }

  /** The page understands its server: should that change, it may load itself again. */
  understood(): void {
    this.#storage?.removeItem(KEY);
  }
}
