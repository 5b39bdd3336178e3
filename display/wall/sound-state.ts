import type { SoundReadiness } from '../../shared/wire/up.ts';
import type { FloorView } from '../link/floor-link.ts';
import { soundOnWords, WALL } from '../words/wall.ts';

/** What the header says of sound. */
export interface SoundState {
  readonly words: string;
  /** Nobody would hear a call. */
  readonly isLate: boolean;
}

/** Whether a call would be heard, by what the floor knows of all devices and this page of itself. */
export function soundState(view: FloorView, readiness: SoundReadiness): SoundState {
  if (readiness === 'waiting') return { words: WALL.soundWaiting, isLate: false };
  const { soundingDeviceId } = view;
  if (soundingDeviceId === null) return { words: WALL.soundNone, isLate: true };
  if (soundingDeviceId === view.device?.id) return { words: WALL.soundOn, isLate: false };
  const other = view.devices.find((device) => device.id === soundingDeviceId);
  return { words: other === undefined ? WALL.soundOn : soundOnWords(other.name), isLate: false };
}
