import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import '../parts/role-mark.ts';
import { SHEET_WORDS } from '../words/day-sheet.ts';
import type { DoughLine } from './sheet-bar.ts';
import type { Clash } from './sheet-clashes.ts';
import { SheetOpenedEvent } from './sheet-events.ts';
import { clashText, type SheetContext } from './sheet-texts.ts';

/** So many are shown at once; the rest is a click away. */
const SHOWN_AT_ONCE = 3;

/** Everything that does not go together, in sentences that lead to it. */
@customElement('day-sheet-clashes')
export class DaySheetClashes extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host {
        display: block;
        font-size: var(--type-text);
      }
      summary {
        display: flex;
        align-items: center;
        gap: var(--space-2);
        min-height: var(--target-desk);
        font-weight: var(--weight-strong);
        cursor: pointer;
      }
      summary::after {
        content: '';
        width: 10px;
        height: 10px;
        margin-inline-start: var(--space-1);
        border: solid var(--ink);
        border-width: 0 3px 3px 0;
        rotate: 45deg;
        translate: 0 -3px;
      }
      details[open] summary::after {
        rotate: -135deg;
        translate: 0 3px;
      }
      summary::-webkit-details-marker {
        display: none;
      }
      ul {
        display: grid;
        gap: var(--space-2);
        max-height: 30vh;
        overflow: auto;
        padding: 3px;
      }
      li button.plain {
        width: 100%;
        text-align: start;
        border-style: dashed;
        border-color: var(--lost);
        font-weight: var(--weight-text);
      }
      role-mark {
        width: 24px;
        height: 24px;
      }
    `,
  ];

  @property({ attribute: false }) clashes: readonly Clash[] = [];
  @property({ attribute: false }) lines: readonly DoughLine[] = [];
  @property({ attribute: false }) context: SheetContext | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { clashes, context } = this;
    if (context === null || clashes.length === 0) return nothing;
    const bars = this.lines.flatMap((line) => line.bars);
    return html`<details ?open=${clashes.length <= SHOWN_AT_ONCE}>
      <summary><role-mark level="lost" .heard=${true}></role-mark>${SHEET_WORDS.clashesTitle} (${clashes.length})</summary>
      <ul>
        ${clashes.map(
          (clash) =>
            html`<li><button type="button" class="plain" @click=${() => this.show(clash)}>${clashText(clash, bars, context)}</button></li>`,
        )}
      </ul>
    </details>`;
  }

  /** Leads to the dough that comes last: it is the one that can still give way. */
  private show(clash: Clash): void {
    const key = clash.barKeys.at(-1);
    const line = this.lines.find((candidate) => candidate.bars.some((bar) => bar.key === key));
    if (key !== undefined && line !== undefined) this.dispatchEvent(new SheetOpenedEvent({ kind: 'bar', rowKey: line.key, barKey: key }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'day-sheet-clashes': DaySheetClashes;
  }
}
