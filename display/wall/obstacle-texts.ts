import type { Refusal } from '../../shared/floor/refusals.ts';
import { decksOf } from '../../shared/floor/slots.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { WayOut } from '../../shared/floor/ways-out.ts';
import { newestFormula } from '../../shared/floor/contents.ts';
import { clockText } from '../parts/clock-text.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { fittingText, textWidthPx } from '../parts/text-width.ts';
import { BLOCKED, blockedWords, IN_THE_WAY, WALL, WAY_OUT } from '../words/wall.ts';
import type { RowObstacle } from './obstacles.ts';

const MINUTE_MS = 60_000;

/** What is in the way and the mildest way out, in few words. */
export interface ObstacleTexts {
  readonly what: string;
  /** The same in the fewest words. */
  readonly brief: string;
  /** null where there is no way out. */
  readonly way: string | null;
}

/** The words for what is in the way of a row. */
export function obstacleTexts(state: FloorState, { obstacle, atMs }: RowObstacle): ObstacleTexts {
  const [mildest] = obstacle.waysOut;
  return {
    what: inTheWayText(state, obstacle.refusal),
    brief: briefText(state, obstacle.refusal),
    way: mildest === undefined ? null : wayOutText(state, mildest, atMs),
  };
}

/** All of it as one line of a width, the fullest that fits; `more` comes last where there is room. */
export function obstacleLine({ what, brief, way }: ObstacleTexts, more: readonly string[], sizePx: number, widthPx: number): string {
  const ways = way === null ? [] : [way];
  const lines = [[what, ...ways, ...more], [what, ...ways], [brief, ...ways, ...more], [brief, ...ways], [way ?? brief]].map((texts) =>
    texts.join(' · '),
  );
  return lines.find((line) => textWidthPx(line, sizePx) <= widthPx) ?? fittingText(lines.at(-1) ?? '', sizePx, widthPx);
}

function inTheWayText(state: FloorState, refusal: Refusal): string {
  switch (refusal.code) {
    case 'noFreeSlot':
      return IN_THE_WAY.ovenFull;
    case 'slotTaken':
      return IN_THE_WAY.slotTaken(deckNameOf(state, refusal.slotId), refusal.takenByTag);
    case 'mixerBusy':
      return IN_THE_WAY.mixerBusy(mixerName(state, refusal.mixerId), refusal.busyWithTag);
    case 'changeOverNeeded':
      return IN_THE_WAY.changeOver(mixerName(state, refusal.mixerId));
    case 'resourceBlocked': {
      const until = refusal.untilMs === undefined ? null : clockOf(state, refusal.untilMs);
      return IN_THE_WAY.blocked(resourceName(state, refusal.resource), blockedWords(refusal.why, until));
    }
    case 'vesselsShort': {
      const name = resourceName(state, { kind: 'vessel', id: refusal.vesselId });
      return refusal.free === 0 ? IN_THE_WAY.none(name) : IN_THE_WAY.tooFew(refusal.free, refusal.needed, name);
    }
    case 'nothingToDraw':
      return IN_THE_WAY.none(formulaName(state, refusal.formulaId));
    case 'notEnoughToDraw':
      return IN_THE_WAY.tooLittle(formulaName(state, refusal.formulaId));
    case 'notCooled':
      return IN_THE_WAY.hot(refusal.fromTag);
    case 'lastOfFerment':
      return IN_THE_WAY.lastOf(refusal.fromTag);
    default:
      return IN_THE_WAY.other;
  }
}

function briefText(state: FloorState, refusal: Refusal): string {
  switch (refusal.code) {
    case 'mixerBusy':
      return IN_THE_WAY.none(mixerName(state, refusal.mixerId));
    case 'resourceBlocked':
      return IN_THE_WAY.blocked(resourceName(state, refusal.resource), BLOCKED[refusal.why]);
    default:
      return inTheWayText(state, refusal);
  }
}

function wayOutText(state: FloorState, way: WayOut, atMs: number): string {
  const { effect } = way;
  const unit = state.house?.document.units.temperature ?? 'C';
  const temperature = effect.placeC === null ? null : temperatureText(effect.placeC, unit);
  switch (way.kind) {
    case 'wait':
      return WAY_OUT.wait(clockOf(state, atMs + effect.delayMin * MINUTE_MS), Math.round(effect.overTargetMin));
    case 'otherSlot':
      return WAY_OUT.otherSlot(deckNameOf(state, way.slotIds[0] ?? ''), temperature);
    case 'otherMixer':
      return WAY_OUT.otherMixer(mixerName(state, way.mixerId ?? ''));
    case 'otherSource':
      return WAY_OUT.otherSource(way.fromTag ?? '');
    case 'part':
      return WAY_OUT.part(effect.pieces ?? 0);
    case 'chill':
      return WAY_OUT.chill(resourceName(state, { kind: 'restPlace', id: way.placeId ?? '' }), temperature);
    case 'clean':
      return WAY_OUT.clean(Math.round(effect.delayMin));
    case 'leaveOut':
      return way.command.type === 'skipStep' ? way.command.reason : WALL.goOn;
    case 'goOn':
      return WALL.goOn;
  }
}

function clockOf(state: FloorState, atMs: number): string {
  return clockText(atMs, state.house?.document.zone ?? 'UTC');
}

function mixerName(state: FloorState, mixerId: string): string {
  return resourceName(state, { kind: 'mixer', id: mixerId });
}

function formulaName(state: FloorState, formulaId: string): string {
  return newestFormula(state)(formulaId)?.name ?? formulaId;
}

/** Slots are nameless from afar: what stands by the deck is read. */
function deckNameOf(state: FloorState, slotId: string): string {
  const kitchen = state.kitchen?.document;
  if (kitchen === undefined) return slotId;
  return decksOf(kitchen).find((deck) => deck.slots.some((slot) => slot.id === slotId))?.name ?? slotId;
}

/** The house's name of something; its id where the kitchen no longer has it. */
function resourceName(state: FloorState, { kind, id }: Extract<Refusal, { code: 'resourceBlocked' }>['resource']): string {
  const kitchen = state.kitchen?.document;
  if (kitchen === undefined) return id;
  if (kind === 'slot') return deckNameOf(state, id);
  const named = {
    mixer: kitchen.mixers,
    bowl: kitchen.bowls,
    vessel: kitchen.vessels,
    station: kitchen.stations,
    bench: kitchen.restPlaces,
    restPlace: kitchen.restPlaces,
    deck: decksOf(kitchen),
  }[kind];
  return named.find((candidate) => candidate.id === id)?.name ?? id;
}
