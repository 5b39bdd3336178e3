import * as de from './de/stages.ts';
import * as en from './en/stages.ts';
import * as fr from './fr/stages.ts';
import { inPageLanguage } from './page-language.ts';

/** Stages in this page's language. */
export const { STAGES, OTHER_STAGES } = inPageLanguage<typeof en>({ en, de, fr });
