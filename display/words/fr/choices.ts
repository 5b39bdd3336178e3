import type { LookChoice } from '../../parts/look.ts';

/** What a device can be set to on every page. */
export const CHOICES = {
  language: 'Langue',
  look: 'Clair ou sombre',
} as const;

/** Each look by its name. */
export const LOOK_NAMES: Readonly<Record<LookChoice, string>> = {
  day: 'clair',
  night: 'sombre',
  browser: 'comme l’appareil',
};
