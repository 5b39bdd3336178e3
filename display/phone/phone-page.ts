import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { boardRows, type Row } from '../../shared/floor/board.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { obstacleOf } from '../../shared/floor/ways-out.ts';
import type { FloorView } from '../link/floor-link.ts';
import { stillOf } from '../parts/still-of.ts';
import { floorDateOf } from '../parts/day-tag.ts';
import { nextTextChangeMs } from '../parts/clock-text.ts';
import { TickingClock, type ClockSource } from '../parts/ticking-clock.ts';
import { steadyOrder } from '../parts/order.ts';
import { PHONE } from '../words/phone.ts';
import { ActGate } from './act-gate.ts';
import './answer-note.ts';
import './bottom-bar.ts';
import { cardOf, firstFreeSlots, type CardModel } from './card-model.ts';
import './day-end.ts';
import './end-day-button.ts';
import './device-panel.ts';
import { didWords } from './did-words.ts';
import type { DoughCard } from './dough-card.ts';
import './dough-card.ts';
import { factsOf, zoneOf } from './floor-facts.ts';
import { obstacleModel, type ObstacleModel } from './obstacle-model.ts';
import {
  FloorCommandEvent,
  ShowScreenEvent,
  type GoBackEvent,
  type NewlyShownEvent,
  type Panel,
  type PanelWantedEvent,
  type RowsMovedEvent,
  type Screen,
} from './phone-events.ts';
import './phone-header.ts';
import { panelOf } from './panel-of.ts';
import './phone-list.ts';
import { baseStyles } from './phone-styles.ts';
import type { SlotsChosenEvent } from './slot-picker.ts';

/** The clocks that a page is drawn and tapped by. */
export interface PhoneClock extends ClockSource {
  /** Real milliseconds that only run forward. */
  monotonicMs(): number;
}

