import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FloorView } from '../link/floor-link.ts';
import { clockText } from '../parts/clock-text.ts';
import type { LookChoice } from '../parts/look.ts';
import '../parts/page-choices.ts';
import { factsOf, zoneOf } from '../phone/floor-facts.ts';
import type { Language } from '../words/page-language.ts';
import { noLinkSinceWords, paceAtDeskWords } from '../words/fields.ts';
import { KITCHEN } from '../words/kitchen.ts';
import { refusalWords } from '../words/refusals.ts';
import { ThingChosenEvent } from './kitchen-events.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';

/** Whose kitchen this is, its clock, how the page stands to its server, and why the last thing came to nothing. */
@customElement('kitchen-header')
export class KitchenHeader extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      .line {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 4px 20px;
        padding: var(--space-3) 0;
      }
      h1 {
        font-size: var(--type-figure);
        font-weight: var(--weight-strong);
        line-height: 1.1;
      }
      h1 span {
        display: block;
        font-size: var(--type-text);
        font-weight: var(--weight-text);
        color: var(--ink-soft);
        overflow-wrap: anywhere;
      }
      .clock {
        margin-inline-start: auto;
        font-size: var(--type-figure);
        font-weight: var(--weight-strong);
      }
      .strip {
        padding: 10px 16px;
        background: var(--ink);
        color: var(--paper);
        font-size: var(--type-text);
      }
      .strip strong {
        margin-inline-end: var(--space-3);
      }
      .answer {
        padding: 10px 16px;
        border: var(--rule) solid var(--ink);
        font-size: var(--type-text);
        font-weight: var(--weight-word);
      }
      .pace {
        padding: var(--space-1) var(--space-4);
        border: var(--hairline) dashed var(--ink);
        font-size: var(--type-text);
        font-weight: var(--weight-word);
        text-align: center;
      }
    `,
  ];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) language: Language = 'en';
  @property({ attribute: false }) look: LookChoice = 'browser';

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null) return nothing;
    const zone = zoneOf(view.state);
    const house = view.state?.house?.document;
    return html`<div class="line">
        <h1>${house === undefined ? nothing : html`<span>${house.name}</span>`}${KITCHEN.title}</h1>
        <page-choices .language=${this.language} .look=${this.look}></page-choices>
        ${view.state === null ? nothing : html`<span class="clock">${clockText(this.nowMs, zone)}</span>`}
        ${
          house === undefined
            ? nothing
            : html`<button type="button" class="plain" @click=${() => this.dispatchEvent(new ThingChosenEvent({ kind: 'house' }))}>
                ${KITCHEN.settings}
              </button>`
        }
      </div>
      ${view.pace === 1 ? nothing : html`<p class="pace">${paceAtDeskWords(view.pace)}</p>`}
      <div role="status">
        ${
          view.connection.phase === 'lost'
            ? html`<p class="strip">
                <strong>${noLinkSinceWords(clockText(view.connection.lastContactMs, zone))}</strong>${KITCHEN.noLinkMore}
              </p>`
            : nothing
        }
      </div>
      <div role="alert">${this.answer(view)}</div>`;
  }

  /** What a draft was refused for stands at its fields; that it says nothing new is no fault. */
  private answer(view: FloorView): TemplateResult | typeof nothing {
    const outcome = view.lastAnswer?.outcome;
    if (outcome === undefined || outcome.ok) return nothing;
    const { code } = outcome.refusal;
    if (code === 'documentFaulty' || code === 'documentChanged' || code === 'nothingChanges') return nothing;
    return html`<p class="answer">
      ${KITCHEN.refused} ${refusalWords(outcome.refusal, factsOf(view.state, view.devices, view.device?.id ?? null))}
    </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'kitchen-header': KitchenHeader;
  }
}
