import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { batchesAnswerSchema, type BatchesAnswer, type NamesAnswer, type PieceRow } from '../../shared/records/answers.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { clockText } from '../parts/clock-text.ts';
import { weightText } from '../parts/weight-text.ts';
import { RECORDS } from '../words/records.ts';
import { AskedController, askedView } from './asked.ts';
import { following } from './follow.ts';
import { recordsStyles } from './records-styles.ts';
import { nameIn, NO_NAMES, searchOf, type RecordsTools } from './records-tools.ts';

/** What a list of batches can be narrowed by, as its question takes it. */
const FILTERS = ['from', 'to', 'product', 'formula', 'lot', 'place', 'device', 'reason', 'tag'] as const;
type Filter = (typeof FILTERS)[number];

/** Batches, preps and pots of years, narrowed by what is asked: day, product, lot, place, device, reason. */
@customElement('batches-view')
export class BatchesView extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    recordsStyles,
    css`
      form {
        margin-bottom: var(--space-4);
      }
      .tag {
        font-weight: var(--weight-strong);
        white-space: nowrap;
      }
      .discarded {
        font-weight: var(--weight-word);
      }
      .more {
        margin-top: var(--space-4);
      }
    `,
  ];

  @property({ attribute: false }) tools: RecordsTools | null = null;
  @property({ attribute: false }) names: NamesAnswer = NO_NAMES;
  @property({ attribute: false }) query = new URLSearchParams();
  private readonly asked = new AskedController<BatchesAnswer>(this, 'batches', batchesAnswerSchema);

  protected override willUpdate(): void {
    if (this.tools !== null) this.asked.ask(this.tools, { ...this.filters(), before: this.query.get('before') ?? undefined });
  }

  protected override render(): TemplateResult {
    return html`<form role="search" class="screen-only" @submit=${this.submitted}>
        ${this.dateField('from', RECORDS.from)} ${this.dateField('to', RECORDS.to)}
        ${this.choice('formula', RECORDS.dough, this.names.formulas)} ${this.choice('product', RECORDS.product, this.names.products)}
        ${this.textField('lot', RECORDS.lot)} ${this.textField('tag', RECORDS.tag)}
        ${this.choice('place', RECORDS.place, [...this.names.places, ...this.names.mixers, ...this.names.decks])}
        ${this.choice('device', RECORDS.device, this.names.devices)} ${this.textField('reason', RECORDS.reason)}
        <button class="plain filled">${RECORDS.search}</button>
        ${this.isNarrowed() ? html`<button class="plain" type="button" @click=${() => this.tools?.goTo(searchOf('batches'))}>${RECORDS.everything}</button>` : nothing}
      </form>
      ${askedView(this.asked.shown, (answer) => this.list(answer))}`;
  }

  private list({ pieces, before }: BatchesAnswer): TemplateResult {
    if (pieces.length === 0) return html`<p role="status">${this.isNarrowed() ? RECORDS.nothingFits : RECORDS.nothingYet}</p>`;
    const { zone } = this.names;
    return html`<div class="wide" tabindex="0" role="region" aria-label=${RECORDS.menu.batches}>
        <table>
          <caption class="unseen">
            ${RECORDS.menu.batches}
          </caption>
          <thead>
            <tr>
              <th scope="col">${RECORDS.date}</th>
              <th scope="col">${RECORDS.tag}</th>
              <th scope="col">${RECORDS.dough}</th>
              <th scope="col" class="figure">${RECORDS.weight}</th>
              <th scope="col" class="figure">${RECORDS.begun}</th>
              <th scope="col" class="figure">${RECORDS.over}</th>
              <th scope="col">${RECORDS.became}</th>
            </tr>
          </thead>
          <tbody>
            ${pieces.map((piece) => this.row(piece, zone))}
          </tbody>
        </table>
      </div>
      ${
        before === null
          ? nothing
          : html`<p class="more screen-only">
              <a href=${searchOf('batches', { ...this.filters(), before })} @click=${following(this.tools)}>${RECORDS.older}</a>
            </p>`
      }`;
  }

  private row(piece: PieceRow, zone: string): TemplateResult {
    const clock = (atMs: number | null): string => (atMs === null ? '' : clockText(atMs, zone));
    return html`<tr>
      <td>${piece.serviceDate}</td>
      <th scope="row" class="tag">
        <a href=${searchOf('batch', { id: piece.id })} @click=${following(this.tools)}>${piece.tag}</a>
      </th>
      <td>
        ${nameIn(this.names, 'formulas', piece.formula)}${piece.product === null ? nothing : html` <span class="soft">${nameIn(this.names, 'products', piece.product)}</span>`}
      </td>
      <td class="figure">${weightText(piece.scaledToG, this.names.units)}</td>
      <td class="figure">${clock(piece.startedMs)}</td>
      <td class="figure">${clock(piece.endedMs)}</td>
      <td class=${piece.ending ?? ''}>${becameText(piece)}</td>
    </tr>`;
  }

  private dateField(name: Filter, label: string): TemplateResult {
    return html`<label>${label}<input type="date" name=${name} .value=${live(this.query.get(name) ?? '')} /></label>`;
  }

  private textField(name: Filter, label: string): TemplateResult {
    return html`<label
      >${label}<input name=${name} autocomplete="off" size="10" maxlength="80" .value=${live(this.query.get(name) ?? '')}
    /></label>`;
  }

  private choice(name: Filter, label: string, from: readonly { readonly id: string; readonly name: string }[]): TemplateResult {
    const chosen = this.query.get(name) ?? '';
    return html`<label
      >${label}<select name=${name} .value=${live(chosen)}>
        <option value="">${RECORDS.any}</option>
        ${from.map((each) => html`<option value=${each.id} ?selected=${each.id === chosen}>${each.name}</option>`)}
      </select></label
    >`;
  }

  private filters(): Partial<Record<Filter, string>> {
    return Object.fromEntries(FILTERS.flatMap((name) => (this.query.get(name) === null ? [] : [[name, this.query.get(name)]])));
  }

  private isNarrowed(): boolean {
    return Object.values(this.filters()).some((value) => value !== '');
  }

  private readonly submitted = (event: SubmitEvent): void => {
    event.preventDefault();
    if (!(event.target instanceof HTMLFormElement)) return;
    const said = new FormData(event.target);
    this.tools?.goTo(searchOf('batches', Object.fromEntries(FILTERS.map((name) => [name, typed(said.get(name))]))));
  };
}

/** What became of it, or how far it is. */
function becameText({ ending, startedMs }: PieceRow): string {
  if (ending !== null) return RECORDS.endings[ending];
  return startedMs === null ? RECORDS.notBegun : RECORDS.onTheFloor;
}

/** What was typed into a field, without blanks around it. */
function typed(value: FormDataEntryValue | null): string {
  return typeof value === 'string' ? value.trim() : '';
}

declare global {
  interface HTMLElementTagNameMap {
    'batches-view': BatchesView;
  }
}
