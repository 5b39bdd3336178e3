import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { weekdayText } from '../parts/clock-text.ts';
import { PANELS } from '../words/panels.ts';
import { FloorCommandEvent, ShowScreenEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** The second step of ending the day, under the list of what goes over: undo cannot help here. */
@customElement('end-day-button')
export class EndDayButton extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: block;
        padding: var(--space-3) var(--space-4);
        border-top: var(--hairline) solid var(--ink);
      }
      button {
        width: 100%;
      }
    `,
  ];

  @property({ attribute: false }) serviceDate: string | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { serviceDate } = this;
    if (serviceDate === null) return nothing;
    return html`<button type="button" class="big filled" @act=${() => this.end(serviceDate)}>
      ${PANELS.dayEndDo(weekdayText(serviceDate))}
    </button>`;
  }

  private end(serviceDate: string): void {
    this.dispatchEvent(new FloorCommandEvent({ type: 'closeDay', serviceDate }));
    this.dispatchEvent(new ShowScreenEvent({ kind: 'list' }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'end-day-button': EndDayButton;
  }
}
