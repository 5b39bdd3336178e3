import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Reason, Remedy, Trouble } from '../../shared/plan/why/reason.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { PLANNING, REMEDIES } from '../words/day.ts';
import { DayPlanWantedEvent } from './day-events.ts';
import { dayPanelStyles } from './day-panel-styles.ts';
import { keyOfPlace, type PlanNames } from './plan-names.ts';
import { causeText, remedyText, troubleText } from './plan-words.ts';
import type { TriedChange } from './tried-change.ts';

/** Why a proposed day does not fit, and what would make it fit: each change a button that plans the day with it. */
@customElement('plan-reasons')
export class PlanReasons extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    dayPanelStyles,
    css`
      ol {
        display: grid;
        gap: var(--space-4);
        margin: 0;
        padding: 0;
        list-style: none;
      }
      ol > li {
        display: grid;
        gap: var(--space-2);
      }
      li li {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-1) var(--space-3);
        padding-block: var(--space-1);
      }
      li li span {
        flex: 1 1 200px;
      }
      a {
        color: var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) reasons: readonly Reason[] = [];
  @property({ attribute: false }) names: PlanNames | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { names, reasons } = this;
    if (names === null || reasons.length === 0) return nothing;
    return html`<h2 id="why">${PLANNING.whyTitle}</h2>
      <p class="soft">${PLANNING.whyMore}</p>
      <ol aria-labelledby="why">
        ${reasons.map((reason) => this.reason(reason, names))}
      </ol>`;
  }

  private reason({ trouble, also, cause, remedies }: Reason, names: PlanNames): TemplateResult {
    return html`<li>
      <p class="late strong">${troubleText(trouble, names)}</p>
      ${cause === null ? nothing : html`<p>${causeText(cause, names)}</p>`}
      ${also.length === 0 ? nothing : html`<p>${REMEDIES.also} ${also.map((each) => troubleText(each, names)).join('; ')}</p>`}
      ${
        remedies.length === 0
          ? html`<p class="soft">${REMEDIES.none}</p>`
          : html`<ul>
              ${remedies.map((remedy) => this.remedy(remedy, trouble, names))}
            </ul>`
      }
    </li>`;
  }

  private remedy(remedy: Remedy, trouble: Trouble, names: PlanNames): TemplateResult {
    const text = remedyText(remedy, trouble, names);
    const change = triedBy(remedy);
    if (change === null)
      return html`<li>
        <span>${text} <a href="/kitchen">${REMEDIES.inKitchen}</a></span>
      </li>`;
    return html`<li>
      <button
        type="button"
        class="plain"
        aria-label="${PLANNING.try}: ${text}"
        @click=${() => this.dispatchEvent(new DayPlanWantedEvent(change))}
      >
        ${PLANNING.try}
      </button>
      <span>${text}</span>
    </li>`;
  }
}

/** What is to be tried for a remedy; null for one that only the kitchen can take. */
function triedBy({ change }: Remedy): TriedChange | null {
  switch (change.kind) {
    case 'openEarlier':
    case 'openLonger':
    case 'oneMoreHand':
    case 'moreVessels':
      return null;
    case 'beginEarlier':
    case 'beginLater':
      return { kind: 'startsAt', key: keyOfPlace(change), startMs: change.startMs };
    default:
      return change;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'plan-reasons': PlanReasons;
  }
}
