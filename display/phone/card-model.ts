import type { Deck } from '../../shared/documents/kitchen.ts';
import type { Step, Verb } from '../../shared/documents/method.ts';
import { rowOf, type Row } from '../../shared/floor/board.ts';
import { formulaOf } from '../../shared/floor/contents.ts';
import { dueOf, plannedMin } from '../../shared/floor/due.ts';
import { isMixingBegun } from '../../shared/floor/mixing-begun.ts';
import { feedsAsPlanned } from '../../shared/floor/planned-feeds.ts';
import { cutTag, projectionOf } from '../../shared/floor/projection.ts';
import { slotsInOrder } from '../../shared/floor/slot-order.ts';
import { knownHeat } from '../../shared/floor/slot-heats.ts';
import type { SlotHeat } from '../../shared/trade/slot-heat.ts';
import { decksFor, decksOf, slotHolders, slotsNeeded } from '../../shared/floor/slots.ts';
import { versionKey, type FloorState, type Workpiece } from '../../shared/floor/state.ts';
import { nameOf } from '../../shared/floor/way.ts';
import { dayTag, floorDateOf } from '../parts/day-tag.ts';
import { countables } from './count-model.ts';
import { historyOf, type Past } from './history-model.ts';
import { askedReading } from './reading-model.ts';
import { heldBackG, takeChoices, type TakeChoice } from './takes-model.ts';
import { countsPieces, isUnderWay } from './work-model.ts';

/** Steps ahead that the card names. */
const STEPS_AHEAD = 5;
/** Work shorter than this is over before anybody has said that it began. */
const WORTH_STARTING_MIN = 2;

export interface SlotChoice {
  readonly slotId: string;
  readonly name: string;
  /** What stands in it; null where it is free. */
  readonly takenByTag: string | null;
  /** How hot it is there; null where nothing was baked in it yet. */
  readonly heat: SlotHeat | null;
}

/** A deck that will do, with its slots as they stand. */
export interface DeckChoice {
  readonly deck: Deck;
  readonly temperatureC: number;
  readonly slots: readonly SlotChoice[];
}

export interface Cut {
  readonly tag: string;
  readonly name: string;
  readonly pieces: number;
}

export interface Ahead {
  readonly stepId: string;
  readonly verb: Verb;
  readonly fromMs: number;
}

/** Everything that a dough's card shows and offers, derived from the state. */
export interface CardModel {
  readonly row: Row;
  /** The tag, with its weekday where the dough is of another day. */
  readonly tag: string;
  readonly action: Step;
  /** The check decides when it is over; a little more can be given. */
  readonly isJudging: boolean;
  readonly canStart: boolean;
  /** A call is out that nobody has heard. */
  readonly canHear: boolean;
  readonly ahead: readonly Ahead[];
  readonly becomes: readonly Cut[];
  readonly load: { readonly decks: readonly DeckChoice[]; readonly needed: number } | null;
  /** Where it is now: rest place, mixer, or slots. */
  readonly standsIn: readonly string[];
  /** What the step takes of ferments and preps, and of which. */
  readonly takes: readonly TakeChoice[];
  /** Water held back that goes in at this step, in grams; null where there is none. */
  readonly heldBackG: number | null;
  readonly canCount: boolean;
  /** Hands are on its pieces, so that it can be said how far they are. */
  readonly canTellHowFar: boolean;
  /** The step at hand wants a temperature read: of the dough out of the mixer, of the core in the oven. */
  readonly asksReading: boolean;
  /** It is not mixed yet: what goes in can be weighed out. */
  readonly canWeigh: boolean;
  /** What goes into the pot can be said. */
  readonly canFeed: boolean;
  /** Feeds that are planned for the pot. */
  readonly feeds: readonly { readonly feedMs: number; readonly grams: number }[];
  /** The steps begun so far, the newest first. */
  readonly pasts: readonly Past[];
}

/** The card of a workpiece at an instant; null once it is off the floor. */
export function cardOf(state: FloorState, workpieceId: string, nowMs: number): CardModel | null {
  const workpiece = state.workpieces[workpieceId];
  const row = rowOf(state, workpieceId, nowMs);
  const due = workpiece === undefined ? null : dueOf(state, workpiece);
  if (workpiece === undefined || row === null || due === null) return null;
  const { action, phase } = due;
  return {
    row,
    tag: dayTag(row.tag, row.serviceDate, floorDateOf(state)),
    action,
    isJudging: phase === 'judging',
    canStart: canStart(workpiece, action, phase === 'waiting' || phase === 'planned' || (phase === 'resting' && action.id !== due.step.id)),
    canHear: workpiece.call !== null && workpiece.call.heardMs === null && row.role !== 'running',
    // While a phase asks for hands, the end of the bake is what comes next.
    ahead: stepsAhead(state, workpiece, action.id, nowMs, row.prompt === null ? 1 : 0),
    becomes: becomes(state, workpiece, action),
    load: action.verb === 'load' ? loadChoice(state, workpiece, action, nowMs) : null,
    standsIn: standsIn(state, workpiece),
    takes: takeChoices(state, workpiece, action, nowMs),
    heldBackG: heldBackG(state, workpiece, action),
    canCount: countables(state, workpiece, action).length > 0,
    canTellHowFar: isUnderWay(row) && countsPieces(row),
    asksReading: askedReading(state, workpiece) !== null,
    canWeigh: canWeigh(state, workpiece),
    canFeed: action.verb === 'feed' && workpiece.stock !== null,
    feeds: feedsAsPlanned(state, workpiece),
    pasts: historyOf(state, workpiece),
  };
}

