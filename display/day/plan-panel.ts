import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { House } from '../../shared/documents/house.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { PlanStatus, Proposal, ProposalDone } from '../../shared/plan/plan-api.ts';
import type { OrderedProduct } from '../../shared/plan/orders/read-orders.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { place } from '../parts/place.ts';
import { LOCALE } from '../words/clock.ts';
import { DAY, PLANNING } from '../words/day.ts';
import { RULE_SETS } from '../words/fields.ts';
import { DayPlanWantedEvent, ProposalEvent } from './day-events.ts';
import { dayPanelStyles } from './day-panel-styles.ts';
import { heldIsPlanned } from './held-planned.ts';
import { ordersOf } from './order-rows.ts';
import './plan-compare.ts';
import type { NamedProposal } from './plan-compare.ts';
import { planFaultText, type BookNames } from './plan-fault-words.ts';
import { planNames, type PlanNames } from './plan-names.ts';
import './plan-news.ts';
import { planPanelStyles } from './plan-panel-styles.ts';
import './plan-reasons.ts';
import './plan-tries.ts';
import { warningText } from './plan-words.ts';
import type { TriedChange } from './tried-change.ts';

/** The plan of a date: asked for, watched while it is sought, compared, kept; and what the plan in force says by itself. */
@customElement('plan-panel')
export class PlanPanel extends LitElement {
  static override styles = [deskStyles, plainButtonStyles, dayPanelStyles, planPanelStyles];

