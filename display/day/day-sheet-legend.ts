import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { deskStyles } from '../desk/desk-styles.ts';
import '../parts/role-mark.ts';
import { SHEET_WORDS } from '../words/day-sheet.ts';
import { barStyles } from './bar-styles.ts';

const SHAPES = ['hands', 'judged', 'rest', 'bake'] as const;
const STANDINGS = ['done', 'begun', 'planned', 'proposed'] as const;

/** What the shapes, frames and signs of the sheet mean. */
@customElement('day-sheet-legend')
export class DaySheetLegend extends LitElement {
  static override styles = [
    deskStyles,
    barStyles,
    css`
      :host {
        display: block;
        font-size: var(--type-small);
        color: var(--ink);
      }
      ul {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-5);
      }
      li {
        display: flex;
        align-items: center;
        gap: 10px;
        min-height: 34px;
      }
      .swatch {
        position: relative;
        flex: none;
        width: 44px;
        height: 24px;
        margin: 5px;
      }
      .swatch .slack {
        inset: 16px 0 auto 0;
      }
      .swatch .was,
      .swatch .closed,
      .swatch .wrong {
        inset: 0;
      }
      .swatch .pin {
        inset: 0 auto 0 20px;
      }
      .flag {
        flex: none;
        width: 30px;
        height: 22px;
        margin: 5px;
        border: var(--hairline) solid var(--ink);
        border-inline-start-width: 5px;
        border-radius: 0 var(--radius) var(--radius) 0;
      }
      role-mark {
        width: 20px;
        height: 20px;
      }
    `,
  ];

  protected override render(): TemplateResult {
    const { legends, standings } = SHEET_WORDS;
    return html`<ul>
      ${SHAPES.map((shape) => this.line(html`<span class="swatch ${shape} planned"><span class="fill"></span></span>`, legends[shape]))}
      ${STANDINGS.map((standing) => this.line(html`<span class="swatch hands ${standing}"><span class="fill"></span></span>`, standings[standing]))}
      ${(['slack', 'was', 'pin', 'closed'] as const).map((trace) => this.line(html`<span class="swatch"><span class=${trace}></span></span>`, legends[trace]))}
      ${this.line(html`<span class="swatch"><span class="wrong"></span></span><role-mark level="lost" .heard=${true}></role-mark>`, legends.clash)}
      ${this.line(html`<span class="flag"></span>`, legends.order)}
      ${this.line(html`<span class="flag"></span><role-mark level="late" .heard=${true}></role-mark>`, legends.late)}
    </ul>`;
  }

  private line(sign: TemplateResult, words: string): TemplateResult {
    return html`<li>${sign}<span>${words}</span></li>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'day-sheet-legend': DaySheetLegend;
  }
}
