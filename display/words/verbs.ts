import * as en from './en/verbs.ts';
import { inPageLanguage } from './page-language.ts';

export type { VerbWords } from './en/verbs.ts';

/** Verbs in this page's language. */
export const { VERBS, CHECK_CALL } = inPageLanguage<typeof en>({ en, de: en, fr: en });
