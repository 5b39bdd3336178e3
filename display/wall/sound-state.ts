import { soundTrust, type SoundTrust } from '../../shared/floor/sound-test.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { unreachable } from '../../shared/result.ts';
import type { SoundReadiness } from '../../shared/wire/up.ts';
import type { FloorView } from '../link/floor-link.ts';
import { browserHours } from '../parts/browser-hours.ts';
import { clockText } from '../parts/clock-text.ts';
import { dayClockText } from '../parts/day-clock-text.ts';
import { quietTillWords, SOUND, soundNotHeardWords, soundOkWords, soundOldWords } from '../words/sound.ts';
import { soundOnWords, WALL } from '../words/wall.ts';

/** What the header says of sound. */
export interface SoundState {
  readonly words: string;
  /** A call might not be heard. */
  readonly isLate: boolean;
}

/** Whether a call would be heard, by what the floor knows of all devices and this page of itself. */
export function soundState(view: FloorView, readiness: SoundReadiness, nowMs: number): SoundState {
  if (readiness === 'waiting') return { words: WALL.soundWaiting, isLate: false };
  if (view.soundingDeviceId === null) return { words: WALL.soundNone, isLate: true };
  if (view.state === null) return { words: WALL.soundOn, isLate: false };
  const trust = soundTrust(view.state, nowMs);
  if (trust.kind !== 'ok') return { words: doubtWords(trust, view.state, nowMs), isLate: true };
  return { words: calmWords(view, view.state, trust.heardMs, nowMs), isLate: false };
}

function doubtWords(trust: Exclude<SoundTrust, { kind: 'ok' }>, state: FloorState, nowMs: number): string {
  const zone = zoneOf(state);
  switch (trust.kind) {
    case 'never':
      return SOUND.wallNever;
    case 'old':
      return soundOldWords(dayClockText(trust.heardMs, nowMs, zone));
    case 'notHeard':
      return soundNotHeardWords(dayClockText(trust.soundedMs, nowMs, zone));
    default:
      return unreachable(trust);
  }
}

function calmWords(view: FloorView, state: FloorState, heardMs: number, nowMs: number): string {
  const quietEndMs = browserHours(state.house?.document ?? null).quietEndMs(nowMs);
  if (quietEndMs !== null) return quietTillWords(clockText(quietEndMs, zoneOf(state)));
  const other = view.devices.find((device) => device.id === view.soundingDeviceId && device.id !== view.device?.id);
  return other === undefined ? soundOkWords(dayClockText(heardMs, nowMs, zoneOf(state))) : soundOnWords(other.name);
}

function zoneOf(state: FloorState): string {
  return state.house?.document.zone ?? 'UTC';
}
