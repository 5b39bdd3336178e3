import type { FloorLink } from '../link/floor-link.ts';
import { stillToTell } from '../phone/told-refusals.ts';
import type { WeighPage } from './weigh-page.ts';

/** How many entries of this page lie before the one that is shown. */
interface Entry {
  readonly depth: number;
}

/**
 * The page's owner: gives the weigh-out what the link says, and the link what the thumb says. Which weigh-out is open
 * stands in the address, so that a phone that dies comes back to it. Returns what lets go again.
 */
export function holdWeigh(page: WeighPage, link: FloorLink, monotonicMs: () => number): () => void {
  page.clock = { nowMs: () => link.nowMs(), pace: () => link.view.pace, monotonicMs };
  const follow = (): void => {
    page.view = link.view;
    page.refusals = stillToTell(page.refusals, link.view);
  };
  follow();
  const unsubscribe = link.subscribe(follow);
  const listeners = new AbortController();
  const { signal } = listeners;
  page.addEventListener('floor-command', (event) => void link.send(event.command), { signal });
  page.addEventListener('put-away', () => (page.refusals = []), { signal });
  holdAddress(page, signal);
  return () => {
    unsubscribe();
    listeners.abort();
  };
}

function holdAddress(page: WeighPage, signal: AbortSignal): void {
  const show = (): void => {
    page.pieceId = pieceInAddress();
  };
  show();
  page.addEventListener(
    'piece-wanted',
    ({ workpieceId }) => {
      history.pushState({ depth: depth() + 1 } satisfies Entry, '', addressOf(workpieceId));
      show();
    },
    { signal },
  );
  page.addEventListener(
    'go-back',
    () => {
      if (depth() > 0) history.back();
      else {
        history.replaceState(null, '', addressOf(null));
        show();
      }
    },
    { signal },
  );
  window.addEventListener(
    'popstate',
    () => {
      // The browser has gone back already: where only a panel was to be closed, it comes forward again.
      const openId = page.pieceId;
      if (openId !== null && openId !== pieceInAddress() && page.closeOne())
        history.pushState({ depth: depth() + 1 } satisfies Entry, '', addressOf(openId));
      else show();
    },
    { signal },
  );
}

function depth(): number {
  return (history.state as Entry | null)?.depth ?? 0;
}

function pieceInAddress(): string | null {
  return new URLSearchParams(location.search).get('piece');
}

/** This page's address with a weigh-out open, or the list where it is null. What else the address says stays. */
function addressOf(workpieceId: string | null): string {
  const address = new URL(location.href);
  if (workpieceId === null) address.searchParams.delete('piece');
  else address.searchParams.set('piece', workpieceId);
  return address.href;
}
