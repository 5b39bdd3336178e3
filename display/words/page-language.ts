import { kept } from '../parts/kept.ts';
import type { Shape } from './shape.ts';

/** The languages that the screens speak, English first. */
export const LANGUAGES = ['en', 'de', 'fr'] as const;
export type Language = (typeof LANGUAGES)[number];

/** What each language calls itself. */
export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: 'English', de: 'Deutsch', fr: 'Français' };

const KEY = 'ovenward.language';

/**
 * The language of a page: what its address says (`?language=de`), else what was chosen on this device, else the first
 * of the browser's languages that we speak, else English.
 */
export function languageFor(query: URLSearchParams, chosen: string | null, browsers: readonly string[]): Language {
  for (const wanted of [query.get('language'), chosen, ...browsers]) {
    const language = LANGUAGES.find((known) => known === wanted?.split('-')[0]?.toLowerCase());
    if (language !== undefined) return language;
  }
  return 'en';
}

/** Chosen once, when the page loads: another language is another load, so that no half of a page stays behind. */
const pageLanguage = typeof document === 'undefined' ? 'en' : openingLanguage();

/** The language in which this page speaks. */
export function languageOfPage(): Language {
  return pageLanguage;
}

/** Keeps a language for this device; the page speaks it from its next load on. */
export function keepLanguage(language: Language): void {
  kept.write(KEY, language);
}

/** Of one family of words in all languages, those of this page. */
export function inPageLanguage<English>(all: Readonly<Record<Language, Shape<English>>>): Shape<English> {
  return all[pageLanguage];
}

function openingLanguage(): Language {
  const query = new URLSearchParams(location.search);
  const language = languageFor(query, kept.read(KEY), navigator.languages);
  if (query.has('language')) kept.write(KEY, language);
  document.documentElement.lang = language;
  return language;
}
