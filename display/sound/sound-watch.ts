import type { SoundPlayer } from './sound-player.ts';

/** How often a page looks whether its audio clock still goes. Real ms. */
export const WATCH_SOUND_EVERY_MS = 5_000;

/** Keeps watching a page's audio clock. Returns what ends it. */
export function watchSound(player: Pick<SoundPlayer, 'watch'>): () => void {
  const timer = setInterval(() => void player.watch(), WATCH_SOUND_EVERY_MS);
  return () => clearInterval(timer);
}
