import type { TextStore } from '../../../display/link/tap-store.ts';

/** A browser's storage: it outlives the page. */
export class MemoryStorage implements TextStore {
  readonly #texts = new Map<string, string>();

  get length(): number {
    return this.#texts.size;
  }

  key(index: number): string | null {
    return [...this.#texts.keys()][index] ?? null;
  }

  getItem(key: string): string | null {
    return this.#texts.get(key) ?? null;
  }

  setItem(key: string, value: string): void {
    this.#texts.set(key, value);
  }

  removeItem(key: string): void {
    this.#texts.delete(key);
  }
}
