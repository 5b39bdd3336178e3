import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { minutesSchema } from '../../shared/documents/names.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { NUMBERS } from '../words/numbers.ts';
import { nthWords, PANELS } from '../words/panels.ts';
import { VERBS } from '../words/verbs.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';
import './number-choice.ts';
import type { ValueSaidEvent } from './number-choice.ts';
import type { ValueChosenEvent } from './number-stepper.ts';
import { whereChoice, type Whereabouts } from './where-model.ts';

/** Since how many minutes a dough may have been where it is. */
const SINCE_MINUTES = [0, 5, 10, 15, 30] as const;

/** Where the dough really is: first the step, then since when. */
@customElement('where-panel')
export class WherePanel extends CardPanel {
  @state() private chosen: Whereabouts | null = null;
  @state() private minutes: number | null = null;

  override stepBack(): boolean {
    if (this.chosen === null) return false;
    this.chosen = null;
    this.turned();
    return true;
  }

  protected override panel(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    const { chosen } = this;
    if (chosen !== null) return this.since(card, chosen);
    const { ahead, behind } = whereChoice(floor, workpiece);
    return html`
      <h2>${PANELS.whereTitle(card.tag)}</h2>
      <div class="two">${ahead.map((step) => this.stepChip(step))}</div>
      ${
        behind.length === 0
          ? nothing
          : html`<h3>${PANELS.notSoFar}</h3>
              <div class="two">${behind.map((step) => this.stepChip(step))}</div>`
      }
    `;
  }

  private since(card: CardModel, { stepId, verb, nth }: Whereabouts): TemplateResult {
    const { workpieceId } = card.row;
    const { minutes } = this;
    const say = (sinceMin: number): void => this.say({ type: 'sayWhere', workpieceId, stepId, sinceMin });
    return html`
      <h2>${PANELS.sinceTitle(card.tag, nthWords(VERBS[verb].running, nth))}</h2>
      <number-choice
        wide
        .values=${SINCE_MINUTES}
        .value=${this.minutes ?? SINCE_MINUTES[1]}
        .text=${PANELS.since}
        label=${NUMBERS.minutesLabel}
        .most=${minutesSchema.maxValue ?? 0}
        @value-said=${(event: ValueSaidEvent) => say(event.value)}
        @value-chosen=${(event: ValueChosenEvent) => (this.minutes = event.value)}
      ></number-choice>
      ${minutes === null ? nothing : this.doing(PANELS.since(minutes), true, () => say(minutes))}
    `;
  }

  private stepChip(step: Whereabouts): TemplateResult {
    return this.chip(nthWords(VERBS[step.verb].running, step.nth), () => {
      this.chosen = step;
      this.minutes = null;
      this.turned();
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'where-panel': WherePanel;
  }
}