  /** With the documents of what is ordered. */
  @property({ attribute: false }) floor: FloorState | null = null;
  @property({ attribute: false }) serviceDate = '';
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) products: readonly OrderedProduct[] = [];
  @property({ attribute: false }) bookNames: BookNames = { formula: (id) => id, product: (id) => id };
  @property({ attribute: false }) status: PlanStatus | null = null;
  /** The planner could not be reached when it was last asked. */
  @property({ attribute: false }) isFailed = false;
  /** Of this date, the oldest first, with the names by which the page calls them. */
  @property({ attribute: false }) proposals: readonly { readonly name: string; readonly proposal: Proposal }[] = [];
  @property({ attribute: false }) shown: ProposalDone | null = null;
  @property({ attribute: false }) tried: readonly TriedChange[] = [];
  private names: PlanNames | null = null;

  protected override willUpdate(changed: PropertyValues<this>): void {
    const isTold = (['floor', 'shown', 'products', 'nowMs', 'zone'] as const).some((key) => changed.has(key));
    if (this.floor !== null && isTold) this.names = planNames(this.floor, this.shown, this.products, this.nowMs, this.zone);
  }

  protected override render(): TemplateResult | typeof nothing {
    const { floor, names } = this;
    if (floor === null || names === null) return nothing;
    const house = floor.house?.document;
    const orders = ordersOf(floor, this.serviceDate);
    const done = this.proposals.filter((each): each is NamedProposal => each.proposal.status === 'done');
    return html`${this.ask(orders.length)}${this.running()}${this.failed(house)}
      <div class="found">
        ${
          done.length === 0
            ? nothing
            : html`<plan-compare
                .floor=${floor}
                .serviceDate=${this.serviceDate}
                .told=${this.status?.plan?.figures ?? null}
                .proposals=${done}
                .shownId=${this.shown?.id ?? null}
                .names=${names}
              ></plan-compare>`
        }
        <div class="beside">
          ${this.shownMore(floor, names)}
          <plan-tries .orders=${orders} .tried=${this.tried} .names=${names}></plan-tries>
        </div>
      </div>
      <plan-news .floor=${floor} .status=${this.status} .names=${names} .nowMs=${this.nowMs}></plan-news>
      ${
        house !== undefined && heldIsPlanned(floor, this.shown, this.serviceDate)
          ? html`<p class="caution">${DAY.held(RULE_SETS[house.ruleSet])}</p>`
          : nothing
      }`;
  }

  private ask(orders: number): TemplateResult {
    const isRunning = this.proposals.some(({ proposal }) => proposal.status === 'running');
    return html`<div class="ask">
        <button
          type="button"
          class="plain filled big"
          ?disabled=${orders === 0 || isRunning}
          @click=${() => this.dispatchEvent(new DayPlanWantedEvent())}
        >
          ${PLANNING.plan}
        </button>
        <p class="soft">${orders === 0 ? PLANNING.noOrders : PLANNING.more}</p>
      </div>
      <div role="status">
        ${this.isFailed ? html`<p class="told">${PLANNING.statusFailed}</p>` : nothing}
        ${
          this.status === null || this.status.fault === null
            ? nothing
            : html`<p class="told">
                ${PLANNING.replanFailed} ${planFaultText(this.status.fault, this.bookNames, this.units(this.floor?.house?.document))}
              </p>`
        }
      </div>`;
  }

  private running(): TemplateResult[] {
    return this.proposals.flatMap(({ name, proposal }) => {
      if (proposal.status !== 'running') return [];
      const { schedulesDone, schedules, best } = proposal.progress;
      const words = PLANNING.progress(schedulesDone.toLocaleString(LOCALE), schedules.toLocaleString(LOCALE));
      return [
        html`<section class="card" aria-label="${PLANNING.running}: ${name}">
          <p class="strong" role="status">${PLANNING.running}</p>
          <div
            class="bar"
            role="progressbar"
            aria-label=${PLANNING.running}
            aria-valuemin="0"
            aria-valuemax=${schedules}
            aria-valuenow=${schedulesDone}
            aria-valuetext=${words}
          >
            <div class="done" ${place({ width: `${Math.min(100, (100 * schedulesDone) / schedules)}%` })}></div>
          </div>
          <p>${words} · ${best === null ? PLANNING.nothingYet : PLANNING.bestSoFar(best.ordersOnTime, best.orders)}</p>
          <div class="buttons">
            <button type="button" class="plain" @click=${() => this.dispatchEvent(new ProposalEvent('drop', proposal.id))}>
              ${PLANNING.stop}
            </button>
          </div>
        </section>`,
      ];
    });
  }

  /** Days that could not be planned at all. */
  private failed(house: House | undefined): TemplateResult[] {
    return this.proposals.flatMap(({ name, proposal }) =>
      proposal.status !== 'failed'
        ? []
        : [
            html`<section class="card" aria-label="${PLANNING.failedTitle}: ${name}">
              <h2>${PLANNING.failedTitle}</h2>
              <ul>
                ${proposal.faults.map((fault) => html`<li class="fault">${planFaultText(fault, this.bookNames, this.units(house))}</li>`)}
              </ul>
              <div class="buttons">
                <button
                  type="button"
                  class="plain"
                  aria-label=${PLANNING.dropOne(name)}
                  @click=${() => this.dispatchEvent(new ProposalEvent('drop', proposal.id))}
                >
                  ${PLANNING.drop}
                </button>
              </div>
            </section>`,
          ],
    );
  }

  /** Of the proposal that is looked at: why it does not fit, and what is foreseen with it. */
  private shownMore(floor: FloorState, names: PlanNames): TemplateResult | typeof nothing {
    const { shown } = this;
    if (shown === null) return nothing;
    // What is late has its reason; the rest is foreseen without one.
    const told = new Set(
      shown.reasons.flatMap(({ trouble, also }) => [trouble, ...also].map((each) => (each.kind === 'late' ? each.orderId : each.kind))),
    );
    const others = shown.warnings
      .filter((warning) => !told.has(warning.kind === 'late' ? warning.orderId : warning.kind))
      // Days that nobody has planned are short of everything, which is no news of this one.
      .filter((warning) => warning.kind !== 'short' || floor.orders[warning.orderId]?.serviceDate === this.serviceDate);
    return html`<plan-reasons .reasons=${shown.reasons} .names=${names}></plan-reasons> ${
        others.length === 0
          ? nothing
          : html`<ul class="warnings">
              ${others.map((warning) => html`<li class="late">${warningText(warning, names, floor)}</li>`)}
            </ul>`
      }`;
  }

  private units(house: House | undefined): House['units'] {
    return house?.units ?? { temperature: 'C', weight: 'g' };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'plan-panel': PlanPanel;
  }
}
