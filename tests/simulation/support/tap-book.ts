import type { ClientCommand, TapTime } from '../../../shared/floor/commands.ts';
import { TAP_CLOCKS_AGREE_MS } from '../../../shared/floor/tap-time.ts';

/** What is truly known of one tap. */
export interface TapTruth {
  readonly commandId: string;
  readonly deviceId: string;
  readonly command: ClientCommand;
  /** True time of the thumb. */
  readonly atMs: number;
  /** The page load in which it was made, and its clocks then. */
  readonly load: number;
  readonly monotonicMs: number;
  readonly wallMs: number;
  /** When it came to the server, with what it said of its time. */
  readonly arrivals: { readonly atMs: number; readonly tap: TapTime }[];
}

/** Everything that thumbs have said. */
export class TapBook {
  readonly #taps = new Map<string, TapTruth>();

  add(tap: TapTruth): void {
    this.#taps.set(tap.commandId, tap);
  }

  get(commandId: string): TapTruth | undefined {
    return this.#taps.get(commandId);
  }

  all(): readonly TapTruth[] {
    return [...this.#taps.values()];
  }
}

/** What a sent tap says of its time, as the server has to take it. */
export function isCertain(tap: TapTime): boolean {
  return tap.agoMonotonicMs !== null && Math.abs(tap.agoMonotonicMs - tap.agoWallMs) <= TAP_CLOCKS_AGREE_MS;
}
