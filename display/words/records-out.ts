import * as de from './de/records-out.ts';
import * as en from './en/records-out.ts';
import * as fr from './fr/records-out.ts';
import { inPageLanguage } from './page-language.ts';

/** The records taken out as files, in this page's language. */
export const { RECORDS_OUT } = inPageLanguage<typeof en>({ en, de, fr });
