/** Wrong codes that one address may give within the window before it is locked out. */
export const MAX_WRONG_PER_ADDRESS = 5;
/** Wrong codes from everywhere within the window before nobody may try. */
export const MAX_WRONG_OVERALL = 30;
/** For how long a wrong code counts, and for how long a lock-out holds after the last one. */
export const WRONG_WINDOW_MS = 10 * 60_000;
/** Addresses that are remembered; beyond that the one heard least recently is forgotten, and the overall limit still holds. */
const MAX_ADDRESSES = 1000;

/** What was tried wrongly lately, and until when nothing more may be. */
interface Tries {
  timesMs: readonly number[];
  lockedUntilMs: number;
}

/**
 * Counts wrong codes, so that six digits cannot be tried out: five in ten minutes from one address, thirty from all. With
 * a million codes and thirty tries, one opening of ten minutes is guessed with a chance of 3 in 100 000. Time is a clock's that
 * nobody can set.
 */
export class WrongCodes {
  readonly #monotonicMs: () => number;
  readonly #byAddress = new Map<string, Tries>();
  readonly #overall: Tries = { timesMs: [], lockedUntilMs: 0 };

  constructor(monotonicMs: () => number) {
    this.#monotonicMs = monotonicMs;
  }

  /** For how much longer an address may not try, in ms; 0 where it may. */
  lockedMs(address: string): number {
    const own = this.#byAddress.get(networkOf(address));
    return Math.max(own === undefined ? 0 : this.#leftMs(own), this.overallLockedMs());
  }

  /** For how much longer nobody may try, in ms; 0 where they may. */
  overallLockedMs(): number {
    return this.#leftMs(this.#overall);
  }

  /** Takes note of a wrong code. */
  add(address: string): void {
    const network = networkOf(address);
    const own = this.#byAddress.get(network) ?? { timesMs: [], lockedUntilMs: 0 };
    this.#byAddress.delete(network);
    this.#byAddress.set(network, own);
    const [oldest] = this.#byAddress.keys();
    if (this.#byAddress.size > MAX_ADDRESSES && oldest !== undefined) this.#byAddress.delete(oldest);
    this.#note(own, MAX_WRONG_PER_ADDRESS);
    this.#note(this.#overall, MAX_WRONG_OVERALL);
  }

  /** Somebody at that address knew the code: its typing errors are forgotten, the overall count stays. */
  forgive(address: string): void {
    this.#byAddress.delete(networkOf(address));
  }

  #note(tries: Tries, most: number): void {
    const nowMs = this.#monotonicMs();
    tries.timesMs = [...tries.timesMs.filter((timeMs) => timeMs > nowMs - WRONG_WINDOW_MS), nowMs];
    if (tries.timesMs.length < most) return;
    tries.lockedUntilMs = nowMs + WRONG_WINDOW_MS;
    tries.timesMs = [];
  }

  #leftMs({ lockedUntilMs }: Tries): number {
    return Math.max(0, lockedUntilMs - this.#monotonicMs());
  }
}

/** What counts as one address: an IPv4 address, also where it is written as IPv6, or the /64 that one IPv6 host may draw from (RFC 4291 section 2.5.4). */
export function networkOf(address: string): string {
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address)?.[1];
  if (mapped !== undefined) return mapped;
  if (!address.includes(':')) return address;
  const [head = '', tail = ''] = (address.split('%')[0] ?? '').toLowerCase().split('::');
  const heads = head === '' ? [] : head.split(':');
  const tails = tail === '' ? [] : tail.split(':');
  const zeros = address.includes('::') ? Array<string>(Math.max(0, 8 - heads.length - tails.length)).fill('0') : [];
  return [...heads, ...zeros, ...tails]
    .slice(0, 4)
    .map((group) => Number.parseInt(group, 16).toString(16))
    .join(':');
}
