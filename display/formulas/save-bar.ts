import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { unreachable } from '../../shared/result.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { SAVE } from '../words/formulas.ts';
import { FaultChosenEvent, SaveEvent } from './save-events.ts';

/** How a draft stands. `version` is the one that it becomes, or became. */
export type SaveStanding =
  | { readonly phase: 'changed' | 'saving' | 'unsent' | 'overtaken' | 'saved'; readonly version: number }
  /** The house said no for another reason than faults at fields. */
  | { readonly phase: 'refused'; readonly version: number; readonly why: string };

/** A fault as the bar lists it. */
export interface ListedFault {
  readonly path: string;
  readonly words: string;
}

/** What is to become of what was written here, and what stands in its way. Sticks to the foot of the page. */
@customElement('save-bar')
export class SaveBar extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      .bar {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2) var(--space-4);
        padding: 10px 16px;
        border-top: var(--rule) solid var(--ink);
        background: var(--paper);
        font-size: var(--type-text);
      }
      .words {
        flex: 1 1 280px;
        min-width: 0;
        font-weight: var(--weight-word);
        overflow-wrap: anywhere;
      }
      ul {
        max-height: 18vh;
        overflow: auto;
        font-weight: var(--weight-text);
      }
      li {
        margin-top: 2px;
        padding-inline-start: 10px;
        border-inline-start: 5px solid var(--lost);
      }
      button.fault {
        appearance: none;
        min-height: 30px;
        padding: 2px 0;
        border: none;
        background: none;
        color: var(--ink);
        font: inherit;
        text-align: start;
        text-decoration: underline;
        text-underline-offset: 3px;
        cursor: pointer;
      }
      button.plain:disabled {
        border-style: dashed;
        background: var(--paper);
        color: var(--ink-soft);
        cursor: default;
      }
    `,
  ];

  /** null: nothing was written here. */
  @property({ attribute: false }) standing: SaveStanding | null = null;
  @property({ attribute: false }) faults: readonly ListedFault[] = [];
  /** Nobody has saved it yet: it can be thrown away, not put back. */
  @property({ attribute: false }) isNew = false;

  protected override render(): TemplateResult {
    const { standing } = this;
    return html`${standing === null ? nothing : html`<div class="bar">${this.words(standing)}${this.buttons(standing)}</div>`}`;
  }

  private words(standing: SaveStanding): TemplateResult {
    const said = this.said(standing);
    if (this.faults.length === 0 || standing.phase === 'saving' || standing.phase === 'saved')
      return html`<p class="words" role="status">${said}</p>`;
    return html`<div class="words">
      <p>${standing.phase === 'changed' ? nothing : html`${said} `}${SAVE.faulty(this.faults.length)}</p>
      <ul>
        ${this.faults.map(
          ({ path, words }) =>
            html`<li>
              <button type="button" class="fault" @click=${() => this.dispatchEvent(new FaultChosenEvent(path))}>${words}</button>
            </li>`,
        )}
      </ul>
    </div>`;
  }

  private said(standing: SaveStanding): string {
    switch (standing.phase) {
      case 'changed':
        return this.isNew ? SAVE.isNew : SAVE.changed;
      case 'saving':
        return SAVE.saving;
      case 'saved':
        return SAVE.saved(standing.version);
      case 'unsent':
        return SAVE.unsent;
      case 'overtaken':
        return SAVE.overtaken;
      case 'refused':
        return standing.why;
      default:
        return unreachable(standing);
    }
  }

  private buttons({ phase, version }: SaveStanding): TemplateResult | typeof nothing {
    switch (phase) {
      case 'saving':
      case 'saved':
        return nothing;
      case 'overtaken':
        return html`<div class="buttons">
          ${this.button('look', SAVE.look)}${this.button('putBack', SAVE.asTheirs)}${this.button('takeNewer', SAVE.takeNewer, 'filled')}
        </div>`;
      case 'changed':
      case 'unsent':
      case 'refused':
        return html`<div class="buttons">
          ${this.button('putBack', this.isNew ? SAVE.discard : SAVE.putBack)}
          ${this.button('save', SAVE.saveAs(version), 'filled', this.faults.length > 0)}
        </div>`;
      default:
        return unreachable(phase);
    }
  }

  private button(what: SaveEvent['what'], words: string, className = '', isOff = false): TemplateResult {
    return html`<button type="button" class="plain ${className}" ?disabled=${isOff} @click=${() => this.dispatchEvent(new SaveEvent(what))}>
      ${words}
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'save-bar': SaveBar;
  }
}
