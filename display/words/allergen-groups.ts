import * as de from './de/allergen-groups.ts';
import * as en from './en/allergen-groups.ts';
import * as fr from './fr/allergen-groups.ts';
import { inPageLanguage } from './page-language.ts';

/** The groups of both lists in this page's language. */
export const { EU_GROUP_NAMES, US_GROUP_NAMES } = inPageLanguage<typeof en>({ en, de, fr });
