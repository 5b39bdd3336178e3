import { evolve } from '../../shared/floor/evolve.ts';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { EMPTY_STATE, STATE_VERSION } from '../../shared/floor/state.ts';
import { unreachable } from '../../shared/result.ts';
import type { DownMessage } from '../../shared/wire/down.ts';
import { CLOSE, PROTOCOL_VERSION } from '../../shared/wire/protocol.ts';
import { NO_CLOCK, withAnchor } from './house-clock.ts';
import { ponged, startPings } from './link-pings.ts';
import type { LinkState } from './link-state.ts';
import { andThen, become, type LinkStep } from './link-step.ts';
import { answered, sendTaps, settledBy, withoutForeignTaps } from './link-taps.ts';
import type { LocalInstant } from './local-instant.ts';

type Welcome = Extract<DownMessage, { type: 'welcome' }>;

/** What a message of the server changes. */
export function received(link: LinkState, message: DownMessage, at: LocalInstant): LinkStep {
  switch (message.type) {
    case 'welcome':
      return welcomed(link, message, at);
    case 'snapshot': {
      if (message.state.stateVersion !== STATE_VERSION) return otherVersion(link, CLOSE.otherVersion, 'state version');
      return settledBy({ ...link, confirmed: message.state, isKnown: true }, []);
    }
    case 'events':
      return happened(link, message.events);
    case 'live':
      if (message.sequence > link.confirmed.sequence) return missed(link);
      // What was told while the line was down was told to others.
      return sendTaps({ ...link, line: 'live', isKnown: true, attempts: 0, isRetryWaiting: false, planNews: link.planNews + 1 }, at);
    case 'outcome':
      return answered(link, message.commandId, message.outcome);
    case 'pong':
      return ponged(link, message, at);
    case 'sound': {
      const { type: _type, ...request } = message;
      return become(link, { type: 'sound', request });
    }
    case 'soundStatus':
      return become({ ...link, soundingDeviceId: message.soundingDeviceId, soundingPage: message.page });
    case 'planNews':
      return become({ ...link, planNews: link.planNews + 1 });
    case 'health':
      return become({ ...link, health: { isKept: message.isKept, areBackupsLate: message.areBackupsLate } });
    case 'joining':
      return become({ ...link, joining: message.status });
    case 'devices':
      return become({
        ...link,
        devices: message.devices,
        device: message.devices.find((device) => device.id === link.device?.id) ?? link.device,
      });
    default:
      return unreachable(message);
  }
}

/** The server speaks a version that this page does not: only loading the page again can help. */
export function otherVersion(link: LinkState, code: number, reason: string): LinkStep {
  return become({ ...link, refusedWhy: 'otherVersion' }, { type: 'hangUp', code, reason });
}

function welcomed(link: LinkState, welcome: Welcome, at: LocalInstant): LinkStep {
  if (welcome.protocol !== PROTOCOL_VERSION) return otherVersion(link, CLOSE.otherVersion, 'protocol');
  const isOtherKitchen = link.kitchenId !== welcome.kitchenId;
  const known: LinkState = isOtherKitchen
    ? { ...link, confirmed: EMPTY_STATE, isKnown: false, lastAnswer: null, undoable: null, settled: [], clock: NO_CLOCK }
    : link;
  const greeted: LinkState = {
    ...known,
    line: 'catchingUp',
    refusedWhy: null,
    kitchenId: welcome.kitchenId,
    device: welcome.device,
    devices: welcome.devices,
    addresses: welcome.addresses,
    clock: withAnchor(known.clock, welcome.clock),
  };
  const kept = andThen(withoutForeignTaps(greeted, welcome.kitchenId), introduce);
  return andThen(kept, (next) => startPings(next, at));
}

/** Tells the server what this device is to be called, where that is still untold. */
export function introduce(link: LinkState): LinkStep {
  const introduction = link.untoldIntroduction;
  if (introduction === null || link.line === 'down' || link.line === 'greeting') return become(link);
  return become({ ...link, untoldIntroduction: null }, { type: 'send', message: { type: 'introduce', ...introduction } });
}

function happened(link: LinkState, events: readonly RecordedEvent[]): LinkStep {
  let confirmed = link.confirmed;
  for (const recorded of events) {
    // Told twice is told once: what is already folded is passed over.
    if (recorded.sequence <= confirmed.sequence) continue;
    if (recorded.sequence !== confirmed.sequence + 1) return missed({ ...link, confirmed });
    confirmed = evolve(confirmed, recorded);
  }
  return settledBy({ ...link, confirmed }, events);
}

/** Something in between is missing: a new connection asks for it by the sequence number held. */
function missed(link: LinkState): LinkStep {
  return become(link, { type: 'hangUp', code: CLOSE.tooSlow, reason: 'sequence gap' });
}
