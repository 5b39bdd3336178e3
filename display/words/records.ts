import * as de from './de/records.ts';
import * as en from './en/records.ts';
import * as fr from './fr/records.ts';
import { inPageLanguage } from './page-language.ts';

/** The records, in this page's language. */
export const { RECORDS } = inPageLanguage<typeof en>({ en, de, fr });
