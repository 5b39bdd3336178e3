import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { House } from '../../shared/documents/house.ts';
import type { Verb } from '../../shared/documents/method.ts';
import type { WeighLine } from '../../shared/floor/weigh-out.ts';
import '../parts/icon-mark.ts';
import { FloorCommandEvent } from '../phone/phone-events.ts';
import { baseStyles, buttonStyles } from '../phone/phone-styles.ts';
import { VERBS } from '../words/verbs.ts';
import { WEIGH } from '../words/weigh.ts';
import { ViewWantedEvent } from './weigh-events.ts';
import { weightText } from '../parts/weight-text.ts';

/** One line of the list: what and how much, what of it waits or comes out; a tap opens it (`view-wanted`), a tap beside it ticks it off. */
@customElement('list-line')
export class ListLine extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr) var(--target);
        gap: var(--space-4);
        padding: var(--space-2) var(--space-4);
        border-top: 1px solid var(--line);
      }
      .open {
        align-items: stretch;
        min-height: var(--target);
        padding: var(--space-1) var(--space-2);
        border-color: transparent;
        text-align: start;
      }
      .open[aria-current] {
        border-color: var(--ink);
      }
      .open[data-pressed] {
        border-color: var(--call);
      }
      .what {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        align-items: baseline;
        gap: 0 var(--space-3);
      }
      .amount {
        font-size: var(--type-step);
        font-weight: var(--weight-strong);
        font-variant-numeric: tabular-nums;
      }
      .more {
        font-size: var(--type-small);
        font-weight: var(--weight-text);
        color: var(--ink-soft);
      }
      .open[data-pressed] .more {
        color: var(--ink);
      }
      .out {
        font-size: var(--type-text);
        font-weight: var(--weight-strong);
      }
      .tick {
        padding: 0;
      }
      .tick[aria-pressed='true'] {
        background: var(--ink);
        color: var(--paper);
      }
      .tick:disabled[aria-pressed='true'] {
        background: var(--line);
        color: var(--ink);
      }
      .tick[data-pressed] {
        background: var(--pressed);
        color: var(--ink);
      }
      .tick icon-mark {
        font-size: var(--type-verb);
      }
      .empty {
        visibility: hidden;
      }
    `,
  ];

  @property({ attribute: false }) line: WeighLine | null = null;
  @property({ attribute: false }) workpieceId = '';
  @property({ attribute: false }) units: House['units'] = { temperature: 'C', weight: 'g' };
  @property({ attribute: false }) verbs: ReadonlyMap<string, Verb> = new Map();
  @property({ attribute: false }) lot: string | null = null;
  @property({ attribute: false }) notSent = false;
  /** It stands open beside the list. */
  @property({ attribute: false }) isOpen = false;

  protected override render(): TemplateResult | typeof nothing {
    const { line, units } = this;
    if (line === null) return nothing;
    const isIn = line.weighed !== null;
    return html`
      <button
        type="button"
        class="open"
        aria-current=${this.isOpen ? 'true' : nothing}
        @act=${() => this.dispatchEvent(new ViewWantedEvent('line', line.id))}
      >
        <span class="what"><span>${line.name}</span><span class="amount">${weightText(line.grams, units, line.divisionG)}</span></span>
        ${line.takeOutG > 0 ? html`<span class="out">${WEIGH.takeOut(weightText(line.takeOutG, units, line.divisionG))}</span>` : nothing}
        ${this.more(line).map((words) => html`<span class="more">${words}</span>`)}
      </button>
      <button
        type="button"
        class="tick"
        aria-pressed=${isIn}
        aria-label=${WEIGH.tick(line.name)}
        ?disabled=${line.isIn}
        @act=${() => this.turn(line)}
      >
        <icon-mark name="done" class=${isIn ? '' : 'empty'}></icon-mark>
      </button>
    `;
  }

  private more(line: WeighLine): readonly string[] {
    const later = line.portions.flatMap(({ stepId, grams, isHeldBack }) => {
      const verb = stepId === null ? undefined : this.verbs.get(stepId);
      const name = verb === undefined ? null : VERBS[verb].running;
      const weight = weightText(grams, this.units, line.divisionG);
      if (isHeldBack) return [WEIGH.heldBack(weight, name)];
      return stepId === null ? [] : [WEIGH.later(weight, name ?? '')];
    });
    const lots = line.weighed?.lotNumbers.map((lot) => WEIGH.lotOf(lot)) ?? [];
    return [...later, ...(lots.length === 0 ? [] : [lots.join(' · ')]), ...(this.notSent ? [WEIGH.notSent] : [])];
  }

  private turn(line: WeighLine): void {
    const { workpieceId } = this;
    this.dispatchEvent(
      new FloorCommandEvent(
        line.weighed === null
          ? { type: 'weighIngredient', workpieceId, lineId: line.id, grams: line.grams, lotNumbers: this.lot === null ? [] : [this.lot] }
          : { type: 'unweighIngredient', workpieceId, lineId: line.id },
      ),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'list-line': ListLine;
  }
}
