import * as de from './de/ways-out.ts';
import * as en from './en/ways-out.ts';
import * as fr from './fr/ways-out.ts';
import { inPageLanguage } from './page-language.ts';

export type { WayOutFacts, WayOutWords } from './en/ways-out.ts';

/** Ways out in this page's language. */
export const { wayOutWords, mayBeInWords, insteadOfWords, lessThanSeedWords, lessThanNeededWords, withoutWords, COOLED_SINCE } =
  inPageLanguage<typeof en>({ en, de, fr });
