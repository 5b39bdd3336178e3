import * as de from './de/phone.ts';
import * as en from './en/phone.ts';
import * as fr from './fr/phone.ts';
import { inPageLanguage } from './page-language.ts';

/** The phone in this page's language. */
export const {
  PHONE,
  skipTitleWords,
  SKIP_REASONS,
  noLinkWords,
  keptWords,
  phonePaceWords,
  minutesMoreWords,
  holdMinutesWords,
  MINUTES_UNIT,
  piecesCountWords,
  piecesDoneWords,
  slotsChosenWords,
  heardAtWords,
  heldToWords,
  startedAtWords,
  DID,
} = inPageLanguage<typeof en>({ en, de, fr });
