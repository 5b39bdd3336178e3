import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { giveMoreTime, holdWorkpiece } from '../../shared/floor/commands.ts';
import { NUMBERS } from '../words/numbers.ts';
import { MINUTES_UNIT, minutesMoreWords, PHONE } from '../words/phone.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';
import './number-choice.ts';
import type { ValueSaidEvent } from './number-choice.ts';
import type { ValueChosenEvent } from './number-stepper.ts';

/** Minutes beyond those that the card offers with one touch. */
const MORE_MINUTES = [3, 7, 10, 15, 20, 30, 45, 60] as const;
const HOLD_MINUTES = [15, 30, 60] as const;

/** How many minutes more, or for how many the call is set aside, where the usual ones will not do. */
@customElement('minutes-panel')
export class MinutesPanel extends CardPanel {
  @state() private more: number | null = null;
  @state() private hold: number | null = null;

  protected override panel(card: CardModel): TemplateResult {
    const give = (minutes: number): void => this.say({ type: 'giveMoreTime', ...this.onStep(card), minutes });
    const hold = (minutes: number): void => this.say({ type: 'holdWorkpiece', ...this.onStep(card), minutes });
    return html`
      <h2>${NUMBERS.minutesTitle(card.tag)}</h2>
      <number-choice
        label=${`${PHONE.moreTime}, ${MINUTES_UNIT}`}
        .values=${MORE_MINUTES}
        .value=${this.more ?? MORE_MINUTES[2]}
        .text=${minutesMoreWords}
        .least=${giveMoreTime.shape.minutes.minValue ?? 1}
        .most=${giveMoreTime.shape.minutes.maxValue ?? 1}
        @value-said=${(event: ValueSaidEvent) => give(event.value)}
        @value-chosen=${(event: ValueChosenEvent) => (this.more = event.value)}
      ></number-choice>
      ${this.more === null ? nothing : this.saying(NUMBERS.giveMinutes(this.more), this.more, give)}
      <number-choice
        label=${`${PHONE.hold}, ${MINUTES_UNIT}`}
        .values=${HOLD_MINUTES}
        .value=${this.hold ?? HOLD_MINUTES[0]}
        .least=${holdWorkpiece.shape.minutes.minValue ?? 1}
        .most=${holdWorkpiece.shape.minutes.maxValue ?? 1}
        @value-said=${(event: ValueSaidEvent) => hold(event.value)}
        @value-chosen=${(event: ValueChosenEvent) => (this.hold = event.value)}
      ></number-choice>
      ${this.hold === null ? nothing : this.saying(NUMBERS.holdMinutes(this.hold), this.hold, hold)}
    `;
  }

  private saying(label: string, minutes: number, say: (minutes: number) => void): TemplateResult {
    return this.doing(label, true, () => say(minutes));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'minutes-panel': MinutesPanel;
  }
}
