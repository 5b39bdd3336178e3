import * as de from './de/prompts.ts';
import * as en from './en/prompts.ts';
import * as fr from './fr/prompts.ts';
import { inPageLanguage } from './page-language.ts';

/** Phases of a bake and the core, in this page's language. */
export const { PROMPTS, setWords, CORE, PAST_LIMIT, DECK } = inPageLanguage<typeof en>({ en, de, fr });
