import * as de from './de/ovens.ts';
import * as en from './en/ovens.ts';
import * as fr from './fr/ovens.ts';
import { inPageLanguage } from './page-language.ts';

/** Slots and their heat, in this page's language. */
export const { OVENS } = inPageLanguage<typeof en>({ en, de, fr });
