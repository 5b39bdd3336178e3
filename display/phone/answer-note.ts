import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FloorView } from '../link/floor-link.ts';
import { PHONE } from '../words/phone.ts';
import { refusalWords } from '../words/refusals.ts';
import { factsOf } from './floor-facts.ts';
import { baseStyles } from './phone-styles.ts';

/** Why the last tap came to nothing, with who and when. Stays until the next action. */
@customElement('answer-note')
export class AnswerNote extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: block;
      }
      p {
        padding: 12px 16px;
        border-block: 4px solid var(--ink);
        font-size: 19px;
        font-weight: var(--weight-word);
        line-height: 1.25;
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property({ attribute: false }) view: FloorView | null = null;

  protected override render(): TemplateResult {
    const words = this.words();
    // The region is there before its words are, or a screen reader would not speak them.
    return html`<div role="alert">${words === null ? nothing : html`<p>${words}</p>`}</div>`;
  }

  private words(): string | null {
    const { view } = this;
    if (view === null) return null;
    if (view.refusedHere !== null) return PHONE.tooManyKept;
    const outcome = view.lastAnswer?.outcome;
    if (outcome === undefined || outcome.ok) return null;
    return refusalWords(outcome.refusal, factsOf(view.state, view.devices, view.device?.id ?? null));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'answer-note': AnswerNote;
  }
}
