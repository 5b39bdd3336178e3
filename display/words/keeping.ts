import * as de from './de/keeping.ts';
import * as en from './en/keeping.ts';
import * as fr from './fr/keeping.ts';
import { inPageLanguage } from './page-language.ts';

/** Why food has to be kept, in this page's language. */
export const { KEEPING_KINDS, KEEPING_EDIT } = inPageLanguage<typeof en>({ en, de, fr });
