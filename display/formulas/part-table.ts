import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Formula, Ingredient, Part, PartItem } from '../../shared/documents/formula.ts';
import type { FileFault } from '../../shared/documents/kitchen-faults.ts';
import { unreachable } from '../../shared/result.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { faultText } from '../desk/fault-text.ts';
import { PARTS } from '../words/formulas.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { IngredientWantedEvent } from './ingredient-wanted.ts';
import {
  buildRatio,
  flourG,
  flourTest,
  keptG,
  movedBy,
  percentOf,
  scaledTo,
  totalG,
  withGrams,
  withoutPart,
  withPartNamed,
  withPercent,
} from './part-edits.ts';
import { partStyles } from './part-styles.ts';
import { faultsAt, faultsWithin } from './place-faults.ts';
import { addableNamed, addables, type Addable } from './what-adds.ts';
import { lineUnit, shownNumber, shownWeight, typedNumber, typedWeightG } from './weight-typed.ts';
import { yeastLine } from './yeast-line.ts';

type Column = 'g' | 'pct' | 'total';

/** What is being typed in one field; it may be no number yet. */
interface Typed {
  readonly line: number;
  readonly column: Column;
  readonly text: string;
  /** What it says cannot be: it stays in the field, and the formula as it was. */
  readonly isUnfit: boolean;
}

/** One part of a formula as a table: each line's weight and its per cent of the part's flour, whichever is typed. */
@customElement('part-table')
export class PartTable extends LitElement {
  static override styles = [deskStyles, plainButtonStyles, partStyles];

  @property({ attribute: false }) formula: Formula | null = null;
  @property({ attribute: false }) partIndex = 0;
  /** The part itself: while it stays the same, nothing of the table changes. */
  @property({ attribute: false }) content: Part | null = null;
  @property({ attribute: false }) context: EditorContext | null = null;
  /** What is wrong within this part. */
  @property({ attribute: false }) faults: readonly FileFault[] = [];
  @state() private typed: Typed | null = null;
  @state() private isArranging = false;
  /** What is typed as the next line. */
  @state() private wanted = '';
  @query('.add input') private readonly adding!: HTMLInputElement | null;
  private focusLine: number | null = null;

  protected override updated(changed: PropertyValues<this>): void {
    if (!changed.has('content') || this.focusLine === null) return;
    const input = this.renderRoot.querySelector<HTMLInputElement>(`tr[data-line="${this.focusLine}"] td.grams input`);
    this.focusLine = null;
    input?.focus();
    input?.select();
  }

  protected override render(): TemplateResult | typeof nothing {
    const { formula, content: part, context } = this;
    if (formula === null || part === null || context === null) return nothing;
    const byId = new Map(context.ingredients.map((ingredient) => [ingredient.id, ingredient]));
    const isFlour = flourTest(context.ingredients);
    const partFlourG = flourG(part.items, isFlour);
    const flours = part.items.filter(isFlour).length;
    return html`${this.head(formula, part)}${this.told(faultsAt(this.faults, `${this.path}.name`))}
      <table class=${this.isArranging ? 'arranging' : ''}>
        <thead>
          <tr>
            <th scope="col">${PARTS.ingredient}</th>
            <th scope="col" class="figure">${lineUnit(context.house.units)}</th>
            <th scope="col" class="figure percent">${PARTS.ofFlour}</th>
            <th scope="col"><span class="unseen">${PARTS.arrange}</span></th>
          </tr>
        </thead>
        <tbody>
          ${part.items.map((line, index) => this.row(part, line, index, context, byId, partFlourG, isFlour(line) && flours === 1))}
        </tbody>
        <tfoot>
          <tr>
            <td>${this.foot(part, byId)}</td>
            <td class="grams">${this.figure(part.name, -1, 'total', shownWeight(totalG(part.items), context.house.units))}</td>
            <td class="percent">
              ${partFlourG > 0 ? html`<span class="fixed">${shownNumber((totalG(part.items) / partFlourG) * 100, 1)}</span>` : nothing}
            </td>
            <td></td>
          </tr>
        </tfoot>
      </table>
      ${this.told(faultsAt(this.faults, `${this.path}.items`))} ${this.adder(formula, part, context)}`;
  }

