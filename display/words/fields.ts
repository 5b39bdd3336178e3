import * as de from './de/fields.ts';
import * as en from './en/fields.ts';
import * as fr from './fr/fields.ts';
import { inPageLanguage } from './page-language.ts';

/** What fields say on every page at a desk, and the heads of these pages, in this page's language. */
export const { RULE_SETS, NO_VALUE, NUMBER_NEEDED, WHOLE_NEEDED, ONE_NEEDED, TEXT_NEEDED, rangeWords, noLinkSinceWords, paceAtDeskWords } =
  inPageLanguage<typeof en>({ en, de, fr });
