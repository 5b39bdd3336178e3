import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { allergenSources } from '../../shared/book/allergens.ts';
import type { Overall } from '../../shared/book/overall.ts';
import { remarksOf, type Remark } from '../../shared/book/remarks.ts';
import type { Formula } from '../../shared/documents/formula.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import '../parts/allergen-list.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { weightText } from '../parts/weight-text.ts';
import { TOTALS } from '../words/formulas.ts';
import { remarkWords } from '../words/remarks.ts';
import type { EditorContext } from './editor-context.ts';
import { figureRows } from './totals-figures.ts';
import { totalsStyles } from './totals-styles.ts';
import { shownNumber } from './weight-typed.ts';

/** The whole formula, preferments included: its figures, each ingredient on all flour, allergens, and what is unusual in it. */
@customElement('totals-panel')
export class TotalsPanel extends LitElement {
  static override styles = [deskStyles, totalsStyles];

  @property({ attribute: false }) formula: Formula | null = null;
  /** null where it cannot be added up. */
  @property({ attribute: false }) overall: Overall | null = null;
  @property({ attribute: false }) context: EditorContext | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { formula, overall, context } = this;
    if (formula === null || context === null) return nothing;
    return html`<h2>${TOTALS.title}</h2>
      ${overall === null ? html`<p class="soft">${TOTALS.cannot}</p>` : this.figures(overall, context)} ${this.remarks(formula, context)}
      ${overall === null ? nothing : this.byIngredient(overall, context)}
      <h3>${TOTALS.allergens}</h3>
      <allergen-list
        .facts=${allergenSources(formula, context.formulaOf, context.ingredients)}
        .mayContain=${context.kitchen.mayContain}
        .nameOf=${(id: string) => nameIn(context, id)}
      ></allergen-list>`;
  }

  private figures(overall: Overall, { house }: EditorContext): TemplateResult {
    return html`<dl>
        ${figureRows(overall, house.units).map(
          ({ words, figure, unit }) =>
            html`<div>
              <dt>${words}</dt>
              <dd>${figure}<span class="unit">${unit}</span></dd>
            </div>`,
        )}
      </dl>
      ${overall.flourG > 0 ? nothing : html`<p class="soft">${TOTALS.noFlour}</p>`}`;
  }

  private remarks(formula: Formula, context: EditorContext): TemplateResult | typeof nothing {
    // A line without weight is seen in its table, and every new one begins so.
    const remarks = remarksOf(formula, context.formulaOf, context.ingredients).filter(isWorthSaying);
    if (remarks.length === 0) return nothing;
    const names = {
      ingredient: (id: string) => nameIn(context, id),
      formula: (id: string) => nameIn(context, id),
      temperature: (celsius: number) => temperatureText(celsius, context.house.units.temperature),
    };
    return html`<h3>${TOTALS.remarks}</h3>
      <ul class="remarks">
        ${remarks.map((remark) => html`<li>${remarkWords(remark, names)}</li>`)}
      </ul>`;
  }

  private byIngredient(overall: Overall, context: EditorContext): TemplateResult {
    return html`<h3>${TOTALS.byIngredient}</h3>
      <table>
        <thead class="unseen">
          <tr>
            <th scope="col">${TOTALS.byIngredient}</th>
            <th scope="col">${TOTALS.weight}</th>
            <th scope="col">${TOTALS.ofAllFlour}</th>
          </tr>
        </thead>
        <tbody>
          ${overall.byIngredient.map(
            ({ ingredientId, g, pct }) =>
              html`<tr>
                <td>${nameIn(context, ingredientId)}</td>
                <td class="figure">${weightText(g, context.house.units)}</td>
                <td class="figure">${pct === null ? '–' : `${shownNumber(pct, pct < 1 ? 3 : 2)} %`}</td>
              </tr>`,
          )}
        </tbody>
      </table>`;
  }
}

function isWorthSaying(remark: Remark): boolean {
  return remark.code !== 'lineOfNothing';
}

function nameIn({ ingredients, entries }: EditorContext, id: string): string {
  return (ingredients.find((known) => known.id === id) ?? entries.find((known) => known.id === id))?.name ?? id;
}

declare global {
  interface HTMLElementTagNameMap {
    'totals-panel': TotalsPanel;
  }
}
