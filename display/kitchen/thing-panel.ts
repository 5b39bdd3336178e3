import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { FileFault } from '../../shared/documents/kitchen-faults.ts';
import { pathText } from '../../shared/documents/path-text.ts';
import type { House } from '../../shared/documents/house.ts';
import type { Cleaning, Deck, Kitchen, Station } from '../../shared/documents/kitchen.ts';
import { KITCHEN } from '../words/kitchen.ts';
import type { BackupsShown } from './backup-store.ts';
import { isThing, placeOf, resourceOf, type Chosen, type ChosenThing } from './chosen.ts';
import { cleanedKey } from './cleaned.ts';
import { faultsWithin } from './draft-faults.ts';
import { faultText } from '../desk/fault-text.ts';
import type { Field } from '../desk/field.ts';
import { BENCH_FIELDS, fieldsOf, houseFields, keyField } from './fields.ts';
import { inwardsOf, valueAt, type Inwards } from '../desk/inwards.ts';
import { ThingChosenEvent, ThingMovedEvent } from './kitchen-events.ts';
import '../desk/desk-field.ts';
import type { KitchenNow } from './kitchen-now.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import './hours-fields.ts';
import './house-backups.ts';
import './may-contain-fields.ts';
import './sound-fields.ts';
import './spot-actions.ts';

/** What a panel is drawn from. */
export interface PanelContext {
  readonly kitchen: Kitchen;
  readonly inForce: Kitchen;
  readonly house: House;
  readonly houseInForce: House;
  readonly now: KitchenNow;
  readonly chosen: Chosen;
  readonly faults: readonly FileFault[];
  readonly backups: BackupsShown;
}

/** Zones that the browser knows, for the field's list of suggestions. */
const ZONES = Intl.supportedValuesOf('timeZone');

