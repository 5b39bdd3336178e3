import { readViewing, type Viewing } from './settings.ts';

const KEY = 'ovenward.viewing';

/** The viewing settings that hold on this screen, by the address' query; kept for the next time the page opens. */
export function keepViewing(query: string): Viewing {
  const store = storageOrNull();
  const { viewing } = readViewing(new URLSearchParams(query), store?.getItem(KEY) ?? null);
  store?.setItem(KEY, JSON.stringify(viewing));
  return viewing;
}

function storageOrNull(): Storage | null {
  try {
    return localStorage;
  } catch (error) {
    // A browser may forbid storage; the address then says it each time.
    if (error instanceof DOMException) return null;
    throw error;
  }
}
