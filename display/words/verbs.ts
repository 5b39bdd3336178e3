import * as de from './de/verbs.ts';
import * as en from './en/verbs.ts';
import * as fr from './fr/verbs.ts';
import { inPageLanguage } from './page-language.ts';

export type { VerbWords } from './en/verbs.ts';

/** Verbs in this page's language. */
export const { VERBS, CHECK_CALL } = inPageLanguage<typeof en>({ en, de, fr });
