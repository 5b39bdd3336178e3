import * as de from './de/trace.ts';
import * as en from './en/trace.ts';
import * as fr from './fr/trace.ts';
import { inPageLanguage } from './page-language.ts';

/** The trace of lots, in this page's language. */
export const { TRACE } = inPageLanguage<typeof en>({ en, de, fr });
