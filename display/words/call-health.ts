import * as de from './de/call-health.ts';
import * as en from './en/call-health.ts';
import * as fr from './fr/call-health.ts';
import { inPageLanguage } from './page-language.ts';

/** How the calls were, in this page's language. */
export const { CALL_HEALTH } = inPageLanguage<typeof en>({ en, de, fr });
