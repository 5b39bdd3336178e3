import * as de from './de/sound.ts';
import * as en from './en/sound.ts';
import * as fr from './fr/sound.ts';
import { inPageLanguage } from './page-language.ts';

/** What screens say of sounding, in this page's language. */
export const {
  noWallWords,
  SOUND,
  soundAskWords,
  soundOkWords,
  soundOldWords,
  soundNotHeardWords,
  quietTillWords,
  soundsOnWords,
  lastHeardWords,
  lostFirstWords,
  volumeLabelWords,
} = inPageLanguage<typeof en>({ en, de, fr });
