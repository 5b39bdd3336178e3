import * as de from './de/backups.ts';
import * as en from './en/backups.ts';
import * as fr from './fr/backups.ts';
import { inPageLanguage } from './page-language.ts';

/** What is said of backups in this page's language. */
export const { BACKUPS } = inPageLanguage<typeof en>({ en, de, fr });
