import * as de from './de/warmth.ts';
import * as en from './en/warmth.ts';
import * as fr from './fr/warmth.ts';
import { inPageLanguage } from './page-language.ts';

/** Rests and the warmth of their dough, in this page's language. */
export const { WARMTH, BAKE_CORE, BAKE_PHASE } = inPageLanguage<typeof en>({ en, de, fr });
