import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { deskStyles } from '../desk/desk-styles.ts';
import { place, px, type Placement } from '../parts/place.ts';
import '../parts/role-mark.ts';
import { fittingText, textWidthPx } from '../parts/text-width.ts';
import { slackMs, type Bar } from './sheet-bar.ts';
import { barStyles } from './bar-styles.ts';
import type { Clash } from './sheet-clashes.ts';
import type { Closed } from './sheet-closed.ts';
import { SheetOpenedEvent, type Opened } from './sheet-events.ts';
import { BAR_PX, BAR_TOP_PX, firstFitting, LANE_PX, leftPx, STRIP_PX, TEXT_PX, widthPx, type Scale } from './sheet-lengths.ts';
import type { PlacedBar, SheetRow } from './sheet-rows.ts';
import { barLabel, barTitle, clashChipText, headLabel, roomText, thingText, verbText, type SheetContext } from './sheet-texts.ts';

/** The sign before the words of a clash, and the gaps round both, in px. */
const CHIP_EXTRA_PX = 40;
/** What stands round a name at the head of a row, in px. */
const HEAD_EXTRA_PX = 26;
const INDENT_PX = 14;
/** What is drawn wider than this keeps its name in view while it is scrolled along. In px. */
const LONG_PX = 320;
/** What is drawn narrower than this lies above its neighbours, or they would be hit in its place. In px. */
const SHORT_PX = 9;

/** A row of the sheet: its head in the fixed column, its steps on the axis. */
@customElement('day-sheet-row')
export class DaySheetRow extends LitElement {
  static override styles = [
    deskStyles,
    barStyles,
    css`
      :host {
        position: relative;
        display: block;
        border-top: 1px solid var(--line);
        font-size: var(--type-small);
        line-height: 1;
      }
      :host([first]) {
        border-top: var(--hairline) solid var(--ink-soft);
      }
      h3 {
        position: sticky;
        left: 0;
        z-index: 4;
        /* Over the line between rows too, or NOW would show through it. */
        height: calc(100% + 1px);
        margin-top: -1px;
        border-top: 1px solid var(--line);
        border-inline-end: var(--rule) solid var(--ink);
        background: var(--paper);
        font-size: var(--type-small);
        font-weight: var(--weight-text);
      }
      :host([first]) h3 {
        height: calc(100% + 2px);
        margin-top: -2px;
        border-top: var(--hairline) solid var(--ink-soft);
      }
      .head {
        appearance: none;
        display: flex;
        align-items: center;
        width: 100%;
        height: 100%;
        padding: 0 var(--space-2);
        border: none;
        background: none;
        color: var(--ink);
        font: inherit;
        text-align: start;
        white-space: nowrap;
        cursor: pointer;
      }
      .shown {
        display: flex;
        align-items: baseline;
        gap: var(--space-2);
      }
      .head:hover,
      .head[aria-pressed='true'] {
        background: var(--chosen);
      }
      .head:focus-visible {
        outline-offset: -4px;
      }
      .tag {
        font-size: var(--type-button);
        font-weight: var(--weight-strong);
      }
      .small .tag {
        font-size: var(--type-text);
        font-weight: var(--weight-word);
      }
      .name {
        font-weight: var(--weight-word);
      }
      .small .name {
        font-weight: var(--weight-text);
      }
      ol {
        position: absolute;
        inset-block: 0;
        margin: 0;
        padding: 0;
        list-style: none;
      }
      .bar {
        appearance: none;
        position: absolute;
        display: block;
        padding: 0;
        border: none;
        background: none;
        color: var(--ink);
        font: inherit;
        font-weight: var(--weight-word);
        text-align: start;
        white-space: nowrap;
        cursor: pointer;
      }
      .bar.short {
        z-index: 1;
      }
      .bar:focus-visible {
        z-index: 3;
        outline-offset: 3px;
      }
      .bar[aria-pressed='true'] {
        z-index: 2;
        box-shadow:
          0 0 0 3px var(--paper),
          0 0 0 6px var(--call);
      }
      /* Above the fill. */
      .word {
        position: relative;
        display: inline-block;
        padding-inline: 5px;
        line-height: 28px;
        vertical-align: top;
      }
      .hands .word,
      .judged .word {
        color: var(--paper);
      }
      .rest .word {
        padding-inline: 8px;
      }
      .bake .word {
        margin-top: 4px;
        line-height: 20px;
        background: var(--paper);
      }
      .word.tight {
        padding-inline: 1px;
      }
      .chip {
        position: absolute;
        display: flex;
        align-items: center;
        gap: 4px;
        height: 22px;
        font-weight: var(--weight-strong);
        white-space: nowrap;
        pointer-events: none;
      }
      role-mark {
        width: 18px;
        height: 18px;
      }
    `,
  ];

