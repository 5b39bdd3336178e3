import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { MovedStep } from '../../shared/floor/events.ts';
import type { FloorState, Plan } from '../../shared/floor/state.ts';
import type { Offer, PlanStatus } from '../../shared/plan/plan-api.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { inWords, lengthWords, ofAllWords, PLANNING } from '../words/day.ts';
import { ProposalEvent } from './day-events.ts';
import { dayPanelStyles } from './day-panel-styles.ts';
import { warningsAhead } from './order-rows.ts';
import type { PlanNames } from './plan-names.ts';
import { movedWhyText, warningText } from './plan-words.ts';

const MINUTE_MS = 60_000;
/** Moves that are listed at once; a whole day that moved is told by its first ones. */
const MOVES_SHOWN = 12;

/** What the plan in force says by itself: what moved and why, what is foreseen, what better ways are on offer. */
@customElement('plan-news')
export class PlanNews extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    dayPanelStyles,
    css`
      :host {
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 360px), 1fr));
        align-items: start;
        gap: var(--space-4) var(--space-5);
      }
      .part {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-2);
      }
      li {
        padding-block: var(--space-1);
        border-bottom: 1px solid var(--line);
      }
      li.late {
        border-bottom: none;
        margin-block: var(--space-1);
      }
      .times {
        white-space: nowrap;
        font-variant-numeric: tabular-nums;
      }
      .offer {
        display: grid;
        gap: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) floor: FloorState | null = null;
  @property({ attribute: false }) status: PlanStatus | null = null;
  @property({ attribute: false }) names: PlanNames | null = null;
  @property({ attribute: false }) nowMs = 0;

  protected override render(): TemplateResult | typeof nothing {
    const { floor, names } = this;
    if (floor === null || names === null) return nothing;
    const { plan } = floor;
    if (plan === null) return html`<p class="soft">${PLANNING.noPlan}</p>`;
    return html`${this.warnings(plan, floor, names)}${this.moved(plan, names)}${this.offers(names)}`;
  }

  private warnings(plan: Plan, floor: FloorState, names: PlanNames): TemplateResult {
    const warnings = [...warningsAhead(floor)].sort((a, b) => instantOf(a) - instantOf(b));
    return html`<div class="part">
      <h2>${PLANNING.warningsTitle}</h2>
      ${plan.madeMs === null ? nothing : html`<p class="soft">${PLANNING.madeAt(names.dayClock(plan.madeMs))}</p>`}
      ${this.status?.isReplanning === true ? html`<p role="status">${PLANNING.replanning}</p>` : nothing}
      ${
        warnings.length === 0
          ? html`<p>${PLANNING.noWarnings}</p>`
          : html`<ul>
              ${warnings.map((warning) => html`<li class="late">${warningText(warning, names, floor)}${this.ahead(instantOf(warning))}</li>`)}
            </ul>`
      }
    </div>`;
  }

  /** How long until then, so that hours ahead look like hours ahead. */
  private ahead(atMs: number): TemplateResult | typeof nothing {
    const min = (atMs - this.nowMs) / MINUTE_MS;
    return min < 1 ? nothing : html` <span class="soft">${inWords(lengthWords(min))}</span>`;
  }

  private moved({ moved, movedMs }: Plan, names: PlanNames): TemplateResult | typeof nothing {
    if (movedMs === null) return nothing;
    return html`<div class="part">
      <h2>${PLANNING.movedTitle(names.dayClock(movedMs))}</h2>
      ${moved.length === 0 ? html`<p>${PLANNING.nothingMoved}</p>` : this.moves(moved, names)}
    </div>`;
  }

  private moves(moved: readonly MovedStep[], names: PlanNames): TemplateResult {
    return html`<ul>
      ${moved.slice(0, MOVES_SHOWN).map((step) => this.move(step, names))}
      ${moved.length > MOVES_SHOWN ? html`<li class="soft">${PLANNING.movedMore(moved.length - MOVES_SHOWN)}</li>` : nothing}
    </ul>`;
  }

  private move(step: MovedStep, names: PlanNames): TemplateResult {
    const why = movedWhyText(step, names);
    return html`<li>
      <span class="strong">${names.step(step)}</span>
      <span class="times">${names.dayClock(step.fromMs)} → ${names.dayClock(step.toMs)}</span>
      ${why === '' ? nothing : html`<span class="soft">${why}</span>`}
    </li>`;
  }

  private offers(names: PlanNames): TemplateResult | typeof nothing {
    const offers = this.status?.offers ?? [];
    if (offers.length === 0) return nothing;
    return html`<div class="part">
      <h2>${PLANNING.offersTitle}</h2>
      <ul>
        ${offers.map((offer) => this.offer(offer, names))}
      </ul>
    </div>`;
  }

  private offer({ id, madeMs, before, after, moved }: Offer, names: PlanNames): TemplateResult {
    const name = PLANNING.offer(names.dayClock(madeMs));
    const late = [before, after].map(({ lateMin }) => Math.ceil(lateMin));
    return html`<li class="offer">
      <p class="strong">${name}</p>
      <p>
        ${[
          PLANNING.offerGain(ofAllWords(before.ordersOnTime, before.orders), ofAllWords(after.ordersOnTime, after.orders)),
          ...(late[0] === late[1] ? [] : [PLANNING.offerLate(late[0] ?? 0, late[1] ?? 0)]),
          PLANNING.offerMoves(moved.length),
        ].join(' · ')}
      </p>
      ${
        moved.length === 0
          ? nothing
          : html`<details>
              <summary>${PLANNING.offerMoves(moved.length)}</summary>
              ${this.moves(moved, names)}
            </details>`
      }
      <div class="buttons">
        <button type="button" class="plain filled" aria-label=${PLANNING.keepOne(name)} @click=${() => this.decide('keep', id)}>
          ${PLANNING.keep}
        </button>
        <button type="button" class="plain" aria-label=${PLANNING.dropOne(name)} @click=${() => this.decide('drop', id)}>
          ${PLANNING.drop}
        </button>
      </div>
    </li>`;
  }

  private decide(what: 'keep' | 'drop', id: string): void {
    this.dispatchEvent(new ProposalEvent(what, id));
  }
}

/** When it happens; what has no instant of its own comes first. */
function instantOf(warning: Plan['warnings'][number]): number {
  return 'atMs' in warning ? warning.atMs : 0;
}

declare global {
  interface HTMLElementTagNameMap {
    'plan-news': PlanNews;
  }
}
