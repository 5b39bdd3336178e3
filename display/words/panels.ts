import * as de from './de/panels.ts';
import * as en from './en/panels.ts';
import * as fr from './fr/panels.ts';
import { inPageLanguage } from './page-language.ts';

/** The panels behind a dough's card in this page's language. */
export const { PANELS, DESPITE, CORRECTED, nthWords, shortWords, joinsWords, notBeforeWords, takeWords, ripeSinceWords } = inPageLanguage<
  typeof en
>({ en, de, fr });
