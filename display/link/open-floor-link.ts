// First: before any schema is made.
import type { PageKind } from '../../shared/wire/up.ts';
import '../parts/no-eval.ts';
import type { Decider } from './decider.ts';
import { FloorClient, type LinkSocket, type SocketHandlers } from './floor-client.ts';
import type { FloorLink } from './floor-link.ts';
import { randomBytes } from './random-id.ts';
import { PageLoadGuard } from './page-load-guard.ts';
import { NO_STORE, tapStoreOn, type TextStore } from './tap-store.ts';

/** RFC 6455: no close frame came. */
const NO_CLOSE_FRAME = 1006;
/** So long after it has come through a page counts as one that understands its server. */
const UNDERSTOOD_AFTER_MS = 60_000;

/**
 * Opens the page's one link to the server it came from, with the browser's own pieces: websocket, clocks, timers,
 * storage where there is one. Nothing that needs a secure context is used.
 */
export function openFloorLink(options: { readonly page: PageKind; readonly decide: Decider }): FloorLink {
  const local = storageOrNone(() => localStorage);
  const loads = new PageLoadGuard(storageOrNone(() => sessionStorage));
  const client = new FloorClient(options.page, {
    now: () => ({ monotonicMs: performance.now(), wallMs: Date.now() }),
    randomBytes,
    openSocket: (handlers) => openSocket(liveUrl(location, options.page), handlers),
    after: (delayMs, call) => {
      const timer = setTimeout(call, delayMs);
      return () => clearTimeout(timer);
    },
    decide: options.decide,
    store: local === null ? NO_STORE : tapStoreOn(local, options.page),
    loadPageAgain: () => {
      if (loads.mayLoad()) location.reload();
    },
    onceLive: () => setTimeout(() => loads.understood(), UNDERSTOOD_AFTER_MS),
  });
  // Whom the house does not know goes to where it can be let in. A wall says so itself: nobody stands before it to type.
  if (options.page !== 'wall')
    client.subscribe(() => {
      const { connection } = client.view;
      if (connection.phase === 'refused' && connection.why === 'forbidden') location.replace(joinUrl(location));
    });
  addEventListener('online', () => client.wake());
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') client.wake();
  });
  return client;
}

/** Where a page that may not be here asks to be let in, and comes back from. */
export function joinUrl(from: { readonly pathname: string; readonly search: string }): string {
  return `/join?to=${encodeURIComponent(from.pathname + from.search)}`;
}

/** The websocket's address on the host that the page came from. A wall and a phone in one browser are two devices. */
export function liveUrl(from: { readonly protocol: string; readonly host: string }, page: PageKind): string {
  return `${from.protocol === 'https:' ? 'wss' : 'ws'}://${from.host}/live?page=${page}`;
}

function openSocket(url: string, handlers: SocketHandlers): LinkSocket {
  const socket = new WebSocket(url);
  const listeners = new AbortController();
  const { signal } = listeners;
  socket.addEventListener('open', () => handlers.opened(), { signal });
  socket.addEventListener(
    'message',
    (event: MessageEvent<unknown>) => {
      // The protocol has text only; anything else is read as what it is: nothing we know.
      handlers.received(typeof event.data === 'string' ? event.data : '');
    },
    { signal },
  );
  socket.addEventListener('close', (event) => handlers.closed(event.code === 0 ? NO_CLOSE_FRAME : event.code), { signal });
  return {
    send: (text) => {
      if (socket.readyState === WebSocket.OPEN) socket.send(text);
    },
    close: (code, reason) => {
      listeners.abort();
      socket.close(code, reason);
    },
  };
}

/** Storage that a browser may not have, or may throw at being asked for. */
function storageOrNone(storage: () => Storage): TextStore | null {
  try {
    return storage();
  } catch {
    return null;
  }
}
