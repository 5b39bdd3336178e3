import * as de from './de/roles.ts';
import * as en from './en/roles.ts';
import * as fr from './fr/roles.ts';
import { inPageLanguage } from './page-language.ts';

/** The four roles in this page's language. */
export const { ROLES, lostWords } = inPageLanguage<typeof en>({ en, de, fr });
