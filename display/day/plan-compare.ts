import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FloorState } from '../../shared/floor/state.ts';
import type { PlanFigures, ProposalDone } from '../../shared/plan/plan-api.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { FIGURES, PLANNING } from '../words/day.ts';
import { ProposalEvent } from './day-events.ts';
import { dayPanelStyles } from './day-panel-styles.ts';
import { batchesOf, comparedRows, figuresInForce, figureText, type COMPARED, type KnownFigures } from './plan-compared.ts';
import type { PlanNames } from './plan-names.ts';
import { triedText } from './plan-words.ts';
import { triedIn } from './tried-change.ts';

/** A proposal with the name by which the page calls it. */
export interface NamedProposal {
  readonly name: string;
  readonly proposal: ProposalDone;
}

interface Column {
  readonly id: string | null;
  readonly name: string;
  readonly figures: KnownFigures;
  readonly proposal: ProposalDone | null;
}

/** Days side by side: the plan in force and those that were proposed, each to be shown, kept, dropped. */
@customElement('plan-compare')
export class PlanCompare extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    dayPanelStyles,
    css`
      .wide {
        overflow-x: auto;
        margin: -4px;
        padding: 4px;
      }
      table {
        width: auto;
        min-width: min(100%, 420px);
      }
      th,
      td {
        min-width: 132px;
        max-width: 240px;
        padding: var(--space-1) var(--space-3);
        vertical-align: top;
      }
      th[scope='row'] {
        position: sticky;
        inset-inline-start: 0;
        border-bottom: 1px solid var(--line);
        background: var(--paper);
      }
      thead th {
        font-size: var(--type-text);
        font-weight: var(--weight-strong);
      }
      thead td {
        border-bottom: var(--hairline) solid var(--line-strong);
      }
      .shown {
        background: var(--chosen);
      }
      .bad {
        font-weight: var(--weight-strong);
      }
      .buttons {
        flex-direction: column;
        max-width: 150px;
      }
      td ul {
        max-width: 260px;
        font-size: var(--type-small);
      }
      td p {
        max-width: 260px;
        font-size: var(--type-small);
      }
    `,
  ];

  @property({ attribute: false }) floor: FloorState | null = null;
  @property({ attribute: false }) serviceDate = '';
  /** What the plan in force comes to, as the planner last told it; null where it has not. */
  @property({ attribute: false }) told: PlanFigures | null = null;
  @property({ attribute: false }) proposals: readonly NamedProposal[] = [];
  /** Which of them the day sheet shows; null: the plan in force. */
  @property({ attribute: false }) shownId: string | null = null;
  /** Names are those of the day that is shown. */
  @property({ attribute: false }) names: PlanNames | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { floor, names } = this;
    if (floor === null || names === null || this.proposals.length === 0) return nothing;
    const columns = this.columns(floor);
    return html`<h2 id="compared">${PLANNING.compare}</h2>
      <div class="wide" tabindex="0" role="group" aria-labelledby="compared">
        <table aria-labelledby="compared">
          <thead>
            <tr>
              <td></td>
              ${columns.map((column) => html`<th scope="col" class=${this.shownClass(column)}>${column.name}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${comparedRows(columns.map(({ figures }) => figures)).map(
              (key) =>
                html`<tr data-figure=${key}>
                  <th scope="row">${FIGURES[key]}</th>
                  ${columns.map((column) => this.figure(key, column, names))}
                </tr>`,
            )}
            ${this.row(FIGURES.batches, columns, ({ proposal }) =>
              String(batchesOf(floor, this.serviceDate) + (proposal?.batches.length ?? 0)),
            )}
            ${this.row(FIGURES.changes, columns, ({ proposal }) => this.changes(proposal, names))}
            <tr>
              <th scope="row"><span class="unseen">${PLANNING.show}, ${PLANNING.keep}, ${PLANNING.drop}</span></th>
              ${columns.map((column) => html`<td class=${this.shownClass(column)}>${this.buttons(column)}</td>`)}
            </tr>
          </tbody>
        </table>
      </div>`;
  }

  private columns(floor: FloorState): readonly Column[] {
    const inForce = figuresInForce(floor, this.serviceDate, this.told);
    return [
      ...(inForce === null ? [] : [{ id: null, name: PLANNING.inForce, figures: inForce, proposal: null }]),
      ...this.proposals.map(({ name, proposal }) => ({ id: proposal.id, name, figures: proposal.figures, proposal })),
    ];
  }

  private row(heading: string, columns: readonly Column[], cell: (column: Column) => unknown): TemplateResult {
    return html`<tr>
      <th scope="row">${heading}</th>
      ${columns.map((column) => html`<td class=${this.shownClass(column)}>${cell(column)}</td>`)}
    </tr>`;
  }

  private figure(key: (typeof COMPARED)[number], column: Column, names: PlanNames): TemplateResult {
    const { text, isBad } = figureText(key, column.figures, names.dayClock);
    return html`<td class=${this.shownClass(column)}>${isBad ? html`<span class="late bad">${text}</span>` : text}</td>`;
  }

  private changes(proposal: ProposalDone | null, names: PlanNames): TemplateResult | string {
    if (proposal === null) return '';
    const tried = triedIn(proposal.ask);
    return tried.length === 0
      ? PLANNING.asOrdered
      : html`<ul>
          ${tried.map((change) => html`<li>${triedText(change, names)}</li>`)}
        </ul>`;
  }

  private buttons({ id, name, proposal }: Column): TemplateResult {
    const isShown = id === this.shownId;
    return html`<div class="buttons">
      <button
        type="button"
        class="plain"
        aria-pressed=${isShown}
        aria-label=${PLANNING.showOne(name)}
        @click=${() => this.decide('show', id)}
      >
        ${PLANNING.show}
      </button>
      ${
        proposal === null
          ? nothing
          : html`${proposal.isOutdated ? html`<p class="late">${PLANNING.outdated}</p>` : nothing}
              <button
                type="button"
                class="plain filled"
                ?disabled=${proposal.isOutdated}
                aria-label=${PLANNING.keepOne(name)}
                @click=${() => this.decide('keep', id)}
              >
                ${PLANNING.keep}
              </button>
              <button type="button" class="plain" aria-label=${PLANNING.dropOne(name)} @click=${() => this.decide('drop', id)}>
                ${PLANNING.drop}
              </button>`
      }
    </div>`;
  }

  private shownClass({ id }: Column): string {
    return id === this.shownId ? 'shown' : '';
  }

  private decide(what: ProposalEvent['what'], id: string | null): void {
    this.dispatchEvent(new ProposalEvent(what, id));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'plan-compare': PlanCompare;
  }
}
