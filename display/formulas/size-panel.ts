import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { batchPlan, mixersFor, type BatchPlan, type SizeFault } from '../../shared/book/batch-plan.ts';
import { weighTable, type WeighTable } from '../../shared/book/weigh-table.ts';
import type { Formula, Product } from '../../shared/documents/formula.ts';
import type { Size } from '../../shared/trade/batch-size.ts';
import '../desk/desk-field.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import type { Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { SIZE } from '../words/book.ts';
import { numberWords } from '../words/numbers.ts';
import type { EditorContext } from './editor-context.ts';
import { printElements } from './print.ts';
import { saveFile } from './save-file.ts';
import { sheetCsv } from './sheet-csv.ts';
import { noSize, pieceWeights, sizeOf, withSaid, type SizeChoice } from './size-choice.ts';
import { mixerField, modesOf, pieceFields, wholeField } from './size-fields.ts';
import './size-on-list.ts';
import { sizeStyles } from './size-styles.ts';
import { planWords, sizeFaultWords } from './size-words.ts';
import './weigh-sheet.ts';
import { WeighSheet, type SheetBatch } from './weigh-sheet.ts';

/** What a size comes to: batches with their weigh-outs, or why it cannot be. */
interface Sized {
  readonly size: Size | null;
  readonly plan: BatchPlan | null;
  readonly tables: readonly WeighTable[];
  readonly fault: SizeFault | null;
}

const NOTHING: Sized = { size: null, plan: null, tables: [], fault: { code: 'nothing' } };

/** How much is made of a formula, in how many batches, and the weigh-out of each. */
@customElement('size-panel')
export class SizePanel extends LitElement {
  static override styles = [deskStyles, plainButtonStyles, sizeStyles];

  @property({ attribute: false }) formula: Formula | null = null;
  /** The version that is shown, where it is the one in force; null where it is not saved so. */
  @property({ attribute: false }) version: number | null = null;
  /** Products of this formula. */
  @property({ attribute: false }) products: readonly Product[] = [];
  @property({ attribute: false }) context: EditorContext | null = null;
  /** The day whose list batches go on unless another is chosen; empty where none is open. */
  @property({ attribute: false }) serviceDate = '';
  /** What has been said so far. */
  @property({ attribute: false }) choice: SizeChoice | null = null;
  /** Which batch is shown, from 0. */
  @state() private shown = 0;
  private sized: Sized = NOTHING;

