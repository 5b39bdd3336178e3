import * as de from './de/floor.ts';
import * as en from './en/floor.ts';
import * as fr from './fr/floor.ts';
import { inPageLanguage } from './page-language.ts';

/** Words of the floor in this page's language. */
export const { ALLERGENS, BLOCKED_WHY, PUT_BACK, LOSSES, listWords } = inPageLanguage<typeof en>({ en, de, fr });
