import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { inOrder } from '../../shared/book/allergen-groups.ts';
import { allergenSchema, type Allergen } from '../../shared/documents/allergen.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { REMARK_CHARACTERS } from '../../shared/documents/names.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import { ALLERGENS } from '../words/floor.ts';
import { FIELDS, KITCHEN } from '../words/kitchen.ts';
import { KitchenChangedEvent } from './kitchen-events.ts';

/** What may get into anything that is made in the kitchen although no formula names it: allergens, and the house's own words. */
@customElement('may-contain-fields')
export class MayContainFields extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
        font-size: var(--type-text);
      }
      h3 {
        font-size: var(--type-text);
        font-weight: var(--weight-strong);
      }
      legend,
      label.above {
        display: block;
        padding: 0;
        margin-block-end: var(--space-2);
        font-weight: var(--weight-word);
      }
      .choices {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(150px, 1fr));
        gap: 0 var(--space-3);
      }
      .choices label {
        display: flex;
        align-items: center;
        gap: 10px;
        min-height: var(--target-desk);
        overflow-wrap: anywhere;
      }
      input[type='checkbox'] {
        flex: none;
        width: 26px;
        height: 26px;
        margin: 0;
        accent-color: var(--ink);
      }
      textarea {
        width: 100%;
        padding: 6px 10px;
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        background: var(--field);
        color: var(--ink);
        font: inherit;
        resize: vertical;
      }
      .note {
        padding-inline-start: 10px;
        border-inline-start: 5px solid var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) mayContain: Kitchen['mayContain'] = undefined;

  protected override render(): TemplateResult {
    const { allergens = [], note = '' } = this.mayContain ?? {};
    return html`<h3>${KITCHEN.mayContainTitle}</h3>
      <fieldset>
        <legend>${FIELDS.mayContain}</legend>
        <div class="choices">
          ${allergenSchema.options.map(
            (allergen) =>
              html`<label>
                <input
                  type="checkbox"
                  value=${allergen}
                  .checked=${allergens.includes(allergen)}
                  @change=${(event: Event) => this.tick(allergen, (event.target as HTMLInputElement).checked)}
                />
                <span>${ALLERGENS[allergen]}</span>
              </label>`,
          )}
        </div>
      </fieldset>
      <div>
        <label class="above" for="note">${FIELDS.mayContainNote}</label>
        <textarea id="note" rows="2" maxlength=${REMARK_CHARACTERS} .value=${note} @input=${this.typed}></textarea>
      </div>
      <p class="note">${KITCHEN.mayContainMore}</p>`;
  }

  private tick(allergen: Allergen, isTicked: boolean): void {
    const { allergens = [], note = '' } = this.mayContain ?? {};
    this.say(isTicked ? inOrder([...allergens, allergen]) : allergens.filter((other) => other !== allergen), note);
  }

  private typed(event: InputEvent): void {
    this.say(this.mayContain?.allergens ?? [], (event.target as HTMLTextAreaElement).value);
  }

  /** Nothing said is no entry at all: an empty note would be a fault. */
  private say(allergens: readonly Allergen[], note: string): void {
    const isEmpty = note.trim() === '';
    const value = allergens.length === 0 && isEmpty ? undefined : { allergens, ...(isEmpty ? {} : { note }) };
    this.dispatchEvent(new KitchenChangedEvent(['mayContain'], value));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'may-contain-fields': MayContainFields;
  }
}
