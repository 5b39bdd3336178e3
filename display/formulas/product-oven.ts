import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Product } from '../../shared/documents/formula.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import { numberField, plainMeasure, type Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { PRODUCT } from '../words/method.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { formField } from './form-fields.ts';
import { placeAt, within, type FormPlace } from './form-place.ts';
import { formStyles } from './form-styles.ts';
import { lengthText } from './length-text.ts';
import { minutesTyped } from './length-typed.ts';
import { someOf, withDeckRoom } from './oven-edits.ts';
import { claimNames, slotNames } from './step-names.ts';

const MOST_PIECES = 100_000;
const WEEK_MIN = 7 * 24 * 60;
const MOST_LENGTH_CHARACTERS = 24;
const DECK = 'deck.';

/** What a plan has to know of a product: how many of it each deck takes, where it bakes best, how long it keeps. */
@customElement('product-oven')
export class ProductOven extends LitElement {
  static override styles = [
    deskStyles,
    formStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }
      legend {
        padding: 0;
        margin-block-end: var(--space-2);
        font-size: var(--type-text);
        font-weight: var(--weight-word);
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
    return html`<h3>${PRODUCT.oven}</h3>
      <div class="group" @field-changed=${this.fieldChanged}>
        ${this.decks(product, context.kitchen, within(place, ['deckRoom']))} ${this.slots(product, context.kitchen, place)}
        ${formField(KEEPS, product.keepsMin, within(place, ['keepsMin']))}
        <p class="soft">${PRODUCT.keepsNote}</p>
      </div>`;
  }

  /** A field for each deck of the kitchen, and for each that is named and is not there: emptied, it is named no more. */
  private decks({ deckRoom = [], piecesPerSlot }: Product, kitchen: Kitchen, place: FormPlace): TemplateResult | typeof nothing {
    const names = withNamed(
      claimNames('deck', kitchen),
      deckRoom.map(({ deck }) => deck),
    );
    if (Object.keys(names).length === 0) return nothing;
    const whenEmpty = PRODUCT.deckRoomAsUsual(piecesPerSlot === undefined || !Number.isFinite(piecesPerSlot) ? null : piecesPerSlot);
    return html`<fieldset>
      <legend>${PRODUCT.deckRoom}</legend>
      <div class="fields">
        ${Object.entries(names).map(([deck, name]) => {
          const index = deckRoom.findIndex((room) => room.deck === deck);
          const field = { ...numberField(`${DECK}${deck}`, name, plainMeasure(), 1, MOST_PIECES, 'optional'), isWhole: true, whenEmpty };
          // Where nothing is said yet no fault can stand.
          return formField(field, deckRoom[index]?.piecesPerSlot, within(place, [index === -1 ? deck : index]));
        })}
      </div>
    </fieldset>`;
  }

  private slots({ prefersSlots = [] }: Product, kitchen: Kitchen, place: FormPlace): TemplateResult | typeof nothing {
    const names = withNamed(slotNames(kitchen), prefersSlots);
    if (Object.keys(names).length === 0) return nothing;
    const field: Field = { key: 'prefersSlots', label: PRODUCT.prefersSlots, kind: 'several', options: names };
    return html`${formField(field, prefersSlots, within(place, ['prefersSlots']))}
      <p class="soft" role="status">
        ${prefersSlots.length < 2 ? PRODUCT.prefersHint : PRODUCT.prefersOrder(prefersSlots.map((id) => names[id] ?? id))}
      </p>`;
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    const { product } = this;
    if (product === null) return;
    const { key, value } = event;
    if (key.startsWith(DECK))
      this.say('deckRoom', withDeckRoom(product.deckRoom, key.slice(DECK.length), value === undefined ? undefined : Number(value)));
    else this.say(key, Array.isArray(value) ? someOf(value) : value);
  }

  private say(key: string, value: unknown): void {
    this.dispatchEvent(new DocumentChangedEvent([key], value));
  }
}

const KEEPS: Field = {
  key: 'keepsMin',
  label: PRODUCT.keeps,
  kind: 'written',
  most: MOST_LENGTH_CHARACTERS,
  shown: (stored) => (typeof stored === 'number' ? lengthText(stored) : ''),
  read: (text) => (text.trim() === '' ? undefined : upToAWeek(minutesTyped(text))),
  needed: PRODUCT.lengthNeeded,
  hint: PRODUCT.keepsHint,
};

/** Longer than documents take says nothing, as what is no length does: the fault names both. */
function upToAWeek(minutes: number | null): number {
  return minutes !== null && minutes <= WEEK_MIN ? minutes : Number.NaN;
}

/** With those that are named and are not known, by their ids: nobody would see what is wrong otherwise. */
function withNamed(known: Readonly<Record<string, string>>, named: readonly string[]): Readonly<Record<string, string>> {
  return { ...known, ...Object.fromEntries(named.filter((id) => !(id in known)).map((id) => [id, id])) };
}

declare global {
  interface HTMLElementTagNameMap {
    'product-oven': ProductOven;
  }
}
