import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import { NUMBERS } from '../words/numbers.ts';
import { PANELS } from '../words/panels.ts';
import type { CardModel } from './card-model.ts';
import { FloorCommandEvent, PanelWantedEvent, type Panel } from './phone-events.ts';
import { baseStyles, buttonRowStyles, buttonStyles } from './phone-styles.ts';
import { canHelp } from './work-model.ts';

/** What can be said at this very step and no other, above the card's own buttons, which keep their places. */
@customElement('step-asides')
export class StepAsides extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    buttonRowStyles,
    css`
      :host {
        display: block;
      }
      button {
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property({ attribute: false }) card: CardModel | null = null;
  /** Where this phone is; null where it is nowhere fixed. */
  @property({ attribute: false }) stationId: string | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { card } = this;
    if (card === null) return nothing;
    const buttons = this.atThisStep(card);
    return buttons.length === 0 ? nothing : html`<div class="row">${buttons}</div>`;
  }

  /** At most three, so that each stays wide enough for its words. */
  private atThisStep(card: CardModel): readonly TemplateResult[] {
    const { leaveOut } = card.row;
    const buttons: TemplateResult[] = [];
    if (leaveOut !== null && card.row.phase !== 'working')
      buttons.push(this.small(leaveOut, () => this.say({ type: 'skipStep', ...keyOf(card), reason: leaveOut })));
    if (canHelp(card.row, this.stationId)) buttons.push(this.small(PANELS.onItToo, () => this.say({ type: 'helpStep', ...keyOf(card) })));
    if (card.asksReading) buttons.push(this.opens(NUMBERS.temperature, 'temperature'));
    if (card.canFeed) buttons.push(this.opens(PANELS.feed, 'feed'));
    if (card.canCount) buttons.push(this.opens(PANELS.count, 'count'));
    if (card.canTellHowFar) buttons.push(this.opens(PANELS.howFar, 'howFar'));
    if (card.takes.length > 0 || card.heldBackG !== null) buttons.push(this.opens(PANELS.inputs, 'inputs'));
    return buttons.slice(0, 3);
  }

  private opens(label: string, panel: Panel): TemplateResult {
    return this.small(label, () => this.dispatchEvent(new PanelWantedEvent(panel)));
  }

  private small(label: string, act: () => void): TemplateResult {
    return html`<button type="button" class="middling" @act=${act}>${label}</button>`;
  }

  private say(command: ClientCommand): void {
    this.dispatchEvent(new FloorCommandEvent(command));
  }
}

function keyOf(card: CardModel): { workpieceId: string; stepId: string } {
  return { workpieceId: card.row.workpieceId, stepId: card.action.id };
}

declare global {
  interface HTMLElementTagNameMap {
    'step-asides': StepAsides;
  }
}
