import type { LookChoice } from '../../parts/look.ts';

/** What a device can be set to on every page. */
export const CHOICES = {
  language: 'Language',
  look: 'Light or dark',
} as const;

/** Each look by its name. */
export const LOOK_NAMES: Readonly<Record<LookChoice, string>> = {
  day: 'light',
  night: 'dark',
  browser: 'as the device is',
};
