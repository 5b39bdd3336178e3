import type { LookChoice } from '../../parts/look.ts';

/** What a device can be set to on every page. */
export const CHOICES = {
  language: 'Sprache',
  look: 'Hell oder dunkel',
} as const;

/** Each look by its name. */
export const LOOK_NAMES: Readonly<Record<LookChoice, string>> = {
  day: 'hell',
  night: 'dunkel',
  browser: 'wie das Gerät',
};
