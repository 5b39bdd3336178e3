import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { WeighLine } from '../../shared/floor/weigh-out.ts';
import '../parts/icon-mark.ts';
import { FloorCommandEvent } from '../phone/phone-events.ts';
import { baseStyles, buttonRowStyles, buttonStyles } from '../phone/phone-styles.ts';
import { WEIGH } from '../words/weigh.ts';
import { ShortWantedEvent, ViewWantedEvent } from './weigh-events.ts';
import { atStartG } from './weigh-model.ts';
import { actionStyles } from './action-styles.ts';

/** What a thumb does about the line at hand: tick it off, or take that back; the lines around it; the list; too little of it. */
@customElement('line-actions')
export class LineActions extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    buttonRowStyles,
    actionStyles,
    css`
      .row > button.step {
        font-size: var(--type-verb);
      }
    `,
  ];

  @property({ attribute: false }) workpieceId = '';
  @property({ attribute: false }) line: WeighLine | null = null;
  @property({ attribute: false }) lot: string | null = null;
  @property({ attribute: false }) beforeId: string | null = null;
  @property({ attribute: false }) nextId: string | null = null;
  /** Whether the list stands beside it already. */
  @property({ type: Boolean }) besideList = false;
  /** Whether the batch can still be scaled. */
  @property({ type: Boolean }) canScale = false;

  protected override render(): TemplateResult | typeof nothing {
    const { line } = this;
    if (line === null) return nothing;
    return html`
      ${this.main(line)}
      <div class="row">
        ${this.step(this.beforeId, 'back', WEIGH.before)}
        ${this.besideList ? nothing : html`<button type="button" class="middling" @act=${() => this.dispatchEvent(new ViewWantedEvent('list'))}>${WEIGH.list}</button>`}
        <button type="button" class="middling" ?disabled=${!this.canScale} @act=${() => this.dispatchEvent(new ShortWantedEvent())}>
          ${WEIGH.short}
        </button>
        ${this.step(this.nextId, 'next', WEIGH.next)}
      </div>
    `;
  }

  private main(line: WeighLine): TemplateResult {
    if (line.weighed !== null && line.takeOutG === 0)
      return html`<button type="button" class="big" ?disabled=${line.isIn} @act=${() => this.untick(line)}>${WEIGH.notIn}</button>`;
    const words = line.takeOutG > 0 ? WEIGH.takenOut : atStartG(line) > 0 ? WEIGH.inBowl : WEIGH.beside;
    return html`<button type="button" class="big filled" ?disabled=${line.isIn} @act=${() => this.tick(line)}>
      <span class="with-icon"><icon-mark name="done"></icon-mark>${words}</span>
    </button>`;
  }

  private step(lineId: string | null, icon: 'back' | 'next', words: string): TemplateResult {
    return html`<button
      type="button"
      class="middling step"
      aria-label=${words}
      ?disabled=${lineId === null}
      @act=${() => this.dispatchEvent(new ViewWantedEvent('line', lineId))}
    >
      <icon-mark name=${icon}></icon-mark>
    </button>`;
  }

  private tick(line: WeighLine): void {
    const kept = line.weighed?.lotNumbers ?? [];
    const lotNumbers = this.lot === null ? [...kept] : [this.lot];
    this.dispatchEvent(
      new FloorCommandEvent({ type: 'weighIngredient', workpieceId: this.workpieceId, lineId: line.id, grams: line.grams, lotNumbers }),
    );
  }

  private untick(line: WeighLine): void {
    this.dispatchEvent(new FloorCommandEvent({ type: 'unweighIngredient', workpieceId: this.workpieceId, lineId: line.id }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'line-actions': LineActions;
  }
}
