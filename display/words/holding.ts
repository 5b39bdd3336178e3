import * as de from './de/holding.ts';
import * as en from './en/holding.ts';
import * as fr from './fr/holding.ts';
import { inPageLanguage } from './page-language.ts';

/** Food that has to be kept cold or hot, in this page's language. */
export const { RULE_SET_NAMES, LIMIT_WHY, HOLDING } = inPageLanguage<typeof en>({ en, de, fr });
