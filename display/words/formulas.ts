import * as de from './de/formulas.ts';
import * as en from './en/formulas.ts';
import * as fr from './fr/formulas.ts';
import { inPageLanguage } from './page-language.ts';

/** The formula book's page and its forms, in this page's language. */
export const { FORMULAS, PARTS, TOTALS, SAVE, SECTION_NAMES, TEMPLATE_NAMES, YEAST_FORM_NAMES, STARTING_NAMES } = inPageLanguage<typeof en>(
  {
    en,
    de,
    fr,
  },
);
