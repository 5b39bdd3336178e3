import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { MORE_TIME_MINUTES, type ClientCommand } from '../../shared/floor/commands.ts';
import { isToBeDiscarded, promptWords } from '../parts/row-verb.ts';
import { PAST_LIMIT } from '../words/prompts.ts';
import { MINUTES_UNIT, minutesMoreWords, PHONE } from '../words/phone.ts';
import { VERBS } from '../words/verbs.ts';
import { otherButton, usualButtons } from './card-buttons.ts';
import type { CardModel } from './card-model.ts';
import { FloorCommandEvent, PanelWantedEvent, type Panel } from './phone-events.ts';
import { baseStyles, buttonRowStyles, buttonStyles } from './phone-styles.ts';

/** The card's buttons, in reach of the thumb: what is done, large, and beside it what is likely next. */
@customElement('card-actions')
export class CardActions extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    buttonRowStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
        padding: var(--space-3) var(--space-4);
      }
      .row > button:nth-child(4) {
        font-size: var(--type-text);
      }
    `,
  ];

  @property({ attribute: false }) card: CardModel | null = null;
  @property({ attribute: false }) chosenSlotIds: readonly string[] = [];

  protected override render(): TemplateResult | typeof nothing {
    const { card } = this;
    if (card === null) return nothing;
    if (isToBeDiscarded(card.row)) return this.pastLimit(card);
    return html`${this.doneButton(card)}
      <div class="row">
        ${card.row.prompt === null ? nothing : this.endsButton(card)}
        ${card.isJudging ? this.moreMinutes(card) : usualButtons(this, card)}${otherButton(this)}
      </div>`;
  }

  private doneButton(card: CardModel): TemplateResult {
    const { tag } = card;
    const { role, prompt, stepId, workpieceId } = card.row;
    if (prompt !== null) {
      const { phase } = prompt;
      return html`<button
        type="button"
        class="big ${role === 'running' ? '' : 'filled'}"
        @act=${() => this.say({ type: 'answerPrompt', workpieceId, stepId, phase })}
      >
        <span>${tag} ${promptWords(prompt).done}</span>
      </button>`;
    }
    const done = VERBS[card.action.verb].done;
    const needsSlots = card.load !== null && this.chosenSlotIds.length === 0;
    return html`
      <button type="button" class="big ${role === 'running' ? '' : 'filled'}" ?disabled=${needsSlots} @act=${() => this.finish(card)}>
        ${card.isJudging ? html`<span>${tag} ${PHONE.passes}</span><small>${done}</small>` : html`<span>${tag} ${done}</span>`}
      </button>
    `;
  }

  /** Nothing uses it: it is discarded, or the person responsible decides. Each takes a second touch. */
  private pastLimit({ tag }: CardModel): TemplateResult {
    const opens = (panel: Panel, label: string, look: string): TemplateResult =>
      html`<button type="button" class=${look} @act=${() => this.dispatchEvent(new PanelWantedEvent(panel))}>${label}</button>`;
    return html`${opens('discard', `${tag}: ${PAST_LIMIT.discard}`, 'big filled')}
      <div class="row">${opens('decideHolding', PAST_LIMIT.decide, 'middling')}${otherButton(this)}</div>`;
  }

  /** Out before its phases are over: the dough decides. */
  private endsButton(card: CardModel): TemplateResult {
    return html`<button type="button" class="middling" @act=${() => this.finish(card)}>${VERBS[card.action.verb].done}</button>`;
  }

  private moreMinutes(card: CardModel): readonly TemplateResult[] {
    return MORE_TIME_MINUTES.map(
      (minutes) => html`
        <button type="button" class="middling" @act=${() => this.say({ type: 'giveMoreTime', ...keyOf(card), minutes })}>
          <span class="number">${minutesMoreWords(minutes)}</span><small>${MINUTES_UNIT}</small>
        </button>
      `,
    );
  }

  private finish(card: CardModel): void {
    this.say({ type: 'finishStep', ...keyOf(card), ...(card.load === null ? {} : { slotIds: [...this.chosenSlotIds] }) });
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
    'card-actions': CardActions;
  }
}
