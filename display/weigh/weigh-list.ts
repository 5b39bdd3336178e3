import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { House } from '../../shared/documents/house.ts';
import type { Verb } from '../../shared/documents/method.ts';
import type { WeighOut, WeighPart } from '../../shared/floor/weigh-out.ts';
import '../parts/icon-mark.ts';
import { baseStyles, buttonStyles } from '../phone/phone-styles.ts';
import { WEIGH } from '../words/weigh.ts';
import './list-line.ts';
import { weighStyles } from './weigh-styles.ts';
import { weightText } from '../parts/weight-text.ts';

/** All lines of a weigh-out, part by part, with what is in so far. A line opens with a tap, and is ticked off beside it. */
@customElement('weigh-list')
export class WeighList extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    weighStyles,
    css`
      :host {
        padding-inline: 0;
      }
      h2,
      .part {
        padding-inline: var(--space-4);
      }
      h2 {
        font-size: var(--type-title);
      }
      .part {
        display: flex;
        flex-wrap: wrap;
        justify-content: space-between;
        gap: 0 var(--space-4);
        margin-block: var(--space-4) var(--space-2);
        font-size: var(--type-text);
        font-weight: var(--weight-strong);
      }
      .part span {
        font-weight: var(--weight-text);
        color: var(--ink-soft);
        font-variant-numeric: tabular-nums;
      }
      h3 {
        margin: 0;
        font: inherit;
      }
    `,
  ];

  @property({ attribute: false }) out: WeighOut | null = null;
  @property({ attribute: false }) workpieceId = '';
  @property({ attribute: false }) units: House['units'] = { temperature: 'C', weight: 'g' };
  @property({ attribute: false }) verbs: ReadonlyMap<string, Verb> = new Map();
  /** Lines with a tap that has not been sent. */
  @property({ attribute: false }) unsentIds: ReadonlySet<string> = new Set();
  /** The lot that a line would be ticked off with; null for none. */
  @property({ attribute: false }) lotOf: (lineId: string) => string | null = () => null;
  /** The line that stands open beside the list; null where none does. */
  @property({ attribute: false }) openId: string | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { out } = this;
    if (out === null) return nothing;
    return html`<h2 tabindex="-1">${WEIGH.listTitle}</h2>
      ${out.parts.map((part) => this.bowl(part))}`;
  }

  private bowl(part: WeighPart): TemplateResult {
    const { units } = this;
    return html`
      <div class="part">
        <h3>${part.isDough ? part.name : WEIGH.ownBowl(part.name)}</h3>
        <span>${WEIGH.inSoFar(weightText(part.inBowlG, units), weightText(part.totalG, units))}</span>
      </div>
      <ul>
        ${part.lines.map(
          (line) =>
            html`<li>
              <list-line
                .line=${line}
                .workpieceId=${this.workpieceId}
                .units=${units}
                .verbs=${this.verbs}
                .lot=${this.lotOf(line.id)}
                .notSent=${this.unsentIds.has(line.id)}
                .isOpen=${line.id === this.openId}
              ></list-line>
            </li>`,
        )}
      </ul>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'weigh-list': WeighList;
  }
}
