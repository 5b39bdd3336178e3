import * as de from './de/kitchen.ts';
import * as en from './en/kitchen.ts';
import * as fr from './fr/kitchen.ts';
import { inPageLanguage } from './page-language.ts';

/** The kitchen page in this page's language. */
export const {
  KITCHEN,
  FIELDS,
  UNITS,
  MIXER_KINDS,
  PLACE_KINDS,
  VESSEL_KINDS,
  RULE_SETS,
  TEMPERATURE_UNITS,
  WEIGHT_UNITS,
  WATER_FORMS,
  BLOCK_REASONS,
  addWords,
  addWithinWords,
  noLinkSinceWords,
  paceOfKitchenWords,
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
  rangeWords,
  NUMBER_NEEDED,
  WHOLE_NEEDED,
  ONE_NEEDED,
  TEXT_NEEDED,
  atLeastWords,
  atMostWords,
  moreThanWords,
  faultOfWords,
} = inPageLanguage<typeof en>({ en, de, fr });