  @property({ attribute: false }) row: SheetRow | null = null;
  @property({ attribute: false }) scale: Scale | null = null;
  @property({ attribute: false }) context: SheetContext | null = null;
  /** What the tab key goes to in this row: '' for its head, the key of a step, null for nothing. */
  @property({ attribute: false }) current: string | null = null;
  /** What is open in this row: '' for the row, the key of a step, null for nothing. */
  @property({ attribute: false }) opened: string | null = null;
  /** It begins a family of doughs, or a kind of thing. */
  @property({ type: Boolean, reflect: true }) first = false;

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('row')) this.first = this.row?.isFirst === true;
  }

  /** Puts the keyboard on a step by its key, or on the head (''). */
  focusOn(key: string): void {
    const buttons = [...this.renderRoot.querySelectorAll<HTMLButtonElement>('button')];
    (buttons.find((button) => button.dataset['key'] === key) ?? buttons[0])?.focus();
  }

  /** Where a step, or the head (''), is drawn; null where it is not. */
  boxOf(key: string): DOMRect | null {
    const buttons = [...this.renderRoot.querySelectorAll<HTMLButtonElement>('button')];
    return buttons.find((button) => button.dataset['key'] === key)?.getBoundingClientRect() ?? null;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { row, scale, context } = this;
    if (row === null || scale === null || context === null) return nothing;
    const height = px(rowPx(row));
    return html`<div ${place({ height })}>
      <h3 ${place({ width: px(scale.columnPx) })}>${this.head(row, scale, context)}</h3>
      ${row.closed.map((closed) => this.closed(closed, row, scale))}
      <ol ${place({ left: px(scale.columnPx) })}>
        ${row.placed.map((placed) => html`<li>${this.bar(row, placed, scale, context)}</li>`)}
      </ol>
      ${this.busyFrames(row, scale)}${this.chips(row, scale, context)}
    </div>`;
  }

  private head(row: SheetRow, { columnPx }: Scale, context: SheetContext): TemplateResult {
    const { head } = row;
    const isSmall = head.kind === 'dough' && head.depth > 0;
    return html`<button
      type="button"
      class="head ${isSmall ? 'small' : ''}"
      data-key=""
      tabindex=${this.current === '' ? 0 : -1}
      aria-pressed=${this.opened === ''}
      @click=${() => this.open('', { kind: 'row', rowKey: row.key })}
    >
      <span class="unseen">${headLabel(row, context)}</span>
      <span class="shown" aria-hidden="true">${headContent(row, columnPx, context)}</span>
    </button>`;
  }

  private bar(row: SheetRow, placed: PlacedBar, scale: Scale, context: SheetContext): TemplateResult {
    const { bar } = placed;
    const left = leftPx(scale, bar.fromMs);
    const width = widthPx(scale, bar.fromMs, bar.toMs);
    const topPx = placed.lane * LANE_PX + BAR_TOP_PX;
    const heightPx = (placed.lanes - 1) * LANE_PX + BAR_PX;
    const texts = context.grouping === 'dough' ? [verbText(bar)] : [barTitle(bar), bar.tag];
    // Its name goes along with what is looked at, where a bar is longer than that.
    const isLong = width > LONG_PX;
    const word = firstFitting(bar.standing === 'done' ? [] : texts, width);
    // Where rows are things, what is wanted too often is framed as a stretch of time.
    const isWrong = row.clashes.some((clash) => (clash.kind !== 'busy' || row.head.kind !== 'resource') && clash.barKeys.includes(bar.key));
    const box: Placement = { left: px(left), width: px(width), top: px(topPx), height: px(heightPx) };
    return html`${this.traces(placed, scale)}<button
        type="button"
        class="bar ${shapeOf(bar)} ${bar.standing} ${width < SHORT_PX ? 'short' : ''}"
        data-key=${bar.key}
        tabindex=${this.current === bar.key ? 0 : -1}
        aria-label=${barLabel(bar, row.clashes, context)}
        aria-pressed=${this.opened === bar.key}
        @click=${() => this.open(bar.key, { kind: 'bar', rowKey: row.key, barKey: bar.key })}
        ${place(box)}
      >
        <span class="fill"></span
        >${word.text === '' ? nothing : html`<span class="word ${word.isTight ? 'tight' : ''}" ${place(isLong ? { position: 'sticky', left: px(scale.columnPx) } : {})}>${word.text}</span>`}</button
      >${isWrong ? html`<span class="wrong" ${place(grown(box, left, width, topPx, heightPx))}></span>` : nothing}`;
  }

  /** What is open already is closed by the button that opened it. */
  private open(key: string, opened: Opened): void {
    this.dispatchEvent(new SheetOpenedEvent(this.opened === key ? null : opened));
  }

  /** What belongs to a step beside its bar: where it stood before, until when it may wait, that it is fixed. */
  private traces({ bar, lane }: PlacedBar, scale: Scale): TemplateResult {
    const left = leftPx(scale, bar.fromMs);
    const topPx = lane * LANE_PX;
    const slack = bar.step.kind === 'timed' || bar.standing === 'done' || bar.standing === 'begun' ? null : slackMs(bar);
    const was =
      bar.wasMs === null ? null : { left: leftPx(scale, bar.wasMs), width: widthPx(scale, bar.wasMs, bar.wasMs + bar.toMs - bar.fromMs) };
    return html`${
      was === null
        ? nothing
        : html`<span
            class="was"
            ${place({ left: px(was.left), width: px(was.width), top: px(topPx + BAR_TOP_PX), height: px(BAR_PX) })}
          ></span>`
    }${
      slack === null || slack === 0
        ? nothing
        : html`<span
            class="slack"
            ${place({ left: px(left), width: px(widthPx(scale, bar.fromMs, bar.fromMs + slack)), top: px(topPx + BAR_TOP_PX + BAR_PX) })}
          ></span>`
    }${
      bar.pin === null
        ? nothing
        : html`<span
            class="pin"
            ${place({ left: px(leftPx(scale, bar.pin.startMs) - 1), top: px(topPx), height: px(LANE_PX - 2) })}
          ></span>`
    }`;
  }

  private closed(closed: Closed, row: SheetRow, scale: Scale): TemplateResult {
    const left = scale.columnPx + leftPx(scale, closed.fromMs);
    const width = widthPx(scale, closed.fromMs, closed.toMs);
    return html`<span class="closed" ${place({ left: px(left), width: px(width), top: px(0), height: px(row.lanes * LANE_PX) })}></span>`;
  }

  /** A stretch of time in which a thing is wanted more than there is of it. */
  private busyFrames(row: SheetRow, scale: Scale): readonly TemplateResult[] {
    if (row.head.kind !== 'resource') return [];
    return row.clashes.flatMap((clash) => {
      if (clash.kind !== 'busy') return [];
      const placement = {
        left: px(scale.columnPx + leftPx(scale, clash.fromMs) - 3),
        width: px(widthPx(scale, clash.fromMs, clash.toMs) + 6),
        top: px(1),
        height: px(row.lanes * LANE_PX - 3),
      };
      return [html`<span class="wrong" ${place(placement)}></span>`];
    });
  }

  /** The words of clashes under the row; of those that would lie over one another, the first, the others as signs alone. */
  private chips(row: SheetRow, scale: Scale, context: SheetContext): readonly TemplateResult[] {
    let freePx = Number.NEGATIVE_INFINITY;
    const inOrder = row.clashes.toSorted((a, b) => clashesFromMs(a, row) - clashesFromMs(b, row));
    return inOrder.flatMap((clash) => {
      const atMs = clashesFromMs(clash, row);
      const atPx = Math.max(0, leftPx(scale, atMs) - 3);
      if (atPx < freePx) return [];
      const text = clashChipText(atMs, context);
      freePx = atPx + textWidthPx(text, TEXT_PX) + CHIP_EXTRA_PX;
      return [
        html`<span class="chip" aria-hidden="true" ${place({ left: px(scale.columnPx + atPx), top: px(row.lanes * LANE_PX) })}
          ><role-mark level="lost" .heard=${true}></role-mark><span>${text}</span></span
        >`,
      ];
    });
  }
}

