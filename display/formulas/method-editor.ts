import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Step } from '../../shared/documents/method.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import type { Inwards } from '../desk/inwards.ts';
import { METHOD } from '../words/method.ts';
import { VERBS } from '../words/verbs.ts';
import { DocumentChangedEvent } from './document-changed.ts';
import type { EditorContext } from './editor-context.ts';
import { ownFaults } from './form-fields.ts';
import { focusWithin } from './focus-within.ts';
import { faultPathOf, placeAt, within, type FormPlace } from './form-place.ts';
import { formStyles } from './form-styles.ts';
import { lengthText } from './length-text.ts';
import './method-add.ts';
import type { StepsAddedEvent } from './method-events.ts';
import { methodStyles } from './method-styles.ts';
import { withoutStep, withStepDoubled, withStepMoved, withStepsAt } from './step-edits.ts';
import './step-editor.ts';
import { stepRow } from './step-row.ts';
import { handsMin, wayMin, wayStretches } from './way-lengths.ts';

/** Most steps that a method has. */
const MOST_STEPS = 40;

/** The steps of a method, or of a product's way, in their order and to scale; one of them open to its fields. */
@customElement('method-editor')
export class MethodEditor extends LitElement {
  static override styles = [deskStyles, plainButtonStyles, formStyles, methodStyles];

  @property({ attribute: false }) steps: readonly Step[] = [];
  /** Where the steps stand in their document. */
  @property({ attribute: false }) root: Inwards = ['method'];
  /** What faults call that document: `formula`, `products[2]`. */
  @property({ attribute: false }) faultPath = 'formula';
  /** Keys of steps elsewhere that those here cannot have: a product's way goes on from its formula's method. */
  @property({ attribute: false }) otherKeys: readonly string[] = [];
  /** The number of the first step: a product's way goes on counting from its formula's method. */
  @property({ attribute: false }) firstNumber = 1;
  @property({ attribute: false }) context: EditorContext | null = null;
  /** The key of the step that is open. */
  @state() private openId: string | null = null;
  /** Where the next step is put in; null for the end. */
  @state() private addAt: number | null = null;
  @query('method-add') private adding!: HTMLElementTagNameMap['method-add'] | null;

  /** Opens the step in which a fault's path leads and brings the keyboard to the field there, else to the step. False where it leads to none. */
  async focusFault(path: string): Promise<boolean> {
    const root = faultPathOf(this.faultPath, this.root);
    const index = /^\[(\d+)\]/.exec(path.startsWith(root) ? path.slice(root.length) : '')?.[1];
    const step = index === undefined ? undefined : this.steps[Number(index)];
    if (step === undefined) return false;
    this.openId = step.id;
    await this.updateComplete;
    if (!(await focusWithin(this.renderRoot, path))) this.focusRow(step.id);
    return true;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { context, steps } = this;
    if (context === null) return nothing;
    const place = placeAt(this.faultPath, this.root, context.faults);
    const stretches = wayStretches(steps);
    return html`${this.sums()} ${ownFaults(place)} ${steps.length === 0 ? html`<p class="soft">${METHOD.empty}</p>` : nothing}
      <ol class="steps">
        ${repeat(
          steps,
          (step) => step.id,
          (step, index) => this.item(step, index, context, within(place, [index]), stretches[index] ?? { fromShare: 0, share: 0 }),
        )}
      </ol>
      <method-add
        .steps=${steps}
        .otherKeys=${this.otherKeys}
        .firstNumber=${this.firstNumber}
        .at=${this.addAt ?? steps.length}
        .context=${context}
        @steps-added=${this.stepsAdded}
      ></method-add>`;
  }

  private sums(): TemplateResult | typeof nothing {
    const { steps } = this;
    if (steps.length === 0) return nothing;
    return html`<p class="sums">
      <span>${METHOD.steps(steps.length)}</span>
      <span>${METHOD.lengthOf(lengthText(wayMin(steps)))}</span>
      <span>${METHOD.hands(lengthText(handsMin(steps)))}</span>
      ${steps.some((step) => step.minutesPerPiece !== undefined) ? html`<span>${METHOD.perPiece}</span>` : nothing}
    </p>`;
  }

  private item(
    step: Step,
    index: number,
    context: EditorContext,
    place: FormPlace,
    stretch: { fromShare: number; share: number },
  ): TemplateResult {
    const isOpen = step.id === this.openId;
    const row = { step, number: index + this.firstNumber, isOpen, isFaulty: place.faults.length > 0, stretch, context };
    return html`<li>
      <h3>
        ${stepRow(row, () => {
          this.openId = isOpen ? null : step.id;
        })}
      </h3>
      ${isOpen ? this.open(step, index, context, place) : nothing}
    </li>`;
  }

  private open(step: Step, index: number, context: EditorContext, place: FormPlace): TemplateResult {
    const { steps } = this;
    return html`<div class="open" role="group" aria-label="${METHOD.stepNumber(index + this.firstNumber)}, ${VERBS[step.verb].running}">
      <step-editor .steps=${steps} .index=${index} .firstNumber=${this.firstNumber} .place=${place} .context=${context}></step-editor>
      <div class="buttons">
        <button type="button" class="plain" ?disabled=${index === 0} @click=${() => this.move(index, -1)}>${METHOD.earlier}</button>
        <button type="button" class="plain" ?disabled=${index === steps.length - 1} @click=${() => this.move(index, 1)}>
          ${METHOD.later}
        </button>
        <button type="button" class="plain" ?disabled=${steps.length >= MOST_STEPS} @click=${() => this.double(index)}>
          ${METHOD.duplicate}
        </button>
        <button type="button" class="plain" @click=${() => this.addAfter(index)}>${METHOD.addAfter}</button>
        <button type="button" class="plain" @click=${() => this.takeOut(index)}>${METHOD.remove}</button>
      </div>
    </div>`;
  }

  private stepsAdded(event: StepsAddedEvent): void {
    event.stopPropagation();
    const [first] = event.steps;
    this.addAt = null;
    this.say(withStepsAt(this.steps, event.index, event.steps));
    // One step is looked at next; a run is read as a list first.
    if (first !== undefined) void this.show(first.id, event.steps.length === 1);
  }

  private move(index: number, by: -1 | 1): void {
    const id = this.steps[index]?.id;
    this.say(withStepMoved(this.steps, index, by));
    if (id !== undefined) void this.show(id, true);
  }

  private double(index: number): void {
    const steps = withStepDoubled(this.steps, index, this.otherKeys);
    this.say(steps);
    const made = steps[index + 1];
    if (made !== undefined) void this.show(made.id, true);
  }

  private takeOut(index: number): void {
    const next = this.steps[index + 1] ?? this.steps[index - 1];
    this.say(withoutStep(this.steps, index));
    this.openId = null;
    if (next !== undefined) void this.show(next.id, false);
    else this.adding?.focusFirst();
  }

  private addAfter(index: number): void {
    this.addAt = index + 1;
    void this.updateComplete.then(() => this.adding?.focusFirst());
  }

  /** Once whoever holds the document has put the change in. */
  private async show(id: string, isOpened: boolean): Promise<void> {
    if (isOpened) this.openId = id;
    await Promise.resolve();
    await this.updateComplete;
    this.focusRow(id);
  }

  private focusRow(id: string): void {
    this.renderRoot.querySelector<HTMLElement>(`[data-step="${CSS.escape(id)}"]`)?.focus();
  }

  private say(steps: readonly Step[]): void {
    if (steps !== this.steps) this.dispatchEvent(new DocumentChangedEvent(this.root, steps));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'method-editor': MethodEditor;
  }
}
