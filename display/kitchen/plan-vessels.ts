import { html, nothing, type TemplateResult } from 'lit';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { clockText } from '../parts/clock-text.ts';
import { place } from '../parts/place.ts';
import { countWords, freeCountWords, heldCountWords, KITCHEN, returningWords } from '../words/kitchen.ts';
import { thing, zone, type PlanContext } from './plan-context.ts';

type Vessel = Kitchen['vessels'][number];

/** Tins, boards, trays … as counted stacks: what doughs hold, what is on its way back, what is free. */
export function vesselsPlan(context: PlanContext): TemplateResult {
  const { vessels } = context.kitchen;
  return zone(context, 'vessels', KITCHEN.vessels, 'vessel', 'vessels', html`${vessels.map((vessel) => stackPlan(context, vessel))}`);
}

function stackPlan(context: PlanContext, vessel: Vessel): TemplateResult {
  const { held, returning, backMs } = context.now.vessels(vessel.id);
  const free = Math.max(0, (Number.isNaN(vessel.count) ? 0 : vessel.count) - held - returning);
  const share = (count: number): string => `${(100 * count) / Math.max(1, held + returning + free)}%`;
  return thing(
    context,
    'vessel',
    vessel.id,
    'stack',
    html`<span class="head">
        <span class="name">${vessel.name}</span>
        <span class="soft">${countWords(held + returning + free)}</span>
      </span>
      <span class="bar" aria-hidden="true">
        <span class="part full" ${place({ width: share(held) })}></span>
        <span class="part back" ${place({ width: share(returning) })}></span>
      </span>
      <span class="counts">
        <span class="figure">${freeCountWords(free)}</span>
        ${held === 0 ? nothing : html`<span>${heldCountWords(held)}</span>`}
        ${backMs === null ? nothing : html`<span>${returningWords(returning, clockText(backMs, context.house.zone))}</span>`}
      </span>`,
  );
}