function canStart(workpiece: Workpiece, action: Step, isWaiting: boolean): boolean {
  if (!isWaiting || action.verb === 'load' || action.verb === 'takeOut') return false;
  if (action.kind === 'judged') return true;
  return action.kind === 'hands' && plannedMin(action, workpiece) >= WORTH_STARTING_MIN;
}

/** What follows the step that is called, as it will be if everything takes its target. */
function stepsAhead(state: FloorState, workpiece: Workpiece, actionId: string, nowMs: number, from: number): readonly Ahead[] {
  const stretches = projectionOf(state, workpiece, nowMs)?.stretches ?? [];
  const index = stretches.findIndex((stretch) => stretch.stepId === actionId);
  return stretches.slice(index + from, index + from + STEPS_AHEAD).map(({ stepId, verb, fromMs }) => ({ stepId, verb, fromMs }));
}

function becomes(state: FloorState, workpiece: Workpiece, action: Step): readonly Cut[] {
  if (action.verb !== 'divide') return [];
  if (workpiece.productId !== null) {
    return workpiece.pieces === null ? [] : [{ tag: workpiece.tag, name: nameOf(state, workpiece), pieces: workpiece.pieces }];
  }
  return workpiece.cuts.map((cut, index) => ({
    tag: cutTag(workpiece.tag, index),
    name: state.products[versionKey(cut.productId, cut.productVersion)]?.name ?? cut.productId,
    pieces: cut.pieces,
  }));
}

function loadChoice(state: FloorState, workpiece: Workpiece, load: Step, nowMs: number): CardModel['load'] {
  const kitchen = state.kitchen?.document;
  if (kitchen === undefined) return null;
  const wanted = new Set(decksFor(kitchen, load).map((deck) => deck.id));
  return {
    needed: slotsNeeded(state, workpiece, load),
    decks: deckChoices(state, workpiece, nowMs).filter(({ deck }) => wanted.has(deck.id)),
  };
}

/** All decks as they stand in the ovens, from top to bottom, with what is in their slots beside the workpiece itself. */
export function deckChoices(state: FloorState, workpiece: Workpiece, nowMs: number): readonly DeckChoice[] {
  const kitchen = state.kitchen?.document;
  const holders = slotHolders(state);
  return (kitchen === undefined ? [] : decksOf(kitchen)).map((deck) => ({
    deck,
    temperatureC: state.deckC[deck.id] ?? deck.temperatureC,
    slots: deck.slots.map(({ id, name }) => {
      const holder = holders.get(id);
      return {
        slotId: id,
        name,
        takenByTag: holder === undefined || holder.id === workpiece.id ? null : holder.tag,
        heat: knownHeat(state, id, nowMs),
      };
    }),
  }));
}

/** The slots that a tap without choosing would fill: the first free ones, best first. */
export function firstFreeSlots(state: FloorState, workpieceId: string, load: Step, nowMs: number): readonly string[] {
  const workpiece = state.workpieces[workpieceId];
  if (workpiece === undefined) return [];
  const holders = slotHolders(state);
  const free = slotsInOrder(state, workpiece, load, nowMs).flatMap(({ slotIds }) => slotIds.filter((slotId) => !holders.has(slotId)));
  return free.slice(0, slotsNeeded(state, workpiece, load));
}

/** One slot more or less: what is chosen is let go, what is free is taken, and the one chosen longest makes room. */
export function toggled(chosen: readonly string[], slotId: string, needed: number): readonly string[] {
  if (chosen.includes(slotId)) return chosen.filter((other) => other !== slotId);
  return [...chosen, slotId].slice(-Math.max(1, needed));
}

function standsIn(state: FloorState, workpiece: Workpiece): readonly string[] {
  const kitchen = state.kitchen?.document;
  if (kitchen === undefined) return [];
  if (workpiece.slotIds.length > 0)
    return decksOf(kitchen).flatMap((deck) =>
      deck.slots.filter((slot) => workpiece.slotIds.includes(slot.id)).map((slot) => `${deck.name} ${slot.name}`),
    );
  const mixer = kitchen.mixers.find((candidate) => candidate.id === workpiece.mixerId);
  if (mixer !== undefined) return [mixer.name];
  const place = kitchen.restPlaces.find((candidate) => candidate.id === workpiece.placeId);
  return place === undefined ? [] : [place.name];
}

/** Before its mixing has begun; pieces of a dough are weighed at the divide. */
function canWeigh(state: FloorState, workpiece: Workpiece): boolean {
  if (workpiece.kind === 'cut' || workpiece.kind === 'load') return false;
  const formula = formulaOf(state, workpiece);
  return formula !== null && !isMixingBegun(formula, workpiece);
}
