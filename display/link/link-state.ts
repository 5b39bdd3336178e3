import type { ClientCommand } from '../../shared/floor/commands.ts';
import { EMPTY_STATE, type FloorState } from '../../shared/floor/state.ts';
import { NOBODY_JOINS, type JoiningStatus } from '../../shared/wire/joining.ts';
import type { Device, DownMessage } from '../../shared/wire/down.ts';
import type { SoundReadiness, UpMessage, PageKind } from '../../shared/wire/up.ts';
import type { Decider } from './decider.ts';
import { IN_HEALTH, type AnsweredTap, type Connection, type HouseHealth, type SoundRequest } from './floor-link.ts';
import { NO_CLOCK, type HouseClock } from './house-clock.ts';
import type { KeptRecord } from './kept-tap.ts';

/** A tap that the confirmed state does not show yet. */
export interface HeldTap {
  readonly record: KeptRecord;
  /** Sent on the connection there is now. */
  readonly isSent: boolean;
  /** Answered well, and in the journal up to this sequence number, which has not been folded here yet. Null: unanswered. */
  readonly answeredSequence: number | null;
}

/** How far the present connection has come. */
export type Line = 'down' | 'greeting' | 'catchingUp' | 'live';

/** Everything that a page knows of its server. Immutable; `advance` makes the next one. */
export interface LinkState {
  readonly page: PageKind;
  readonly pageId: string;
  /** What this page can tell of a tap by itself. */
  readonly decide: Decider;
  readonly line: Line;
  readonly refusedWhy: Extract<Connection, { phase: 'refused' }>['why'] | null;
  /** Tries since the connection was last live. */
  readonly attempts: number;
  /** By the monotonic clock, when the server last said something; null before it ever did. */
  readonly lastContactMonotonicMs: number | null;
  readonly kitchenId: string | null;
  /** The fold of what the server said; meaningless while `isKnown` is false. */
  readonly confirmed: FloorState;
  readonly isKnown: boolean;
  /** `confirmed` with the held taps on top. */
  readonly shown: FloorState;
  readonly taps: readonly HeldTap[];
  /** Taps that came back as events before their outcome did, the newest last. */
  readonly settled: readonly { readonly commandId: string; readonly command: ClientCommand }[];
  readonly nextOrder: number;
  /** The server could not keep a tap: nothing is sent until the pause is over. */
  readonly isRetryWaiting: boolean;
  readonly retries: number;
  readonly lastAnswer: AnsweredTap | null;
  readonly undoable: AnsweredTap | null;
  readonly refusedHere: ClientCommand | null;
  readonly device: Device | null;
  readonly devices: readonly Device[];
  readonly addresses: readonly string[];
  readonly soundingDeviceId: string | null;
  readonly soundingPage: PageKind | null;
  readonly planNews: number;
  readonly joining: JoiningStatus;
  readonly health: HouseHealth;
  readonly sound: SoundReadiness;
  /** What this device is to be called, not yet told to the server. */
  readonly untoldIntroduction: { readonly name: string | null; readonly stationId: string | null } | null;
  readonly clock: HouseClock;
  readonly pingsLeft: number;
}

/** What can happen to a link. */
export type LinkInput =
  | { readonly type: 'opened' }
  | { readonly type: 'received'; readonly message: DownMessage }
  | { readonly type: 'unreadable'; readonly name: string }
  | { readonly type: 'closed'; readonly code: number }
  | { readonly type: 'tapped'; readonly commandId: string; readonly command: ClientCommand }
  | { readonly type: 'soundSet'; readonly sound: SoundReadiness }
  | { readonly type: 'soundMade'; readonly request: SoundRequest }
  | { readonly type: 'introduced'; readonly name: string | null; readonly stationId: string | null }
  /** The page is seen again, a minute is over: time to ask for the time again. */
  | { readonly type: 'clockCheckDue' }
  | { readonly type: 'heartbeatDue' }
  | { readonly type: 'retryDue' };

/** What the page is to do about it. */
export type LinkEffect =
  | { readonly type: 'send'; readonly message: UpMessage }
  /** Close the connection; the answer is a `closed` with the same code. */
  | { readonly type: 'hangUp'; readonly code: number; readonly reason: string }
  | { readonly type: 'connectAgain'; readonly attempt: number; readonly isSlow: boolean }
  | { readonly type: 'loadPageAgain' }
  | { readonly type: 'keep'; readonly record: KeptRecord }
  | { readonly type: 'forget'; readonly commandId: string }
  | { readonly type: 'retryLater'; readonly retry: number }
  | { readonly type: 'sound'; readonly request: SoundRequest };

/** A link before its first connection, with the taps that an earlier load of the page has kept. */
export function newLink(page: PageKind, pageId: string, kept: readonly KeptRecord[], decide: Decider): LinkState {
  return {
    page,
    pageId,
    decide,
    line: 'down',
    refusedWhy: null,
    attempts: 0,
    lastContactMonotonicMs: null,
    kitchenId: null,
    confirmed: EMPTY_STATE,
    isKnown: false,
    shown: EMPTY_STATE,
    taps: kept.map((record) => ({ record, isSent: false, answeredSequence: null })),
    settled: [],
    nextOrder: kept.reduce((order, record) => Math.max(order, record.order + 1), 0),
    isRetryWaiting: false,
    retries: 0,
    lastAnswer: null,
    undoable: null,
    refusedHere: null,
    device: null,
    devices: [],
    addresses: [],
    soundingDeviceId: null,
    soundingPage: null,
    planNews: 0,
    joining: NOBODY_JOINS,
    health: IN_HEALTH,
    sound: 'none',
    untoldIntroduction: null,
    clock: NO_CLOCK,
    pingsLeft: 0,
  };
}
