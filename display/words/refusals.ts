import * as de from './de/refusals.ts';
import * as en from './en/refusals.ts';
import * as fr from './fr/refusals.ts';
import { inPageLanguage } from './page-language.ts';

export type { RefusalFacts } from './en/refusals.ts';

/** Refusals in this page's language. */
export const { refusalWords, reasonWords } = inPageLanguage<typeof en>({ en, de, fr });
