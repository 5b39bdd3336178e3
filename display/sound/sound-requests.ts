import type { FloorLink } from '../link/floor-link.ts';
import type { SoundPlayer } from './sound-player.ts';

/**
 * Sounds what the floor asks this device to sound, and says so only when it really did. Tells the floor whether this
 * page can sound, now and whenever that changes. Returns what ends it.
 */
export function answerSoundRequests(link: FloorLink, player: SoundPlayer): () => void {
  link.setSound(player.readiness);
  const endWatching = player.subscribe(() => link.setSound(player.readiness));
  const endSounding = link.onSound((request) => {
    void player.play(request.burst).then((sounded) => {
      if (sounded) link.sounded(request);
    });
  });
  return () => {
    endWatching();
    endSounding();
  };
}
