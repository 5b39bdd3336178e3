import { html, nothing, type TemplateResult } from 'lit';
import { yeastFormSchema, type PartItem } from '../../shared/documents/formula.ts';
import { convertedYeastG } from '../../shared/trade/yeast-forms.ts';
import { PARTS, YEAST_FORM_NAMES } from '../words/formulas.ts';
import type { EditorContext } from './editor-context.ts';
import { keptG } from './part-edits.ts';
import { lineUnit, shownWeight } from './weight-typed.ts';

/**
 * A yeast's form, and what the line would weigh in the others: to be written so where the house has yeast of that form.
 * Nothing for other ingredients, and for yeast of which nobody said what it is.
 */
export function yeastLine(
  line: Extract<PartItem, { item: string }>,
  { ingredients, house }: EditorContext,
  write: (line: PartItem) => void,
): TemplateResult | typeof nothing {
  const ingredient = ingredients.find(({ id }) => id === line.item);
  const form = ingredient?.kind === 'yeast' ? ingredient.yeastForm : undefined;
  if (form === undefined) return nothing;
  const others = yeastFormSchema.options.filter((other) => other !== form);
  return html`<div class="yeast soft" title=${PARTS.customaryYeast}>
    <span>${YEAST_FORM_NAMES[form]}</span>
    ${others.map((other) => {
      const g = keptG(convertedYeastG(line.g, form, other));
      const words = PARTS.same(`${shownWeight(g, house.units)} ${lineUnit(house.units)}`, YEAST_FORM_NAMES[other]);
      const there = ingredients.find(({ kind, yeastForm }) => kind === 'yeast' && yeastForm === other);
      if (there === undefined) return html`<span>${words}</span>`;
      return html`<button type="button" class="word" aria-label="${PARTS.writeAs} ${words}" @click=${() => write({ item: there.id, g })}>
        ${words}
      </button>`;
    })}
  </div>`;
}
