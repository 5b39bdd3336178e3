import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { claimSchema, type Claim, type Step } from '../../shared/documents/method.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { numberField, plainMeasure, type Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import { withValueAt } from '../desk/inwards.ts';
import { CLAIM_KINDS, METHOD } from '../words/method.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { formField, ownFaults, removeButton, storedOf } from './form-fields.ts';
import { within, type FormPlace } from './form-place.ts';
import { formStyles } from './form-styles.ts';
import { lineOf } from './line-of.ts';
import { claimNames, stepNames } from './step-names.ts';

const MOST_CLAIMS = 12;
const COUNTED = { fixed: METHOD.claimFixed, byPieces: METHOD.claimByPieces } as const;

/** What a step takes while it lasts: mixers, bowls, vessels by the pieces, decks. */
@customElement('step-claims')
export class StepClaims extends LitElement {
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

  @property({ attribute: false }) claims: readonly Claim[] = [];
  /** The steps from this one on: at one of their ends a vessel is given back. */
  @property({ attribute: false }) laterSteps: readonly Step[] = [];
  /** The number of the first of them in the list. */
  @property({ attribute: false }) firstNumber = 1;
  @property({ attribute: false }) place: FormPlace | null = null;
  @property({ attribute: false }) context: EditorContext | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { context, place } = this;
    if (context === null || place === null) return nothing;
    return html`<h4>${METHOD.claim}</h4>
      ${ownFaults(place)}
      <ul class="lines" @field-changed=${this.fieldChanged}>
        ${this.claims.map((claim, index) => this.line(claim, index, context, within(place, [index])))}
      </ul>
      <div class="buttons">
        <button type="button" class="plain" ?disabled=${this.claims.length >= MOST_CLAIMS} @click=${this.addClicked}>
          ${METHOD.addClaim}
        </button>
      </div>`;
  }

  private line(claim: Claim, index: number, context: EditorContext, place: FormPlace): TemplateResult {
    const names = claimNames(claim.kind, context.kitchen);
    const order = claim.ids.map((id) => names[id] ?? id).join(', ');
    return html`<li class="line" data-index=${index}>
      ${ownFaults(place)}
      <div class="fields">
        ${formField({ key: 'kind', label: METHOD.claimKind, kind: 'one', options: CLAIM_KINDS }, claim.kind, within(place, ['kind']))}
        ${this.counts(claim, place)}
      </div>
      ${removeButton(CLAIM_KINDS[claim.kind], () => this.changeTo(this.claims.filter((_other, at) => at !== index)))}
      ${Object.keys(names).length === 0 ? nothing : formField({ key: 'ids', label: METHOD.claimIds, kind: 'several', options: withUnknown(names, claim.ids) }, claim.ids, within(place, ['ids']))}
      ${claim.ids.length === 1 ? nothing : html`<p class="soft">${order === '' ? METHOD.claimAny : order}</p>`} ${this.until(claim, place)}
    </li>`;
  }

  private counts(claim: Claim, place: FormPlace): TemplateResult {
    const { count, perPieces } = claim;
    const counted: Field = { key: 'counted', label: METHOD.claimBy, kind: 'one', options: COUNTED };
    return html`${formField(counted, perPieces === undefined ? 'fixed' : 'byPieces', within(place, ['counted']))}
    ${
      perPieces === undefined
        ? formField(numberField('count', METHOD.claimCount, plainMeasure(), 1, 1000, 'whole'), count, within(place, ['count']))
        : formField(numberField('perPieces', METHOD.claimPer, plainMeasure(), 1, 100_000, 'whole'), perPieces, within(place, ['perPieces']))
    }`;
  }

  private until(claim: Claim, place: FormPlace): TemplateResult | typeof nothing {
    if (claim.kind !== 'vessel' && claim.until === undefined) return nothing;
    const options = { '': METHOD.claimUntilUsual, ...stepNames(this.laterSteps, this.firstNumber) };
    const field: Field = { key: 'until', label: METHOD.claimUntil, kind: 'one', options };
    return html`<div class="group">
      ${formField(field, claim.until, within(place, ['until']))}
      <p class="soft">${METHOD.claimUntilHint}</p>
    </div>`;
  }

  private fieldChanged(event: FieldChangedEvent): void {
    event.stopPropagation();
    const index = lineOf(event);
    this.changeTo(this.claims.map((claim, at) => (at === index ? changedClaim(claim, event.key, storedOf(event)) : claim)));
  }

  private readonly addClicked = (): void => this.changeTo([...this.claims, claimSchema.parse({ kind: 'mixer' })]);

  private changeTo(claims: readonly Claim[]): void {
    if (this.place !== null) this.dispatchEvent(new DocumentChangedEvent(this.place.path, claims));
  }
}

/** What is named and not there any more stays among the choices, or nobody could take it out. */
function withUnknown(names: Readonly<Record<string, string>>, ids: readonly string[]): Readonly<Record<string, string>> {
  return { ...names, ...Object.fromEntries(ids.filter((id) => !(id in names)).map((id) => [id, id])) };
}

function changedClaim(claim: Claim, key: string, value: unknown): Claim {
  if (key === 'kind') return claimSchema.parse({ kind: value });
  if (key !== 'counted') return withValueAt(claim, [key], value);
  const { perPieces: _perPieces, ...fixed } = claim;
  return value === 'byPieces' ? { ...fixed, count: 1, perPieces: 1 } : fixed;
}

declare global {
  interface HTMLElementTagNameMap {
    'step-claims': StepClaims;
  }
}
