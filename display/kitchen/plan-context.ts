import { html, nothing, type TemplateResult } from 'lit';
import type { FileFault } from '../../shared/documents/kitchen-faults.ts';
import type { House } from '../../shared/documents/house.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { Resource } from '../../shared/floor/resources.ts';
import { clockText } from '../parts/clock-text.ts';
import { addWords, BLOCK_REASONS, blockedWords, KITCHEN } from '../words/kitchen.ts';
import { isSameChosen, placeOf, resourceOf, type Chosen, type LISTS, type PlaceKind } from './chosen.ts';
import { faultsWithin } from './draft-faults.ts';
import { faultText } from '../desk/fault-text.ts';
import type { Inwards } from '../desk/inwards.ts';
import { ThingAddedEvent, ThingChosenEvent } from './kitchen-events.ts';
import type { KitchenNow } from './kitchen-now.ts';

/** What every part of the plan is drawn from. */
export interface PlanContext {
  /** As edited. */
  readonly kitchen: Kitchen;
  /** As in force. */
  readonly inForce: Kitchen;
  readonly house: House;
  readonly now: KitchenNow;
  readonly chosen: Chosen | null;
  readonly faults: readonly FileFault[];
  send(event: Event): void;
}

/** A thing of the plan as a button that opens its panel. */
export function thing(
  context: PlanContext,
  kind: PlaceKind,
  id: string,
  className: string,
  content: TemplateResult,
  /** What a screen reader is to say beside what is seen. */
  unseen = '',
): TemplateResult {
  const chosen = { kind, id } as const;
  const path = placeOf(context.kitchen, chosen);
  const isNew = placeOf(context.inForce, chosen) === null;
  return opener(
    context,
    { chosen, key: `${kind} ${id}`, className, path },
    html`${unseen === '' ? nothing : html`<span class="unseen">${unseen} </span>`}${content}
    ${isNew ? html`<span class="mark">${KITCHEN.isNew}</span>` : nothing}`,
    blockMark(context, kind, id),
  );
}

/** What a button of the plan opens, and where in the kitchen that stands. */
interface Opened {
  readonly chosen: Chosen;
  readonly key: string;
  readonly className: string;
  readonly path: Inwards | null;
}

/** A button that opens a panel, marked where something in it is wrong. */
export function opener(
  context: PlanContext,
  { chosen, key, className, path }: Opened,
  content: TemplateResult,
  mark: TemplateResult | typeof nothing = nothing,
): TemplateResult {
  const isFaulty = path !== null && faultsWithin(context.faults, 'kitchen', path).length > 0;
  return html`<button
    type="button"
    class="thing ${className}"
    data-thing=${key}
    aria-pressed=${isSameChosen(context.chosen, chosen)}
    @click=${() => context.send(new ThingChosenEvent(chosen))}
  >
    ${content}${isFaulty ? html`<span class="mark wrong"><span aria-hidden="true">!</span><span class="unseen">${KITCHEN.faultMark}</span></span>` : nothing}
    ${mark}
  </button>`;
}

function blockMark(context: PlanContext, kind: PlaceKind, id: string): TemplateResult | typeof nothing {
  const resource = resourceOf({ kind, id });
  const block = resource === null ? null : context.now.blockOn(resource);
  if (block === null) return nothing;
  const until = block.untilMs === undefined ? null : clockText(block.untilMs, context.house.zone);
  return html`<span class="blocked">${blockedWords(BLOCK_REASONS[block.why], until)}</span>`;
}

/** The word for a thing in which no dough is; none where it is blocked, which is said beside it. */
export function freeWord(context: PlanContext, resource: Resource): string {
  return context.now.blockOn(resource) === null ? KITCHEN.free : '';
}

/** The tags of doughs, or a word for none. */
export function tagsOr(tags: readonly string[], none: string): TemplateResult {
  if (tags.length === 0 && none === '') return html``;
  return tags.length === 0 ? html`<span class="soft">${none}</span>` : html`${tags.map((tag) => html`<span class="tag">${tag}</span>`)}`;
}

/** A part of the house with its heading, its things, and the button that adds one. */
export function zone(
  context: PlanContext,
  className: string,
  title: string,
  adds: PlaceKind,
  list: (typeof LISTS)[keyof typeof LISTS],
  content: TemplateResult,
  emptyWords: string = KITCHEN.emptyList,
): TemplateResult {
  const own = context.faults.filter((fault) => fault.path === `kitchen.${list}`);
  return html`<section class="zone ${className}" aria-labelledby=${className}>
    <h2 id=${className}>${title}</h2>
    ${own.map((fault) => html`<p class="fault">${faultText(fault)}</p>`)}
    <div class="things">${content}</div>
    ${(context.kitchen[list] ?? []).length === 0 ? html`<p class="soft">${emptyWords}</p>` : nothing}
    ${
      adds === 'bowl' || (adds === 'mixer' && context.kitchen.stations.length === 0)
        ? nothing
        : html`<button type="button" class="add" @click=${() => context.send(new ThingAddedEvent(adds))}>${addWords(adds)}</button>`
    }
  </section>`;
}
