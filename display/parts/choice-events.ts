import type { Language } from '../words/page-language.ts';
import type { LookChoice } from './look.ts';

const OUT = { bubbles: true, composed: true } as const;

/** The language that this device is to speak. */
export class LanguageChosenEvent extends Event {
  static readonly type = 'language-chosen';
  readonly language: Language;

  constructor(language: Language) {
    super(LanguageChosenEvent.type, OUT);
    this.language = language;
  }
}

/** Light or dark paper for this device. */
export class LookChosenEvent extends Event {
  static readonly type = 'look-chosen';
  readonly look: LookChoice;

  constructor(look: LookChoice) {
    super(LookChosenEvent.type, OUT);
    this.look = look;
  }
}

declare global {
  interface HTMLElementEventMap {
    'language-chosen': LanguageChosenEvent;
    'look-chosen': LookChosenEvent;
  }
}