/** The whole phone: the floor's list, a dough's card, or the phone itself, with undo below. */
@customElement('phone-page')
export class PhonePage extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: grid;
        grid-template-rows: auto minmax(0, 1fr) auto;
        height: 100vh;
        height: 100dvh;
        max-width: 640px;
        margin-inline: auto;
        overflow: hidden;
      }
      main {
        min-height: 0;
        overflow: hidden auto;
        overscroll-behavior: contain;
      }
      footer {
        display: flex;
        flex-direction: column;
        min-height: 0;
        max-height: 78dvh;
      }
      /* A long panel scrolls; the way back stays below it. */
      .actions {
        min-height: 0;
        overflow: hidden auto;
        overscroll-behavior: contain;
        border-top: var(--hairline) solid var(--ink);
      }
      .still {
        display: grid;
        gap: 8px;
        align-content: center;
        height: 100%;
        padding: 24px;
        text-align: center;
        font-size: 18px;
        color: var(--ink-soft);
      }
      .still h1 {
        font-size: 26px;
        font-weight: var(--weight-strong);
        color: var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) clock: PhoneClock | null = null;
  @property({ attribute: false }) screen: Screen = { kind: 'list' };
  @state() private panel: Panel = 'actions';
  @state() private chosen: { readonly key: string; readonly slotIds: readonly string[] } | null = null;
  @query('dough-card') private card!: DoughCard | null;

  private readonly ticking = new TickingClock(
    this,
    () => this.clock,
    (nowMs) => nextTextChangeMs(this.duesMs, nowMs),
  );
  private gate: ActGate | null = null;
  private duesMs: readonly number[] = [];
  private order: { readonly state: FloorState; readonly keys: readonly string[] } | null = null;
  private blocked: { readonly floor: FloorState; readonly key: string; readonly model: ObstacleModel | null } | null = null;
  private shownKey = '';
  private cardKey = '';

  constructor() {
    super();
    this.addEventListener('rows-moved', (event: RowsMovedEvent) => this.gate?.moved(event.rows));
    this.addEventListener('newly-shown', (_event: NewlyShownEvent) => this.gate?.shown());
    this.addEventListener('other-wanted', () => (this.panel = 'other'));
    this.addEventListener('panel-wanted', (event: PanelWantedEvent) => (this.panel = event.panel));
    this.addEventListener('skip-wanted', () => (this.panel = 'skip'));
    this.addEventListener('slots-chosen', (event: SlotsChosenEvent) => (this.chosen = { key: this.cardKey, slotIds: event.slotIds }));
    this.addEventListener('floor-command', () => (this.panel = 'actions'));
    this.addEventListener('undo-wanted', () => this.undo());
    this.addEventListener('go-back', (event: GoBackEvent) => this.goBack(event));
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (this.gate === null && this.clock !== null) {
      const { clock } = this;
      this.gate = new ActGate(this, () => clock.monotonicMs());
    }
    if (changed.has('screen')) {
      this.panel = 'actions';
      this.chosen = null;
    }
  }

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null) return nothing;
    const { nowMs } = this.ticking;
    const still = stillOf(view);
    if (still !== null || view.state === null) {
      this.duesMs = [];
      const [title, more] = still ?? [PHONE.loading, PHONE.loadingMore];
      return html`<header><phone-header .view=${view} .nowMs=${nowMs}></phone-header></header>
        <main>
          <div class="still">
            <h1>${title}</h1>
            <p>${more}</p>
          </div>
        </main>`;
    }
    return html`
      <header><phone-header .view=${view} .nowMs=${nowMs}></phone-header></header>
      ${this.screenOf(view, view.state, nowMs)}
    `;
  }

  private screenOf(view: FloorView, floor: FloorState, nowMs: number): TemplateResult {
    switch (this.screen.kind) {
      case 'device':
        this.duesMs = [];
        return html`
          <main><device-panel .device=${view.device} .stations=${floor.kitchen?.document.stations ?? []}></device-panel></main>
          <footer>${this.bottom(view, floor, PHONE.back)}</footer>
        `;
      case 'dayEnd':
        this.duesMs = [];
        return html`
          <main><day-end .floor=${floor} .nowMs=${nowMs} .zone=${zoneOf(floor)}></day-end></main>
          <footer>
            <answer-note .view=${view}></answer-note
            ><end-day-button .serviceDate=${floor.serviceDate}></end-day-button>${this.bottom(view, floor, PHONE.backToDoughs)}
          </footer>
        `;
      case 'card': {
        const card = cardOf(floor, this.screen.workpieceId, nowMs);
        return card === null ? this.list(view, floor, nowMs) : this.cardScreen(view, floor, card, nowMs);
      }
      case 'list':
        return this.list(view, floor, nowMs);
    }
  }

  private list(view: FloorView, floor: FloorState, nowMs: number): TemplateResult {
    const rows = this.steadyRows(floor, nowMs);
    this.duesMs = rows.map((row) => row.dueMs);
    return html`
      <main>
        <phone-list
          .rows=${rows}
          .nowMs=${nowMs}
          .zone=${zoneOf(floor)}
          .floorDate=${floorDateOf(floor)}
          .stations=${this.stationNames(floor)}
          .unsentIds=${unsentIds(view)}
        ></phone-list>
      </main>
      <footer><answer-note .view=${view}></answer-note>${view.undoable === null ? nothing : this.bottom(view, floor, null)}</footer>
    `;
  }

  private cardScreen(view: FloorView, floor: FloorState, card: CardModel, nowMs: number): TemplateResult {
    this.duesMs = [card.row.dueMs];
    this.cardKey = keyOf(card);
    const slotIds = this.slotIdsOf(floor, card);
    return html`
      <main>
        <dough-card
          .card=${card}
          .floor=${floor}
          .obstacle=${this.obstacle(view, floor, card, nowMs)}
          .nowMs=${nowMs}
          .zone=${zoneOf(floor)}
          .unit=${floor.house?.document.units.temperature ?? 'C'}
          .chosenSlotIds=${slotIds}
          .stationId=${view.device?.stationId ?? null}
          .notSent=${unsentIds(view).has(card.row.workpieceId)}
        ></dough-card>
      </main>
      <footer>
        <answer-note .view=${view}></answer-note>
        <div class="actions">${panelOf(this.panel, floor, card, slotIds, nowMs)}</div>
        ${this.bottom(view, floor, this.panel === 'actions' ? PHONE.backToDoughs : PHONE.back)}
      </footer>
    `;
  }

  /** What is in the way, worked out anew when the floor has changed or a minute has gone by. */
  private obstacle(view: FloorView, floor: FloorState, card: CardModel, nowMs: number): ObstacleModel | null {
    const key = `${keyOf(card)} ${Math.floor(nowMs / 60_000)}`;
    if (this.blocked?.floor !== floor || this.blocked.key !== key) {
      const found = obstacleOf(floor, card.row.workpieceId, nowMs);
      const facts = factsOf(floor, view.devices, view.device?.id ?? null);
      const model = found === null ? null : obstacleModel(floor, card.row, found, facts, floor.house?.document.units.temperature ?? 'C');
      this.blocked = { floor, key, model };
    }
    return this.blocked.model;
  }

  private stationNames(floor: FloorState): ReadonlyMap<string, string> {
    return new Map((floor.kitchen?.document.stations ?? []).map((station) => [station.id, station.name]));
  }

  private bottom(view: FloorView, floor: FloorState, back: string | null): TemplateResult {
    const undoes = view.undoable === null ? null : didWords(floor, view.undoable.command);
    return html`<bottom-bar .back=${back} .undoes=${undoes}></bottom-bar>`;
  }

  /** The wall's order, which time alone does not change: sorted anew only where the floor has changed. */
  private steadyRows(floor: FloorState, nowMs: number): readonly Row[] {
    const rows = boardRows(floor, nowMs);
    if (this.order?.state !== floor) {
      const entries = steadyOrder(
        this.order?.keys ?? [],
        rows.map((row) => [row] as const),
        nowMs,
      );
      this.order = { state: floor, keys: entries.map(([row]) => row.workpieceId) };
    }
    const { keys } = this.order;
    return [...rows].sort((a, b) => keys.indexOf(a.workpieceId) - keys.indexOf(b.workpieceId));
  }

  private slotIdsOf(floor: FloorState, card: CardModel): readonly string[] {
    if (card.load === null) return [];
    const free = new Set(
      card.load.decks.flatMap((deck) => deck.slots.filter((slot) => slot.takenByTag === null).map((slot) => slot.slotId)),
    );
    if (this.chosen === null || this.chosen.key !== keyOf(card)) return firstFreeSlots(floor, card.row.workpieceId, card.action);
    return this.chosen.slotIds.filter((slotId) => free.has(slotId));
  }

  protected override updated(): void {
    const key = this.keyOfScreen();
    if (key === this.shownKey) return;
    const isOtherScreen = key.split(' ')[0] !== this.shownKey.split(' ')[0];
    this.shownKey = key;
    this.gate?.shown();
    if (isOtherScreen && this.screen.kind === 'card') this.card?.focusHeading();
  }

  /** What decides whether a button still means what the thumb meant: the screen, the panel, and the step that it is about. */
  private keyOfScreen(): string {
    const floor = this.view?.state ?? null;
    if (this.screen.kind !== 'card' || floor === null) return `${this.screen.kind} ${String(floor !== null)}`;
    const card = cardOf(floor, this.screen.workpieceId, this.ticking.nowMs);
    return card === null ? 'list true' : `${keyOf(card)} ${this.panel}`;
  }

  private undo(): void {
    const undoable = this.view?.undoable ?? null;
    if (undoable !== null) this.dispatchEvent(new FloorCommandEvent({ type: 'undoCommand', commandId: undoable.commandId }));
  }

  /** A panel closes before its card does. */
  private goBack(event: GoBackEvent): void {
    event.stopPropagation();
    if (this.screen.kind === 'card' && this.panel !== 'actions') this.panel = 'actions';
    else this.dispatchEvent(new ShowScreenEvent({ kind: 'list' }));
  }
}

function keyOf(card: CardModel): string {
  return `${card.row.workpieceId} ${card.action.id} ${card.row.phase}`;
}

function unsentIds(view: FloorView): ReadonlySet<string> {
  return new Set(view.kept.filter((tap) => !tap.isSent).flatMap(({ command }) => touchedIds(command)));
}

function touchedIds(command: ClientCommand): readonly string[] {
  if ('workpieceIds' in command) return command.workpieceIds;
  if ('toWorkpieceId' in command) return [command.toWorkpieceId];
  return 'workpieceId' in command ? [command.workpieceId] : [];
}

declare global {
  interface HTMLElementTagNameMap {
    'phone-page': PhonePage;
  }
}