  protected override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('formula');
    const isAnother = changed.has('formula') && before !== null && before?.id !== this.formula?.id;
    if (isAnother && !changed.has('choice')) this.choice = null;
    this.sized = this.sizedNow();
    this.shown = Math.max(0, Math.min(this.shown, this.sized.tables.length - 1));
  }

  /** What has been said; a way of saying that the formula has no more is begun anew. */
  private get said(): SizeChoice {
    const { choice, formula, products } = this;
    const isPossible = choice !== null && formula !== null && modesOf(formula, products).includes(choice.mode);
    return isPossible ? choice : noSize(products);
  }

  protected override render(): TemplateResult | typeof nothing {
    const { formula, context } = this;
    if (formula === null || context === null) return nothing;
    return html`<h2>${SIZE.title}</h2>
      <div class="said" @field-changed=${this.fieldChanged}>
        ${this.modes(formula)}${this.fields(context)}${this.mixer(formula, context)}
      </div>
      <p class="outcome ${this.sized.fault === null ? '' : 'fault'}" role="status">${this.outcome(context)}</p>
      ${this.sized.plan === null ? nothing : this.made(formula, context, this.sized.plan)}`;
  }

  private modes(formula: Formula): TemplateResult {
    return html`<div class="buttons" role="group" aria-label=${SIZE.by}>
      ${modesOf(formula, this.products).map(
        (mode) =>
          html`<button
            type="button"
            class="plain"
            aria-pressed=${this.said.mode === mode}
            @click=${() => (this.choice = { ...this.said, mode })}
          >
            ${SIZE.modes[mode]}
          </button>`,
      )}
    </div>`;
  }

  private fields(context: EditorContext): TemplateResult {
    const { units } = context.house;
    switch (this.said.mode) {
      case 'dough':
        return this.field(wholeField('doughG', units), this.said.doughG);
      case 'flour':
        return this.field(wholeField('flourG', units), this.said.flourG);
      case 'pieces':
        return html`${this.products.map((product) => this.pieceRow(product, context))}`;
    }
  }

  private pieceRow(product: Product, { house }: EditorContext): TemplateResult {
    const said = this.said.pieces[product.id] ?? {};
    const { pieceG, bakedG } = pieceWeights(product, said);
    const [pieces, dough, baked] = pieceFields(product, house.units);
    return html`<fieldset class="product">
      <legend>${product.name}</legend>
      ${this.field(pieces, said.pieces)}${this.field(dough, pieceG)}${this.field(baked, bakedG)}
      ${product.bakeLossPct === 0 ? nothing : html`<span class="hint">${SIZE.bakeLoss(numberWords(product.bakeLossPct))}</span>`}
    </fieldset>`;
  }

  private mixer(formula: Formula, { kitchen, house }: EditorContext): TemplateResult {
    const mixers = mixersFor(formula, kitchen);
    const loss = formula.handlingLossPct ?? 0;
    return html`${mixers.length === 0 ? nothing : this.field(mixerField(mixers, house.units), this.said.mixerId ?? '')}
    ${loss === 0 || this.said.mode !== 'pieces' ? nothing : html`<p class="hint">${SIZE.handling(numberWords(loss))}</p>`}`;
  }

  private field(field: Field, value: unknown): TemplateResult {
    return html`<desk-field data-field=${field.key} .field=${field} .value=${value} .faults=${faultsOf(value)}></desk-field>`;
  }

  private outcome(context: EditorContext): string {
    const { plan, fault } = this.sized;
    if (plan !== null) return planWords(plan, context.house.units);
    return sizeFaultWords(fault ?? { code: 'nothing' }, context.house.units);
  }

  private made(formula: Formula, context: EditorContext, plan: BatchPlan): TemplateResult {
    const batches = this.sheets(plan);
    const batch = batches[this.shown];
    return html`<div class="buttons">
        <button type="button" class="plain filled" @click=${() => this.print(batches)}>${SIZE.print}</button>
        <button type="button" class="plain" @click=${() => this.keepCsv(formula, context)}>${SIZE.csv}</button>
      </div>
      ${batches.length === 1 ? nothing : this.whichBatch(batches)}
      <weigh-sheet
        .formula=${formula}
        .version=${this.version}
        .products=${this.products}
        .context=${context}
        .of=${batch ?? null}
      ></weigh-sheet>
      <size-on-list
        .plan=${plan}
        .formula=${formula}
        .isSaved=${this.version !== null}
        .products=${this.products}
        .zone=${context.house.zone}
        .serviceDate=${this.serviceDate}
      ></size-on-list>`;
  }

  private whichBatch(batches: readonly SheetBatch[]): TemplateResult {
    return html`<label class="which"
      >${SIZE.showBatch}
      <select @change=${(event: Event) => (this.shown = Number((event.target as HTMLSelectElement).value))}>
        ${batches.map(({ index, count }) => html`<option value=${index - 1} .selected=${index - 1 === this.shown}>${SIZE.batchOf(index, count)}</option>`)}
      </select>
    </label>`;
  }

  private sheets({ batches, mixer }: BatchPlan): readonly SheetBatch[] {
    return batches.flatMap((batch, at) => {
      const table = this.sized.tables[at];
      return table === undefined ? [] : [{ batch, table, index: at + 1, count: batches.length, mixerName: mixer?.name ?? null }];
    });
  }

  private sizedNow(): Sized {
    const { formula, context, products } = this;
    const size = sizeOf(this.said, products);
    if (formula === null || context === null || size === null) return NOTHING;
    const plan = batchPlan(size, formula, this.said.mixerId, context);
    if (!plan.ok) return { size, plan: null, tables: [], fault: plan.fault };
    const book = { formulaOf: context.formulaOf, ingredients: context.ingredients, products, scales: context.house.scalesG };
    return {
      size,
      plan: plan.value,
      tables: plan.value.batches.map((batch) => weighTable(formula, batch.doughG, batch.pieces, book)),
      fault: null,
    };
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    this.choice = withSaid(this.said, event.key, event.value, this.products);
  }

  private async print(batches: readonly SheetBatch[]): Promise<void> {
    const { formula, version, products, context } = this;
    await printElements(batches.map((of) => Object.assign(new WeighSheet(), { formula, version, products, context, of })));
  }

  private keepCsv(formula: Formula, context: EditorContext): void {
    saveFile(`${SIZE.fileName}-${formula.id}.csv`, sheetCsv(this.sized.tables, formula, this.version, context), 'text/csv;charset=utf-8');
  }
}

/** What stands in a field and is no number is told there; the field puts it into words. */
function faultsOf(value: unknown): readonly string[] {
  return typeof value === 'number' && Number.isNaN(value) ? [SIZE.notANumber] : [];
}

declare global {
  interface HTMLElementTagNameMap {
    'size-panel': SizePanel;
  }
}
