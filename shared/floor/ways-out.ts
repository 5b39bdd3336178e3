import type { OnFloorCommand } from './decide-on-floor.ts';
import { dueOf, isHeld, roleAt, type Due } from './due.ts';
import type { Role } from './role.ts';
import type { Refusal, RefusalCode } from './refusals.ts';
import type { FloorState } from './state.ts';
import { finishOf, refusalOf, type Asked } from './ways-out/asked.ts';
import { byMildness } from './ways-out/mildness.ts';
import { mixerWays } from './ways-out/mixers.ts';
import { slotWays } from './ways-out/slots.ts';
import { sourceWays } from './ways-out/sources.ts';
import { chillWays, goOnWays, leaveOutWays, waitWays } from './ways-out/standing-ways.ts';
import { vesselWays } from './ways-out/vessels.ts';

const MINUTE_MS = 60_000;
/** What stands in the way of a step is told so long before the step is due, so that somebody can act before it is. */
const AHEAD_MIN = 10;
/** More than a card has room for helps nobody who stands there with dough on the hands. */
const MOST_WAYS = 6;

/** Refusals that something on the floor is in the way for. All others say that the tap meant something else. */
const IN_THE_WAY: ReadonlySet<RefusalCode> = new Set<RefusalCode>([
  'mixerBusy',
  'noFreeBowl',
  'resourceBlocked',
  'changeOverNeeded',
  'noFreeSlot',
  'slotTaken',
  'vesselsShort',
  'nothingToDraw',
  'notEnoughToDraw',
  'lastOfFerment',
  'notCooled',
]);

/** What one way out does to the dough, by its own targets and latests. */
export interface WayOutEffect {
  /** Minutes until the work can go on; 0 for at once. */
  readonly delayMin: number;
  /** The role that the dough will have by then if nothing else is done. */
  readonly roleThen: Role;
  /** How far beyond its target it will be then. */
  readonly overTargetMin: number;
  /** How far beyond its latest (it is being lost); null where waiting does not spoil it. */
  readonly overLatestMin: number | null;
  /** Temperature of the place or deck that it goes to instead, where that differs. */
  readonly placeC: number | null;
  /** Pieces that go on now, where not all do. */
  readonly pieces: number | null;
}

/** One thing that can be done about what is in the way. */
export interface WayOut {
  readonly kind: 'wait' | 'otherSlot' | 'otherMixer' | 'otherSource' | 'part' | 'chill' | 'clean' | 'leaveOut' | 'goOn';
  /** The one command that does it. */
  readonly command: OnFloorCommand;
  /** What it is about: slots, a mixer, a place, a source's tag; for words on screens. */
  readonly slotIds: readonly string[];
  readonly mixerId: string | null;
  readonly placeId: string | null;
  readonly fromTag: string | null;
  readonly effect: WayOutEffect;
}

/** What stands in the way of a step that is due, and the ways out, the mildest for the dough first. */
export interface Obstacle {
  readonly refusal: Refusal;
  readonly waysOut: readonly WayOut[];
}

/**
 * What is in the way of the step that a workpiece wants next, if it were done at an instant; null where nothing is, where
 * the step is more than ten minutes away, and while its call is set aside. Every way out is a command that is accepted
 * at that instant.
 */
export function obstacleOf(state: FloorState, workpieceId: string, nowMs: number): Obstacle | null {
  const workpiece = state.workpieces[workpieceId];
  const due = workpiece === undefined ? null : dueOf(state, workpiece);
  if (due === null || !isNear(due, nowMs)) return null;
  const refusal = refusalOf(state, finishOf(due), nowMs);
  if (refusal === null || !IN_THE_WAY.has(refusal.code)) return null;
  return { refusal, waysOut: waysOutOf({ state, due, refusal, nowMs }) };
}

function isNear(due: Due, nowMs: number): boolean {
  if (roleAt(due, nowMs) !== 'running') return true;
  // Somebody has set it aside: it comes back with its call.
  if (isHeld(due.workpiece, nowMs)) return false;
  return due.dueMs - nowMs <= AHEAD_MIN * MINUTE_MS;
}

function waysOutOf(asked: Asked): readonly WayOut[] {
  const ways = [waitWays, slotWays, mixerWays, vesselWays, sourceWays, chillWays, leaveOutWays, goOnWays].flatMap((waysFor) =>
    waysFor(asked),
  );
  return ways
    .filter((way) => refusalOf(asked.state, way.command, asked.nowMs) === null)
    .sort(byMildness(asked))
    .slice(0, MOST_WAYS);
}
