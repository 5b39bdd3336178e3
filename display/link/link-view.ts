import type { Connection, FloorView } from './floor-link.ts';
import { houseAt, isClockKnown } from './house-clock.ts';
import type { LinkState } from './link-state.ts';

/** What the page shows of a link. The state is held back until the house's time is known: without it nothing is due rightly. */
export function viewOf(link: LinkState): FloorView {
  return {
    state: link.isKnown && isClockKnown(link.clock) ? link.shown : null,
    sequence: link.isKnown ? link.confirmed.sequence : 0,
    connection: connectionOf(link),
    device: link.device,
    devices: link.devices,
    addresses: link.addresses,
    pace: link.clock.anchor?.pace ?? 1,
    kept: link.taps
      .filter((tap) => tap.answeredSequence === null)
      .map(({ record, isSent }) => ({ commandId: record.commandId, command: record.command, tapMs: record.tapMs, isSent })),
    lastAnswer: link.lastAnswer,
    undoable: link.undoable,
    refusedHere: link.refusedHere,
    soundingDeviceId: link.soundingDeviceId,
    soundingPage: link.soundingPage,
    planNews: link.planNews,
    joining: link.joining,
    health: link.health,
  };
}

function connectionOf(link: LinkState): Connection {
  if (link.refusedWhy !== null) return { phase: 'refused', why: link.refusedWhy };
  if (link.line === 'live' && isClockKnown(link.clock)) return { phase: 'live' };
  if (link.line === 'live' || link.line === 'catchingUp') return { phase: 'catchingUp' };
  const lastContactMs = link.lastContactMonotonicMs === null ? null : houseAt(link.clock, link.lastContactMonotonicMs);
  return lastContactMs === null ? { phase: 'connecting' } : { phase: 'lost', lastContactMs: Math.round(lastContactMs) };
}
