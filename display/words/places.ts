import * as de from './de/places.ts';
import * as en from './en/places.ts';
import * as fr from './fr/places.ts';
import { inPageLanguage } from './page-language.ts';

/** Where everything stands, in this page's language. */
export const { PLACES } = inPageLanguage<typeof en>({ en, de, fr });
