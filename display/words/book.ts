import * as de from './de/book.ts';
import * as en from './en/book.ts';
import * as fr from './fr/book.ts';
import { inPageLanguage } from './page-language.ts';

/** The book's list, batch sizes, printed weigh-outs, versions, and what comes in and goes out, in this page's language. */
export const {
  BOOK,
  SIZE,
  SHEET,
  VERSIONS,
  IN_OUT,
  KIND_NAMES,
  CHANGES,
  UNREAD_WHY,
  RECIPE_FAULTS,
  FORMULA_FACTS,
  PRODUCT_FACTS,
  STEP_FIELDS,
} = inPageLanguage<typeof en>({ en, de, fr });
