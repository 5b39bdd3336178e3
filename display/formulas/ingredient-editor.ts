import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Allergen } from '../../shared/documents/allergen.ts';
import type { Ingredient } from '../../shared/documents/formula.ts';
import { NAME_CHARACTERS } from '../../shared/documents/names.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import { numberField, plainMeasure, type Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { KIND_NAMES } from '../words/book.ts';
import { ALLERGENS } from '../words/floor.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { INGREDIENT } from '../words/method.ts';
import { CEREALS, NUTS, OTHERS, withAllergen } from './allergen-groups.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { changedBy, formFields, ownFaults } from './form-fields.ts';
import { placeAt, within, type FormPlace } from './form-place.ts';
import { formStyles } from './form-styles.ts';

/** An ingredient: what it counts as, the water in it, and its allergens as printed on it. */
@customElement('ingredient-editor')
export class IngredientEditor extends LitElement {
  static override styles = [
    deskStyles,
    formStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
        container-type: inline-size;
      }
      legend {
        padding: 0;
        font-size: var(--type-text);
        font-weight: var(--weight-word);
      }
      .groups {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 230px), 1fr));
        align-items: start;
        gap: var(--space-4);
      }
      .choices {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 150px), 1fr));
        gap: 0 var(--space-3);
      }
      label {
        display: flex;
        align-items: center;
        gap: var(--space-2);
        min-height: var(--target-desk);
        font-size: var(--type-text);
        cursor: pointer;
      }
      input {
        flex: none;
        width: 22px;
        height: 22px;
        margin: 0;
        accent-color: var(--call);
      }
    `,
  ];

  @property({ attribute: false }) ingredient: Ingredient | null = null;
  /** Whether it is not in the book yet. */
  @property({ attribute: false }) isNew = false;
  @property({ attribute: false }) faultPath = 'ingredient';
  @property({ attribute: false }) context: EditorContext | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { context, ingredient } = this;
    if (context === null || ingredient === null) return nothing;
    const place = placeAt(this.faultPath, [], context.faults);
    return html`<h3>${this.isNew ? INGREDIENT.newTitle : INGREDIENT.title}</h3>
      ${ownFaults(place)} ${ownFaults(within(place, ['id']))}
      <div class="fields" @field-changed=${this.fieldChanged}>${formFields(fieldsOf(ingredient), ingredient, place)}</div>
      <p class="soft">${INGREDIENT.waterHint}</p>
      ${this.allergens(ingredient, within(place, ['allergens']))}`;
  }

  private allergens({ allergens }: Ingredient, place: FormPlace): TemplateResult {
    const chosen = allergens.map((allergen) => ALLERGENS[allergen]).join(', ');
    return html`<div class="group" role="group" aria-labelledby="allergens">
      <h4 id="allergens">${INGREDIENT.allergens}: ${chosen === '' ? INGREDIENT.noneChosen : chosen}</h4>
      ${ownFaults(place)}
      <div class="groups">
        ${this.choices(INGREDIENT.cereals, CEREALS, allergens)} ${this.choices(INGREDIENT.nuts, NUTS, allergens)}
        ${this.choices(INGREDIENT.others, OTHERS, allergens)}
      </div>
      <p class="caution">${INGREDIENT.allergenNote}</p>
    </div>`;
  }

  private choices(title: string, group: readonly Allergen[], chosen: readonly Allergen[]): TemplateResult {
    return html`<fieldset>
      <legend>${title}</legend>
      <div class="choices">
        ${group.map(
          (allergen) =>
            html`<label>
              <input
                type="checkbox"
                value=${allergen}
                .checked=${chosen.includes(allergen)}
                @change=${(event: Event) => this.say(['allergens'], withAllergen(chosen, allergen, (event.target as HTMLInputElement).checked))}
              />
              ${ALLERGENS[allergen]}
            </label>`,
        )}
      </div>
    </fieldset>`;
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    const { ingredient } = this;
    if (ingredient === null) return;
    if (event.key === 'kind' && ingredient.yeastForm !== undefined && event.value !== 'yeast') {
      // Only yeast has a form: the one that it had goes with its kind, or the ingredient could not be kept.
      const { yeastForm: _yeastForm, ...others } = ingredient;
      this.say([], { ...others, kind: event.value });
    } else this.dispatchEvent(changedBy(event, placeAt(this.faultPath, [], [])));
  }

  private say(path: readonly string[], value: unknown): void {
    this.dispatchEvent(new DocumentChangedEvent(path, value));
  }
}

function fieldsOf({ kind, yeastForm }: Ingredient): readonly Field[] {
  return [
    { key: 'name', label: INGREDIENT.name, kind: 'text', most: NAME_CHARACTERS },
    { key: 'kind', label: INGREDIENT.kind, kind: 'one', options: KIND_NAMES },
    numberField('waterPct', INGREDIENT.waterPct, plainMeasure(UNITS.percent), 0, 100, 'optional'),
    ...(kind === 'yeast' || yeastForm !== undefined
      ? ([
          { key: 'yeastForm', label: INGREDIENT.yeastForm, kind: 'one', options: { '': INGREDIENT.unsaid, ...INGREDIENT.yeastForms } },
        ] as const)
      : []),
  ];
}

declare global {
  interface HTMLElementTagNameMap {
    'ingredient-editor': IngredientEditor;
  }
}