/** How high a row is, in px: its lanes, and a strip for the words of clashes where it has any. */
function rowPx({ lanes, clashes }: { readonly lanes: number; readonly clashes: readonly Clash[] }): number {
  return lanes * LANE_PX + (clashes.length > 0 ? STRIP_PX : 0);
}

/** From when on a clash is one of this row: its own steps may come into it later than others. */
function clashesFromMs({ fromMs, barKeys }: Clash, { placed }: SheetRow): number {
  const own = placed.filter(({ bar }) => barKeys.includes(bar.key)).map(({ bar }) => bar.fromMs);
  return own.length === 0 ? fromMs : Math.max(fromMs, Math.min(...own));
}

/** By which shape a step is drawn. */
function shapeOf({ step }: Bar): 'hands' | 'judged' | 'rest' | 'bake' {
  return step.kind === 'timed' ? 'rest' : step.kind;
}

function grown(box: Placement, left: number, width: number, topPx: number, heightPx: number): Placement {
  return { ...box, left: px(left - 5), width: px(width + 10), top: px(topPx - 4), height: px(heightPx + 8) };
}

function headContent({ head }: SheetRow, columnPx: number, { kitchen }: SheetContext): TemplateResult {
  if (head.kind === 'resource') {
    const name = thingText(head.resource, kitchen);
    const room = roomText(head);
    const roomPx = columnPx - HEAD_EXTRA_PX - textWidthPx(name, TEXT_PX) - 8;
    const fits = room !== '' && textWidthPx(room, TEXT_PX) <= roomPx;
    return html`<span class="name">${fittingText(name, TEXT_PX, columnPx - HEAD_EXTRA_PX)}</span
      >${fits ? html`<span>${room}</span>` : nothing}`;
  }
  if (head.kind === 'cleaning') return html`<span class="name">${fittingText(head.name, TEXT_PX, columnPx - HEAD_EXTRA_PX)}</span>`;
  const indentPx = head.depth * INDENT_PX;
  const tagPx = textWidthPx(head.tag, head.depth > 0 ? 18 : 20);
  const namePx = columnPx - HEAD_EXTRA_PX - indentPx - tagPx - 8;
  const name = namePx < 40 ? '' : fittingText(head.name, TEXT_PX, namePx);
  return html`<span class="tag" ${place({ 'margin-inline-start': px(indentPx) })}>${head.tag}</span
    >${name === '' ? nothing : html`<span class="name">${name}</span>`}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'day-sheet-row': DaySheetRow;
  }
}
