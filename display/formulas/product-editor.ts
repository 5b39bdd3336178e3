import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Product } from '../../shared/documents/formula.ts';
import type { Step } from '../../shared/documents/method.ts';
import { NAME_CHARACTERS, REMARK_CHARACTERS } from '../../shared/documents/names.ts';
import { bakedFromPieceG, pieceFromBakedG } from '../../shared/trade/batch-size.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import { numberField, plainMeasure, type Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { weightMeasure } from '../desk/weight-measure.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { METHOD, PREPS, PRODUCT } from '../words/method.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { changedBy, formField, formFields, ownFaults } from './form-fields.ts';
import { placeAt, within, type FormPlace } from './form-place.ts';
import { formStyles } from './form-styles.ts';
import './method-editor.ts';
import './product-oven.ts';
import './product-toppings.ts';
import './keeping-editor.ts';
import './side-preps-editor.ts';
import { stepNames } from './step-names.ts';

/** What a product begins with when it is first made up in loads: a dozen, after its first step. */
const FIRST_LOAD_PIECES = 12;
/** A piece's weight that follows from another is kept to hundredths of a gram. */
const KEPT_DECIMALS = 2;

/** A product: what a piece weighs and loses, how it is made up, what goes on it, and its way from the dividing on. */
@customElement('product-editor')
export class ProductEditor extends LitElement {
  static override styles = [
    deskStyles,
    formStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-5);
      }
    `,
  ];

  @property({ attribute: false }) product: Product | null = null;
  /** What faults call the product: `products[2]`. Changes are told from the product inwards. */
  @property({ attribute: false }) faultPath = 'product';
  @property({ attribute: false }) context: EditorContext | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { context, product } = this;
    if (context === null || product === null) return nothing;
    const place = placeAt(this.faultPath, [], context.faults);
    const method = context.formulaOf(product.formula)?.method ?? [];
    return html`${ownFaults(place)} ${ownFaults(within(place, ['id']))} ${ownFaults(within(place, ['formula']))}
      <div class="group" @field-changed=${this.fieldChanged}>
        ${formFields([NAME], product, place)}
        <h3>${PRODUCT.weights}</h3>
        ${this.weights(product, context, place)} ${this.loads(product, method.length + 1, place)} ${formFields([CAUTION], product, place)}
      </div>
      <product-oven .product=${product} .faultPath=${this.faultPath} .context=${context}></product-oven>
      <product-toppings
        .way=${product.way}
        .firstNumber=${method.length + 1}
        .place=${within(place, ['way'])}
        .context=${context}
      ></product-toppings>
      <div class="group">
        <h3>${PREPS.title}</h3>
        <side-preps-editor
          .preps=${product.sidePreps}
          .steps=${allSteps(method, product.way)}
          .faultPath=${this.faultPath}
          .context=${context}
        ></side-preps-editor>
      </div>
      <keeping-editor
        .keeping=${product.keeping ?? null}
        .steps=${product.way}
        .firstNumber=${method.length + 1}
        .faultPath=${this.faultPath}
        .context=${context}
      ></keeping-editor>
      <div class="group">
        <h3>${PRODUCT.way}</h3>
        <method-editor
          .steps=${product.way}
          .root=${WAY}
          .faultPath=${this.faultPath}
          .firstNumber=${method.length + 1}
          .otherKeys=${method.map((step) => step.id)}
          .context=${context}
        ></method-editor>
      </div>`;
  }

  private weights(product: Product, { house }: EditorContext, place: FormPlace): TemplateResult {
    const weight = weightMeasure(house.units);
    const { bakeLossPct, pieceG } = product;
    const bakedG = Number.isFinite(bakeLossPct) ? bakedFromPieceG(pieceG, bakeLossPct) : Number.NaN;
    return html`<div class="fields">
        ${formFields([numberField('pieceG', PRODUCT.pieceG, weight, 0, 10_000_000)], product, place)}
        ${formField(numberField('bakedG', PRODUCT.bakedG, weight, 0, 10_000_000), bakedG, within(place, ['bakedG']))}
        ${formFields(
          [
            numberField('bakeLossPct', PRODUCT.bakeLoss, plainMeasure(UNITS.percent), 0, 60),
            { ...numberField('piecesPerSlot', PRODUCT.piecesPerSlot, plainMeasure(), 1, 100_000, 'optional'), isWhole: true } as Field,
          ],
          product,
          place,
        )}
      </div>
      <p class="soft">${PRODUCT.weightsNote}</p>`;
  }

  private loads({ loads, way }: Product, firstNumber: number, place: FormPlace): TemplateResult {
    const inner = within(place, ['loads']);
    const has = formField({ key: 'hasLoads', label: PRODUCT.loadsOn, kind: 'yes' }, loads !== undefined, within(place, ['hasLoads']));
    if (loads === undefined) return has;
    const after: Field = { key: 'loads.after', label: PRODUCT.loadsAfter, kind: 'one', options: stepNames(way, firstNumber) };
    const pieces = numberField('loads.pieces', PRODUCT.loadsPieces, plainMeasure(), 1, 100_000, 'whole');
    return html`${has}
      <div class="fields">
        ${formField(after, loads.after, within(inner, ['after']))} ${formField(pieces, loads.pieces, within(inner, ['pieces']))}
      </div>`;
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    const { product } = this;
    if (product === null) return;
    const { key, value } = event;
    if (key === 'bakedG') this.say('pieceG', keptG(pieceFromBakedG(Number(value), product.bakeLossPct)));
    else if (key === 'hasLoads') this.say('loads', value === true ? firstLoads(product) : undefined);
    else this.dispatchEvent(changedBy(event, placeAt(this.faultPath, [], [])));
  }

  private say(key: string, value: unknown): void {
    this.dispatchEvent(new DocumentChangedEvent([key], value));
  }
}

const WAY = ['way'] as const;
const NAME: Field = { key: 'name', label: PRODUCT.name, kind: 'text', most: NAME_CHARACTERS };
const CAUTION: Field = {
  key: 'caution',
  label: PRODUCT.caution,
  kind: 'text',
  most: REMARK_CHARACTERS,
  isLong: true,
  hint: METHOD.cautionHint,
};

function allSteps(method: readonly Step[], way: readonly Step[]): readonly Step[] {
  return [...method, ...way];
}

function firstLoads({ way }: Product): Product['loads'] {
  const [first] = way;
  return first === undefined ? undefined : { after: first.id, pieces: FIRST_LOAD_PIECES };
}

function keptG(g: number): number {
  return Number(g.toFixed(KEPT_DECIMALS));
}

declare global {
  interface HTMLElementTagNameMap {
    'product-editor': ProductEditor;
  }
}
