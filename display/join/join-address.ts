/** Where a browser asks to be let in, as its address says it. */
export interface JoinPlace {
  /** The page that it goes on to; never one of another site. */
  readonly to: string;
  readonly as: 'wall' | 'phone';
  /** What the wall's picture brought along. */
  readonly ticket: string | null;
}

const TICKET = /^#([\w-]{22})$/;

/** Reads the address of the page: `/join?to=/station#ticket`. The ticket stands behind the #, which no browser sends along or notes down elsewhere. */
export function joinPlaceOf({
  origin,
  search,
  hash,
}: {
  readonly origin: string;
  readonly search: string;
  readonly hash: string;
}): JoinPlace {
  const to = pageOf(new URLSearchParams(search).get('to') ?? '', origin);
  return { to, as: /^\/wall(?:[/?]|$)/.test(to) ? 'wall' : 'phone', ticket: TICKET.exec(hash)?.[1] ?? null };
}

function pageOf(asked: string, origin: string): string {
  if (!asked.startsWith('/') || !URL.canParse(asked, origin)) return '/phone';
  const url = new URL(asked, origin);
  // A path that begins with two slashes would be another host's.
  return url.origin === origin && url.pathname !== '/join' && !url.pathname.startsWith('//') ? url.pathname + url.search : '/phone';
}
