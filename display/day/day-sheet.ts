import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { FloorState } from '../../shared/floor/state.ts';
import type { PlannedCleaning } from '../../shared/plan/planned-cleaning.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { clockText, weekdayText } from '../parts/clock-text.ts';
import { place, px } from '../parts/place.ts';
import { zonedDate } from '../parts/zoned-instant.ts';
import { SHEET_WORDS } from '../words/day-sheet.ts';
import './day-sheet-clashes.ts';
import './day-sheet-details.ts';
import type { DaySheetDetails, Shown } from './day-sheet-details.ts';
import './day-sheet-legend.ts';
import type { DaySheetOrders } from './day-sheet-orders.ts';
import './day-sheet-orders.ts';
import type { DaySheetRow } from './day-sheet-row.ts';
import './day-sheet-row.ts';
import { daySheetStyles } from './day-sheet-styles.ts';
import { hourPx, ticksOf, type Tick, type Zoom } from './sheet-axis.ts';
import type { Opened, SheetOpenedEvent } from './sheet-events.ts';
import { placeByKey, type SheetPlace } from './sheet-keys.ts';
import { axisPx, COLUMN_PX, leftPx, NARROW_COLUMN_PX, type Scale } from './sheet-lengths.ts';
import { sheetModel, type SheetModel } from './sheet-model.ts';
import type { SheetProposal } from './sheet-places.ts';
import type { Grouping, SheetRow } from './sheet-rows.ts';
import type { SheetContext } from './sheet-texts.ts';

const MINUTE_MS = 60_000;
/** Narrower than this, names give way to the axis, and the first look is at a part of the day. In px. */
const NARROW_PX = 700;
/** Clock times stand at least so far apart, in px. */
const TICK_PX = 84;
/** How wide a clock time is, in px. */
const CLOCK_PX = 52;
/** Where NOW stands when the sheet is brought to it: this share of the axis's room from the left. */
const NOW_SHARE = 0.25;
const ZOOMS: readonly Zoom[] = ['fit', 'fourHours', 'hour'];
const GROUPINGS: readonly Grouping[] = ['dough', 'resource'];

/** The whole day, by dough and by resource, on one linear axis with NOW. Everything on it is a button. */
@customElement('day-sheet')
export class DaySheet extends LitElement {
  static override styles = [deskStyles, plainButtonStyles, daySheetStyles];

  @property({ attribute: false }) state: FloorState | null = null;
  /** A day that is only tried, drawn in place of the plan in force. */
  @property({ attribute: false }) proposal: SheetProposal | null = null;
  /** Of that day, or of the plan in force. */
  @property({ attribute: false }) cleanings: readonly PlannedCleaning[] = [];
  @property({ type: Number }) nowMs = 0;
  /** Which day's orders and finished doughs; null: all. */
  @property({ attribute: false }) serviceDate: string | null = null;
  /** Nobody may fix anything: it is only looked at. */
  @property({ type: Boolean }) readonly = false;
  @state() private grouping: Grouping = 'dough';
  /** Null until somebody chooses: then it goes by the room there is. */
  @state() private zoom: Zoom | null = null;
  @state() private widthPx = 0;
  @state() private isLegendOpen = false;
  @state() private opened: Opened | null = null;
  @state() private current: SheetPlace | null = null;
  @query('.scroller') private scroller!: HTMLElement | null;

  private model: SheetModel | null = null;
  private scale: Scale | null = null;
  private context: SheetContext | null = null;
  /** The sheet is brought to NOW once it is first drawn, and whenever it is looked at otherwise. */
  private isToNow = true;
  private readonly sized = new ResizeObserver(() => {
    const { scroller } = this;
    if (scroller !== null) this.widthPx = scroller.clientWidth;
  });

  constructor() {
    super();
    this.addEventListener('sheet-opened', (event: SheetOpenedEvent) => {
      event.stopPropagation();
      this.open(event.opened);
    });
    this.addEventListener('keydown', (event) => this.pressed(event));
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.sized.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sized.disconnect();
  }

  protected override willUpdate(changed: PropertyValues): void {
    const minute = Math.floor(this.nowMs / MINUTE_MS);
    const isNewMinute = changed.has('nowMs') && Math.floor(Number(changed.get('nowMs') ?? 0) / MINUTE_MS) !== minute;
    const { state: floor, proposal, cleanings, grouping, serviceDate } = this;
    const isGivenAnew = ['state', 'proposal', 'cleanings', 'serviceDate', 'grouping'].some((name) => changed.has(name));
    if (isGivenAnew || isNewMinute) {
      // Drawn anew once a minute, not with every tick of the page's clock.
      const nowMs = minute * MINUTE_MS;
      this.model = floor === null ? null : sheetModel({ state: floor, proposal, cleanings, nowMs, serviceDate }, grouping);
      this.context = floor === null ? null : { kitchen: floor.kitchen?.document ?? null, zone: zoneOf(floor), nowMs, grouping };
    }
    const isScaledAnew = isGivenAnew || isNewMinute || changed.has('zoom') || changed.has('widthPx');
    if (isScaledAnew) this.scale = this.scaleFor();
    if (changed.has('serviceDate')) this.isToNow = true;
  }

