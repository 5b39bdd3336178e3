import * as en from './en/clock.ts';
import { inPageLanguage } from './page-language.ts';

/** Times in words in this page's language. */
export const { minutesWords, AXIS_MARKS, AXIS_LABEL, hoursWords } = inPageLanguage<typeof en>({ en, de: en, fr: en });
