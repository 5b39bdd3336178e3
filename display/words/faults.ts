import * as de from './de/faults.ts';
import * as en from './en/faults.ts';
import * as fr from './fr/faults.ts';
import { inPageLanguage } from './page-language.ts';

/** Faults of documents in this page's language. */
export const { faultWords } = inPageLanguage<typeof en>({ en, de, fr });
