import type { AccessRole } from '../../shared/wire/joining.ts';
import type { Device } from '../../shared/wire/down.ts';
import type { SoundReadiness, PageKind } from '../../shared/wire/up.ts';
import type { Peer } from './peer.ts';

/** A websocket that has not said hello yet: it gets nothing and may say nothing else. */
export interface GreetingSession {
  readonly phase: 'greeting';
  readonly peer: Peer;
  readonly device: Device;
  readonly role: AccessRole;
  readonly page: PageKind;
  /** It may show the picture that lets others in. */
  readonly isVouched: boolean;
}

/** One that has the whole state and gets everything as it comes. */
export interface LiveSession {
  readonly phase: 'live';
  readonly peer: Peer;
  readonly device: Device;
  readonly role: AccessRole;
  readonly page: PageKind;
  readonly isVouched: boolean;
  readonly sound: SoundReadiness;
  /** In which order sessions came: among pages of one kind the first that can sound is the one that does. */
  readonly number: number;
}

export type Session = GreetingSession | LiveSession;