/** One thing of the kitchen closely: what can be done to it at once, and its fields. Or the house's settings. */
@customElement('thing-panel')
export class ThingPanel extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host {
        display: grid;
        gap: 20px;
        padding: var(--space-4);
        border: var(--rule) solid var(--ink);
        background: var(--paper);
        scroll-margin-top: 16px;
      }
      .top {
        display: flex;
        align-items: start;
        justify-content: space-between;
        gap: var(--space-3);
      }
      h2 {
        font-size: var(--type-title);
        font-weight: var(--weight-strong);
        line-height: 1.15;
        overflow-wrap: anywhere;
      }
      h2 span {
        display: block;
        font-size: var(--type-text);
        font-weight: var(--weight-text);
        color: var(--ink-soft);
      }
      h3 {
        font-size: var(--type-button);
        font-weight: var(--weight-strong);
      }
      .fields {
        display: grid;
        gap: 14px;
      }
      .note {
        padding-inline-start: 10px;
        border-inline-start: 5px solid var(--ink);
        font-size: var(--type-text);
      }
      .key {
        font-size: var(--type-text);
        color: var(--ink-soft);
        overflow-wrap: anywhere;
      }
      .soft {
        color: var(--ink-soft);
        font-size: var(--type-text);
      }
    `,
  ];

  @property({ attribute: false }) context: PanelContext | null = null;
  @query('h2') private heading!: HTMLElement | null;

  /** Brings the panel into view, and the keyboard and the screen reader to it. */
  focusHeading(): void {
    this.heading?.focus({ preventScroll: true });
    // Beside the plan it stands in view already; below it, somebody would not see that it has opened.
    if (matchMedia('(max-width: 1000px)').matches) this.scrollIntoView({ block: 'start' });
  }

  protected override render(): TemplateResult | typeof nothing {
    const { context } = this;
    if (context === null) return nothing;
    if (!isThing(context.chosen)) return context.chosen.kind === 'house' ? this.housePanel(context) : this.benchPanel(context);
    const place = placeOf(context.kitchen, context.chosen);
    if (place === null) return nothing;
    return this.thing(context, context.chosen, place);
  }

  private benchPanel({ kitchen, faults }: PanelContext): TemplateResult {
    return html`${this.top(KITCHEN.benchWork, KITCHEN.tasks)}
      <div class="fields">
        ${this.fields(BENCH_FIELDS, kitchen.bench, 'kitchen', ['bench'], faults)}
        <p class="soft">${KITCHEN.benchHint}</p>
      </div>`;
  }

  private housePanel({ house, kitchen, faults, backups, houseInForce }: PanelContext): TemplateResult {
    return html`${this.top(KITCHEN.settings, house.name)}
      <div class="fields">${this.fields(houseFields(ZONES, house.units), house, 'house', [], faults)}</div>
      <p class="note">${KITCHEN.ruleNote}</p>
      <may-contain-fields .mayContain=${kitchen.mayContain}></may-contain-fields>
      <sound-fields .sound=${house.sound}></sound-fields>
      <house-backups .shown=${backups} .zone=${houseInForce.zone}></house-backups>`;
  }

  private thing(context: PanelContext, chosen: ChosenThing, place: Inwards): TemplateResult {
    const { kitchen, inForce, houseInForce, house, now, faults } = context;
    const value = valueAt(kitchen, place) as { readonly id: string; readonly name: string };
    const isInForce = placeOf(inForce, chosen) !== null;
    const resource = resourceOf(chosen);
    const deckC =
      chosen.kind === 'deck' && isInForce ? (now.deckSetC(chosen.id) ?? deckIn(inForce, chosen.id)?.temperatureC ?? null) : null;
    return html`${this.top(value.name, KITCHEN.kinds[chosen.kind])} ${this.caution(cautionedKind(chosen.kind, value))}
      ${
        resource === null || !isInForce
          ? nothing
          : html`<spot-actions .resource=${resource} .block=${now.blockOn(resource)} .house=${houseInForce} .deckC=${deckC}></spot-actions>`
      }
      <div class="fields">
        <h3>${KITCHEN.details}</h3>
        ${this.fields(fieldsOf(chosen.kind, kitchen, house.units), value, 'kitchen', place, faults)}
        ${chosen.kind === 'mixer' ? html`<p class="soft">${KITCHEN.riseHint}</p>` : nothing}
        ${chosen.kind === 'cleaning' ? html`<p class="soft">${KITCHEN.cleaningHint}</p>` : nothing}
        ${chosen.kind === 'station' ? this.times(value as Station, place, faults) : nothing}
        ${
          isInForce
            ? html`<p class="key">${keyField('').label}: ${value.id}</p>`
            : this.fields([keyField(KITCHEN.keyHint)], value, 'kitchen', place, faults)
        }
      </div>
      <div class="buttons">
        <button type="button" class="plain" @click=${() => this.dispatchEvent(new ThingMovedEvent(-1))}>${KITCHEN.earlier}</button>
        <button type="button" class="plain" @click=${() => this.dispatchEvent(new ThingMovedEvent(1))}>${KITCHEN.later}</button>
        <button type="button" class="plain" @click=${() => this.dispatchEvent(new ThingMovedEvent('out'))}>${KITCHEN.remove}</button>
      </div>`;
  }

  private top(title: string, kind: string): TemplateResult {
    return html`<div class="top">
      <h2 tabindex="-1"><span>${kind}</span>${title}</h2>
      <button type="button" class="plain" @click=${() => this.dispatchEvent(new ThingChosenEvent(null))}>${KITCHEN.close}</button>
    </div>`;
  }

  private caution(kind: Chosen['kind']): TemplateResult | typeof nothing {
    if (kind === 'mixer') return html`<p class="note">${KITCHEN.mixerCaution}</p>`;
    return kind === 'deck' || kind === 'oven' ? html`<p class="note">${KITCHEN.ovenCaution}</p>` : nothing;
  }

  private times(station: Station, place: Inwards, faults: readonly FileFault[]): TemplateResult[] {
    return TIMES.map(
      (which) => html`<hours-fields .which=${which} .hours=${station[which]} .place=${place} .faults=${faults}></hours-fields>`,
    );
  }

  private fields(
    fields: readonly Field[],
    value: unknown,
    document: 'kitchen' | 'house',
    place: Inwards,
    faults: readonly FileFault[],
  ): TemplateResult[] {
    return fields.map((field) => {
      const inwards = inwardsOf(field.key);
      const own = faultsWithin(faults, document, [...place, ...inwards]).map(faultText);
      // A field for each place: what is half typed in one is not carried to the next thing's.
      return html`<desk-field
        data-field=${pathText([document, ...place, ...inwards])}
        .field=${field}
        .value=${field.key === 'resource' ? cleanedKey((value as Cleaning).resource) : valueAt(value, inwards)}
        .faults=${own}
      ></desk-field>`;
    });
  }
}

const TIMES = ['hours', 'breaks'] as const;

/** Whose caution is said: a cleaning's is that of what is cleaned. */
function cautionedKind(kind: ChosenThing['kind'], value: unknown): Chosen['kind'] {
  return kind === 'cleaning' ? (value as Cleaning).resource.kind : kind;
}

function deckIn(kitchen: Kitchen, id: string): Deck | undefined {
  return kitchen.ovens.flatMap((oven) => oven.decks).find((deck) => deck.id === id);
}

declare global {
  interface HTMLElementTagNameMap {
    'thing-panel': ThingPanel;
  }
}
