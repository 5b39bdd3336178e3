import type { Step } from '../../shared/documents/method.ts';
import type { Due } from '../../shared/floor/due.ts';
import { decksOf, slotHolders } from '../../shared/floor/slots.ts';
import type { Workpiece } from '../../shared/floor/state.ts';
import { wayOf } from '../../shared/floor/way.ts';
import type { DayMind } from './day-mind.ts';
import { bakeShare, hotLossShare } from './house-truth.ts';
import type { Hand } from './invented-floor.ts';
import { toTenth } from './weather.ts';

const MINUTE_MS = 60_000;
const CORE_SHARE = 0.45;
const MOVE_SHARE = 0.05;
/** So many loads have a piece that cannot be sold; more where the oven is hot. */
const BURNT_SHARE = 0.05;
const BURNT_SHARE_HOT = 0.22;
/** Dough goes into the oven about so warm, in °C, and its core nears the boiling point of water. */
const DOUGH_C = 26;
const CORE_END_C = 97.5;
const LEAST_DECK_C = 300;

/** Before a load goes in, its deck is set to what the product asks for; the hearth burns as it burns. */
export function setDecks({ floor, chance }: DayMind, { workpiece, action }: Due, hand: Hand): void {
  if (action.verb !== 'load' || !chance.is(0.7)) return;
  const wantedC = bakeAfter(floor.state, workpiece, action)?.bake?.[0]?.temperatureC;
  const deckIds = action.claims.find((claim) => claim.kind === 'deck')?.ids ?? [];
  const holders = slotHolders(floor.state);
  const decks = decksOf(floor.state.kitchen?.document ?? { ovens: [] }).filter((deck) => deckIds.includes(deck.id));
  const empty = decks.find((deck) => deck.slots.every((slot) => !holders.has(slot.id)));
  if (empty === undefined || wantedC === undefined || wantedC > LEAST_DECK_C) return;
  if ((floor.state.deckC[empty.id] ?? empty.temperatureC) !== wantedC)
    floor.give({ type: 'setDeck', deckId: empty.id, temperatureC: wantedC }, hand);
}

/** What a phase of a bake asks of its deck's heat is mostly done. */
export function setAsAsked({ floor, chance }: DayMind, { workpiece }: Due, setC: number | null, hand: Hand): void {
  const deck = decksOf(floor.state.kitchen?.document ?? { ovens: [] }).find(({ slots }) =>
    slots.some(({ id }) => id === workpiece.slotIds[0]),
  );
  if (setC === null || deck === undefined || !chance.is(0.6)) return;
  if ((floor.state.deckC[deck.id] ?? deck.temperatureC) !== setC)
    floor.give({ type: 'setDeck', deckId: deck.id, temperatureC: setC }, hand);
}

/** Something that bakes is looked at: its core is read once on the way, or it is moved to where there is room. */
export function inTheOven(mind: DayMind, { id }: Workpiece, hand: Hand): void {
  const { floor, agenda, chance } = mind;
  const due = floor.dues.find((candidate) => candidate.workpiece.id === id);
  if (due?.step.kind !== 'bake' || due.startedMs === null) return;
  const trueMs = (due.workpiece.steps[due.step.id]?.pins?.targetMin ?? 0) * bakeShare(due.workpiece.slotIds) * MINUTE_MS;
  const startedMs = due.startedMs;
  const stepId = due.step.id;
  const isBaking = (): boolean => floor.state.workpieces[id]?.steps[stepId]?.status === 'started';
  if (due.step.coreC !== undefined && chance.is(CORE_SHARE)) {
    const share = chance.between(0.6, 0.85);
    const targetC = due.step.coreC;
    agenda.note(startedMs + share * trueMs, () => {
      if (isBaking()) floor.give({ type: 'readTemperature', workpieceId: id, where: 'core', celsius: coreC(share, targetC) }, hand);
    });
  }
  if (chance.is(MOVE_SHARE)) agenda.note(startedMs + 0.45 * trueMs, () => isBaking() && moveToFree(mind, id, hand));
}

/** Out of the oven: its core, what the hot place took of it, and what cannot be sold. */
export function outOfTheOven({ floor, chance }: DayMind, due: Due, hand: Hand): void {
  const { slotIds } = due.workpiece;
  const workpiece = floor.state.workpieces[due.workpiece.id];
  if (workpiece === undefined || workpiece.finishedMs !== null || due.step.kind !== 'bake') return;
  const workpieceId = workpiece.id;
  const isKept = workpiece.productId === 'cheese-boat';
  if (isKept || (due.step.coreC !== undefined && chance.is(0.75))) {
    const celsius = toTenth(isKept ? chance.near(81, 2.5) : chance.near((due.step.coreC ?? CORE_END_C) + 0.8, 0.8));
    floor.give({ type: 'readTemperature', workpieceId, where: 'core', celsius }, hand);
  }
  if (due.step.verb === 'partBake') return;
  const hotG = Math.round(workpiece.grams * hotLossShare(slotIds) * chance.factor(0.3));
  if (hotG > 0) floor.give({ type: 'nameLoss', workpieceId, what: 'bake', grams: hotG }, hand);
  const pieces = workpiece.pieces ?? 0;
  if (pieces < 3 || !chance.is(bakeShare(slotIds) < 0.95 ? BURNT_SHARE_HOT : BURNT_SHARE)) return;
  const burnt = chance.pick([1, 1, 1, 2]);
  if (chance.is(0.5)) {
    const reason = chance.pick(['Burnt at the edge', 'Split open', 'Stuck to the deck']);
    floor.give({ type: 'correctCount', workpieceId, pieces: pieces - burnt, reason }, hand);
  } else {
    floor.give(
      { type: 'nameLoss', workpieceId, what: 'pieces', grams: Math.round((workpiece.grams * burnt) / pieces), pieces: burnt },
      hand,
    );
  }
}

/** One of its slots is changed for one of the same oven that is free. */
function moveToFree({ floor }: DayMind, workpieceId: string, hand: Hand): void {
  const workpiece = floor.state.workpieces[workpieceId];
  const [first, ...others] = workpiece?.slotIds ?? [];
  const holders = slotHolders(floor.state);
  const oven = floor.state.kitchen?.document.ovens.find(({ decks }) => decks.some(({ slots }) => slots.some(({ id }) => id === first)));
  const free = oven?.decks.flatMap((deck) => deck.slots).find((slot) => !holders.has(slot.id));
  if (free !== undefined) floor.give({ type: 'moveLoad', workpieceId, slotIds: [...others, free.id] }, hand);
}

/** How warm the middle is after a share of the bake: it nears its end as warmth does. */
function coreC(share: number, targetC: number): number {
  const endC = Math.max(CORE_END_C, targetC + 1.5);
  const rate = Math.log((endC - DOUGH_C) / (endC - targetC));
  return toTenth(endC - (endC - DOUGH_C) * Math.exp(-rate * share));
}

function bakeAfter(state: DayMind['floor']['state'], workpiece: Workpiece, load: Step): Step | undefined {
  const way = wayOf(state, workpiece);
  return way.slice(way.findIndex((step) => step.id === load.id)).find((step) => step.kind === 'bake');
}
