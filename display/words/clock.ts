import * as de from './de/clock.ts';
import * as en from './en/clock.ts';
import * as fr from './fr/clock.ts';
import { inPageLanguage } from './page-language.ts';

/** Times in words in this page's language. */
export const { LOCALE, minutesWords, AXIS_MARKS, AXIS_LABEL, hoursWords } = inPageLanguage<typeof en>({ en, de, fr });
