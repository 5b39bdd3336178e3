import { setImmediate } from 'node:timers/promises';
import { chainHash, hashText, type ChainLink } from './chain-hash.ts';

/** Events read at once while a chain is checked. */
export const CHECK_PAGE_EVENTS = 1000;

/** One event as it is kept: what its hash should cover, and the hash. */
export interface KeptLink {
  readonly link: ChainLink;
  readonly hash: Uint8Array;
}

export interface KeptChain {
  readonly kitchenId: string;
  readonly fromSequence: number;
  readonly toSequence: number;
  /** The hash kept with an event (zeros for 0), or null where there is none. */
  hashAt(sequence: number): Uint8Array | null;
  /** The links that follow, oldest first. May throw where they are damaged. */
  linksAfter(sequence: number, limit: number): readonly KeptLink[];
}

/** The first sequence number whose event is missing, unreadable or not what its hash was made of; null where there is none. */
export async function firstBroken(chain: KeptChain): Promise<number | null> {
  let { fromSequence: next } = chain;
  let previous = chain.hashAt(next - 1);
  if (previous === null) return next - 1;
  while (next <= chain.toSequence) {
    const page = readPage(chain, next - 1, Math.min(CHECK_PAGE_EVENTS, chain.toSequence - next + 1));
    for (const { link, hash } of page) {
      if (link.sequence !== next || hashText(chainHash(previous, link)) !== hashText(hash)) return next;
      previous = hash;
      next += 1;
    }
    if (page.length === 0) return next;
    await setImmediate();
  }
  return null;
}

/** A page of links; where it cannot be read as a whole, the readable ones at its head. Nothing means the first is damaged. */
function readPage(chain: KeptChain, afterSequence: number, limit: number): readonly KeptLink[] {
  const whole = readable(chain, afterSequence, limit);
  if (whole !== null) return whole;
  const page: KeptLink[] = [];
  for (let sequence = afterSequence; page.length < limit; sequence += 1) {
    const [link] = readable(chain, sequence, 1) ?? [];
    if (link === undefined) break;
    page.push(link);
  }
  return page;
}

function readable(chain: KeptChain, afterSequence: number, limit: number): readonly KeptLink[] | null {
  try {
    return chain.linksAfter(afterSequence, limit);
  } catch {
    // Whatever it says, an event that cannot be put together again is a broken one; where it stands is the answer.
    return null;
  }
}
