import { keepLanguage } from '../words/page-language.ts';
import { keepLookChoice, keptLookChoice, lookOf, onBrowserLook, showLook, type LookChoice } from './look.ts';
import type { LanguageChosenEvent, LookChosenEvent } from './choice-events.ts';

/**
 * Gives the page its look and keeps what is chosen on it: a look at once, a language with the next load, which comes by
 * itself. `shown` is called with the choice that the page is to show as chosen, and again at each change.
 */
export function keepChoices(page: HTMLElement, shown: (look: LookChoice) => void): void {
  const show = (): void => {
    const choice = keptLookChoice('browser');
    showLook(lookOf(choice));
    shown(choice);
  };
  show();
  onBrowserLook(show);
  page.addEventListener('look-chosen', (event: LookChosenEvent) => {
    keepLookChoice(event.look);
    // Also where nothing can be kept the page looks as it was told, until it is loaded again.
    showLook(lookOf(event.look));
    shown(event.look);
  });
  keepLanguageChoice(page);
}

/** Keeps a language that is chosen on the page, and loads it anew in that language. */
export function keepLanguageChoice(page: HTMLElement): void {
  page.addEventListener('language-chosen', (event: LanguageChosenEvent) => {
    keepLanguage(event.language);
    const address = new URL(location.href);
    // In the address too: it goes before what is kept, and is all there is where nothing can be kept.
    address.searchParams.set('language', event.language);
    location.replace(address);
  });
}