  private get path(): string {
    return `formula.parts[${this.partIndex}]`;
  }

  private head(formula: Formula, part: Part): TemplateResult {
    const last = formula.parts.length - 1;
    const { partIndex } = this;
    const isLast = partIndex === last;
    const isNameFaulty = faultsAt(this.faults, `${this.path}.name`).length > 0;
    return html`<div class="head">
      <input
        class="name"
        data-field="${this.path}.name"
        aria-label=${PARTS.partName(part.name)}
        aria-invalid=${isNameFaulty}
        maxlength="60"
        autocomplete="off"
        .value=${part.name}
        @change=${this.named}
      />
      ${
        isLast
          ? html`<span class="soft">${PARTS.roles[part.role]}</span>`
          : html`<select class="role" aria-label=${PARTS.part} @change=${this.roleChosen}>
              ${(['preferment', 'soaker'] as const).map((role) => html`<option value=${role} ?selected=${role === part.role} .selected=${role === part.role}>${PARTS.roles[role]}</option>`)}
            </select>`
      }
      <button type="button" class="word" aria-pressed=${this.isArranging} @click=${() => (this.isArranging = !this.isArranging)}>
        ${PARTS.arrange}
      </button>
      ${
        isLast || !this.isArranging
          ? nothing
          : html`<span>
              ${this.mark('↑', PARTS.partUp(part.name), partIndex > 0, () => this.changeParts(movedBy(formula.parts, partIndex, -1)))}
              ${this.mark('↓', PARTS.partDown(part.name), partIndex + 1 < last, () => this.changeParts(movedBy(formula.parts, partIndex, 1)))}
              ${this.mark('×', PARTS.removePart(part.name), true, () => this.changeParts(withoutPart(formula.parts, partIndex)))}
            </span>`
      }
    </div>`;
  }

  private row(
    part: Part,
    line: PartItem,
    index: number,
    context: EditorContext,
    byId: ReadonlyMap<string, Ingredient>,
    partFlourG: number,
    isOnlyFlour: boolean,
  ): TemplateResult {
    const { name, what } = nameOf(line, context, byId);
    const pct = percentOf(line, partFlourG);
    const faults = faultsWithin(this.faults, `${this.path}.items[${index}]`);
    const isUnfit = this.typed?.line === index && this.typed.isUnfit && this.typed.column === 'pct';
    const isTold = faults.length > 0 || isUnfit;
    const form = 'item' in line ? yeastLine(line, context, (items) => this.changeLine(index, items)) : nothing;
    return html`<tr data-line=${index} class=${isTold ? 'told' : ''}>
        <td>
          <div class="what">${name}${what === '' ? nothing : html` <span class="soft">${what}</span>`}${form}</div>
        </td>
        <td class="grams">${this.figure(name, index, 'g', shownWeight(line.g, context.house.units), faults.length > 0)}</td>
        <td class="percent">
          ${
            pct === null || isOnlyFlour
              ? html`<span class="fixed">${pct === null ? '–' : 100}</span>`
              : this.figure(name, index, 'pct', shownNumber(pct, pct < 1 ? 3 : 2))
          }
        </td>
        <td class="acts">
          ${
            this.isArranging
              ? html`${this.editMark(line, name, byId)}${this.mark('↑', PARTS.up(name), index > 0, () => this.changeItems(movedBy(part.items, index, -1)))}${this.mark('↓', PARTS.down(name), index + 1 < part.items.length, () => this.changeItems(movedBy(part.items, index, 1)))}`
              : nothing
          }${this.mark('×', PARTS.take(name), true, () => this.takeOut(part, index))}
        </td>
      </tr>
      ${
        isTold
          ? html`<tr>
              <td colspan="4">${this.told(faults)}${isUnfit ? html`<p class="fault">${PARTS.notPercent}</p>` : nothing}</td>
            </tr>`
          : nothing
      }`;
  }

