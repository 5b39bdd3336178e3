import * as de from './de/choices.ts';
import * as en from './en/choices.ts';
import * as fr from './fr/choices.ts';
import { inPageLanguage } from './page-language.ts';

/** What a device is set to in this page's language. */
export const { CHOICES, LOOK_NAMES } = inPageLanguage<typeof en>({ en, de, fr });
