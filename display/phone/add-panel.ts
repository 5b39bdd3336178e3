import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { addIngredient } from '../../shared/floor/commands.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { ALLERGENS, listWords } from '../words/floor.ts';
import { NUMBERS } from '../words/numbers.ts';
import { PANELS } from '../words/panels.ts';
import { addChoices, amountsOnTop, lotsOf, newAllergens, type AddChoice } from './add-model.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';
import { fieldStyles } from './field-styles.ts';
import { unitsOf } from './floor-facts.ts';
import './number-choice.ts';
import type { ValueSaidEvent } from './number-choice.ts';
import type { ValueChosenEvent } from './number-stepper.ts';
import { weightField } from './weight-field.ts';

/** Longest lot number, in characters: what the floor takes. */
const LOT_CHARACTERS = 80;
/** Lot numbers offered. */
const LOTS = 2;
/** Step of the weights, in grams. */
const STEP_G = 5;

/** What went into a dough on top of its formula, and of which lot: first the ingredient, then how much. */
@customElement('add-panel')
export class AddPanel extends CardPanel {
  static override styles = [
    ...CardPanel.styles,
    fieldStyles,
    css`
      .lot {
        display: grid;
        gap: var(--space-1);
      }
      .lot input:not([type='radio']) {
        min-height: var(--target);
      }
    `,
  ];

  @state() private chosen: AddChoice | null = null;
  @state() private lot = '';
  @state() private grams: number | null = null;

  override stepBack(): boolean {
    if (this.chosen === null) return false;
    this.chosen = null;
    this.turned();
    return true;
  }

  protected override panel(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    return this.chosen === null ? this.which(card, floor, workpiece) : this.howMuch(card, floor, workpiece, this.chosen);
  }

  private which(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    const stepItems = card.action.additions.flatMap((addition) => addition.item ?? []);
    const choices = addChoices(floor, workpiece, stepItems);
    const others = choices.filter((choice) => choice.formulaG === null && !stepItems.includes(choice.ingredientId));
    return html`
      <h2>${NUMBERS.addTitle(card.tag)}</h2>
      <div class="two">${choices.filter((choice) => !others.includes(choice)).map((choice) => this.choice(choice))}</div>
      ${
        others.length === 0
          ? nothing
          : html`<h3>${NUMBERS.otherIngredients}</h3>
              <div class="two">${others.map((choice) => this.choice(choice))}</div>`
      }
    `;
  }

  private choice(choice: AddChoice): TemplateResult {
    return html`<button type="button" class="middling" @act=${() => this.choose(choice)}>
      ${choice.name}${choice.formulaG === null ? nothing : html`<small>${NUMBERS.inFormula(this.weightText(choice.formulaG))}</small>`}
    </button>`;
  }

  private howMuch(card: CardModel, floor: FloorState, workpiece: Workpiece, { ingredientId, name, formulaG }: AddChoice): TemplateResult {
    const units = unitsOf(floor);
    const field = weightField(units, STEP_G);
    const amounts = amountsOnTop(formulaG, units).map((grams) => field.shown(grams));
    const brings = newAllergens(floor, workpiece, ingredientId);
    const lots = lotsOf(floor, workpiece, ingredientId, LOTS);
    return html`
      <h2>${NUMBERS.addAmount(card.tag, name)}</h2>
      ${formulaG === null ? nothing : html`<p class="note">${NUMBERS.inFormula(this.weightText(formulaG))}</p>`}
      ${brings.length === 0 ? nothing : html`<p role="status"><strong>${NUMBERS.brings(listWords(brings.map((allergen) => ALLERGENS[allergen])))}</strong></p>`}
      <number-choice
        label=${PANELS.weight}
        unit=${field.unit}
        wide
        .values=${amounts}
        .value=${this.grams === null ? (amounts[0] ?? field.step) : field.shown(this.grams)}
        .step=${field.step}
        .digits=${field.digits}
        .least=${field.unit === 'g' ? 1 : 0.1}
        .most=${field.shown(addIngredient.shape.grams.maxValue ?? 0)}
        .text=${(shown: number) => `+${this.weightText(field.gramsOf(shown))}`}
        @value-said=${(event: ValueSaidEvent) => this.add(card, ingredientId, field.gramsOf(event.value))}
        @value-chosen=${(event: ValueChosenEvent) => (this.grams = field.gramsOf(event.value))}
      ></number-choice>
      ${this.grams === null ? nothing : this.doing(NUMBERS.addDo(this.weightText(this.grams)), true, () => this.add(card, ingredientId, this.grams ?? 0))}
      ${lots.length === 0 ? nothing : html`<div class="two">${lots.map((lot) => this.chip(lot, () => (this.lot = lot), lot === this.lot))}</div>`}
      <div class="lot">
        <label for="lot">${NUMBERS.lot}</label>
        <input id="lot" maxlength=${LOT_CHARACTERS} autocomplete="off" enterkeyhint="done" .value=${this.lot} @input=${this.typed} />
      </div>
      ${this.doing(NUMBERS.lotOnly, this.lot.trim() !== '', () => this.add(card, ingredientId, 0))}
    `;
  }

  private choose(choice: AddChoice): void {
    this.chosen = choice;
    this.lot = '';
    this.grams = null;
    this.turned();
  }

  private typed(event: InputEvent): void {
    this.lot = (event.target as HTMLInputElement).value;
  }

  private add(card: CardModel, ingredientId: string, grams: number): void {
    const lotNumber = this.lot.trim();
    this.say({ type: 'addIngredient', ...this.onStep(card), ingredientId, grams, ...(lotNumber === '' ? {} : { lotNumber }) });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'add-panel': AddPanel;
  }
}
