import * as de from './de/lessons.ts';
import * as en from './en/lessons.ts';
import * as fr from './fr/lessons.ts';
import { inPageLanguage } from './page-language.ts';

/** What the days teach, in this page's language. */
export const { LESSONS } = inPageLanguage<typeof en>({ en, de, fr });
