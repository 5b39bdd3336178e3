import { html, nothing, type TemplateResult } from 'lit';
import type { Deck, Oven } from '../../shared/documents/kitchen.ts';
import '../parts/oven-map.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { addWithinWords, KITCHEN, usuallyWords } from '../words/kitchen.ts';
import { placeOf } from './chosen.ts';
import { faultsWithin } from './draft-faults.ts';
import { faultText } from '../desk/fault-text.ts';
import { ThingAddedEvent } from './kitchen-events.ts';
import { freeWord, tagsOr, thing, zone, type PlanContext } from './plan-context.ts';

/** The ovens with their decks from top to bottom and their slots side by side, as they stand. */
export function ovensPlan(context: PlanContext): TemplateResult {
  const { ovens } = context.kitchen;
  return zone(context, 'ovens', KITCHEN.ovens, 'oven', 'ovens', html`${ovens.map((oven) => ovenPlan(context, oven))}`);
}

function ovenPlan(context: PlanContext, oven: Oven): TemplateResult {
  const path = placeOf(context.kitchen, { kind: 'oven', id: oven.id }) ?? [];
  const own = faultsWithin(context.faults, 'kitchen', [...path, 'decks']).filter((fault) => fault.path.endsWith('.decks'));
  return html`<div class="oven">
    ${thing(context, 'oven', oven.id, 'oven-name', html`<span class="name">${oven.name}</span>`)}
    ${own.map((fault) => html`<p class="fault">${faultText(fault)}</p>`)}${oven.decks.map((deck) => deckPlan(context, oven, deck))}
    <oven-map .slots=${context.now.byHeat(oven.id)}></oven-map>
    <button type="button" class="add small" @click=${() => context.send(new ThingAddedEvent('deck', oven.id))}>
      ${addWithinWords('deck', oven.name)}
    </button>
  </div>`;
}

function deckPlan(context: PlanContext, oven: Oven, deck: Deck): TemplateResult {
  const path = placeOf(context.kitchen, { kind: 'deck', id: deck.id }) ?? [];
  const own = faultsWithin(context.faults, 'kitchen', [...path, 'slots']).filter((fault) => fault.path.endsWith('.slots'));
  const { temperature } = context.house.units;
  const setC = context.now.deckSetC(deck.id);
  return html`<div class="deck">
    ${thing(
      context,
      'deck',
      deck.id,
      'deck-name',
      html`<span class="name">${deck.name}</span
        ><span class="figure">${temperatureText(setC ?? deck.temperatureC, temperature)}</span>
        ${setC === null || setC === deck.temperatureC ? nothing : html`<span class="soft">${usuallyWords(temperatureText(deck.temperatureC, temperature))}</span>`}`,
      oven.name,
    )}
    <div class="slots">
      ${deck.slots.map((slot) => {
        const tags = context.now.tagsAt({ kind: 'slot', id: slot.id });
        return thing(
          context,
          'slot',
          slot.id,
          `slot ${tags.length > 0 ? 'full' : ''}`,
          html`<span class="soft">${slot.name}</span>${tagsOr(tags, freeWord(context, { kind: 'slot', id: slot.id }))}`,
          `${oven.name} ${deck.name}`,
        );
      })}
    </div>
    <button
      type="button"
      class="add tiny"
      aria-label=${addWithinWords('slot', `${oven.name} ${deck.name}`)}
      @click=${() => context.send(new ThingAddedEvent('slot', deck.id))}
    >
      +
    </button>
    ${own.map((fault) => html`<p class="fault">${faultText(fault)}</p>`)}
  </div>`;
}
