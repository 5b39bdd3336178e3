import * as en from './en/stages.ts';
import { inPageLanguage } from './page-language.ts';

/** Stages in this page's language. */
export const { STAGES, OTHER_STAGES } = inPageLanguage<typeof en>({ en, de: en, fr: en });
