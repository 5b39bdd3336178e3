import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { unreachable } from '../../shared/result.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { clockTimeTyped } from '../kitchen/clock-time-typed.ts';
import { clockText } from '../parts/clock-text.ts';
import { dayClockText } from '../parts/day-clock-text.ts';
import '../parts/role-mark.ts';
import { fixedWords, SHEET_WORDS } from '../words/day-sheet.ts';
import { instantNearMs } from './sheet-axis.ts';
import type { Bar } from './sheet-bar.ts';
import type { Clash } from './sheet-clashes.ts';
import { FirstWantedEvent, pinPlace, PinLiftedEvent, PinWantedEvent, SheetOpenedEvent, type Opened } from './sheet-events.ts';
import type { MarkedOrder, OrderMark } from './sheet-orders.ts';
import type { SheetRow } from './sheet-rows.ts';
import {
  barTitle,
  clashText,
  closedText,
  headTitle,
  movedText,
  orderStandingText,
  orderText,
  slackText,
  stretchText,
  withText,
  type SheetContext,
} from './sheet-texts.ts';

/** What is open, with everything that its panel tells. */
export type Shown =
  | {
      readonly kind: 'bar';
      readonly bar: Bar;
      readonly isOnFloor: boolean;
      /** No dough: nothing of it can be fixed, and no order asks for it. */
      readonly isCleaning: boolean;
      readonly clashes: readonly Clash[];
      /** Orders of what the dough becomes. */
      readonly serves: readonly MarkedOrder[];
    }
  | { readonly kind: 'row'; readonly row: SheetRow }
  | { readonly kind: 'orders'; readonly mark: OrderMark };

