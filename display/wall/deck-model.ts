import type { Booking, DeckLanes, SlotLane } from '../../shared/floor/oven-lanes.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { asksForHeat, deckHeatTexts } from '../parts/deck-heat-text.ts';
import { clockText, countdownText } from '../parts/clock-text.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { fittingText, textWidthPx } from '../parts/text-width.ts';
import { DECK } from '../words/prompts.ts';
import { BLOCKED, freeSlotsWords, IN_THE_WAY, WALL } from '../words/wall.ts';
import { axisX, REACH_MS } from './axis.ts';
import { blocksOf } from './blocks.ts';
import { shortTagOf } from './day-tags.ts';
import { LEAST_BLOCK_PX, loadsOf, mergedLanes, packIn } from './deck-loads.ts';
import { GAP_EM } from './load-runs.ts';
import { placeLoadTexts, type LoadText, type NamedLoad } from './load-texts.ts';

/** A load on the axis. */
export interface LoadBlock {
  readonly key: string;
  readonly fromPx: number;
  readonly toPx: number;
  /** The first lane it lies in, and how many it takes. */
  readonly lane: number;
  readonly lanes: number;
  readonly look: 'in' | 'booked' | 'clash';
}

/** A stretch of the axis in which a deck, or a slot of it, cannot be used, with why. */
export interface BlockedBlock {
  readonly key: string;
  readonly toPx: number;
  readonly lane: number;
  readonly lanes: number;
  readonly text: string;
  readonly textLane: number;
  readonly textPx: number;
}

/** A way to say how a deck stands: its temperature, and what of it is read from afar. */
export interface DeckState {
  readonly temperature: string;
  readonly state: string;
}

/** What one deck reads. */
export interface DeckModel {
  readonly key: string;
  readonly name: string;
  /** When it is free, what to set it to, or why it is not to be used: the first that fits is written. */
  readonly states: readonly DeckState[];
  /** The first two loads that want the same slot at the same time, or null. */
  readonly clash: string | null;
  /** Something in it is to come out now. */
  readonly isDue: boolean;
  readonly lanes: number;
  readonly blocks: readonly LoadBlock[];
  readonly texts: readonly LoadText[];
  readonly blocked: readonly BlockedBlock[];
}

/** Lanes that a deck would like. */
export function lanesWanted(state: FloorState, deck: DeckLanes, nowMs: number): number {
  return mergedLanes(deck, blockedSlotIds(state, nowMs)).length;
}

function blockedSlotIds(state: FloorState, nowMs: number): ReadonlySet<string> {
  return new Set(blocksOf(state, 'slot', nowMs).map(({ resource }) => resource.id));
}

/** The reading of one deck in so many lanes. `nameLoads` may remember what it named before. */
export function deckModel(
  state: FloorState,
  deck: DeckLanes,
  nowMs: number,
  lanes: number,
  widthPx: number,
  nearPx: number,
  nameLoads: typeof placeLoadTexts = placeLoadTexts,
): DeckModel {
  const zone = state.house?.document.zone ?? 'UTC';
  const isDue = deck.lanes.some((lane) => lane.bookings.some((booking) => booking.isIn && booking.toMs <= nowMs));
  const all = mergedLanes(deck, blockedSlotIds(state, nowMs));
  const shown = all.slice(0, lanes);
  const loads = loadsOf(state, shown, nowMs, widthPx, zone);
  const unplaced = packIn(loads, loadsOf(state, all.slice(lanes), nowMs, widthPx, zone), lanes);
  const blocked = blockedBlocks(state, deck, shown, loads, nowMs, widthPx, nearPx);
  const reserved = blocked.map((block) => ({
    lane: block.textLane,
    fromPx: block.textPx,
    toPx: block.textPx + textWidthPx(block.text, nearPx),
  }));
  return {
    key: deck.deck.id,
    name: deck.deck.name,
    states: statesOf(state, deck, nowMs, zone, isDue),
    clash: clashWords(state, deck, nowMs, zone),
    isDue,
    lanes,
    blocks: loads.map((load) => load.block),
    texts: nameLoads(loads, widthPx, nearPx, reserved, unplaced),
    blocked,
  };
}

