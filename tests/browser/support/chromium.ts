import { chromium, type Browser } from 'playwright-core';

/** Flags without which Chromium does not run as root, or asks the network for things that no test needs. */
const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Lets a page sound without a touch, as a wall's own browser is set up. */
export const SOUND_WITHOUT_TOUCH = '--autoplay-policy=no-user-gesture-required';

/** Real Chromium, the one that `npm test` found. */
export function launchChromium(more: readonly string[] = []): Promise<Browser> {
  return chromium.launch({ executablePath: process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium', args: [...QUIET, ...more] });
}
