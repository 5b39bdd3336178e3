import * as de from './de/wall-setup.ts';
import * as en from './en/wall-setup.ts';
import * as fr from './fr/wall-setup.ts';
import { inPageLanguage } from './page-language.ts';

/** The wall's setup page in this page's language. */
export const { SETUP, WALL_LOOKS, GAPS, barWords, densityWords, sizeWords, sampleWords, ringWords, scoreWords } = inPageLanguage<typeof en>(
  {
    en,
    de,
    fr,
  },
);
