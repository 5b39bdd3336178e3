import type { DownMessage } from '../../shared/wire/down.ts';
import { PING_BURST, UNASKED_T1 } from '../../shared/wire/protocol.ts';
import { withAnchor, withPing, withoutSamples } from './house-clock.ts';
import type { LinkEffect, LinkState } from './link-state.ts';
import { become, type LinkStep } from './link-step.ts';
import type { LocalInstant } from './local-instant.ts';

type Pong = Extract<DownMessage, { type: 'pong' }>;

/** Begins a burst of pings, one after another: each is sent when the one before is back, so that they do not queue behind each other. */
export function startPings(link: LinkState, at: LocalInstant): LinkStep {
  return become({ ...link, clock: withoutSamples(link.clock), pingsLeft: PING_BURST - 1 }, ping(at));
}

/** One ping. Its pong is a sample of the clocks, and a sign of life. */
export function ping(at: LocalInstant): LinkEffect {
  return { type: 'send', message: { type: 'ping', t1: at.monotonicMs } };
}

/** Takes in a pong, and sends the next ping of a burst. One that answers no ping says that the server's clock was set: it is asked anew. */
export function ponged(link: LinkState, pong: Pong, at: LocalInstant): LinkStep {
  if (pong.t1 === UNASKED_T1) return startPings({ ...link, clock: withAnchor(link.clock, pong.clock) }, at);
  const clock = withPing(withAnchor(link.clock, pong.clock), { t1: pong.t1, t2: pong.t2, t3: pong.t3, t4: at.monotonicMs });
  if (link.pingsLeft === 0) return become({ ...link, clock });
  return become({ ...link, clock, pingsLeft: link.pingsLeft - 1 }, ping(at));
}
