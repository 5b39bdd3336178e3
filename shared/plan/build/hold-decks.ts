import type { Deck } from '../../documents/kitchen.ts';
import type { Step } from '../../documents/method.ts';
import { decksFor, decksOf } from '../../floor/slots.ts';
import type { DayDraft } from './day-draft.ts';
import { holdBetween, takenOf, type Option } from './options.ts';
import type { Chain, StepNodes, Thread } from './thread.ts';

/** A stay in the oven: the loading where there is one, the bake, the taking out. */
interface Stay {
  readonly load: StepNodes | null;
  readonly bake: StepNodes;
  readonly out: StepNodes | null;
}

/** Where an unloved deck costs as much as so many minutes beside the wanted ripeness. */
const DECK_PRICE = 0.25;
const SLOT_PRICE = 1;

/** Slots for every stay in an oven, from the beginning of the loading to the end of the taking out, at the bake's programme. */
export function holdDecks(day: DayDraft, chain: Chain): void {
  for (const stay of staysOf(chain)) {
    if (day.steps[stay.bake.start.activity]?.status === 'over') continue;
    const from = stay.load?.start ?? stay.bake.start;
    const to = stay.out?.end ?? stay.bake.end;
    const during = [stay.load, stay.bake, stay.out].filter((nodes) => nodes !== null);
    for (const taken of takings(day, chain.thread, stay)) holdBetween(day, from, to, taken, during);
  }
}

/** The first stay of a chain that has one: loads of one cut are baked in turn. */
export function firstLoading(chain: Chain): StepNodes | null {
  const [stay] = staysOf(chain);
  return stay === undefined ? null : (stay.load ?? stay.bake);
}

function staysOf({ thread, nodes }: Chain): readonly Stay[] {
  const { steps } = thread;
  return steps.flatMap((step, index): Stay[] => {
    const bake = nodes.get(step.id);
    if (step.kind !== 'bake' || bake === undefined) return [];
    const before = steps.slice(0, index);
    const load = before
      .slice(before.findLastIndex((earlier) => earlier.kind === 'bake') + 1)
      .findLast((earlier) => earlier.verb === 'load');
    const next = steps.slice(index + 1).find((later) => later.kind === 'bake' || later.verb === 'takeOut' || later.verb === 'load');
    const out = next?.verb === 'takeOut' ? nodes.get(next.id) : undefined;
    return [{ load: load === undefined ? null : (nodes.get(load.id) ?? null), bake, out: out ?? null }];
  });
}

function takings(day: DayDraft, thread: Thread, stay: Stay): readonly NonNullable<ReturnType<typeof takenOf>>[] {
  const { kitchen } = day.context;
  const slotIds = thread.workpiece?.slotIds ?? [];
  const isIn = slotIds.length > 0 && day.steps[stay.bake.start.activity]?.status !== 'ahead';
  if (isIn || (slotIds.length > 0 && stay.load !== null && day.steps[stay.load.start.activity]?.status === 'over'))
    return inNow(day, slotIds, stay);
  const step = stepOfLoading(thread, stay);
  const decks = decksFor(kitchen, step);
  const fitting = decks.filter((deck) => slotsOn(thread, step, deck) <= deck.slots.length);
  if (fitting.length === 0) return overSeveral(day, thread, stay, decks, step);
  const options = fitting.map((deck): Option => ({
    resource: day.table.deck(deck),
    amount: slotsOn(thread, step, deck),
    price: decks.indexOf(deck) * DECK_PRICE + rankOf(thread, deck) * SLOT_PRICE,
    state: day.table.bakeStates(deck).programme(stay.bake.step),
  }));
  const taken = takenOf(day, options, day.plan.step(thread, step.id));
  return taken === null ? [] : [taken];
}

/** What lies in slots stays in them. */
function inNow(day: DayDraft, slotIds: readonly string[], stay: Stay): readonly NonNullable<ReturnType<typeof takenOf>>[] {
  return decksOf(day.context.kitchen).flatMap((deck) => {
    const amount = deck.slots.filter((slot) => slotIds.includes(slot.id)).length;
    return amount === 0 ? [] : onDeck(day, stay, deck, amount);
  });
}

/** More than any deck takes at once: on the floor it lies on several; what is only proposed is refused by name. */
function overSeveral(
  day: DayDraft,
  thread: Thread,
  stay: Stay,
  decks: readonly Deck[],
  step: Step,
): readonly NonNullable<ReturnType<typeof takenOf>>[] {
  const [first] = decks;
  if (first === undefined) return [];
  const { place, formula, product } = thread;
  if (place.workpieceId === null) {
    day.context.faults.push({
      batchKey: place.batchKey,
      formulaId: formula.id,
      productId: product?.id ?? null,
      code: 'noDeck',
      stepId: step.id,
      deckIds: decks.map((deck) => deck.id),
      slotsNeeded: Math.min(...decks.map((deck) => slotsOn(thread, step, deck))),
      mostSlots: Math.max(...decks.map((deck) => deck.slots.length)),
    });
  }
  let missing = slotsOn(thread, step, first);
  return decks.flatMap((deck) => {
    const amount = Math.min(missing, deck.slots.length);
    missing -= amount;
    return amount === 0 ? [] : onDeck(day, stay, deck, amount);
  });
}

function onDeck(day: DayDraft, stay: Stay, deck: Deck, amount: number): readonly NonNullable<ReturnType<typeof takenOf>>[] {
  const state = day.table.bakeStates(deck).programme(stay.bake.step);
  const taken = takenOf(day, [{ resource: day.table.deck(deck), amount, price: 0, state }], null);
  return taken === null ? [] : [taken];
}

/** The step whose claim names the decks. */
function stepOfLoading({ steps }: Thread, { load, bake }: Stay): Step {
  if (load !== null) return load.step;
  const before = steps.slice(0, steps.indexOf(bake.step));
  return before.findLast((step) => step.verb === 'load') ?? bake.step;
}

/** How many slots of a deck it fills: by the pieces that a slot of this deck, or of any, takes; or as many as the loading claims. */
function slotsOn({ product, pieces }: Thread, step: Step, deck: Deck): number {
  const perSlot = product?.deckRoom?.find((room) => room.deck === deck.id)?.piecesPerSlot ?? product?.piecesPerSlot;
  if (perSlot !== undefined && pieces !== null) return Math.ceil(pieces / perSlot);
  return step.claims.find((claim) => claim.kind === 'deck')?.count ?? 1;
}

/** How far behind in the product's preferences the best slot of a deck stands; 0 where it prefers none. */
function rankOf({ product }: Thread, deck: Deck): number {
  const wanted = product?.prefersSlots ?? [];
  const rank = wanted.findIndex((slotId) => deck.slots.some((slot) => slot.id === slotId));
  return rank === -1 ? wanted.length : rank;
}