  protected override updated(): void {
    if (!this.isToNow || this.scale === null || this.scroller === null) return;
    this.isToNow = false;
    this.scroller.scrollLeft = this.nowLeftPx(this.scale);
  }

  protected override render(): TemplateResult | typeof nothing {
    const { model, context, state: floor } = this;
    if (floor === null || context === null) return nothing;
    return html`<section aria-labelledby="title">
      <h2 id="title">${SHEET_WORDS.title}</h2>
      ${this.proposal === null ? nothing : html`<p class="tried">${SHEET_WORDS.tried}</p>`}
      ${this.proposal === null && floor.plan === null && model !== null ? html`<p class="note">${SHEET_WORDS.noPlan}</p>` : nothing}
      ${model === null ? this.empty() : this.sheet(model, context)}
    </section>`;
  }

  private empty(): TemplateResult {
    return html`<div class="empty">
        <h3>${SHEET_WORDS.emptyTitle}</h3>
        <p>${SHEET_WORDS.emptyMore}</p>
      </div>
      <div class="scroller" hidden></div>`;
  }

  private sheet(model: SheetModel, context: SheetContext): TemplateResult {
    const { scale } = this;
    return html`<day-sheet-clashes .clashes=${model.clashes} .lines=${model.lines} .context=${context}></day-sheet-clashes>
      ${this.controls()} ${this.isLegendOpen ? html`<day-sheet-legend id="legend"></day-sheet-legend>` : nothing}
      <p class="unseen" id="hint">${SHEET_WORDS.keysHint}</p>
      <div class="scroller">${scale === null ? nothing : this.paper(model, scale, context)}</div>
      ${this.details(model, context)}`;
  }

  private controls(): TemplateResult {
    const wordOf = { dough: SHEET_WORDS.byDough, resource: SHEET_WORDS.byResource } as const;
    const zoom = this.zoomNow;
    return html`<div class="controls">
      <fieldset class="group">
        <legend>${SHEET_WORDS.grouping}</legend>
        ${GROUPINGS.map(
          (grouping) =>
            html`<button type="button" class="plain" aria-pressed=${this.grouping === grouping} @click=${() => this.group(grouping)}>
              ${wordOf[grouping]}
            </button>`,
        )}
      </fieldset>
      <fieldset class="group">
        <legend>${SHEET_WORDS.zoom}</legend>
        ${ZOOMS.map(
          (choice) =>
            html`<button type="button" class="plain" aria-pressed=${zoom === choice} @click=${() => this.look(choice)}>
              ${SHEET_WORDS.zooms[choice]}
            </button>`,
        )}
      </fieldset>
      <button type="button" class="plain" @click=${() => this.look(zoom)}>${SHEET_WORDS.toNow}</button>
      <button type="button" class="plain" aria-expanded=${this.isLegendOpen} @click=${() => (this.isLegendOpen = !this.isLegendOpen)}>
        ${SHEET_WORDS.legend}
      </button>
    </div>`;
  }

  private paper(model: SheetModel, scale: Scale, context: SheetContext): TemplateResult {
    const { columnPx } = scale;
    const widePx = columnPx + axisPx(scale);
    const ticks = ticksOf(scale.span, scale.pxPerHour, TICK_PX, context.zone);
    const isNowOn = context.nowMs >= scale.span.fromMs && context.nowMs <= scale.span.toMs;
    const nowPx = leftPx(scale, context.nowMs);
    return html`<div class="paper" ${place({ width: px(widePx) })}>
      <div class="lines" ${place({ left: px(columnPx) })} aria-hidden="true">
        ${ticks.map(({ atMs }) => html`<i ${place({ left: px(leftPx(scale, atMs)) })}></i>`)}
        ${model.orders.map(({ readyMs }) => html`<i class="wanted" ${place({ left: px(leftPx(scale, readyMs)) })}></i>`)}
      </div>
      ${this.axis(ticks, scale, context, isNowOn ? nowPx : null)}
      ${isNowOn ? html`<div class="now" aria-hidden="true" ${place({ left: px(columnPx + nowPx - 2) })}></div>` : nothing}
      <day-sheet-orders
        .marks=${model.orders}
        .scale=${scale}
        .context=${context}
        .openedMs=${this.opened?.kind === 'orders' ? this.opened.readyMs : null}
      ></day-sheet-orders>
      <ol class="rows" aria-describedby="hint">
        ${model.rows.map((row) => html`<li>${this.row(row, model, scale, context)}</li>`)}
      </ol>
    </div>`;
  }

