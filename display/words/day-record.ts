import * as de from './de/day-record.ts';
import * as en from './en/day-record.ts';
import * as fr from './fr/day-record.ts';
import { inPageLanguage } from './page-language.ts';

/** The day afterwards, in this page's language. */
export const { DAY_RECORD } = inPageLanguage<typeof en>({ en, de, fr });
