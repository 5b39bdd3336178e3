import * as de from './de/start.ts';
import * as en from './en/start.ts';
import * as fr from './fr/start.ts';
import { inPageLanguage } from './page-language.ts';

/** The start page in this page's language. */
export const { START, startLinks } = inPageLanguage<typeof en>({ en, de, fr });
