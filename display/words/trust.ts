import * as de from './de/trust.ts';
import * as en from './en/trust.ts';
import * as fr from './fr/trust.ts';
import { inPageLanguage } from './page-language.ts';

/** Taking in the bakehouse's own root, in this page's language. */
export const { TRUST } = inPageLanguage<typeof en>({ en, de, fr });
