import { unreachable } from '../../shared/result.ts';
import { NOBODY_JOINS } from '../../shared/wire/joining.ts';
import { CLOSE, PROTOCOL_VERSION } from '../../shared/wire/protocol.ts';
import type { SoundRequest } from './floor-link.ts';
import { houseAt } from './house-clock.ts';
import { ping, startPings } from './link-pings.ts';
import { introduce, otherVersion, received } from './link-received.ts';
import type { LinkEffect, LinkInput, LinkState } from './link-state.ts';
import { become, type LinkStep } from './link-step.ts';
import { sendTaps, tapped } from './link-taps.ts';
import type { LocalInstant } from './local-instant.ts';
import { withHeldTaps } from './tentative.ts';

/**
 * What follows from one thing that happens to a link: its next state, and what the page is to do about it. Pure: the
 * socket, the store, the timers and both clocks are the caller's.
 */
export function advance(link: LinkState, input: LinkInput, at: LocalInstant): LinkStep {
  const step = react(link, input, at);
  return { link: withShown(link, step.link, at), effects: step.effects };
}

function react(link: LinkState, input: LinkInput, at: LocalInstant): LinkStep {
  switch (input.type) {
    case 'opened':
      return become({ ...link, line: 'greeting' }, { type: 'send', message: hello(link) });
    case 'received':
      return received({ ...link, lastContactMonotonicMs: at.monotonicMs }, input.message, at);
    case 'unreadable':
      return otherVersion(link, CLOSE.badMessage, `unknown message: ${input.name}`);
    case 'closed':
      return closed(link, input.code);
    case 'tapped':
      return tapped(link, input.commandId, input.command, at);
    case 'soundSet':
      return become({ ...link, sound: input.sound }, ...(isWelcomed(link) ? [send({ type: 'soundChanged', sound: input.sound })] : []));
    case 'soundMade':
      return become(link, ...(isWelcomed(link) ? [send(sounded(input.request))] : []));
    case 'introduced':
      return introduce({ ...link, untoldIntroduction: { name: input.name, stationId: input.stationId } });
    case 'clockCheckDue':
      return isWelcomed(link) ? startPings(link, at) : become(link);
    case 'heartbeatDue':
      return isWelcomed(link) ? become(link, ping(at)) : become(link);
    case 'retryDue':
      return sendTaps({ ...link, isRetryWaiting: false }, at);
    default:
      return unreachable(input);
  }
}

function send(message: Extract<LinkEffect, { type: 'send' }>['message']): LinkEffect {
  return { type: 'send', message };
}

/** What counts as sounded is what was asked for, whatever was asked beside it. */
function sounded({ soundId, burst, calls }: SoundRequest): Extract<LinkEffect, { type: 'send' }>['message'] {
  return { type: 'sounded', soundId, burst, calls: [...calls] };
}

function isWelcomed(link: LinkState): boolean {
  return link.line === 'catchingUp' || link.line === 'live';
}

function hello(link: LinkState): Extract<LinkEffect, { type: 'send' }>['message'] {
  return {
    type: 'hello',
    protocol: PROTOCOL_VERSION,
    page: link.page,
    pageId: link.pageId,
    kitchenId: link.isKnown ? link.kitchenId : null,
    lastSequence: link.isKnown ? link.confirmed.sequence : 0,
    sound: link.sound,
    stationId: link.untoldIntroduction?.stationId ?? link.device?.stationId ?? null,
  };
}

/** The connection is gone: everything unanswered is to be sent again on the next one. */
function closed(link: LinkState, code: number): LinkStep {
  const down: LinkState = {
    ...link,
    line: 'down',
    attempts: link.attempts + 1,
    taps: link.taps.map((tap) => ({ ...tap, isSent: false })),
    isRetryWaiting: false,
    soundingDeviceId: null,
    soundingPage: null,
    // Codes of a server that is away let nobody in.
    joining: NOBODY_JOINS,
    pingsLeft: 0,
  };
  const again = (isSlow: boolean): LinkEffect => ({ type: 'connectAgain', attempt: link.attempts, isSlow });
  if (link.refusedWhy === 'otherVersion' || code === CLOSE.otherVersion) {
    // Loaded anew once; a page that is still of another version asks again slowly, until somebody has brought the two together.
    return become({ ...down, refusedWhy: 'otherVersion' }, { type: 'loadPageAgain' }, again(true));
  }
  switch (code) {
    case CLOSE.forbidden:
      return become({ ...down, refusedWhy: 'forbidden' });
    case CLOSE.full:
      return become({ ...down, refusedWhy: 'full' }, again(true));
    case CLOSE.badMessage:
    case CLOSE.tooMany:
      // What the server did not take once it will not take at once either.
      return become(down, again(true));
    default:
      return become(down, again(false));
  }
}

/** Decides the held taps anew where what they stand on has changed. */
function withShown(before: LinkState, link: LinkState, at: LocalInstant): LinkState {
  const isUnchanged =
    before.confirmed === link.confirmed && before.taps === link.taps && before.device === link.device && before.isKnown === link.isKnown;
  if (isUnchanged) return link;
  if (!link.isKnown || link.device === null) return { ...link, shown: link.confirmed };
  const nowMs = houseAt(link.clock, at.monotonicMs) ?? at.wallMs;
  const { id: deviceId, stationId } = link.device;
  return { ...link, shown: withHeldTaps(link.confirmed, link.taps, { deviceId, stationId, pageId: link.pageId, nowMs }, link.decide) };
}