/** From where a deck's or slot's lanes are hatched to where, and where its word finds room: beside the loads if it can. */
function blockedBlocks(
  state: FloorState,
  deck: DeckLanes,
  lanes: readonly SlotLane[],
  loads: readonly NamedLoad[],
  nowMs: number,
  widthPx: number,
  nearPx: number,
): BlockedBlock[] {
  const onDeck = blocksOf(state, 'deck', nowMs).filter(({ resource }) => resource.id === deck.deck.id);
  const onSlots = onDeck.length > 0 ? [] : blocksOf(state, 'slot', nowMs);
  const taken: { lane: number; toPx: number }[] = [];
  return [...onDeck, ...onSlots].flatMap((block): BlockedBlock[] => {
    const slot = deck.deck.slots.find(({ id }) => id === block.resource.id);
    if (block.resource.kind === 'slot' && slot === undefined) return [];
    // A slot says its name: where its lane found no place, it is told on the last one.
    const own = lanes.findIndex((candidate) => candidate.slot.id === slot?.id);
    const lane = slot === undefined ? 0 : own >= 0 ? own : lanes.length - 1;
    const count = slot === undefined ? lanes.length : 1;
    // A long name is cut before the reason is.
    const words = slot === undefined ? block.words : IN_THE_WAY.blocked(fittingText(slot.name, nearPx, widthPx * 0.3), block.words);
    const text = fittingText(words, nearPx, widthPx - nearPx);
    const toPx = block.untilMs === null ? widthPx : Math.max(LEAST_BLOCK_PX, axisX(block.untilMs - nowMs, widthPx));
    const textPx = blockedTextPx(textWidthPx(text, nearPx), toPx, widthPx, nearPx);
    const endPx = textPx + textWidthPx(text, nearPx);
    const lanesHere = Array.from({ length: count }, (_, index) => lane + index);
    const isFree = (candidate: number): boolean =>
      loads.every(
        ({ block: load }) => candidate < load.lane || candidate >= load.lane + load.lanes || load.fromPx > endPx || load.toPx < textPx,
      ) && taken.every((other) => other.lane !== candidate);
    const textLane = lanesHere.find(isFree) ?? lane;
    taken.push({ lane: textLane, toPx: endPx });
    return [{ key: `${block.resource.kind} ${block.resource.id}`, toPx, lane, lanes: count, text, textLane, textPx }];
  });
}

/** Where the word stands: on what is hatched where that is longer, else behind it, so that its end is seen. */
function blockedTextPx(textPx: number, toPx: number, widthPx: number, nearPx: number): number {
  const behindPx = toPx + nearPx * GAP_EM;
  return textPx + nearPx <= toPx || behindPx + textPx > widthPx ? nearPx / 2 : behindPx;
}

function clashWords(state: FloorState, deck: DeckLanes, nowMs: number, zone: string): string | null {
  const clashes = deck.lanes.flatMap((lane) =>
    lane.bookings
      .filter((booking) => booking.clashesWith.length > 0 && booking.fromMs - nowMs < REACH_MS)
      .map((booking) => ({ lane, booking })),
  );
  const [first] = clashes.toSorted((a, b) => a.booking.fromMs - b.booking.fromMs);
  if (first === undefined) return null;
  const { lane, booking } = first;
  return `${clashTags(state, lane, booking)[0] ?? ''} × ${tagOf(state, booking)} ${clockText(booking.fromMs, zone)}`;
}

function tagOf(state: FloorState, booking: Booking): string {
  return shortTagOf(state, booking.workpieceId, booking.tag);
}

/** The tags that a booking clashes with, each with its day: they lie in the same slot at the same time. */
function clashTags(state: FloorState, lane: SlotLane, booking: Booking): string[] {
  return booking.clashesWith.map((tag) => {
    const other = lane.bookings.find((one) => one.tag === tag && one.fromMs < booking.toMs && booking.fromMs < one.toMs);
    return other === undefined ? tag : tagOf(state, other);
  });
}

/** How a deck stands, the fullest way first. An empty one that is to be set says at least beside its temperature what to. */
function statesOf(state: FloorState, deck: DeckLanes, nowMs: number, zone: string, isDue: boolean): DeckState[] {
  const unit = state.house?.document.units.temperature ?? 'C';
  const temperature = temperatureText(deck.temperatureC, unit);
  const states = (...texts: readonly string[]): DeckState[] => texts.map((text) => ({ temperature, state: text }));
  const blocked = blocksOf(state, 'deck', nowMs).find(({ resource }) => resource.id === deck.deck.id);
  if (blocked !== undefined) return states(BLOCKED[blocked.why]);
  if (isDue) return states(WALL.deckOut);
  if (deck.freeMs !== null) return states(takenWords(deck, deck.freeMs, nowMs, zone));
  const turned = asksForHeat(deck, nowMs)
    ? [{ temperature: DECK.from(temperature, temperatureText(deck.wants.celsius, unit)), state: WALL.free }]
    : [];
  return [...states(...deckHeatTexts(deck, nowMs, zone, unit)), ...turned, ...states(WALL.free)];
}

function takenWords(deck: DeckLanes, freeMs: number, nowMs: number, zone: string): string {
  const free = deck.lanes.filter((lane) => !lane.bookings.some((booking) => booking.isIn)).length;
  return free > 0 ? freeSlotsWords(free) : countdownText(freeMs, nowMs, zone);
}
