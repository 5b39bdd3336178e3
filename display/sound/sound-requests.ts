import type { SoundReadiness } from '../../shared/wire/up.ts';
import type { FloorLink, SoundRequest } from '../link/floor-link.ts';
import type { SoundPlayer } from './sound-player.ts';

/** What a page does beside sounding. */
export interface SoundManners {
  /** Nobody looks at the page: its browser may put it to sleep at any moment, and another device had better sound. */
  isHidden(): boolean;
  /** Called with each request, sounded or not: for what can be felt. */
  felt(request: SoundRequest): void;
}

/** The sounding of one page. */
export interface Sounding {
  /** Tells the floor whether this page can sound: when it has been hidden or is seen again. */
  tell(): void;
  end(): void;
}

/**
 * Sounds what the floor asks this device to sound, and says so only when it really did. Tells the floor whether this
 * page can sound, now and whenever that changes.
 */
export function answerSoundRequests(link: FloorLink, player: SoundPlayer, manners: SoundManners): Sounding {
  const readiness = (): SoundReadiness => (manners.isHidden() && player.readiness === 'on' ? 'waiting' : player.readiness);
  const tell = (): void => link.setSound(readiness());
  tell();
  const endWatching = player.subscribe(tell);
  const endSounding = link.onSound((request) => {
    manners.felt(request);
    void player.play(request.burst, request.volumePct).then((sounded) => {
      if (sounded) link.sounded(request);
    });
  });
  return {
    tell,
    end: () => {
      endWatching();
      endSounding();
    },
  };
}
