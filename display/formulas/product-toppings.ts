import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Step } from '../../shared/documents/method.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { numberField, type Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { weightMeasure } from '../desk/weight-measure.ts';
import { PRODUCT } from '../words/method.ts';
import { VERBS } from '../words/verbs.ts';
import { withAddition } from './addition-edits.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { formField, removeButton } from './form-fields.ts';
import { within, type FormPlace } from './form-place.ts';
import { formStyles } from './form-styles.ts';
import { lineOf } from './line-of.ts';
import { additionChoices, additionName } from './step-names.ts';
import { toppingsOf, usualToppingStep, withTopping, withToppingAdded, withToppingAt, type Topping } from './topping-edits.ts';

const FIRST_G_PER_PIECE = 10;

/** What goes on each piece of a product, in grams a piece, and at which step of its way. */
@customElement('product-toppings')
export class ProductToppings extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    formStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }
    `,
  ];

  @property({ attribute: false }) way: readonly Step[] = [];
  /** The number of its first step: a way goes on counting from the formula's method. */
  @property({ attribute: false }) firstNumber = 1;
  /** Of the way. */
  @property({ attribute: false }) place: FormPlace | null = null;
  @property({ attribute: false }) context: EditorContext | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { context, place } = this;
    if (context === null || place === null) return nothing;
    const toppings = toppingsOf(this.way);
    const choices = additionChoices(context);
    const steps = Object.fromEntries(
      this.way.map(({ verb }, index) => [String(index), `${index + this.firstNumber} ${VERBS[verb].running}`]),
    );
    const isAddable = this.way.length > 0 && context.ingredients.length > 0;
    return html`<h3>${PRODUCT.toppings}</h3>
      <p class="soft">${toppings.length === 0 ? PRODUCT.noToppings : PRODUCT.toppingNote}</p>
      <ul class="lines" @field-changed=${this.fieldChanged}>
        ${toppings.map((topping, index) => this.line(topping, index, choices, steps, context, place))}
      </ul>
      <div class="buttons">
        <button type="button" class="plain" ?disabled=${!isAddable} @click=${() => this.add(context)}>${PRODUCT.addTopping}</button>
      </div>`;
  }

  private line(
    topping: Topping,
    index: number,
    choices: ReturnType<typeof additionChoices>,
    steps: Readonly<Record<string, string>>,
    context: EditorContext,
    way: FormPlace,
  ): TemplateResult {
    const { addition, additionIndex, stepIndex } = topping;
    const which = addition.item === undefined ? 'formula' : 'item';
    const place = within(way, [stepIndex, 'additions', additionIndex]);
    const what: Field = { key: 'what', label: PRODUCT.topping, kind: 'one', options: {}, groups: choices };
    const grams = numberField('gPerPiece', PRODUCT.toppingG, weightMeasure(context.house.units), 0, 100_000);
    return html`<li class="line" data-index=${index}>
      <div class="fields">
        ${formField(what, `${which}:${addition[which] ?? ''}`, within(place, [which]))}
        ${formField(grams, addition.gPerPiece, within(place, ['gPerPiece']))}
        ${formField({ key: 'step', label: PRODUCT.toppingStep, kind: 'one', options: steps }, String(stepIndex), within(place, ['step']))}
      </div>
      ${removeButton(additionName(addition, context), () => this.say(withTopping(this.way, topping, null)))}
    </li>`;
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    const topping = toppingsOf(this.way)[lineOf(event) ?? -1];
    if (topping === undefined) return;
    const { addition } = topping;
    if (event.key === 'step') this.say(withToppingAt(this.way, topping, Number(event.value)));
    else if (event.key === 'what') this.say(withTopping(this.way, topping, withAddition(addition, String(event.value))));
    else this.say(withTopping(this.way, topping, { ...addition, gPerPiece: Number(event.value) }));
  }

  private add({ ingredients }: EditorContext): void {
    const [first] = ingredients;
    if (first !== undefined)
      this.say(
        withToppingAdded(this.way, usualToppingStep([...this.way]), { item: first.id, gPerPiece: FIRST_G_PER_PIECE, heldBack: false }),
      );
  }

  private say(way: readonly Step[]): void {
    if (this.place !== null) this.dispatchEvent(new DocumentChangedEvent(this.place.path, way));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'product-toppings': ProductToppings;
  }
}
