import * as de from './de/allergens.ts';
import * as en from './en/allergens.ts';
import * as fr from './fr/allergens.ts';
import { inPageLanguage } from './page-language.ts';

/** What is said of allergens in this page's language. */
export const { ALLERGEN_LIST } = inPageLanguage<typeof en>({ en, de, fr });
