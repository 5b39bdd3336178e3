import * as de from './de/joining.ts';
import * as en from './en/joining.ts';
import * as fr from './fr/joining.ts';
import { inPageLanguage } from './page-language.ts';

/** Being let in, in this page's language. */
export const { JOINING } = inPageLanguage<typeof en>({ en, de, fr });
