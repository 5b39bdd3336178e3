import * as de from './de/devices.ts';
import * as en from './en/devices.ts';
import * as fr from './fr/devices.ts';
import { inPageLanguage } from './page-language.ts';

/** Who was let in, in this page's language. */
export const { DEVICES } = inPageLanguage<typeof en>({ en, de, fr });
