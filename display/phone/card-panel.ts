import { html, LitElement, type TemplateResult } from 'lit';
import { property } from 'lit/decorators.js';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import type { CardModel } from './card-model.ts';
import { FloorCommandEvent, NewlyShownEvent } from './phone-events.ts';
import { baseStyles, buttonRowStyles, buttonStyles } from './phone-styles.ts';
import { panelStyles } from './panel-styles.ts';

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
