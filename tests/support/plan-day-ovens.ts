import type { Deck, Kitchen } from '../../shared/documents/kitchen.ts';
import type { Step } from '../../shared/documents/method.ts';
import { inTurn, overfull, together, type Span } from './plan-day-spans.ts';
import type { PlanThread } from './plan-day-threads.ts';
import { taken } from './plan-day-resources.ts';

const MINUTE_MS = 60_000;

interface Stay extends Span {
  readonly deck: string;
  readonly bake: Step;
}

/**
 * No deck has more in it than its slots take, from the beginning of the loading to the end of the taking out; what shares a
 * deck bakes by one programme; and between two loads the deck has the time to get as hot as the next one begins.
 */
export function deckFaults(kitchen: Kitchen, threads: readonly PlanThread[]): string[] {
  const decks = kitchen.ovens.flatMap((oven) => oven.decks);
  const stays = threads.flatMap((thread) => staysOf(thread, decks));
  return [
    ...stays
      .filter((stay) => !decks.some((deck) => deck.id === stay.deck))
      .map((stay) => `deck: ${stay.name} bakes in no deck that it may`),
    ...decks.flatMap((deck) => {
      const own = stays.filter((stay) => stay.deck === deck.id);
      const atOnce = together(own).filter(([a, b]) => programmeOf(a.bake, deck) !== programmeOf(b.bake, deck));
      return [
        ...overfull(`deck: ${deck.id}`, own, deck.slots.length),
        ...atOnce.map(([a, b]) => `deck: ${deck.id} bakes ${a.name} and ${b.name} by two programmes at once`),
        ...inTurn(own).flatMap(([before, next]) => heatFault(deck, before, next)),
      ];
    }),
  ];
}

function staysOf({ name, steps, product, pieces }: PlanThread, decks: readonly Deck[]): Stay[] {
  return steps.flatMap(({ step, planned }, index) => {
    if (step.kind !== 'bake' || planned === null) return [];
    const before = steps[index - 1];
    const load = before?.step.verb === 'load' ? before : undefined;
    const after = steps[index + 1];
    const out = after?.step.verb === 'takeOut' ? after : undefined;
    const claim = (load?.step ?? step).claims.find((one) => one.kind === 'deck');
    const able = claim === undefined || claim.ids.length === 0 ? decks.map((deck) => deck.id) : claim.ids;
    const ids = [load?.planned ?? null, planned].flatMap((told) => taken(told, 'deck')).filter((id) => able.includes(id));
    const [deck = ''] = ids;
    const perSlot = product?.deckRoom?.find((room) => room.deck === deck)?.piecesPerSlot ?? product?.piecesPerSlot;
    const amount = perSlot === undefined || pieces === null ? (claim?.count ?? 1) : Math.ceil(pieces / perSlot);
    const fromMs = load?.planned?.plannedStartMs ?? planned.plannedStartMs;
    return [{ name: `${step.id} of ${name}`, fromMs, toMs: out?.planned?.plannedEndMs ?? planned.plannedEndMs, amount, deck, bake: step }];
  });
}

/** Temperatures and steam, one after another; how long each lasts is the load's own affair. */
function programmeOf({ bake = [] }: Step, deck: Deck): string {
  return bake.map(({ temperatureC, steam }) => `${temperatureC ?? deck.temperatureC} ${steam ?? ''}`).join(', ');
}

function heatFault(deck: Deck, before: Stay, next: Stay): string[] {
  if (next.fromMs < before.toMs) return [];
  const fromC = before.bake.bake?.at(-1)?.temperatureC ?? deck.temperatureC;
  const toC = next.bake.bake?.[0]?.temperatureC ?? deck.temperatureC;
  const rate = toC > fromC ? deck.heatKPerMin : deck.coolKPerMin;
  const neededMs = rate === undefined ? 0 : (Math.abs(toC - fromC) / rate) * MINUTE_MS;
  if (next.fromMs - before.toMs >= neededMs - 1000) return [];
  return [`deck: ${deck.id} has no time to get from ${fromC} to ${toC} °C between ${before.name} and ${next.name}`];
}
