import * as de from './de/day.ts';
import * as en from './en/day.ts';
import * as fr from './fr/day.ts';
import { inPageLanguage } from './page-language.ts';

/** The page of a day in this page's language: its orders and its plan. */
export const {
  DAY,
  DAY_SECTIONS,
  ORDER_COLUMNS,
  ORDER_FORMS,
  ORDERS,
  READING,
  orderFaultWords,
  STANDING,
  PLANNING,
  FIGURES,
  ofAllWords,
  lengthWords,
  inWords,
  batchWords,
  stepWords,
  WARNINGS,
  movedWhyWords,
  TROUBLES,
  CAUSES,
  REMEDIES,
  PLAN_FAULTS,
} = inPageLanguage<typeof en>({ en, de, fr });
