import * as de from './de/method.ts';
import * as en from './en/method.ts';
import * as fr from './fr/method.ts';
import { inPageLanguage } from './page-language.ts';

export type { VerbGroup } from './en/method.ts';

/** Methods, side preps, products and ingredients as they are written, in this page's language. */
export const {
  METHOD,
  STEP_LABELS,
  STEP_KINDS,
  KIND_MARKS,
  VERB_GROUPS,
  CLAIM_KINDS,
  RIPENING_MODELS,
  USUAL_CHECKS,
  CHECK_BY_HAND,
  USUAL_CAUTIONS,
  PREPS,
  TAKES_BACK,
  PRODUCT,
  INGREDIENT,
} = inPageLanguage<typeof en>({ en, de, fr });
