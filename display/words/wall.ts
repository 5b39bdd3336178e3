import * as en from './en/wall.ts';
import { inPageLanguage } from './page-language.ts';

/** The wall in this page's language. */
export const {
  WALL,
  paceWords,
  soundOnWords,
  moreWords,
  freeSlotsWords,
  heldWords,
  piecesWords,
  shortWords,
  stationsWords,
  compactDayWords,
  ripeWords,
  BLOCKED,
  blockedWords,
  IN_THE_WAY,
  WAY_OUT,
  announcement,
} = inPageLanguage<typeof en>({ en, de: en, fr: en });
