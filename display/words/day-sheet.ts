import * as de from './de/day-sheet.ts';
import * as en from './en/day-sheet.ts';
import * as fr from './fr/day-sheet.ts';
import { inPageLanguage } from './page-language.ts';

/** The day sheet, the stations' lists and what trying the day says, in this page's language. */
export const {
  SHEET_WORDS,
  STATION_LIST,
  TRY,
  piecesWords,
  stretchWords,
  tillWords,
  movedWords,
  fixedWords,
  awayWords,
  handsAtWords,
  busyWords,
  waitsWords,
  pinMissedWords,
  clashAtWords,
  ordersAtWords,
  orderWords,
  lateByWords,
  shortOfWords,
  lengthWords,
  rowWords,
} = inPageLanguage<typeof en>({ en, de, fr });
