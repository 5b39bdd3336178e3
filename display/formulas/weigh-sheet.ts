import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { SizedBatch } from '../../shared/book/batch-plan.ts';
import type { LaterShare, TableLine, TablePart, WeighTable } from '../../shared/book/weigh-table.ts';
import { sharedAllergens } from '../../shared/book/allergens.ts';
import type { Formula, Product } from '../../shared/documents/formula.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import '../parts/allergen-list.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { weightText } from '../parts/weight-text.ts';
import { SHEET, SIZE } from '../words/book.ts';
import { numberWords } from '../words/numbers.ts';
import { VERBS } from '../words/verbs.ts';
import type { EditorContext } from './editor-context.ts';
import { lineName } from './line-names.ts';

/** One batch as it is weighed out: on the screen, and on paper with boxes to tick and blanks for lot numbers. */
export interface SheetBatch {
  readonly batch: SizedBatch;
  readonly table: WeighTable;
  /** From 1. */
  readonly index: number;
  readonly count: number;
  readonly mixerName: string | null;
}

const TEMPERATURES = Object.values(SHEET.temperatures);

/** The weigh-out of one batch. */
@customElement('weigh-sheet')
export class WeighSheet extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: block;
        max-width: 940px;
        color: var(--ink);
        font-size: var(--type-text);
        font-variant-numeric: tabular-nums;
      }
      header {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        justify-content: space-between;
        gap: 2px var(--space-5);
        padding-bottom: var(--space-2);
        border-bottom: var(--rule) solid currentColor;
      }
      h3 {
        font-size: var(--type-step);
        font-weight: var(--weight-strong);
        line-height: 1.15;
        overflow-wrap: anywhere;
      }
      .of {
        flex: 1 1 100%;
        display: flex;
        flex-wrap: wrap;
        gap: 2px var(--space-5);
      }
      .blanks {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-5);
        padding-block: var(--space-3);
      }
      .blank {
        display: inline-flex;
        align-items: baseline;
        gap: var(--space-2);
      }
      .blank i {
        width: 84px;
        height: 1.3em;
        border-bottom: 1px solid currentColor;
      }
      table {
        width: 100%;
        table-layout: fixed;
        border-collapse: collapse;
        margin-block: var(--space-2) var(--space-4);
        break-inside: avoid;
      }
      caption {
        padding-block: var(--space-1);
        text-align: start;
        font-weight: var(--weight-strong);
        font-size: var(--type-button);
      }
      caption span {
        font-weight: var(--weight-text);
        font-size: var(--type-small);
      }
      th,
      td {
        padding: 5px var(--space-2);
        border-bottom: 1px solid currentColor;
        text-align: start;
        vertical-align: baseline;
        font-weight: var(--weight-text);
      }
      thead th,
      tfoot th,
      tfoot td {
        font-size: var(--type-small);
      }
      tfoot td {
        font-weight: var(--weight-strong);
      }
      tbody th {
        font-weight: var(--weight-word);
        overflow-wrap: anywhere;
      }
      .number {
        text-align: end;
        white-space: nowrap;
      }
      td.number.weight {
        font-weight: var(--weight-strong);
      }
      .box {
        width: 54px;
      }
      thead .number {
        width: 19%;
      }
      thead .number.percent {
        width: 15%;
      }
      .box i {
        display: block;
        width: 18px;
        height: 18px;
        border: 2px solid currentColor;
      }
      .lot {
        width: 27%;
      }
      .note {
        display: block;
        font-size: var(--type-small);
        font-weight: var(--weight-text);
      }
      h4 {
        margin: 0;
        font-size: var(--type-text);
        font-weight: var(--weight-strong);
      }
      .more {
        display: grid;
        gap: var(--space-1);
        margin-block: var(--space-2);
        break-inside: avoid;
      }
      tr {
        break-inside: avoid;
      }
      /* Ink on white paper whatever the page looks like, in sizes that are read at a bench. */
      @media print {
        :host {
          color-scheme: only light;
          --ink: CanvasText;
          --ink-soft: CanvasText;
          --line: CanvasText;
          --type-small: 9.5pt;
          --type-text: 11pt;
          --type-button: 12pt;
          --type-step: 17pt;
          max-width: none;
        }
        th,
        td {
          padding-block: 1.4mm;
        }
      }
      @media screen and (max-width: 600px) {
        .lot,
        .box {
          display: none;
        }
        thead .number {
          width: 31%;
        }
        thead .number.percent {
          width: 24%;
          white-space: normal;
        }
      }
    `,
  ];

  @property({ attribute: false }) formula: Formula | null = null;
  /** null: not saved so. */
  @property({ attribute: false }) version: number | null = null;
  @property({ attribute: false }) products: readonly Product[] = [];
  @property({ attribute: false }) context: EditorContext | null = null;
  @property({ attribute: false }) of: SheetBatch | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { formula, context, of } = this;
    if (formula === null || context === null || of === null) return nothing;
    return html`${this.head(formula, context, of)}
    ${of.table.parts.map((part) => partTable(part, context))}${this.cuts(of, context)}${this.onTop(of, context)}
    ${this.allergens(formula, context)}`;
  }

  private head(formula: Formula, { house }: EditorContext, { batch, index, count, mixerName }: SheetBatch): TemplateResult {
    const facts = [
      house.name,
      this.version === null ? SHEET.unsaved : SHEET.version(this.version),
      ...(count > 1 ? [SIZE.batchOf(index, count)] : []),
      SIZE.inAll(weightText(batch.doughG, house.units)),
      ...(mixerName === null ? [] : [mixerName]),
    ];
    const wanted = formula.doughC === undefined ? null : temperatureText(formula.doughC, house.units.temperature);
    return html`<header>
        <h3>${SHEET.title}: ${formula.name} (${formula.letters})</h3>
        <div class="of">${facts.map((fact) => html`<span>${fact}</span>`)}</div>
      </header>
      <div class="blanks">
        ${[SHEET.date, SHEET.tag].map(blank)}
        ${TEMPERATURES.map((name) => (name === SHEET.temperatures.dough && wanted !== null ? blank(`${name} (${SHEET.wanted(wanted)})`) : blank(name)))}
      </div>`;
  }

  private cuts({ batch }: SheetBatch, { house }: EditorContext): TemplateResult | typeof nothing {
    if (batch.pieces.length === 0) return nothing;
    return html`<div class="more">
      <h4>${SHEET.cut}</h4>
      ${batch.pieces.map(({ productId, pieces, pieceG }) => html`<p>${SHEET.cutLine(pieces, this.productName(productId), weightText(pieceG, house.units))}</p>`)}
    </div>`;
  }

  private onTop({ table }: SheetBatch, context: EditorContext): TemplateResult | typeof nothing {
    if (table.onTop.length === 0) return nothing;
    const { units } = context.house;
    return html`<div class="more">
      <h4>${SHEET.onTop}</h4>
      ${table.onTop.map(
        ({ of, g, pieces, eachG, productId, verb }) =>
          html`<p>
            <strong>${lineName(of, context)}: ${weightText(g, units)}</strong>
            (${SHEET.onTopLine(pieces, weightText(eachG, units), this.productName(productId), VERBS[verb].running)})
          </p>`,
      )}
    </div>`;
  }

  /** Of the dough and of the products that this batch is cut into. */
  private allergens(formula: Formula, context: EditorContext): TemplateResult {
    const cut = new Set(this.of?.batch.pieces.map(({ productId }) => productId));
    const products = this.products.filter(({ id }) => cut.has(id));
    const { shared, products: own } = sharedAllergens(formula, products, context.formulaOf, context.ingredients);
    return html`<div class="more">
      <h4>${SHEET.allergens}</h4>
      <allergen-list
        brief
        .facts=${shared}
        .products=${own}
        .mayContain=${context.kitchen.mayContain}
        .nameOf=${(id: string) => nameIn(context, id)}
      ></allergen-list>
    </div>`;
  }

  private productName(productId: string): string {
    return this.products.find(({ id }) => id === productId)?.name ?? productId;
  }
}

function blank(label: string): TemplateResult {
  return html`<span class="blank">${label} <i></i></span>`;
}

function partTable(part: TablePart, context: EditorContext): TemplateResult {
  const { units } = context.house;
  const finestG = Math.min(...part.lines.map(({ divisionG }) => divisionG));
  return html`<table>
    <caption>
      ${part.name} ${part.name === SHEET.part[part.role] ? nothing : html`<span>${SHEET.part[part.role]}</span>`}
    </caption>
    <thead>
      <tr>
        <th scope="col" class="box">${SHEET.done}</th>
        <th scope="col">${SHEET.ingredient}</th>
        <th scope="col" class="number">${SHEET.weight}</th>
        <th scope="col" class="number percent">${SHEET.percent}</th>
        <th scope="col" class="lot">${SHEET.lot}</th>
      </tr>
    </thead>
    <tbody>
      ${part.lines.map((line) => lineRow(line, context))}
    </tbody>
    <tfoot>
      <tr>
        <td class="box"></td>
        <th scope="row">${SHEET.total}</th>
        <td class="number">${weightText(part.totalG, units, finestG)}</td>
        <td></td>
        <td class="lot"></td>
      </tr>
    </tfoot>
  </table>`;
}

function lineRow(line: TableLine, context: EditorContext): TemplateResult {
  const { units } = context.house;
  return html`<tr>
    <td class="box"><i></i></td>
    <th scope="row">
      ${lineName(line.of, context)} ${line.later.map((share) => html`<span class="note">${laterWords(share, line, context)}</span>`)}
    </th>
    <td class="number weight">${weightText(line.g, units, line.divisionG)}</td>
    <td class="number">${line.pct === null ? '' : `${numberWords(line.pct)}\u00a0%`}</td>
    <td class="lot"></td>
  </tr>`;
}

function laterWords({ g, divisionG, verb, isHeldBack }: LaterShare, line: TableLine, { house }: EditorContext): string {
  const words = VERBS[verb].running;
  if (!isHeldBack && g >= line.g) return SHEET.allLater(words);
  const weight = weightText(g, house.units, divisionG);
  return (isHeldBack ? SHEET.heldBack : SHEET.later)(weight, words);
}

function nameIn({ ingredients, entries }: EditorContext, id: string): string {
  return ingredients.find((ingredient) => ingredient.id === id)?.name ?? entries.find((entry) => entry.id === id)?.name ?? id;
}

declare global {
  interface HTMLElementTagNameMap {
    'weigh-sheet': WeighSheet;
  }
}
