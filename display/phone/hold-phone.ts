import type { FloorLink } from '../link/floor-link.ts';
import type { Screen } from './phone-events.ts';
import type { PhonePage } from './phone-page.ts';

/**
 * The page's owner: gives the phone what the link says, and the link what the phone says. Returns what lets go again.
 * The browser's own way back leads from a card to the list.
 */
export function holdPhone(page: PhonePage, link: FloorLink, monotonicMs: () => number): () => void {
  page.clock = { nowMs: () => link.nowMs(), pace: () => link.view.pace, monotonicMs };
  page.view = link.view;
  link.setSound('none');
  const unsubscribe = link.subscribe(() => {
    page.view = link.view;
  });
  const listeners = new AbortController();
  const { signal } = listeners;
  const show = (screen: Screen): void => {
    page.screen = screen;
  };
  page.addEventListener('floor-command', (event) => void link.send(event.command), { signal });
  page.addEventListener(
    'introduce',
    (event) => {
      link.introduce(event.deviceName, event.stationId);
      history.back();
    },
    { signal },
  );
  page.addEventListener(
    'show-screen',
    (event) => {
      if (event.screen.kind === 'list') {
        if (page.screen.kind !== 'list') history.back();
        return;
      }
      if (page.screen.kind === 'list') history.pushState(event.screen, '');
      else history.replaceState(event.screen, '');
      show(event.screen);
    },
    { signal },
  );
  window.addEventListener('popstate', () => show({ kind: 'list' }), { signal });
  // A page that is loaded again on a card's entry begins at the list all the same.
  history.replaceState(null, '');
  return () => {
    unsubscribe();
    listeners.abort();
  };
}
