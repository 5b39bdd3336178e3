import * as de from './de/weigh.ts';
import * as en from './en/weigh.ts';
import * as fr from './fr/weigh.ts';
import { inPageLanguage } from './page-language.ts';

/** The weigh-out in this page's language. */
export const { WEIGH } = inPageLanguage<typeof en>({ en, de, fr });
