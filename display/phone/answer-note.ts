import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { AnsweredTap, FloorView } from '../link/floor-link.ts';
import { PHONE } from '../words/phone.ts';
import { refusalWords } from '../words/refusals.ts';
import { THIS_PHONE } from '../words/this-phone.ts';
import { didWords } from './did-words.ts';
import { factsOf } from './floor-facts.ts';
import { PutAwayEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** Why the last tap came to nothing, with who and when; of several, each, until they are put away. */
@customElement('answer-note')
export class AnswerNote extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: block;
      }
      .note,
      .several {
        padding: var(--space-3) var(--space-4);
        border-block: var(--rule) solid var(--ink);
      }
      .note,
      li {
        font-size: var(--type-text);
        font-weight: var(--weight-word);
        line-height: 1.25;
        overflow-wrap: anywhere;
      }
      .several {
        display: grid;
        gap: var(--space-3);
      }
      h2 {
        font-size: var(--type-text);
        font-weight: var(--weight-strong);
      }
      ul {
        max-height: 30dvh;
        overflow: hidden auto;
        overscroll-behavior: contain;
      }
      li {
        padding: 6px 0;
        border-top: 1px solid var(--line);
        font-size: var(--type-text);
        font-weight: var(--weight-text);
      }
      li strong {
        font-weight: var(--weight-strong);
      }
    `,
  ];

  @property({ attribute: false }) view: FloorView | null = null;
  /** Refused taps that have not been put away, the oldest first. */
  @property({ attribute: false }) refusals: readonly AnsweredTap[] = [];

  protected override render(): TemplateResult {
    const { view } = this;
    // The region is there before its words are, or a screen reader would not speak them.
    return html`<div role="alert">${view === null ? nothing : this.told(view)}</div>`;
  }

  private told(view: FloorView): TemplateResult | typeof nothing {
    if (view.refusedHere !== null) return html`<p class="note">${PHONE.tooManyKept}</p>`;
    if (this.refusals.length > 1) return this.several(view);
    const last = view.lastAnswer ?? this.refusals[0];
    return last === undefined || last.outcome.ok ? nothing : html`<p class="note">${whyWords(view, last)}</p>`;
  }

  private several(view: FloorView): TemplateResult {
    const { state } = view;
    return html`
      <div class="several">
        <h2>${THIS_PHONE.refusedTitle(this.refusals.length)}</h2>
        <ul tabindex="0" aria-label=${THIS_PHONE.refusedTitle(this.refusals.length)}>
          ${this.refusals.map((tap) => html`<li>${state === null ? nothing : html`<strong>${didWords(state, tap.command)}</strong>: `}${whyWords(view, tap)}</li>`)}
        </ul>
        <button type="button" class="middling" @act=${() => this.dispatchEvent(new PutAwayEvent())}>${THIS_PHONE.putAway}</button>
      </div>
    `;
  }
}

function whyWords(view: FloorView, { outcome }: AnsweredTap): string {
  return outcome.ok ? '' : refusalWords(outcome.refusal, factsOf(view.state, view.devices, view.device?.id ?? null));
}

declare global {
  interface HTMLElementTagNameMap {
    'answer-note': AnswerNote;
  }
}
