import type { FloorLink } from '../link/floor-link.ts';
import { keepFilter, keptFilter } from './kept-filter.ts';
import type { Screen } from './phone-events.ts';
import type { PhonePage } from './phone-page.ts';
import { stillToTell } from './told-refusals.ts';

/** A screen and how many lie before it in the browser's own history. */
interface Step {
  readonly screen: Screen;
  readonly depth: number;
}

const LIST: Step = { screen: { kind: 'list' }, depth: 0 };

/**
 * The page's owner: gives the phone what the link says, and the link what the phone says. Returns what lets go again.
 * The phone's own way back and the browser's are the same: to the screen that this one was opened from.
 */
export function holdPhone(page: PhonePage, link: FloorLink, monotonicMs: () => number): () => void {
  page.clock = { nowMs: () => link.nowMs(), pace: () => link.view.pace, monotonicMs };
  page.filterId = keptFilter();
  const follow = (): void => {
    page.view = link.view;
    page.refusals = stillToTell(page.refusals, link.view);
  };
  follow();
  const unsubscribe = link.subscribe(follow);
  const listeners = new AbortController();
  const { signal } = listeners;
  holdScreens(page, signal);
  page.addEventListener('floor-command', (event) => void link.send(event.command), { signal });
  page.addEventListener('introduce', (event) => link.introduce(event.deviceName, event.stationId), { signal });
  page.addEventListener('put-away', () => (page.refusals = []), { signal });
  page.addEventListener(
    'filter-chosen',
    ({ stationId }) => {
      page.filterId = stationId;
      keepFilter(stationId);
    },
    { signal },
  );
  return () => {
    unsubscribe();
    listeners.abort();
  };
}

function holdScreens(page: PhonePage, signal: AbortSignal): void {
  let here = LIST;
  const show = (step: Step): void => {
    here = step;
    page.screen = step.screen;
    page.leadsToList = step.depth < 2;
  };
  const back = (): void => {
    if (here.depth > 0) history.back();
    else show(LIST);
  };
  page.addEventListener(
    'show-screen',
    ({ screen }) => {
      if (screen.kind === 'list') {
        if (here.depth > 0) history.go(-here.depth);
        else show(LIST);
        return;
      }
      // A card whose dough has left the floor shows the list: nobody wants to come back to it.
      const isInPlace = here.depth > 0 && page.showsList;
      show({ screen, depth: isInPlace ? here.depth : here.depth + 1 });
      if (isInPlace) history.replaceState(here, '');
      else history.pushState(here, '');
    },
    { signal },
  );
  page.addEventListener('go-back', back, { signal });
  page.addEventListener('introduce', back, { signal });
  window.addEventListener(
    'popstate',
    (event: PopStateEvent) => {
      // The browser has gone back already: where only a panel was to be closed, it comes forward again.
      if (here.depth > 0 && page.closeOne()) history.pushState(here, '');
      else show((event.state as Step | null) ?? LIST);
    },
    { signal },
  );
  // A page that is loaded again on a card's entry begins at the list all the same; a link to a card is followed once.
  const linkedId = new URLSearchParams(location.search).get('card');
  history.replaceState(null, '', linkedId === null ? undefined : location.pathname);
  if (linkedId !== null) show({ screen: { kind: 'card', workpieceId: linkedId }, depth: 0 });
}
