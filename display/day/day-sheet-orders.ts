import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { deskStyles } from '../desk/desk-styles.ts';
import { place, px } from '../parts/place.ts';
import '../parts/role-mark.ts';
import { textWidthPx } from '../parts/text-width.ts';
import { SHEET_WORDS } from '../words/day-sheet.ts';
import { SheetOpenedEvent } from './sheet-events.ts';
import { axisPx, leftPx, TEXT_PX, type Scale } from './sheet-lengths.ts';
import type { OrderMark } from './sheet-orders.ts';
import { orderMarkText, type SheetContext } from './sheet-texts.ts';
import { clockText } from '../parts/clock-text.ts';

const FLAG_PX = 32;
const GAP_PX = 8;
const SIGN_PX = 24;
const PADDING_PX = 20;

/** A mark with its place: how far right, in which line, and what it says. */
interface Flag {
  readonly mark: OrderMark;
  readonly leftPx: number;
  readonly line: number;
  readonly text: string;
  /** It stands left of its instant, for want of room to the right. */
  readonly isLeft: boolean;
}

/** The orders of the day, each instant's a flag on the axis. */
@customElement('day-sheet-orders')
export class DaySheetOrders extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        position: relative;
        display: block;
        border-top: var(--hairline) solid var(--ink-soft);
        font-size: var(--type-small);
        line-height: 1;
      }
      h3 {
        position: sticky;
        left: 0;
        z-index: 3;
        display: flex;
        align-items: center;
        height: calc(100% + 2px);
        margin-top: -2px;
        padding-inline: var(--space-2);
        border-top: var(--hairline) solid var(--ink-soft);
        border-inline-end: var(--rule) solid var(--ink);
        background: var(--paper);
        font-size: var(--type-small);
        font-weight: var(--weight-strong);
      }
      ul {
        position: absolute;
        inset-block: 0;
      }
      button {
        appearance: none;
        position: absolute;
        display: flex;
        align-items: center;
        gap: 6px;
        height: 28px;
        padding: 0 6px;
        border: var(--hairline) solid var(--ink);
        border-inline-start-width: 5px;
        border-radius: 0 var(--radius) var(--radius) 0;
        background: var(--paper);
        color: var(--ink);
        font: inherit;
        white-space: nowrap;
        cursor: pointer;
      }
      button.left {
        border-inline-width: 2px 5px;
        border-radius: var(--radius) 0 0 var(--radius);
      }
      button.late {
        font-weight: var(--weight-strong);
      }
      button:hover,
      button[aria-pressed='true'] {
        background: var(--chosen);
      }
      button:focus-visible {
        z-index: 2;
        outline-offset: 2px;
      }
      role-mark {
        width: 18px;
        height: 18px;
      }
    `,
  ];

  @property({ attribute: false }) marks: readonly OrderMark[] = [];
  @property({ attribute: false }) scale: Scale | null = null;
  @property({ attribute: false }) context: SheetContext | null = null;
  /** The instant whose orders are open. */
  @property({ attribute: false }) openedMs: number | null = null;

  /** Puts the keyboard on the mark of an instant. */
  focusOn(readyMs: number): void {
    this.renderRoot.querySelector<HTMLButtonElement>(`button[data-ready="${readyMs}"]`)?.focus();
  }

  protected override render(): TemplateResult | typeof nothing {
    const { scale, context, marks } = this;
    if (scale === null || context === null || marks.length === 0) return nothing;
    const flags = flagsOf(marks, scale, context);
    const lines = Math.max(...flags.map((flag) => flag.line)) + 1;
    return html`<div ${place({ height: px(lines * FLAG_PX + 6) })}>
      <h3 ${place({ width: px(scale.columnPx) })}>${SHEET_WORDS.orders}</h3>
      <ul ${place({ left: px(scale.columnPx) })}>
        ${flags.map((flag) => html`<li>${this.flag(flag)}</li>`)}
      </ul>
    </div>`;
  }

  private flag({ mark, leftPx: left, line, text, isLeft }: Flag): TemplateResult {
    return html`<button
      type="button"
      class="${mark.isLate ? 'late' : ''} ${isLeft ? 'left' : ''}"
      data-ready=${mark.readyMs}
      aria-pressed=${this.openedMs === mark.readyMs}
      @click=${() => this.dispatchEvent(new SheetOpenedEvent(this.openedMs === mark.readyMs ? null : { kind: 'orders', readyMs: mark.readyMs }))}
      ${place({ left: px(left), top: px(line * FLAG_PX + 4) })}
    >
      ${mark.isLate ? html`<role-mark level="late" .heard=${true}></role-mark>` : nothing}${text}
    </button>`;
  }
}

/** Lays flags in as few lines as they take without lying over one another; long texts shrink to how many orders there are. */
function flagsOf(marks: readonly OrderMark[], scale: Scale, context: SheetContext): readonly Flag[] {
  const endsPx: number[] = [];
  const roomPx = axisPx(scale);
  return marks.map((mark) => {
    const whole = orderMarkText(mark, context);
    const text = textWidthPx(whole, TEXT_PX) > roomPx / 2 ? clockText(mark.readyMs, context.zone) : whole;
    const wide = textWidthPx(text, TEXT_PX) + PADDING_PX + (mark.isLate ? SIGN_PX : 0);
    const atPx = leftPx(scale, mark.readyMs);
    const isLeft = atPx + wide > roomPx;
    const from = isLeft ? Math.max(0, atPx - wide) : atPx;
    const found = endsPx.findIndex((end) => end + GAP_PX <= from);
    const line = found === -1 ? endsPx.length : found;
    endsPx[line] = from + wide;
    return { mark, leftPx: from, line, text, isLeft };
  });
}

declare global {
  interface HTMLElementTagNameMap {
    'day-sheet-orders': DaySheetOrders;
  }
}
