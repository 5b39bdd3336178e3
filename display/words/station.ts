import * as de from './de/station.ts';
import * as en from './en/station.ts';
import * as fr from './fr/station.ts';
import { inPageLanguage } from './page-language.ts';

/** A station's screen in this page's language. */
export const { STATION, moreElsewhereWords, nextLoadWords, inSlotWords, blockedTillWords } = inPageLanguage<typeof en>({ en, de, fr });
