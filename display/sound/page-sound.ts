import { SoundPlayer } from './sound-player.ts';

/** The sound player of this page, by what its browser has. */
export function openPageSound(): SoundPlayer {
  const hasAudio = typeof globalThis.AudioContext === 'function';
  return new SoundPlayer({
    createContext: hasAudio ? () => new AudioContext({ latencyHint: 'interactive' }) : null,
    wait: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
  });
}
