import * as de from './de/wall.ts';
import * as en from './en/wall.ts';
import * as fr from './fr/wall.ts';
import { inPageLanguage } from './page-language.ts';

/** The wall in this page's language. */
export const {
  WALL,
  paceWords,
  soundOnWords,
  moreWords,
  freeSlotsWords,
  heldWords,
  limitWords,
  piecesWords,
  shortWords,
  stationsWords,
  compactDayWords,
  ripeWords,
  RIPENING,
  unknownStationWords,
  elsewhereWords,
  BLOCKED,
  blockedWords,
  IN_THE_WAY,
  WAY_OUT,
  announcement,
} = inPageLanguage<typeof en>({ en, de, fr });
