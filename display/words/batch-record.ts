import * as de from './de/batch-record.ts';
import * as en from './en/batch-record.ts';
import * as fr from './fr/batch-record.ts';
import { inPageLanguage } from './page-language.ts';

/** The record of one batch, in this page's language. */
export const { BATCH_RECORD } = inPageLanguage<typeof en>({ en, de, fr });
