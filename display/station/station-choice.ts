import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Station } from '../../shared/documents/kitchen.ts';
import type { FloorView } from '../link/floor-link.ts';
import type { LookChoice } from '../parts/look.ts';
import '../parts/page-choices.ts';
import { baseStyles, buttonStyles } from '../phone/phone-styles.ts';
import '../phone/sound-settings.ts';
import type { Language } from '../words/page-language.ts';
import { STATION } from '../words/station.ts';
import { StationChosenEvent } from './station-events.ts';
import type { Lit } from './stay-lit.ts';

/** Where this screen is, asked with big buttons; and what else is set of the device. */
@customElement('station-choice')
export class StationChoice extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        align-content: start;
        gap: var(--space-5);
        padding: var(--space-5) var(--space-4);
      }
      h1 {
        font-size: var(--type-verb);
        font-weight: var(--weight-strong);
        line-height: 1.1;
      }
      p {
        font-size: var(--type-text);
        overflow-wrap: anywhere;
      }
      .soft {
        color: var(--ink-soft);
      }
      .stations {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 240px), 1fr));
        gap: var(--space-4);
      }
      .stations button {
        overflow-wrap: anywhere;
      }
      button[aria-pressed='true'] {
        background: var(--ink);
        color: var(--paper);
      }
    `,
  ];

  @property({ attribute: false }) stations: readonly Station[] = [];
  /** As it was chosen; null where nothing was. */
  @property({ attribute: false }) stationId: string | null = null;
  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) language: Language = 'en';
  @property({ attribute: false }) look: LookChoice = 'browser';
  @property({ attribute: false }) lit: Lit = 'unknown';

  protected override render(): TemplateResult {
    const isGone = this.stationId !== null && !this.stations.some((station) => station.id === this.stationId);
    return html`
      <div>
        <h1>${STATION.chooseTitle}</h1>
        ${isGone ? html`<p><strong>${STATION.gone}</strong></p>` : nothing}
        <p class="soft">${STATION.chooseMore}</p>
      </div>
      <div class="stations">
        ${this.stations.map(
          (station) =>
            html`<button
              type="button"
              class="big"
              aria-pressed=${station.id === this.stationId}
              @act=${() => this.dispatchEvent(new StationChosenEvent(station.id))}
            >
              ${station.name}
            </button>`,
        )}
      </div>
      <page-choices .language=${this.language} .look=${this.look}></page-choices>
      <sound-settings .view=${this.view} .nowMs=${this.nowMs}></sound-settings>
      ${this.lit === 'unknown' ? nothing : html`<p class="soft">${this.lit === 'lit' ? STATION.staysLit : STATION.mayDim}</p>`}
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'station-choice': StationChoice;
  }
}