  private axis(ticks: readonly Tick[], scale: Scale, { nowMs, zone }: SheetContext, nowPx: number | null): TemplateResult {
    return html`<div class="axis">
      <div class="corner" ${place({ width: px(scale.columnPx) })}></div>
      <div class="times" ${place({ left: px(scale.columnPx) })}>
        ${ticks.map(({ atMs, isNewDay }) => {
          const atPx = leftPx(scale, atMs);
          // What would run off the end of the axis is left out.
          if (atPx + CLOCK_PX > axisPx(scale)) return nothing;
          const isUnderNow = nowPx !== null && Math.abs(atPx - nowPx) < TICK_PX * 1.5;
          return html`<span class="clock" ${place({ left: px(atPx + 3) })}>${clockText(atMs, zone)}</span>${
              isNewDay && !isUnderNow
                ? html`<span class="day" ${place({ left: px(atPx + 3) })}>${weekdayText(zonedDate(atMs, zone))}</span>`
                : nothing
            }`;
        })}
        ${
          nowPx === null
            ? nothing
            : html`<span class="now-flag" ${place({ left: px(nowPx - 2) })}>${SHEET_WORDS.now} ${clockText(nowMs, zone)}</span>`
        }
      </div>
    </div>`;
  }

  private row(row: SheetRow, model: SheetModel, scale: Scale, context: SheetContext): TemplateResult {
    const spot = this.current ?? { rowKey: model.rows[0]?.key ?? '', barKey: '' };
    const current = spot.rowKey !== row.key ? null : row.placed.some(({ bar }) => bar.key === spot.barKey) ? spot.barKey : '';
    const { opened } = this;
    const openKey = opened === null ? null : openIn(opened, row);
    return html`<day-sheet-row
      data-row=${row.key}
      .row=${row}
      .scale=${scale}
      .context=${context}
      .current=${current}
      .opened=${openKey}
    ></day-sheet-row>`;
  }

  private details(model: SheetModel, context: SheetContext): TemplateResult | typeof nothing {
    const shown = this.opened === null ? null : shownOf(this.opened, model, this.state);
    return shown === null
      ? nothing
      : html`<day-sheet-details .shown=${shown} .context=${context} .readonly=${this.readonly}></day-sheet-details>`;
  }

  private get zoomNow(): Zoom {
    return this.zoom ?? (this.widthPx > 0 && this.widthPx < NARROW_PX ? 'fourHours' : 'fit');
  }

  private scaleFor(): Scale | null {
    const { model, widthPx } = this;
    if (model === null || widthPx === 0) return null;
    const columnPx = widthPx < NARROW_PX ? NARROW_COLUMN_PX : COLUMN_PX;
    return { span: model.span, columnPx, pxPerHour: hourPx(this.zoomNow, model.span, widthPx - columnPx) };
  }

  private nowLeftPx(scale: Scale): number {
    return leftPx(scale, this.nowMs) - (this.widthPx - scale.columnPx) * NOW_SHARE;
  }

  private group(grouping: Grouping): void {
    this.grouping = grouping;
    this.current = null;
    // What is open stays open, in the row that it has in the other grouping.
    if (this.opened?.kind === 'row') this.opened = null;
  }

  private look(zoom: Zoom): void {
    this.zoom = zoom;
    this.isToNow = true;
    this.requestUpdate();
  }

  private open(opened: Opened | null): void {
    const before = this.opened;
    this.opened = opened;
    if (opened !== null && opened.kind !== 'orders')
      this.current = { rowKey: opened.rowKey, barKey: opened.kind === 'row' ? '' : opened.barKey };
    if (opened?.kind === 'bar') void this.bringIntoView(opened.barKey);
    if (this.opened === null && before !== null) void this.focusOn(before);
  }

  /** From the list of clashes a step is opened that may be far away. */
  private async bringIntoView(barKey: string): Promise<void> {
    await this.updateComplete;
    // How high the panel is decides what it covers.
    await this.renderRoot.querySelector<DaySheetDetails>('day-sheet-details')?.updateComplete;
    const { scroller, scale } = this;
    const found = this.rowWith(barKey);
    if (scroller === null || scale === null || found === null) return;
    const { row, element } = found;
    this.bringRowIntoView(scroller, element);
    const bar = row.placed.find((placed) => placed.bar.key === barKey)?.bar;
    if (bar === undefined) return;
    const from = leftPx(scale, bar.fromMs);
    const roomPx = scroller.clientWidth - scale.columnPx;
    if (from < scroller.scrollLeft || from > scroller.scrollLeft + roomPx - TICK_PX) scroller.scrollLeft = from - roomPx * NOW_SHARE;
  }

