import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { House } from '../../shared/documents/house.ts';
import type { EventOf } from '../../shared/floor/events.ts';
import type { Resource } from '../../shared/floor/resources.ts';
import { clockText } from '../parts/clock-text.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { BLOCK_REASONS, blockedWords, KITCHEN } from '../words/kitchen.ts';
import { temperatureMeasure, type Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { KitchenCommandEvent } from './kitchen-events.ts';
import '../desk/desk-field.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';

type Why = EventOf<'resourceBlocked'>['why'];

/** For how long something is blocked, in minutes; null until it is freed. */
const BLOCK_MINUTES = [10, 20, 30, 60, null] as const;

/** What can be done to a thing at once, without a draft: block it, free it, set a deck. */
@customElement('spot-actions')
export class SpotActions extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host {
        display: grid;
        gap: 10px;
      }
      h3 {
        font-size: var(--type-button);
        font-weight: var(--weight-strong);
      }
      p {
        font-size: var(--type-text);
      }
      .blocked {
        padding: 6px 10px;
        border: var(--hairline) solid var(--ink);
        background: var(--late);
        color: var(--on-role);
        font-weight: var(--weight-word);
      }
      .soft {
        color: var(--ink-soft);
      }
      .set {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        gap: var(--space-2);
      }
      .set desk-field {
        flex: 1 1 180px;
      }
    `,
  ];

  @property({ attribute: false }) resource: Resource | null = null;
  @property({ attribute: false }) block: EventOf<'resourceBlocked'> | null = null;
  @property({ attribute: false }) house: House | null = null;
  /** What the deck is at, °C; null for what is no deck. */
  @property({ attribute: false }) deckC: number | null = null;
  @state() private minutes: number | null = 20;
  @state() private wantedC: number | null = null;
  @query('h3') private heading!: HTMLElement | null;
  /** A button was pressed that goes away with what it does. */
  private isPressed = false;

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('resource') && changed.get('resource')?.id !== this.resource?.id) this.wantedC = null;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { resource, house, block } = this;
    if (resource === null || house === null) return nothing;
    return html`<h3 tabindex="-1">${KITCHEN.onTheSpot}</h3>
      ${this.deckC === null ? nothing : this.setter(house, this.deckC)} ${block === null ? this.blocker() : this.freer(block, house.zone)}`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (!this.isPressed || !changed.has('block')) return;
    this.isPressed = false;
    // The keyboard stays in the panel.
    this.heading?.focus({ preventScroll: true });
  }

  private setter(house: House, deckC: number): TemplateResult {
    const field: Field = {
      key: 'setC',
      label: KITCHEN.setTo,
      kind: 'number',
      measure: temperatureMeasure(house.units),
      least: -40,
      most: 600,
      isWhole: false,
      isOptional: false,
    };
    const value = this.wantedC ?? deckC;
    const isFaulty = Number.isNaN(value) || value < -40 || value > 600;
    return html`<div class="set">
      <desk-field .field=${field} .value=${value} .faults=${isFaulty ? [''] : []} @field-changed=${this.wanted}></desk-field>
      <button type="button" class="plain" @click=${() => this.set(value, isFaulty)}>${KITCHEN.setDeck}</button>
    </div>`;
  }

  private blocker(): TemplateResult {
    return html`<p class="soft">${KITCHEN.blockMore}</p>
      <div class="buttons" role="group" aria-label=${KITCHEN.minutes}>
        ${BLOCK_MINUTES.map(
          (minutes) =>
            html`<button type="button" class="plain" aria-pressed=${minutes === this.minutes} @click=${() => (this.minutes = minutes)}>
              ${minutes === null ? KITCHEN.untilFreed : `${minutes} ${UNITS.minutes}`}
            </button>`,
        )}
      </div>
      <div class="buttons" role="group" aria-label=${KITCHEN.block}>
        ${(Object.keys(BLOCK_REASONS) as Why[]).map(
          (why) =>
            html`<button type="button" class="plain" @click=${() => this.blockFor(why)}>
              <span class="unseen">${KITCHEN.block}: </span>${BLOCK_REASONS[why]}
            </button>`,
        )}
      </div>`;
  }

  private freer(block: EventOf<'resourceBlocked'>, zone: string): TemplateResult {
    const until = block.untilMs === undefined ? null : clockText(block.untilMs, zone);
    return html`<p class="blocked">${blockedWords(BLOCK_REASONS[block.why], until)}</p>
      <div class="buttons">
        <button type="button" class="plain filled" @click=${() => this.free(block.resource)}>${KITCHEN.freeIt}</button>
      </div>`;
  }

  /** Only what is set is sent; what is typed before that belongs to nobody else. */
  private wanted(event: FieldChangedEvent): void {
    event.stopPropagation();
    this.wantedC = typeof event.value === 'number' ? event.value : Number.NaN;
  }

  private set(temperatureC: number, isFaulty: boolean): void {
    if (this.resource === null || isFaulty) return;
    this.wantedC = null;
    this.dispatchEvent(new KitchenCommandEvent({ type: 'setDeck', deckId: this.resource.id, temperatureC }));
  }

  private blockFor(why: Why): void {
    if (this.resource === null) return;
    this.isPressed = true;
    const minutes = this.minutes === null ? {} : { minutes: this.minutes };
    this.dispatchEvent(new KitchenCommandEvent({ type: 'blockResource', resource: this.resource, why, ...minutes }));
  }

  private free(resource: Resource): void {
    this.isPressed = true;
    this.dispatchEvent(new KitchenCommandEvent({ type: 'freeResource', resource }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'spot-actions': SpotActions;
  }
}
