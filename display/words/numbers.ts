import * as de from './de/numbers.ts';
import * as en from './en/numbers.ts';
import * as fr from './fr/numbers.ts';
import { inPageLanguage } from './page-language.ts';

/** Numbers that are told, in this page's language. */
export const { NUMBERS, numberWords, READ_WHERE } = inPageLanguage<typeof en>({ en, de, fr });