  private figure(name: string, line: number, column: Column, shown: string, isFaulty = false): TemplateResult {
    const { typed } = this;
    const isTyped = typed !== null && typed.line === line && typed.column === column;
    const part = this.content?.name ?? '';
    const label = column === 'total' ? PARTS.totalOf(part) : column === 'g' ? PARTS.gramsOf(name, part) : PARTS.percentOf(name, part);
    return html`<input
      inputmode="decimal"
      autocomplete="off"
      aria-label=${label}
      title=${column === 'total' ? PARTS.totalHint : nothing}
      data-field=${column === 'g' ? `${this.path}.items[${line}].g` : nothing}
      aria-invalid=${isFaulty || (isTyped && typed.isUnfit)}
      .value=${isTyped ? typed.text : shown}
      @input=${(event: InputEvent) => this.figureTyped(event, line, column)}
      @focus=${(event: FocusEvent) => (event.target as HTMLInputElement).select()}
      @blur=${() => (this.typed = null)}
      @keydown=${(event: KeyboardEvent) => this.keyed(event, line)}
    />`;
  }

  private foot(part: Part, byId: ReadonlyMap<string, Ingredient>): TemplateResult {
    const ratio = buildRatio(part, byId);
    return html`${PARTS.total}${
      ratio === null
        ? nothing
        : html`<div class="soft">${PARTS.build(shownNumber(ratio[0], 2), shownNumber(ratio[1], 2), shownNumber(ratio[2], 2))}</div>`
    }`;
  }

  private adder(formula: Formula, part: Part, context: EditorContext): TemplateResult {
    const all = addables(formula, this.partIndex, context);
    const found = addableNamed(all, this.wanted);
    const isUnknown = this.wanted.trim() !== '' && found === null;
    return html`<div class="add">
      <input
        data-field="${this.path}.items"
        list="addable"
        maxlength="60"
        autocomplete="off"
        aria-label=${PARTS.addTo(part.name)}
        placeholder=${PARTS.addHint}
        .value=${this.wanted}
        @input=${(event: InputEvent) => this.wantedTyped(event, all)}
        @keydown=${(event: KeyboardEvent) => {
          if (event.key !== 'Enter') return;
          event.preventDefault();
          this.addWanted(all);
        }}
      />
      <datalist id="addable">
        ${all.map(({ name, what }) => html`<option value=${name} label=${what === '' ? nothing : `${name} · ${what}`}></option>`)}
      </datalist>
      <button type="button" class="plain" @click=${() => this.addWanted(all)}>
        ${isUnknown ? PARTS.make(this.wanted.trim()) : PARTS.add}
      </button>
    </div>`;
  }

  private told(faults: readonly FileFault[]): readonly TemplateResult[] {
    return faults.map((fault) => html`<p class="fault">${faultText(fault)}</p>`);
  }

  private mark(sign: string, words: string, isThere: boolean, act: () => void): TemplateResult {
    return html`<button type="button" class="mark" aria-label=${words} title=${words} ?disabled=${!isThere} @click=${act}>${sign}</button>`;
  }

  private editMark(line: PartItem, name: string, byId: ReadonlyMap<string, Ingredient>): TemplateResult | typeof nothing {
    const ingredient = 'item' in line ? byId.get(line.item) : undefined;
    if (ingredient === undefined) return nothing;
    return this.mark('✎', PARTS.ingredientEdit(name), true, () => this.dispatchEvent(new IngredientWantedEvent(ingredient, name)));
  }

  private changeItems(items: readonly PartItem[]): void {
    this.dispatchEvent(new DocumentChangedEvent(['parts', this.partIndex, 'items'], items));
  }

  private changeLine(index: number, line: PartItem): void {
    this.changeItems((this.content?.items ?? []).map((other, at) => (at === index ? line : other)));
  }

  private changeParts(parts: readonly Part[]): void {
    this.dispatchEvent(new DocumentChangedEvent(['parts'], parts));
  }

