import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { CallLevel } from '../../shared/floor/events.ts';
import type { Outcome } from '../../shared/floor/refusals.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { JoiningStatus } from '../../shared/wire/joining.ts';
import type { Device } from '../../shared/wire/down.ts';
import type { PageKind, SoundReadiness } from '../../shared/wire/up.ts';

/** How the page stands to its server. `lost` from the moment that is noticed; counting goes on all the same. */
export type Connection =
  | { readonly phase: 'connecting' }
  | { readonly phase: 'catchingUp' }
  | { readonly phase: 'live' }
  | { readonly phase: 'lost'; readonly lastContactMs: number }
  /** The page cannot go on as it is: the server speaks another version, or the device may not be here. */
  | { readonly phase: 'refused'; readonly why: 'otherVersion' | 'forbidden' | 'full' };

/** A tap that the server has not answered yet: kept on the device, sent again until it is. */
export interface KeptTap {
  readonly commandId: string;
  readonly command: ClientCommand;
  /** House time of the thumb. */
  readonly tapMs: number;
  readonly isSent: boolean;
}

/** What the server said to a tap of this page. */
export interface AnsweredTap {
  readonly commandId: string;
  readonly command: ClientCommand;
  readonly outcome: Outcome;
}

/** Whether the house keeps what happens, and backs it up. */
export interface HouseHealth {
  readonly isKept: boolean;
  readonly areBackupsLate: boolean;
}

/** As long as nobody says otherwise. */
export const IN_HEALTH: HouseHealth = { isKept: true, areBackupsLate: false };

/** Everything that a page shows, as one immutable value; a new one at every change. */
export interface FloorView {
  /** With the page's own unanswered taps already applied; null until the first snapshot. */
  readonly state: FloorState | null;
  /** The journal's sequence number that `state` is confirmed up to. */
  readonly sequence: number;
  readonly connection: Connection;
  readonly device: Device | null;
  readonly devices: readonly Device[];
  readonly addresses: readonly string[];
  readonly pace: number;
  readonly kept: readonly KeptTap[];
  /** The last answer, for telling; null when it has been dismissed by the next action. */
  readonly lastAnswer: AnsweredTap | null;
  /** What *undo* would take back; stays until the next action. */
  readonly undoable: AnsweredTap | null;
  /** A tap that this page took not even to keep, since it keeps as many as it may; null again with the next one taken. */
  readonly refusedHere: ClientCommand | null;
  /** Which device sounds; null where none can. */
  readonly soundingDeviceId: string | null;
  /** On what sort of page it sounds; null where none can. */
  readonly soundingPage: PageKind | null;
  /** How often the planner has had something new that stands in no event; whoever shows plans asks anew when it changes. */
  readonly planNews: number;
  /** How letting devices in stands; told to walls only. */
  readonly joining: JoiningStatus;
  /** How the house itself is; told to walls only. */
  readonly health: HouseHealth;
}

/** A burst that this device is asked to sound now. */
export interface SoundRequest {
  readonly soundId: string;
  readonly burst: CallLevel;
  /** How loud, as heard, in percent. */
  readonly volumePct: number;
  /** Nothing calls: somebody only wants to know whether it would be heard. */
  readonly isTest: boolean;
  readonly calls: readonly { readonly workpieceId: string; readonly stepId: string; readonly level: CallLevel }[];
}

/** The page's one connection to the floor. Elements get what it says as properties and never see it themselves. */
export interface FloorLink {
  readonly view: FloorView;
  /** House time now, by the server's clock as far as it is known. */
  nowMs(): number;
  /** Called after every change of the view. Returns the unsubscriber. */
  subscribe(listener: () => void): () => void;
  /** Called when this device is to sound; whoever sounds calls `sounded`. */
  onSound(listener: (request: SoundRequest) => void): () => void;
  /** Applies the command at once, keeps it, sends it until it is answered. Returns its id. */
  send(command: ClientCommand): string;
  sounded(request: SoundRequest): void;
  setSound(readiness: SoundReadiness): void;
  introduce(name: string | null, stationId: string | null): void;
  close(): void;
}
