import { html, nothing, type TemplateResult } from 'lit';
import type { Kitchen, Mixer } from '../../shared/documents/kitchen.ts';
import { ALLERGENS } from '../words/floor.ts';
import { addWithinWords, KITCHEN, litresWords, MIXER_KINDS, rangeOfLoadWords } from '../words/kitchen.ts';
import { doughMeasure } from '../desk/field.ts';
import { ThingAddedEvent } from './kitchen-events.ts';
import { freeWord, tagsOr, thing, zone, type PlanContext } from './plan-context.ts';

/** The mixers as they stand, each with what is in it and its bowls beside it. */
export function mixersPlan(context: PlanContext): TemplateResult {
  return zone(
    context,
    'mixers',
    KITCHEN.mixers,
    'mixer',
    'mixers',
    html`${context.kitchen.mixers.map((mixer) => mixerPlan(context, mixer))}${strayBowls(context)}`,
  );
}

function mixerPlan(context: PlanContext, mixer: Mixer): TemplateResult {
  const measure = doughMeasure(context.house.units);
  const tags = context.now.tagsAt({ kind: 'mixer', id: mixer.id });
  const allergens = context.now.allergensIn(mixer.id);
  // A field that is being typed into may hold no number yet.
  const shown = (grams: number): string => (Number.isNaN(grams) ? '?' : String(measure.shown(grams)));
  return html`<div class="machine">
    ${thing(
      context,
      'mixer',
      mixer.id,
      'mixer',
      html`<span class="round ${tags.length > 0 ? 'full' : ''}">${tagsOr(tags, KITCHEN.empty)}</span>
        <span class="name">${mixer.name}</span>
        <span class="soft"
          >${MIXER_KINDS[mixer.kind]} · ${rangeOfLoadWords(shown(mixer.leastG), `${shown(mixer.mostG)}\u00a0${measure.unit}`)}</span
        >
        ${allergens.length === 0 ? nothing : html`<span class="soft">${KITCHEN.sinceCleaned} ${allergens.map((allergen) => ALLERGENS[allergen]).join(', ')}</span>`}`,
    )}
    <div class="bowls">
      ${context.kitchen.bowls.filter((bowl) => homeOf(context.kitchen, bowl) === mixer.id).map((bowl) => bowlPlan(context, bowl))}
      <button type="button" class="add small" @click=${() => context.send(new ThingAddedEvent('bowl', mixer.id))}>
        ${addWithinWords('bowl', mixer.name)}
      </button>
    </div>
  </div>`;
}

type Bowl = Kitchen['bowls'][number];

/** Beside the first mixer that it fits. */
function homeOf(kitchen: Kitchen, bowl: Bowl): string | null {
  return bowl.fits.find((id) => kitchen.mixers.some((mixer) => mixer.id === id)) ?? null;
}

function bowlPlan(context: PlanContext, bowl: Bowl): TemplateResult {
  const tags = context.now.tagsAt({ kind: 'bowl', id: bowl.id });
  return thing(
    context,
    'bowl',
    bowl.id,
    'bowl',
    html`<span class="name">${bowl.name}</span
      ><span class="soft">${litresWords(bowl.litres)}</span>${tagsOr(tags, freeWord(context, { kind: 'bowl', id: bowl.id }))}`,
  );
}

/** Bowls whose mixer was taken out are still drawn: somebody has to say what becomes of them. */
function strayBowls(context: PlanContext): TemplateResult | typeof nothing {
  const stray = context.kitchen.bowls.filter((bowl) => homeOf(context.kitchen, bowl) === null);
  return stray.length === 0
    ? nothing
    : html`<div class="machine"><div class="bowls">${stray.map((bowl) => bowlPlan(context, bowl))}</div></div>`;
}