  private takeOut(part: Part, index: number): void {
    this.changeItems(part.items.filter((_line, at) => at !== index));
    this.adding?.focus();
  }

  private named(event: Event): void {
    if (this.formula === null) return;
    this.changeParts(withPartNamed(this.formula.parts, this.partIndex, (event.target as HTMLInputElement).value.trim()));
  }

  private roleChosen(event: Event): void {
    this.dispatchEvent(new DocumentChangedEvent(['parts', this.partIndex, 'role'], (event.target as HTMLSelectElement).value));
  }

  private figureTyped(event: InputEvent, line: number, column: Column): void {
    const { content: part, context } = this;
    if (part === null || context === null) return;
    const text = (event.target as HTMLInputElement).value;
    const items = itemsTyped(part, line, column, text, context);
    this.typed = { line, column, text, isUnfit: items === null };
    if (items !== null) this.changeItems(items);
  }

  /** Enter in a line adds the next one; arrows up and down go from line to line. */
  private keyed(event: KeyboardEvent, line: number): void {
    if (event.key === 'Enter') {
      event.preventDefault();
      this.adding?.focus();
      return;
    }
    if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
    const column = (event.target as HTMLElement).closest('td')?.className ?? 'grams';
    const next = line + (event.key === 'ArrowDown' ? 1 : -1);
    const input = this.renderRoot.querySelector<HTMLInputElement>(`tr[data-line="${next}"] td.${column} input`);
    if (input === null) return;
    event.preventDefault();
    input.focus();
  }

  private wantedTyped(event: InputEvent, all: readonly Addable[]): void {
    this.wanted = (event.target as HTMLInputElement).value;
    // A name taken from the list of what is known comes all at once: it was chosen, not typed.
    const isChosen = event.inputType === 'insertReplacementText' || !(event instanceof InputEvent);
    if (isChosen && all.some(({ name }) => name === this.wanted)) this.addWanted(all);
  }

  private addWanted(all: readonly Addable[]): void {
    const { content: part } = this;
    if (part === null) return;
    const found = addableNamed(all, this.wanted);
    if (found === null) {
      if (this.wanted.trim() === '') this.adding?.focus();
      else this.dispatchEvent(new IngredientWantedEvent(null, this.wanted.trim(), this.partIndex));
      return;
    }
    this.wanted = '';
    this.focusLine = part.items.length;
    this.changeItems([...part.items, found.line]);
  }
}

function itemsTyped(part: Part, line: number, column: Column, text: string, context: EditorContext): readonly PartItem[] | null {
  switch (column) {
    case 'g': {
      const g = typedWeightG(text, context.house.units);
      // What is no weight is no weight in the formula either: its field says so, and it cannot be saved.
      return withGrams(part.items, line, g === null ? Number.NaN : keptG(g));
    }
    case 'pct': {
      const pct = typedNumber(text);
      return pct === null ? null : withPercent(part.items, line, pct, flourTest(context.ingredients));
    }
    case 'total': {
      const g = typedWeightG(text, context.house.units);
      return g === null ? null : scaledTo(part.items, g);
    }
    default:
      return unreachable(column);
  }
}

function nameOf(
  line: PartItem,
  { entries }: EditorContext,
  byId: ReadonlyMap<string, Ingredient>,
): { readonly name: string; readonly what: string } {
  if ('item' in line) return { name: byId.get(line.item)?.name ?? PARTS.unknown(line.item), what: '' };
  if ('part' in line) return { name: line.part, what: PARTS.fromPart };
  if ('seed' in line) return { name: PARTS.seed, what: '' };
  const entry = entries.find(({ id }) => id === line.formula);
  if (entry === undefined) return { name: PARTS.unknown(line.formula), what: '' };
  return { name: entry.name, what: entry.kind === 'ferment' ? PARTS.ferment : PARTS.prep };
}

declare global {
  interface HTMLElementTagNameMap {
    'part-table': PartTable;
  }
}
