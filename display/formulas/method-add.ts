import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Step, Verb } from '../../shared/documents/method.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { numberField, plainMeasure, type Field } from '../desk/field.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import '../desk/desk-field.ts';
import { UNITS } from '../words/unit-symbols.ts';
import { METHOD } from '../words/method.ts';
import { VERBS } from '../words/verbs.ts';
import type { EditorContext } from './editor-context.ts';
import { formStyles } from './form-styles.ts';
import { StepsAddedEvent } from './method-events.ts';
import { isVerb, VERB_CHOICES } from './step-fields.ts';
import { MOST_IN_A_RUN, stepsOfRun, type StepRun } from './step-runs.ts';
import { usualStep, type StepSurroundings } from './usual-step.ts';

type RunKind = StepRun['kind'];

const RUNS: Readonly<Record<RunKind, string>> = { mixing: METHOD.runMixing, folds: METHOD.runFolds, turns: METHOD.runTurns };
/** Most steps that a method has. */
const MOST_STEPS = 40;
const DAY_MIN = 24 * 60;
/** What a run begins with until somebody says otherwise: common practice. */
const FIRST = { count: 3, minutes: 30 } as const;

/** Adds steps to a method, at a place in the order: one by its verb, or a usual run of several. */
@customElement('method-add')
export class MethodAdd extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    formStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
        padding: var(--space-4);
        border: var(--hairline) solid var(--line);
        border-radius: var(--radius);
        background: var(--floor);
      }
      .row {
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        gap: var(--space-3) var(--space-4);
      }
      .row desk-field {
        flex: 1 1 220px;
      }
      .row desk-field.short {
        flex: 0 1 150px;
      }
    `,
  ];

  @property({ attribute: false }) steps: readonly Step[] = [];
  @property({ attribute: false }) otherKeys: readonly string[] = [];
  /** The number of the first step. */
  @property({ attribute: false }) firstNumber = 1;
  /** Where a step is added unless said otherwise: before the one at this index. */
  @property({ attribute: false }) at = 0;
  @property({ attribute: false }) context: EditorContext | null = null;
  @state() private verb: Verb = 'bulk';
  @state() private run: RunKind = 'mixing';
  @state() private count: number = FIRST.count;
  @state() private minutes: number = FIRST.minutes;
  @state() private index = 0;
  @query('desk-field') private firstField!: HTMLElementTagNameMap['desk-field'] | null;

  /** Brings the keyboard to the first choice. */
  focusFirst(): void {
    this.firstField?.renderRoot.querySelector<HTMLElement>('#control')?.focus();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('at')) this.index = this.at;
    this.index = Math.min(this.index, this.steps.length);
  }

  protected override render(): TemplateResult | typeof nothing {
    const { context } = this;
    if (context === null) return nothing;
    const isFull = this.steps.length >= MOST_STEPS;
    return html`<h3>${METHOD.addTitle}</h3>
      <div class="row" @field-changed=${this.fieldChanged}>
        <desk-field .field=${VERB} .value=${this.verb}></desk-field>
        <desk-field .field=${this.whereField()} .value=${String(this.index)}></desk-field>
        <button type="button" class="plain filled" ?disabled=${isFull} @click=${() => this.addOne(context)}>${METHOD.addStep}</button>
      </div>
      <div class="row" @field-changed=${this.fieldChanged}>
        <desk-field .field=${RUN} .value=${this.run}></desk-field>
        ${this.runNumbers()}
        <button type="button" class="plain" ?disabled=${isFull || !this.isRunRight} @click=${() => this.addRun(context)}>
          ${METHOD.addRun}
        </button>
      </div>
      <p class="soft">${METHOD.runNote}</p>`;
  }

  private whereField(): Field {
    const after = this.steps.map(
      ({ verb }, index) => [String(index + 1), METHOD.after(index + this.firstNumber, VERBS[verb].running)] as const,
    );
    return { key: 'index', label: METHOD.where, kind: 'one', options: Object.fromEntries([['0', METHOD.first], ...after]) };
  }

  private runNumbers(): TemplateResult | typeof nothing {
    if (this.run === 'mixing') return nothing;
    const isFolds = this.run === 'folds';
    const count = numberField('count', isFolds ? METHOD.folds : METHOD.turns, plainMeasure(), 1, MOST_IN_A_RUN, 'whole');
    const minutes = numberField('minutes', isFolds ? METHOD.restMin : METHOD.chillMin, plainMeasure(UNITS.minutes), 0, DAY_MIN);
    return html`<desk-field class="short" .field=${count} .value=${this.count} .faults=${isCount(this.count) ? [] : ['']}></desk-field>
      <desk-field class="short" .field=${minutes} .value=${this.minutes} .faults=${isMinutes(this.minutes) ? [] : ['']}></desk-field>`;
  }

  private get isRunRight(): boolean {
    return this.run === 'mixing' || (isCount(this.count) && isMinutes(this.minutes));
  }

  private fieldChanged(event: FieldChangedEvent): void {
    // What is to be added is nobody's document yet.
    event.stopPropagation();
    const { key, value } = event;
    switch (key) {
      case 'verb':
        if (typeof value === 'string' && isVerb(value)) this.verb = value;
        break;
      case 'run':
        this.run = value as RunKind;
        break;
      case 'index':
        this.index = Number(value);
        break;
      case 'count':
        this.count = Number(value);
        break;
      case 'minutes':
        this.minutes = Number(value);
        break;
    }
  }

  private addOne({ kitchen }: EditorContext): void {
    this.say([usualStep(this.verb, this.index, this.surroundings(kitchen))]);
  }

  private addRun({ kitchen }: EditorContext): void {
    const { count, minutes } = this;
    const run: StepRun =
      this.run === 'mixing'
        ? { kind: 'mixing' }
        : this.run === 'folds'
          ? { kind: 'folds', count, restMin: minutes }
          : { kind: 'turns', count, chillMin: minutes };
    this.say(stepsOfRun(run, this.index, this.surroundings(kitchen)));
  }

  private surroundings(kitchen: StepSurroundings['kitchen']): StepSurroundings {
    return { kitchen, steps: this.steps, otherKeys: this.otherKeys };
  }

  private say(steps: readonly Step[]): void {
    const at = this.index;
    this.index = at + steps.length;
    this.dispatchEvent(new StepsAddedEvent(at, steps));
  }
}

const VERB: Field = { key: 'verb', label: METHOD.what, kind: 'one', options: {}, groups: VERB_CHOICES };
const RUN: Field = { key: 'run', label: METHOD.runs, kind: 'one', options: RUNS };

function isCount(count: number): boolean {
  return Number.isInteger(count) && count >= 1 && count <= MOST_IN_A_RUN;
}

function isMinutes(minutes: number): boolean {
  return minutes >= 0 && minutes <= DAY_MIN;
}

declare global {
  interface HTMLElementTagNameMap {
    'method-add': MethodAdd;
  }
}