  /** Between the axis above and the panel below, and no further than that takes. */
  private bringRowIntoView(scroller: HTMLElement, row: HTMLElement): void {
    const edge = (element: Element | null, side: 'top' | 'bottom'): number =>
      element?.getBoundingClientRect()[side] ?? Number.POSITIVE_INFINITY;
    const top = (): number => edge(this.renderRoot.querySelector('.axis'), 'bottom');
    const bottom = (): number => Math.min(edge(this.renderRoot.querySelector('day-sheet-details'), 'top'), edge(scroller, 'bottom'));
    // On a small screen the panel leaves no room below the axis until the page is scrolled to the sheet.
    if (bottom() - top() < row.offsetHeight) globalThis.scrollBy(0, edge(scroller, 'top'));
    const above = edge(row, 'top') - top();
    scroller.scrollTop += above < 0 ? above : Math.max(0, edge(row, 'bottom') - bottom());
    // The last rows cannot be scrolled further up in the sheet; the page can.
    globalThis.scrollBy(0, Math.max(0, edge(row, 'bottom') - bottom()));
  }

  private rowWith(barKey: string): { readonly row: SheetRow; readonly element: DaySheetRow } | null {
    const row = this.model?.rows.find((candidate) => candidate.placed.some(({ bar }) => bar.key === barKey));
    const element = row === undefined ? null : this.rowElement(row.key);
    return row === undefined || element === null ? null : { row, element };
  }

  private rowElement(key: string): DaySheetRow | null {
    return [...this.renderRoot.querySelectorAll<DaySheetRow>('day-sheet-row')].find((element) => element.row?.key === key) ?? null;
  }

  private async focusOn(spot: Opened | SheetPlace): Promise<void> {
    await this.updateComplete;
    if ('kind' in spot && spot.kind === 'orders') {
      this.renderRoot.querySelector<DaySheetOrders>('day-sheet-orders')?.focusOn(spot.readyMs);
      return;
    }
    const barKey = 'barKey' in spot ? spot.barKey : '';
    const element = barKey === '' ? this.rowElement(spot.rowKey) : (this.rowWith(barKey)?.element ?? null);
    element?.focusOn(barKey);
  }

  private pressed(event: KeyboardEvent): void {
    const { model } = this;
    const [target] = event.composedPath();
    if (event.key === 'Escape' && this.opened !== null) {
      event.stopPropagation();
      this.open(null);
      return;
    }
    const row = event.composedPath().find((node): node is DaySheetRow => node instanceof HTMLElement && node.localName === 'day-sheet-row');
    if (model === null || row?.row === undefined || row.row === null || !(target instanceof HTMLElement)) return;
    const to = placeByKey(model.rows, { rowKey: row.row.key, barKey: target.dataset['key'] ?? '' }, event.key);
    if (to === null) return;
    event.preventDefault();
    this.current = to;
    void this.focusOn(to);
  }
}

/** What of a row is open: its head (''), one of its steps, or nothing. A step may stand in several rows. */
function openIn(opened: Opened, row: SheetRow): string | null {
  if (opened.kind === 'orders') return null;
  if (opened.kind === 'row') return opened.rowKey === row.key ? '' : null;
  return row.placed.some(({ bar }) => bar.key === opened.barKey) ? opened.barKey : null;
}

function zoneOf(floor: FloorState): string {
  return floor.house?.document.zone ?? 'UTC';
}

/** What is open as its panel tells it; null where it is no longer on the sheet. */
function shownOf(opened: Opened, model: SheetModel, floor: FloorState | null): Shown | null {
  if (opened.kind === 'orders') {
    const mark = model.orders.find(({ readyMs }) => readyMs === opened.readyMs);
    return mark === undefined ? null : { kind: 'orders', mark };
  }
  if (opened.kind === 'row') {
    const row = model.rows.find(({ key }) => key === opened.rowKey);
    return row === undefined ? null : { kind: 'row', row };
  }
  const line = model.lines.find(({ bars }) => bars.some(({ key }) => key === opened.barKey));
  const bar = line?.bars.find(({ key }) => key === opened.barKey);
  if (line === undefined || bar === undefined) return null;
  const serves = model.orders.flatMap(({ orders }) => orders).filter(({ order }) => line.productIds.includes(order.productId));
  const clashes = model.clashes.filter((clash) => clash.barKeys.includes(bar.key));
  const isOnFloor = floor?.workpieces[bar.ownerId] !== undefined;
  return { kind: 'bar', bar, isOnFloor, isCleaning: line.isCleaning === true, clashes, serves };
}

declare global {
  interface HTMLElementTagNameMap {
    'day-sheet': DaySheet;
  }
}
