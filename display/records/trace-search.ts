import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { NamesAnswer } from '../../shared/records/answers.ts';
import { lotsAnswerSchema, type LotsAnswer } from '../../shared/records/trace-answer.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { zonedDate } from '../parts/zoned-instant.ts';
import { RECORDS } from '../words/records.ts';
import { TRACE } from '../words/trace.ts';
import { AskedController } from './asked.ts';
import { following } from './follow.ts';
import { recordsStyles } from './records-styles.ts';
import { nameIn, NO_NAMES, searchOf, type RecordsTools } from './records-tools.ts';

/** Where a trace begins: a lot number, which is suggested as it is typed, or a product of a day. */
@customElement('trace-search')
export class TraceSearch extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    recordsStyles,
    css`
      .both {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-4) var(--space-7);
      }
      form h2 {
        flex-basis: 100%;
        font-size: var(--type-button);
      }
      ul {
        display: grid;
        gap: var(--space-1);
      }
      li a {
        display: inline-block;
        padding-block: 6px;
        font-weight: var(--weight-word);
      }
    `,
  ];

  @property({ attribute: false }) tools: RecordsTools | null = null;
  @property({ attribute: false }) names: NamesAnswer = NO_NAMES;
  @property({ attribute: false }) query = new URLSearchParams();
  /** Whether nothing is traced yet, so that the lots used last are a beginning. */
  @property({ type: Boolean }) isBeginning = false;
  @state() private typed = '';
  @state() private ingredient: string | null = null;
  private readonly asked = new AskedController<LotsAnswer>(this, 'lots', lotsAnswerSchema);

  protected override willUpdate(): void {
    if (this.tools !== null) this.asked.ask(this.tools, { text: this.typed, ingredient: this.chosenIngredient() });
  }

  protected override render(): TemplateResult {
    const { shown } = this.asked;
    const lots = shown.phase === 'here' ? shown.answer.lots : null;
    return html`<div class="both">
        <form role="search" aria-labelledby="onward" @submit=${this.lotSubmitted}>
          <h2 id="onward">${TRACE.fromLot}</h2>
          <label
            >${TRACE.lot}<input
              name="lot"
              list="lots"
              required
              autocomplete="off"
              size="16"
              maxlength="80"
              .value=${live(this.typed === '' ? (this.query.get('lot') ?? '') : this.typed)}
              @input=${this.lotTyped}
          /></label>
          <datalist id="lots">${(lots ?? []).map((lot) => html`<option value=${lot.lot} label=${this.usedAt(lot)}></option>`)}</datalist>
          <label
            >${TRACE.ingredient}<select name="ingredient" @change=${this.ingredientChosen}>
              <option value="">${RECORDS.any}</option>
              ${this.options(this.names.ingredients, this.chosenIngredient() ?? '')}
            </select></label
          >
          <button class="plain filled">${TRACE.follow}</button>
        </form>
        <form role="search" aria-labelledby="back" @submit=${this.productSubmitted}>
          <h2 id="back">${TRACE.fromProduct}</h2>
          <label
            >${TRACE.product}<select name="product" required>
              ${this.options(this.names.products, this.query.get('product') ?? '')}
            </select></label
          >
          <label
            >${TRACE.day}<input type="date" name="date" required .value=${live(this.query.get('date') ?? this.names.lastDate ?? '')}
          /></label>
          <button class="plain filled">${TRACE.lookBack}</button>
        </form>
      </div>
      ${this.isBeginning ? this.lastUsed(lots) : nothing}`;
  }

  private lastUsed(lots: LotsAnswer['lots'] | null): TemplateResult | typeof nothing {
    if (lots === null) return nothing;
    if (lots.length === 0) return html`<p role="status">${this.typed === '' ? TRACE.noLots : TRACE.nothing}</p>`;
    return html`<section aria-labelledby="last-used">
      <h2 id="last-used">${TRACE.lastUsed}</h2>
      <ul>
        ${lots.map(
          (lot) =>
            html`<li>
              <a href=${searchOf('trace', { lot: lot.lot, ingredient: lot.ingredient })} @click=${following(this.tools)}>${lot.lot}</a>
              <span class="soft">${this.usedAt(lot)}</span>
            </li>`,
        )}
      </ul>
    </section>`;
  }

  private usedAt({ ingredient, lastMs }: LotsAnswer['lots'][number]): string {
    return TRACE.usedAt(nameIn(this.names, 'ingredients', ingredient), zonedDate(lastMs, this.names.zone));
  }

  private options(from: readonly { readonly id: string; readonly name: string }[], chosen: string): TemplateResult[] {
    return from.map(({ id, name }) => html`<option value=${id} ?selected=${id === chosen}>${name}</option>`);
  }

  private chosenIngredient(): string | undefined {
    const chosen = this.ingredient ?? this.query.get('ingredient') ?? '';
    return chosen === '' ? undefined : chosen;
  }

  private readonly lotTyped = (event: InputEvent): void => {
    if (event.target instanceof HTMLInputElement) this.typed = event.target.value.trim();
  };

  private readonly ingredientChosen = (event: Event): void => {
    if (event.target instanceof HTMLSelectElement) this.ingredient = event.target.value;
  };

  private readonly lotSubmitted = (event: SubmitEvent): void => this.submitted(event, ['lot', 'ingredient']);

  private readonly productSubmitted = (event: SubmitEvent): void => this.submitted(event, ['product', 'date']);

  private submitted(event: SubmitEvent, fields: readonly string[]): void {
    event.preventDefault();
    if (!(event.target instanceof HTMLFormElement)) return;
    const said = new FormData(event.target);
    const asked = fields.map((name) => {
      const value = said.get(name);
      return [name, typeof value === 'string' ? value.trim() : ''] as const;
    });
    this.tools?.goTo(searchOf('trace', Object.fromEntries(asked)));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trace-search': TraceSearch;
  }
}
