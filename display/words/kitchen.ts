import * as de from './de/kitchen.ts';
import * as en from './en/kitchen.ts';
import * as fr from './fr/kitchen.ts';
import { inPageLanguage } from './page-language.ts';

/** The kitchen page in this page's language. */
export const {
  KITCHEN,
  FIELDS,
  MIXER_KINDS,
  PLACE_KINDS,
  VESSEL_KINDS,
  WEIGHT_UNITS,
  WATER_FORMS,
  BLOCK_REASONS,
  addWords,
  addWithinWords,
  blockedWords,
  handsWords,
  doughsAtOnceWords,
  roomWords,
  rangeOfLoadWords,
  litresWords,
  countWords,
  heldCountWords,
  returningWords,
  freeCountWords,
  usuallyWords,
  atLeastWords,
  atMostWords,
  moreThanWords,
  faultOfWords,
} = inPageLanguage<typeof en>({ en, de, fr });
