import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { clockText } from '../parts/clock-text.ts';
import type { FloorView } from '../link/floor-link.ts';
import { keptWords, noLinkWords, PHONE, phonePaceWords } from '../words/phone.ts';
import { zoneOf } from './floor-facts.ts';
import { ShowScreenEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** The house's clock, how the phone stands to its server, and whose phone it is, or, slotted in its place, where else to go. */
@customElement('phone-header')
export class PhoneHeader extends LitElement {
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
        padding: var(--space-1) var(--space-4);
        min-height: 60px;
        border-bottom: var(--hairline) solid var(--ink);
      }
      .clock {
        font-size: var(--type-verb);
        font-weight: var(--weight-strong);
        line-height: 1;
      }
      .link {
        flex: 1 1 auto;
        min-width: 0;
        font-size: var(--type-small);
        color: var(--ink-soft);
      }
      button {
        flex: 0 1 auto;
        min-height: 52px;
        max-width: 56%;
        overflow-wrap: anywhere;
        padding: var(--space-1) var(--space-3);
        border: none;
        border-radius: var(--radius-button);
        background: transparent;
        font-size: var(--type-small);
        font-weight: var(--weight-text);
        text-decoration: underline;
        text-decoration-thickness: 1px;
        text-underline-offset: 4px;
        text-align: end;
      }
      .strip {
        padding: var(--space-2) var(--space-4);
        background: var(--ink);
        color: var(--paper);
        font-size: var(--type-small);
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
    `,
  ];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) nowMs = 0;

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null) return nothing;
    const zone = zoneOf(view.state);
    const station = view.state?.kitchen?.document.stations.find(({ id }) => id === view.device?.stationId)?.name ?? null;
    const name = [view.device?.name ?? PHONE.thisPhone, ...(station === null ? [] : [station])].join(' · ');
    return html`
      ${
        view.state === null
          ? nothing
          : html`<div class="line">
              <span class="clock">${clockText(this.nowMs, zone)}</span>
              <span class="link">${this.calmWords(view)}</span>
              <slot
                ><button type="button" @act=${this.openDevice}><span class="unseen">${PHONE.thisPhone}: </span>${name}</button></slot
              >
            </div>`
      }
      ${view.pace === 1 ? nothing : html`<p class="pace">${phonePaceWords(view.pace)}</p>`}
      <div role="status">
        ${view.connection.phase === 'lost' ? html`<p class="strip">${noLinkWords(clockText(view.connection.lastContactMs, zone))}</p>` : nothing}
        ${this.keptLine(view)}
      </div>
    `;
  }

  private calmWords(view: FloorView): string {
    switch (view.connection.phase) {
      case 'live':
        return PHONE.inTouch;
      case 'catchingUp':
        return PHONE.catchingUp;
      case 'connecting':
      case 'lost':
      case 'refused':
        return '';
    }
  }

  private keptLine(view: FloorView): TemplateResult | typeof nothing {
    const count = view.kept.filter((tap) => !tap.isSent).length;
    return count === 0 ? nothing : html`<p class="strip">${keptWords(count, view.connection.phase === 'live')}</p>`;
  }

  private openDevice(): void {
    this.dispatchEvent(new ShowScreenEvent({ kind: 'device' }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'phone-header': PhoneHeader;
  }
}
