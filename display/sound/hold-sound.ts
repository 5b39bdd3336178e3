import type { FloorLink } from '../link/floor-link.ts';
import { LostLinkSound } from './lost-link-sound.ts';
import { OwnVoice } from './own-voice.ts';
import { openPageSound } from './page-sound.ts';
import { answerSoundRequests } from './sound-requests.ts';
import { watchSound } from './sound-watch.ts';
import { vibrationOf } from './vibration.ts';
import { volumeNow } from './volume-now.ts';

/**
 * Gives a phone or a station's screen its voice: any touch or key turns it on, what the floor asks for is sounded and felt,
 * and while nobody looks at the page the floor is told to ask another one. Returns what lets go again.
 */
export function holdSound(link: FloorLink): () => void {
  const player = openPageSound();
  const sounding = answerSoundRequests(link, player, {
    isHidden: () => document.visibilityState === 'hidden',
    felt: ({ burst }) => vibrate(vibrationOf(burst)),
  });
  const ownVoice = new OwnVoice(
    new LostLinkSound({
      after: (ms, callback) => {
        const timer = setTimeout(callback, ms);
        return () => clearTimeout(timer);
      },
      sound: () => void player.play('late', volumeNow(link)),
    }),
  );
  const endFollowing = link.subscribe(() => ownVoice.follow(link.view, link.nowMs()));
  const listeners = new AbortController();
  const { signal } = listeners;
  const turnOn = (): void => void player.turnOn();
  // Captured, so that a button that keeps its press to itself turns the sound on all the same.
  window.addEventListener('pointerup', turnOn, { signal, capture: true });
  window.addEventListener('keydown', turnOn, { signal, capture: true });
  document.addEventListener('visibilitychange', () => sounding.tell(), { signal });
  turnOn();
  const endWatching = watchSound(player);
  return () => {
    endWatching();
    sounding.end();
    endFollowing();
    listeners.abort();
  };
}

/** Where the browser can (Chromium on Android, after a touch); nothing elsewhere. */
function vibrate(pattern: number[]): void {
  // A page that nobody has touched may not, and Chromium complains of one that asks.
  if ('vibrate' in navigator && navigator.userActivation.hasBeenActive) navigator.vibrate(pattern);
}
