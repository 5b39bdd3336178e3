import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FloorView } from '../link/floor-link.ts';
import { clockText } from '../parts/clock-text.ts';
import { zoneOf } from '../phone/floor-facts.ts';
import { baseStyles, buttonStyles } from '../phone/phone-styles.ts';
import { keptWords, noLinkWords, PHONE, phonePaceWords } from '../words/phone.ts';
import { STATION } from '../words/station.ts';
import { ChoiceWantedEvent } from './station-events.ts';

/** The house's clock, whose screen this is, and how it stands to its server. */
@customElement('station-header')
export class StationHeader extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: block;
      }
      .line {
        display: flex;
        align-items: center;
        gap: var(--space-3);
        min-height: var(--bar, 64px);
        padding: 2px 16px;
        border-bottom: var(--hairline) solid var(--ink);
      }
      .clock {
        flex: none;
        font-size: var(--type-tag);
        font-weight: var(--weight-strong);
        line-height: 1;
      }
      .link {
        flex: 1 1 auto;
        min-width: 0;
        color: var(--ink-soft);
        font-size: var(--type-small);
      }
      button {
        flex: 0 1 auto;
        min-height: min(56px, var(--bar, 56px));
        padding: var(--space-1) var(--space-3);
        border-color: transparent;
        background: transparent;
        font-size: var(--type-figure);
        font-weight: var(--weight-strong);
        overflow-wrap: anywhere;
        text-align: end;
      }
      .strip {
        padding: var(--space-2) var(--space-4);
        background: var(--ink);
        color: var(--paper);
        font-size: var(--type-button);
        font-weight: var(--weight-word);
      }
      .strip + .strip {
        padding-top: 0;
      }
      .pace {
        padding: var(--space-1) var(--space-4);
        border-bottom: var(--hairline) dashed var(--ink);
        font-size: var(--type-small);
        font-weight: var(--weight-word);
        text-align: center;
      }
      @media (max-width: 599px) {
        button {
          font-size: var(--type-title);
        }
      }
    `,
  ];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) nowMs = 0;
  /** The station's name; null before one is chosen. */
  @property({ attribute: false }) station: string | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null) return nothing;
    const zone = zoneOf(view.state);
    const { connection } = view;
    return html`
      ${
        view.state === null
          ? nothing
          : html`<div class="line">
              <span class="clock">${clockText(this.nowMs, zone)}</span>
              <span class="link"
                >${connection.phase === 'live' ? PHONE.inTouch : connection.phase === 'catchingUp' ? PHONE.catchingUp : nothing}</span
              >
              ${
                this.station === null
                  ? nothing
                  : html`<button type="button" @act=${() => this.dispatchEvent(new ChoiceWantedEvent())}>
                      <span><span class="unseen">${STATION.pageTitle}: </span>${this.station}</span>
                    </button>`
              }
            </div>`
      }
      ${view.pace === 1 ? nothing : html`<p class="pace">${phonePaceWords(view.pace)}</p>`}
      <div role="status">
        ${connection.phase === 'lost' ? html`<p class="strip">${noLinkWords(clockText(connection.lastContactMs, zone))}</p>` : nothing}
        ${this.keptLine(view)}
      </div>
    `;
  }

  private keptLine(view: FloorView): TemplateResult | typeof nothing {
    const count = view.kept.filter((tap) => !tap.isSent).length;
    return count === 0 ? nothing : html`<p class="strip">${keptWords(count, view.connection.phase === 'live')}</p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'station-header': StationHeader;
  }
}
