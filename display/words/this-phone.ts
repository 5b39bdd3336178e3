import * as de from './de/this-phone.ts';
import * as en from './en/this-phone.ts';
import * as fr from './fr/this-phone.ts';
import { inPageLanguage } from './page-language.ts';

/** The phone itself in this page's language. */
export const { THIS_PHONE, elsewhereWords } = inPageLanguage<typeof en>({ en, de, fr });
