import type { TapStore } from '../../../display/link/tap-store.ts';
import type { MemoryDisk } from '../../../server/journal/memory-journal.ts';
import type { Journal } from '../../../server/journal/journal.ts';
import type { SoundOrder } from '../../../server/floor/sounder.ts';
import type { Peer } from '../../../server/live/peer.ts';
import type { Host } from './host.ts';

/** A fault put into the house on purpose, to see that the invariants notice it. */
export interface Plant {
  /** Between the floor and its disk. */
  readonly journal?: (journal: Journal, host: Host) => Journal;
  /** How far the clock that the floor decides by runs ahead of the house's. */
  readonly floorAheadMs?: number;
  /** What the hub says. */
  readonly peer?: (peer: Peer) => Peer;
  /** How an order to sound is given. */
  readonly order?: (order: SoundOrder, give: (order: SoundOrder) => string | null) => string | null;
  /** Whether the server looks at its clock and takes note of what was done to it. */
  readonly noticesJumps?: boolean;
  /** What the disk has when the server starts on it. */
  readonly boot?: (disk: MemoryDisk) => void;
  /** Where a page keeps its taps. */
  readonly store?: TapStore;
  /** Whether the server raises calls. */
  readonly raisesCalls?: boolean;
}
