import { html, LitElement, type TemplateResult } from 'lit';
import { property } from 'lit/decorators.js';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { weightText } from '../parts/weight-text.ts';
import type { CardModel } from './card-model.ts';
import { unitsOf } from './floor-facts.ts';
import './number-stepper.ts';
import type { ValueChosenEvent } from './number-stepper.ts';
import { FloorCommandEvent, NewlyShownEvent } from './phone-events.ts';
import { baseStyles, buttonRowStyles, buttonStyles } from './phone-styles.ts';
import { panelStyles } from './panel-styles.ts';
import { weightField } from './weight-field.ts';

/** What all panels of a dough's card have: the dough on its floor, the house's time, and a way to say something. */
export abstract class CardPanel extends LitElement {
  static override styles = [baseStyles, buttonStyles, buttonRowStyles, panelStyles];

  @property({ attribute: false }) card: CardModel | null = null;
  @property({ attribute: false }) floor: FloorState | null = null;
  @property({ attribute: false }) nowMs = 0;
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) unit: 'C' | 'F' = 'C';

  /** One step back within the panel. False where it has none, and closes instead. */
  stepBack(): boolean {
    return false;
  }

  protected abstract panel(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult;

  protected override render(): TemplateResult {
    const { card, floor } = this;
    const workpiece = card === null ? undefined : floor?.workpieces[card.row.workpieceId];
    return card === null || floor === null || workpiece === undefined ? html`` : this.panel(card, floor, workpiece);
  }

  /** A weight as this house reads it. */
  protected weightText(grams: number): string {
    return weightText(grams, unitsOf(this.floor));
  }

  /** A weight to be stepped to or typed in the house's unit; `chosen` is told grams. */
  protected weightStepper(
    label: string,
    grams: number,
    { stepG, leastG = 0, mostG }: { readonly stepG: number; readonly leastG?: number; readonly mostG: number },
    chosen: (grams: number) => void,
  ): TemplateResult {
    const field = weightField(unitsOf(this.floor), stepG);
    return html`<number-stepper
      label=${label}
      unit=${field.unit}
      .value=${field.shown(grams)}
      .step=${field.step}
      .digits=${field.digits}
      .least=${field.shown(leastG)}
      .most=${field.shown(mostG)}
      @value-chosen=${(event: ValueChosenEvent) => chosen(Math.min(mostG, field.gramsOf(event.value)))}
    ></number-stepper>`;
  }

  /** The step that the card is about. */
  protected onStep(card: CardModel): { workpieceId: string; stepId: string } {
    return { workpieceId: card.row.workpieceId, stepId: card.action.id };
  }

  protected say(command: ClientCommand): void {
    this.dispatchEvent(new FloorCommandEvent(command));
  }

  /** The buttons are about something else now: the thumb cannot have meant them yet. */
  protected turned(): void {
    this.dispatchEvent(new NewlyShownEvent());
  }

  protected chip(label: string, act: () => void, pressed?: boolean): TemplateResult {
    return pressed === undefined
      ? html`<button type="button" class="middling" @act=${act}>${label}</button>`
      : html`<button type="button" class="middling" aria-pressed=${pressed} @act=${act}>${label}</button>`;
  }

  protected doing(label: string, isPossible: boolean, act: () => void): TemplateResult {
    return html`<button type="button" class="middling filled" ?disabled=${!isPossible} @act=${act}>${label}</button>`;
  }
}
