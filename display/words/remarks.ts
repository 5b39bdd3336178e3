import * as de from './de/remarks.ts';
import * as en from './en/remarks.ts';
import * as fr from './fr/remarks.ts';
import { inPageLanguage } from './page-language.ts';

/** What is unusual in a formula, in this page's language. */
export const { remarkWords } = inPageLanguage<typeof en>({ en, de, fr });
