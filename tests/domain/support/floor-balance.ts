import type { RecordedEvent } from '../../../shared/floor/events.ts';
import type { FloorState } from '../../../shared/floor/state.ts';

/** Weights are doubles of grams with tenths: sums of some hundred of them are equal within this. */
const ROUNDING_G = 1e-6;

/** What one workpiece was given, gave to others and lost, in grams, as the events tell it. */
export interface Account {
  inG: number;
  outG: number;
  lostG: number;
}

/** A ledger kept from the events alone, without the weights that the floor works out for itself. */
export function accountsOf(recorded: readonly RecordedEvent[]): ReadonlyMap<string, Account> {
  const accounts = new Map<string, Account>();
  const of = (id: string): Account => {
    const known = accounts.get(id) ?? { inG: 0, outG: 0, lostG: 0 };
    accounts.set(id, known);
    return known;
  };
  for (const { event } of recorded) {
    if (event.type === 'workpiecePlanned' && event.kind !== 'ferment') of(event.workpieceId).inG += event.grams;
    if (event.type === 'fermentFed') {
      const isFirst = !accounts.has(event.workpieceId);
      of(event.workpieceId).inG += event.flourG + event.waterG + (isFirst ? event.seedG : 0);
      of(event.workpieceId).lostG += event.discardedG;
    }
    if (event.type === 'workpieceDrawn') {
      of(event.fromWorkpieceId).outG += event.grams;
      // What the formula counts among the dough is in its planned weight; a filling comes on top.
      if (event.isExtra === true) of(event.toWorkpieceId).inG += event.grams;
    }
    if (event.type === 'ingredientAdded' && event.isExtra === true) of(event.workpieceId).inG += event.grams;
    if (event.type === 'batchRescaled') of(event.workpieceId).inG += event.toG - event.fromG;
    if (event.type === 'lossNamed') of(event.workpieceId).lostG += event.grams;
    if (event.type === 'workpieceDivided') of(event.workpieceId).lostG += event.lossG;
    if (event.type === 'workpieceDivided' || event.type === 'loadsMade') {
      for (const child of event.children) {
        of(event.workpieceId).outG += child.grams;
        of(child.workpieceId).inG += child.grams;
      }
    }
  }
  return accounts;
}

/** What on a floor cannot be: a sentence for each vessel, slot, edge or weight that is out of order. Empty where all is well. */
export function impossible(state: FloorState, recorded: readonly RecordedEvent[], nowMs: number): readonly string[] {
  return [...vesselsOver(state, nowMs), ...slotsTwice(state), ...circles(state), ...tooHeavy(state, recorded)];
}

function vesselsOver(state: FloorState, nowMs: number): string[] {
  return (state.kitchen?.document.vessels ?? []).flatMap(({ id, count }) => {
    const held = Object.values(state.workpieces)
      .flatMap((workpiece) => workpiece.vessels)
      .reduce((sum, one) => sum + (one.vesselId === id ? one.count : 0), 0);
    const away = state.vesselReturns.reduce((sum, one) => sum + (one.vesselId === id && one.freeMs > nowMs ? one.count : 0), 0);
    return held + away > count ? [`${held} ${id} held and ${away} on their way back, of ${count}`] : [];
  });
}

function slotsTwice(state: FloorState): string[] {
  const holders = new Map<string, string>();
  return Object.values(state.workpieces).flatMap((workpiece) =>
    workpiece.slotIds.flatMap((slotId) => {
      const other = holders.get(slotId);
      holders.set(slotId, workpiece.tag);
      return other === undefined ? [] : [`${slotId} holds ${other} and ${workpiece.tag}`];
    }),
  );
}

function circles(state: FloorState): string[] {
  const seen = new Map<string, 'open' | 'closed'>();
  const comesOfItself = (id: string): boolean => {
    if (seen.has(id)) return seen.get(id) === 'open';
    seen.set(id, 'open');
    // A pot that is fed with its own seed is no circle.
    const found = state.edges.some((edge) => edge.toId === id && edge.fromId !== id && comesOfItself(edge.fromId));
    seen.set(id, 'closed');
    return found;
  };
  return Object.values(state.workpieces).flatMap(({ id, tag }) => (comesOfItself(id) ? [`${tag} comes of itself`] : []));
}

function tooHeavy(state: FloorState, recorded: readonly RecordedEvent[]): string[] {
  const accounts = accountsOf(recorded);
  return Object.values(state.workpieces).flatMap(({ id, tag, grams, ending, stock }) => {
    const { inG, outG, lostG } = accounts.get(id) ?? { inG: 0, outG: 0, lostG: 0 };
    // Nothing is in a pot that is only planned, and what was divided lives on in its cuts.
    const hasG = ending === 'divided' || (stock !== null && stock.fedMs === null) ? 0 : grams;
    return hasG + outG + lostG > inG + ROUNDING_G ? [`${tag} has ${hasG} g, gave ${outG} and lost ${lostG} of ${inG} g`] : [];
  });
}