/** A step, a row or an instant's orders, closely; and what can be fixed of it. */
@customElement('day-sheet-details')
export class DaySheetDetails extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host {
        display: block;
        overflow: auto;
        padding: var(--space-3) var(--space-4);
        border-top: var(--rule) solid var(--ink);
        background: var(--paper);
        font-size: var(--type-text);
      }
      header {
        display: flex;
        align-items: flex-start;
        justify-content: space-between;
        gap: var(--space-3);
        margin-bottom: var(--space-3);
      }
      h3 {
        font-size: var(--type-title);
        font-weight: var(--weight-strong);
        overflow-wrap: anywhere;
      }
      h3:focus-visible {
        outline: none;
      }
      h4 {
        margin: 0 0 var(--space-2);
        font-size: var(--type-text);
        font-weight: var(--weight-strong);
      }
      .parts {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 300px), 1fr));
        gap: var(--space-4) var(--space-6);
      }
      dl {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        gap: var(--space-1) var(--space-3);
        margin: 0;
      }
      dt {
        color: var(--ink-soft);
      }
      dd {
        margin: 0;
        overflow-wrap: anywhere;
      }
      .when {
        margin-bottom: var(--space-2);
        font-weight: var(--weight-strong);
      }
      ul {
        display: grid;
        gap: var(--space-2);
      }
      ul.steps {
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 280px), 1fr));
      }
      .steps button {
        width: 100%;
        text-align: start;
        font-weight: var(--weight-text);
      }
      .clash,
      .order {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-1) var(--space-2);
      }
      .clash {
        flex-wrap: nowrap;
        align-items: flex-start;
        margin-bottom: var(--space-2);
        font-weight: var(--weight-word);
      }
      role-mark {
        width: 22px;
        height: 22px;
      }
      .order role-mark {
        margin-inline-end: var(--space-2);
        vertical-align: -4px;
      }
      form {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2);
      }
      input {
        width: 96px;
        min-height: var(--target-desk);
        padding: 6px 10px;
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        background: var(--field);
        color: var(--ink);
        font: inherit;
      }
      [aria-invalid='true'] {
        border-style: dashed;
        border-width: 3px;
      }
      .fault {
        flex-basis: 100%;
        padding-inline-start: 10px;
        border-inline-start: 5px solid var(--lost);
        font-weight: var(--weight-word);
      }
      .pins {
        display: grid;
        align-content: start;
        gap: var(--space-2);
        justify-items: start;
      }
      .soft {
        color: var(--ink-soft);
      }
    `,
  ];

  @property({ attribute: false }) shown: Shown | null = null;
  @property({ attribute: false }) context: SheetContext | null = null;
  /** Nobody may fix anything: it is only looked at. */
  @property({ type: Boolean }) readonly = false;
  @state() private typed: string | null = null;
  @state() private isTried = false;
  /** What the panel was opened for, so that another one takes the keyboard. */
  private openedFor = '';

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('shown') || shownKey(this.shown) === shownKey(changed.get('shown') ?? null)) return;
    this.typed = null;
    this.isTried = false;
  }

  protected override updated(): void {
    const key = shownKey(this.shown);
    if (key === this.openedFor) return;
    this.openedFor = key;
    // Whoever opened it goes on here; what changes in it later leaves the keyboard where it is.
    this.renderRoot.querySelector<HTMLElement>('h3')?.focus({ preventScroll: true });
  }

  protected override render(): TemplateResult | typeof nothing {
    const { shown, context } = this;
    if (shown === null || context === null) return nothing;
    return html`<section aria-labelledby="title">
      <header>
        <h3 id="title" tabindex="-1">${titleOf(shown, context)}</h3>
        <button type="button" class="plain" @click=${() => this.dispatchEvent(new SheetOpenedEvent(null))}>${SHEET_WORDS.close}</button>
      </header>
      ${this.content(shown, context)}
    </section>`;
  }

  private content(shown: Shown, context: SheetContext): TemplateResult {
    switch (shown.kind) {
      case 'bar':
        return html`${shown.clashes.map((clash) => clashLine(clash, [shown.bar], context))}
          <div class="parts">${facts(shown.bar, context)}${shown.isCleaning ? nothing : this.fixable(shown, context)}</div>`;
      case 'row':
        return html`${shown.row.clashes.map((clash) =>
            clashLine(
              clash,
              shown.row.placed.map(({ bar }) => bar),
              context,
            ),
          )}
          ${shown.row.closed.map((closed) => html`<p>${closedText(closed, context)}</p>`)}
          <ul class="steps">
            ${shown.row.placed.map(({ bar }) => html`<li>${this.stepButton(shown.row.key, bar, context)}</li>`)}
          </ul>`;
      case 'orders':
        return this.orders(shown.mark.orders, context, false);
      default:
        return unreachable(shown);
    }
  }

  private fixable({ bar, isOnFloor, serves }: Extract<Shown, { kind: 'bar' }>, context: SheetContext): TemplateResult {
    return html`<div class="pins">
        <h4>${SHEET_WORDS.pinTitle}</h4>
        ${this.pins(bar, isOnFloor, context)}
      </div>
      <div>
        <h4>${SHEET_WORDS.firstTitle}</h4>
        ${serves.length === 0 ? html`<p class="soft">${SHEET_WORDS.noOrders}</p>` : this.orders(serves, context, true)}
      </div>`;
  }

  private stepButton(rowKey: string, bar: Bar, context: SheetContext): TemplateResult {
    const opened: Opened = { kind: 'bar', rowKey, barKey: bar.key };
    return html`<button type="button" class="plain" @click=${() => this.dispatchEvent(new SheetOpenedEvent(opened))}>
      ${stretchText(bar, context)} · ${barTitle(bar)} · ${SHEET_WORDS.standings[bar.standing]}
    </button>`;
  }

  private pins(bar: Bar, isOnFloor: boolean, context: SheetContext): TemplateResult {
    const lift = bar.pin === null ? nothing : this.fixed(bar, context);
    if (bar.standing === 'done') return html`<p>${SHEET_WORDS.isDone}</p>`;
    if (bar.standing === 'begun')
      return html`<p>${SHEET_WORDS.isBegun}</p>
        ${lift}`;
    if (bar.step.kind === 'timed')
      return html`<p>${SHEET_WORDS.restFollows}</p>
        ${lift}`;
    if (this.readonly) return html`${lift}`;
    const text = this.typed ?? clockText(bar.pin?.startMs ?? bar.fromMs, context.zone);
    const isFaulty = this.isTried && clockTimeTyped(text) === null;
    return html`<form novalidate @submit=${(event: SubmitEvent) => this.fix(event, bar, isOnFloor, text, context)}>
        <label for="clock">${SHEET_WORDS.startsAt}</label>
        <input
          id="clock"
          inputmode="numeric"
          autocomplete="off"
          maxlength="6"
          aria-invalid=${isFaulty}
          aria-describedby=${isFaulty ? 'fault' : nothing}
          .value=${text}
          @input=${(event: InputEvent) => (this.typed = (event.target as HTMLInputElement).value)}
        />
        <button class="plain filled">${SHEET_WORDS.fix}</button>
        ${isFaulty ? html`<p class="fault" id="fault">${SHEET_WORDS.notAClock}</p>` : nothing}
      </form>
      ${lift}`;
  }

  private fixed(bar: Bar, { zone, nowMs }: SheetContext): TemplateResult {
    const { pin } = bar;
    if (pin === null) return html``;
    return html`<p>${fixedWords(dayClockText(pin.startMs, nowMs, zone))}</p>
      ${
        this.readonly
          ? nothing
          : html`<button
              type="button"
              class="plain"
              @click=${() => this.dispatchEvent(new PinLiftedEvent({ pinId: pin.id, key: bar.key }))}
            >
              ${SHEET_WORDS.letMove}
            </button>`
      }`;
  }

  private fix(event: SubmitEvent, bar: Bar, isOnFloor: boolean, text: string, { zone }: SheetContext): void {
    event.preventDefault();
    this.isTried = true;
    const clock = clockTimeTyped(text);
    if (clock === null) return;
    this.isTried = false;
    this.typed = null;
    this.dispatchEvent(new PinWantedEvent(pinPlace(bar, isOnFloor), instantNearMs(clock, bar.fromMs, zone)));
  }

  private orders(orders: readonly MarkedOrder[], { zone, nowMs }: SheetContext, withClock: boolean): TemplateResult {
    return html`<ul>
      ${orders.map((marked) => {
        const isLate = marked.lateMin !== null || marked.shortPieces !== null;
        return html`<li class="order">
          <span
            >${isLate ? html`<role-mark level="late" .heard=${true}></role-mark>` : nothing}${withClock ? html`${dayClockText(marked.order.readyMs, nowMs, zone)} · ` : nothing}${orderText(marked)}
            · ${orderStandingText(marked)}</span
          >
          ${this.firstButton(marked)}
        </li>`;
      })}
    </ul>`;
  }

  private firstButton({ order, firstPinId }: MarkedOrder): TemplateResult {
    const isFirst = firstPinId !== null;
    const lift = (): Event => new PinLiftedEvent({ pinId: firstPinId === '' ? null : firstPinId, orderId: order.id });
    return html`${isFirst ? html`<strong>${SHEET_WORDS.isFirst}</strong>` : nothing}
    ${
      this.readonly
        ? nothing
        : html`<button type="button" class="plain" @click=${() => this.dispatchEvent(isFirst ? lift() : new FirstWantedEvent(order.id))}>
            ${isFirst ? SHEET_WORDS.letMove : SHEET_WORDS.first}
          </button>`
    }`;
  }
}

function shownKey(shown: Shown | null): string {
  if (shown === null) return '';
  switch (shown.kind) {
    case 'bar':
      return `bar ${shown.bar.key}`;
    case 'row':
      return `row ${shown.row.key}`;
    case 'orders':
      return `orders ${shown.mark.readyMs}`;
    default:
      return unreachable(shown);
  }
}

function titleOf(shown: Shown, context: SheetContext): string {
  switch (shown.kind) {
    case 'bar':
      return barTitle(shown.bar);
    case 'row':
      return headTitle(shown.row, context);
    case 'orders':
      return `${SHEET_WORDS.orders} ${dayClockText(shown.mark.readyMs, context.nowMs, context.zone)}`;
    default:
      return unreachable(shown);
  }
}

function clashLine(clash: Clash, bars: readonly Bar[], context: SheetContext): TemplateResult {
  return html`<p class="clash"><role-mark level="lost" .heard=${true}></role-mark><span>${clashText(clash, bars, context)}</span></p>`;
}

/** What there is to know of a step. */
function facts(bar: Bar, context: SheetContext): TemplateResult {
  const { check, caution } = bar.step;
  const fact = (name: string, text: string): TemplateResult | typeof nothing =>
    text === ''
      ? nothing
      : html`<dt>${name}</dt>
          <dd>${text}</dd>`;
  return html`<div>
    <p class="when">${stretchText(bar, context)} · ${SHEET_WORDS.standings[bar.standing]}</p>
    <dl>
      ${fact(SHEET_WORDS.moved, movedText(bar, context))} ${fact(SHEET_WORDS.mayWait, slackText(bar, context))}
      ${fact(SHEET_WORDS.with, withText(bar, context))} ${fact(SHEET_WORDS.pieces, bar.pieces === null ? '' : String(bar.pieces))}
      ${fact(SHEET_WORDS.check, check ?? '')} ${fact(SHEET_WORDS.caution, caution ?? '')}
    </dl>
  </div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'day-sheet-details': DaySheetDetails;
  }
}
