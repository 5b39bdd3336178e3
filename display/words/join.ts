import * as de from './de/join.ts';
import * as en from './en/join.ts';
import * as fr from './fr/join.ts';
import { inPageLanguage } from './page-language.ts';

/** How phones join, in this page's language. */
export const { JOIN } = inPageLanguage<typeof en>({ en, de, fr });
