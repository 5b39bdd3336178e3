import { html, nothing, type TemplateResult } from 'lit';
import type { Cleaning } from '../../shared/documents/kitchen.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { doughsAtOnceWords, FIELDS, KITCHEN } from '../words/kitchen.ts';
import { cleanedKey, cleanedNames } from './cleaned.ts';
import { opener, thing, zone, type PlanContext } from './plan-context.ts';

/** How much can be worked on the bench at once, and what is cleaned once a day. */
export function tasksPlan(context: PlanContext): TemplateResult {
  const { cleanings = [] } = context.kitchen;
  const names = cleanedNames(context.kitchen);
  return zone(
    context,
    'tasks',
    KITCHEN.tasks,
    'cleaning',
    'cleanings',
    html`${benchPlan(context)}${cleanings.map((cleaning) => cleaningPlan(context, cleaning, names))}`,
    KITCHEN.noCleanings,
  );
}

function benchPlan(context: PlanContext): TemplateResult {
  const { bench } = context.kitchen;
  // A field that is being typed into may hold no number yet.
  const room = bench?.room;
  const changeOverMin = bench?.changeOverMin;
  return opener(
    context,
    { chosen: { kind: 'bench' }, key: 'bench', className: 'task', path: ['bench'] },
    html`<span class="name">${KITCHEN.benchWork}</span>
      <span class="soft">${room === undefined ? KITCHEN.benchUncounted : Number.isNaN(room) ? '?' : doughsAtOnceWords(room)}</span>
      ${changeOverMin === undefined ? nothing : html`<span class="soft">${FIELDS.changeOverMin}: ${minutesShown(changeOverMin)}</span>`}`,
  );
}

function cleaningPlan(context: PlanContext, cleaning: Cleaning, names: Readonly<Record<string, string>>): TemplateResult {
  const { resource, minutes, from, to } = cleaning;
  return thing(
    context,
    'cleaning',
    cleaning.id,
    'task',
    html`<span class="name">${cleaning.name}</span>
      <span class="soft">${names[cleanedKey(resource)] ?? resource.id}</span>
      <span class="soft">${minutesShown(minutes)} · ${from}–${to}</span>`,
  );
}

function minutesShown(minutes: number): string {
  return `${Number.isNaN(minutes) ? '?' : minutes}\u00a0${UNITS.minutes}`;
}
