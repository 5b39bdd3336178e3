import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Formula } from '../../shared/documents/formula.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { PARTS, TEMPLATE_NAMES } from '../words/formulas.ts';
import { NewFormulaWantedEvent } from './book-events.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { flourG, flourTest, unusedPartName, withPartAdded } from './part-edits.ts';
import { PART_TEMPLATES, partOfTemplate, type PartTemplate } from './part-templates.ts';

/** What can be made before the dough: usual preferments, soakers and scalds as parts, levains as formulas of their own. */
@customElement('part-adder')
export class PartAdder extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-2);
      }
      h3 {
        font-size: var(--type-text);
        font-weight: var(--weight-word);
      }
      p {
        font-size: var(--type-small);
        color: var(--ink-soft);
      }
      button.plain {
        border-width: 1px;
        border-color: var(--ink-soft);
      }
    `,
  ];

  @property({ attribute: false }) formula: Formula | null = null;
  @property({ attribute: false }) context: EditorContext | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { formula, context } = this;
    if (formula === null || context === null) return nothing;
    const taken = new Set(formula.parts.flatMap(({ items }) => items.flatMap((line) => ('formula' in line ? [line.formula] : []))));
    const ferments = context.entries.filter(({ id, kind }) => kind === 'ferment' && id !== formula.id && !taken.has(id));
    return html`<h3>${PARTS.before}</h3>
      <div class="buttons">
        ${PART_TEMPLATES.map(
          (template) =>
            html`<button type="button" class="plain" @click=${() => this.addPart(template)}>${TEMPLATE_NAMES[template]}</button>`,
        )}
      </div>
      <p>${PARTS.beforeHint}</p>
      <div class="buttons">
        ${ferments.map(({ id, name }) => html`<button type="button" class="plain" @click=${() => this.take(id)}>${PARTS.takeFerment(name)}</button>`)}
        <button type="button" class="plain" @click=${() => this.dispatchEvent(new NewFormulaWantedEvent('ferment'))}>
          ${PARTS.newFerment}
        </button>
      </div>
      <p>${PARTS.levainHint}</p>`;
  }

  private addPart(template: PartTemplate): void {
    const { formula, context } = this;
    const last = formula?.parts.at(-1);
    if (formula === null || context === null || last === undefined) return;
    const doughFlourG = flourG(last.items, flourTest(context.ingredients));
    const name = unusedPartName(formula.parts, TEMPLATE_NAMES[template]);
    const part = partOfTemplate(template, name, doughFlourG > 0 ? doughFlourG : 1000, context.ingredients);
    this.dispatchEvent(new DocumentChangedEvent(['parts'], withPartAdded(formula.parts, part, context.ingredients)));
  }

  /** So much of a ferment as is usual for the dough's flour; common practice. */
  private take(formulaId: string): void {
    const { formula, context } = this;
    const last = formula?.parts.at(-1);
    if (formula === null || context === null || last === undefined) return;
    const doughFlourG = flourG(last.items, flourTest(context.ingredients));
    const line = { formula: formulaId, g: Math.round((doughFlourG * USUAL_FERMENT_PCT) / 100) };
    this.dispatchEvent(new DocumentChangedEvent(['parts', formula.parts.length - 1, 'items'], [...last.items, line]));
  }
}

/** Of the dough's own flour. */
const USUAL_FERMENT_PCT = 20;

declare global {
  interface HTMLElementTagNameMap {
    'part-adder': PartAdder;
  }
}
