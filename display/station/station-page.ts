import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Station } from '../../shared/documents/kitchen.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { AnsweredTap, FloorView } from '../link/floor-link.ts';
import { floorDateOf } from '../parts/day-tag.ts';
import { nextTextChangeMs } from '../parts/clock-text.ts';
import type { LookChoice } from '../parts/look.ts';
import { SteadyRows } from '../parts/steady-rows.ts';
import { stillOf } from '../parts/still-of.ts';
import { TickingClock, type ClockSource } from '../parts/ticking-clock.ts';
import { unsentIds } from '../parts/unsent-ids.ts';
import { ActGate } from '../phone/act-gate.ts';
import '../phone/answer-note.ts';
import '../phone/bottom-bar.ts';
import { cardOf, type CardModel } from '../phone/card-model.ts';
import { didWords } from '../phone/did-words.ts';
import '../phone/dough-card.ts';
import type { DoughCard } from '../phone/dough-card.ts';
import { zoneOf } from '../phone/floor-facts.ts';
import { Later } from '../parts/later.ts';
import { panelOf } from '../phone/panel-of.ts';
import { cardKey, OpenedCard } from '../phone/opened-card.ts';
import { openPanel, withoutPanel, withPanel, type PanelTrail } from '../phone/panel-trail.ts';
import {
  FloorCommandEvent,
  type GoBackEvent,
  type Panel,
  type PanelWantedEvent,
  type RowsMovedEvent,
  type ShowScreenEvent,
} from '../phone/phone-events.ts';
import '../phone/phone-list.ts';
import { baseStyles } from '../phone/phone-styles.ts';
import '../phone/sound-ask.ts';
import '../phone/sound-strip.ts';
import type { SlotsChosenEvent } from '../phone/slot-picker.ts';
import { stillToTell } from '../phone/told-refusals.ts';
import type { Language } from '../words/page-language.ts';
import { PHONE } from '../words/phone.ts';
import { STATION } from '../words/station.ts';
import './elsewhere-line.ts';
import { isLeftAlone } from './idle.ts';
import { pageStyles } from './page-styles.ts';
import './station-choice.ts';
import './station-header.ts';
import './station-machines.ts';
import { deckLines, mixerLines, stationList, type DeckLine, type MixerLine, type StationList } from './station-model.ts';
import type { Lit } from './stay-lit.ts';

/** Loads beyond that are not told beside a slot. */
const BOOKINGS_AHEAD_MS = 3 * 3_600_000;

/** The clocks that the page is drawn and tapped by. */
export interface StationClock extends ClockSource {
  /** Real milliseconds that only run forward. */
  monotonicMs(): number;
}

/** A station's own screen: its most pressing dough opened with its buttons, the others as a list, its machines. */
@customElement('station-page')
export class StationPage extends LitElement {
  static override styles = [baseStyles, pageStyles];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) clock: StationClock | null = null;
  /** Where the screen is; null before somebody has said. */
  @property({ attribute: false }) stationId: string | null = null;
  @property({ attribute: false }) language: Language = 'en';
  @property({ attribute: false }) look: LookChoice = 'browser';
  @property({ attribute: false }) lit: Lit = 'unknown';
  /** The dough that a thumb opened; null: whatever presses most. */
  @state() private wantedId: string | null = null;
  @state() private trail: PanelTrail = [];
  @state() private isChoosing = false;
  /** Refused taps that have not been put away. */
  @state() private refusals: readonly AnsweredTap[] = [];
  @query('dough-card') private card!: DoughCard | null;

  private readonly ticking = new TickingClock(
    this,
    () => this.clock,
    (nowMs) => nextTextChangeMs(this.duesMs, nowMs),
  );
  private readonly rows = new SteadyRows();
  private readonly opened = new OpenedCard();
  private readonly later = new Later(() => import('../phone/later-parts.ts'));
  private shownCard: CardModel | null = null;
  private gate: ActGate | null = null;
  private duesMs: readonly number[] = [];
  private shownKey = '';
  private lastTouchMs = 0;
  private wantsFocus = false;

  constructor() {
    super();
    const touched = (): void => {
      this.lastTouchMs = this.clock?.monotonicMs() ?? 0;
    };
    this.addEventListener('pointerdown', touched, { capture: true });
    this.addEventListener('keydown', touched, { capture: true });
    this.addEventListener('rows-moved', (event: RowsMovedEvent) => this.gate?.moved(event.rows));
    this.addEventListener('newly-shown', () => this.gate?.shown());
    this.addEventListener('show-screen', (event: ShowScreenEvent) => this.open(event));
    this.addEventListener('choice-wanted', () => (this.isChoosing = true));
    this.addEventListener('station-chosen', () => this.backToWork());
    this.addEventListener('skip-wanted', () => this.follow('skip'));
    this.addEventListener('panel-wanted', (event: PanelWantedEvent) => this.follow(event.panel));
    this.addEventListener('slots-chosen', (event: SlotsChosenEvent) => this.chooseSlots(event.slotIds));
    this.addEventListener('floor-command', (event: FloorCommandEvent) => this.said(event));
    this.addEventListener('put-away', () => (this.refusals = []));
    this.addEventListener('undo-wanted', () => this.undo());
    this.addEventListener('go-back', (event: GoBackEvent) => this.goBack(event));
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('view') && this.view !== null) this.refusals = stillToTell(this.refusals, this.view);
    const { clock } = this;
    if (clock === null) return;
    this.gate ??= new ActGate(this, () => clock.monotonicMs());
    if (isLeftAlone(this.lastTouchMs, clock.monotonicMs())) this.backToWork();
  }

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null) return nothing;
    const { nowMs } = this.ticking;
    const still = stillOf(view);
    if (still !== null || view.state === null) {
      this.duesMs = [];
      const [title, more] = still ?? [PHONE.loading, PHONE.loadingMore];
      return html`${this.header(view, nowMs, null)}
        <main class="still">
          <h1>${title}</h1>
          <p>${more}</p>
        </main>`;
    }
    const station = this.stationIn(view.state);
    return this.isChoosing || station === null ? this.choice(view, view.state, nowMs) : this.floor(view, view.state, station, nowMs);
  }

  private header(view: FloorView, nowMs: number, station: string | null): TemplateResult {
    return html`<header><station-header .view=${view} .nowMs=${nowMs} .station=${station}></station-header></header>`;
  }

  private choice(view: FloorView, floor: FloorState, nowMs: number): TemplateResult {
    this.duesMs = [];
    this.shownCard = null;
    const isBack = this.stationIn(floor) !== null;
    return html`${this.header(view, nowMs, null)}
      <main class="choice">
        <station-choice
          .stations=${floor.kitchen?.document.stations ?? []}
          .view=${view}
          .nowMs=${nowMs}
          .stationId=${this.stationId}
          .language=${this.language}
          .look=${this.look}
          .lit=${this.lit}
        ></station-choice>
      </main>
      <footer>${isBack ? html`<bottom-bar .back=${STATION.backToWork} .undoes=${null}></bottom-bar>` : nothing}</footer>`;
  }

  private floor(view: FloorView, floor: FloorState, station: Station, nowMs: number): TemplateResult {
    const zone = zoneOf(floor);
    const list = stationList(this.rows.at(floor, nowMs), station.id, this.wantedId);
    const mixers = mixerLines(floor, station.id, nowMs);
    const decks = deckLines(floor, station.id, nowMs, BOOKINGS_AHEAD_MS);
    const card = list.open === null ? null : cardOf(floor, list.open.workpieceId, nowMs);
    this.shownCard = card;
    this.duesMs = duesOf(list, mixers, decks);
    const isAlone = list.rest.length === 0 && mixers.length === 0 && decks.length === 0;
    return html`
      <div class="top">
        ${this.header(view, nowMs, station.name)}
        ${list.elsewhere === null ? nothing : html`<elsewhere-line .elsewhere=${list.elsewhere} .nowMs=${nowMs} .zone=${zone} .floorDate=${floorDateOf(floor)}></elsewhere-line>`}
        <sound-strip fixed .view=${view}></sound-strip>
      </div>
      <div class="work ${isAlone ? 'alone' : ''} ${this.trail.length === 0 ? '' : 'panelled'}">
        ${card === null ? this.nothingToDo() : this.openCard(view, floor, card, nowMs)}
        <section class="list" aria-label=${STATION.otherDoughs}>
          ${list.rest.length === 0 ? nothing : html`<div class="rows">${this.others(view, floor, list, nowMs)}</div>`}
          ${this.machines(floor, mixers, decks, nowMs)}
        </section>
        <footer class="foot"><sound-ask .view=${view} .nowMs=${nowMs}></sound-ask>${this.bottom(view, floor)}</footer>
      </div>
    `;
  }

  private nothingToDo(): TemplateResult {
    return html`<main class="card still">
      <h1>${STATION.emptyTitle}</h1>
      <p>${STATION.emptyMore}</p>
    </main>`;
  }

  private openCard(view: FloorView, floor: FloorState, card: CardModel, nowMs: number): TemplateResult {
    const slotIds = this.opened.slotIds(floor, card, nowMs);
    const obstacle = this.opened.obstacle(view, floor, card, nowMs);
    return html`
      <main class="card">
        <dough-card
          .card=${card}
          .floor=${floor}
          .obstacle=${obstacle}
          .nowMs=${nowMs}
          .zone=${zoneOf(floor)}
          .unit=${floor.house?.document.units.temperature ?? 'C'}
          .chosenSlotIds=${slotIds}
          .stationId=${this.stationId}
          .notSent=${unsentIds(view).has(card.row.workpieceId)}
        ></dough-card>
      </main>
      <div class="acts">
        <answer-note .view=${view} .refusals=${this.refusals}></answer-note>
        ${panelOf(openPanel(this.trail), floor, card, slotIds, nowMs, { obstacle })}
      </div>
    `;
  }

  private others(view: FloorView, floor: FloorState, list: StationList, nowMs: number): TemplateResult {
    return html`<h2 aria-hidden="true">${STATION.otherDoughs}</h2>
      <phone-list
        .rows=${list.rest}
        .nowMs=${nowMs}
        .zone=${zoneOf(floor)}
        .floorDate=${floorDateOf(floor)}
        .stations=${new Map((floor.kitchen?.document.stations ?? []).map(({ id, name }) => [id, name]))}
        .unsentIds=${unsentIds(view)}
      ></phone-list>`;
  }

  private machines(
    floor: FloorState,
    mixers: readonly MixerLine[],
    decks: readonly DeckLine[],
    nowMs: number,
  ): TemplateResult | typeof nothing {
    const note = this.lit === 'mayDim' ? html`<p class="note">${STATION.mayDim}</p>` : nothing;
    if (mixers.length === 0 && decks.length === 0) return note;
    return html`<div class="machines" role="region" aria-label=${STATION.machines} tabindex="0">
      <station-machines .floor=${floor} .mixers=${mixers} .decks=${decks} .nowMs=${nowMs}></station-machines>
      ${note}
    </div>`;
  }

  private bottom(view: FloorView, floor: FloorState): TemplateResult | typeof nothing {
    const back = this.trail.length > 0 || this.wantedId !== null ? PHONE.back : null;
    const undoes = view.undoable === null ? null : didWords(floor, view.undoable.command);
    return back === null && undoes === null ? nothing : html`<bottom-bar .back=${back} .undoes=${undoes}></bottom-bar>`;
  }

  protected override updated(_changed: PropertyValues<this>): void {
    if (this.view !== null && this.view.state !== null) this.later.load();
    const key = this.shownCard === null ? String(this.isChoosing) : `${cardKey(this.shownCard)} ${openPanel(this.trail)}`;
    // The same place on the glass means something else now.
    if (key !== this.shownKey) this.gate?.shown();
    this.shownKey = key;
    if (this.wantsFocus) this.card?.focusHeading();
    this.wantsFocus = false;
  }

  private stationIn(floor: FloorState): Station | null {
    return floor.kitchen?.document.stations.find((station) => station.id === this.stationId) ?? null;
  }

  private open({ screen }: ShowScreenEvent): void {
    if (screen.kind !== 'card') return;
    this.wantedId = screen.workpieceId;
    this.trail = [];
    this.wantsFocus = true;
  }

  /** The dough stays, whatever comes to press more, as long as somebody is busy with its panel. */
  private follow(panel: Panel): void {
    this.trail = withPanel(this.trail, panel);
    this.wantedId = this.shownCard?.row.workpieceId ?? null;
  }

  private chooseSlots(slotIds: readonly string[]): void {
    if (this.shownCard === null) return;
    this.opened.choose(this.shownCard, slotIds);
    this.requestUpdate();
  }

  /** Once its step is done, the dough that was opened makes room for what presses most. */
  private said({ command }: FloorCommandEvent): void {
    this.trail = [];
    if (command.type === 'finishStep' || command.type === 'skipStep' || command.type === 'discardWorkpiece') this.wantedId = null;
  }

  private undo(): void {
    const undoable = this.view?.undoable ?? null;
    if (undoable !== null) this.dispatchEvent(new FloorCommandEvent({ type: 'undoCommand', commandId: undoable.commandId }));
  }

  /** A panel closes before its card does. */
  private goBack(event: GoBackEvent): void {
    event.stopPropagation();
    if (this.isChoosing || this.trail.length === 0) this.backToWork();
    else this.trail = withoutPanel(this.trail);
  }

  private backToWork(): void {
    this.isChoosing = false;
    this.trail = [];
    this.wantedId = null;
  }
}

/** Every instant that a countdown on the screen runs to. */
function duesOf(list: StationList, mixers: readonly MixerLine[], decks: readonly DeckLine[]): number[] {
  return [
    ...[list.open, ...list.rest, list.elsewhere?.first ?? null, ...mixers.map((line) => line.row)].flatMap((row) => row?.dueMs ?? []),
    ...decks.flatMap((deck) => [deck.freeMs ?? [], ...deck.slots.map((slot) => slot.inside?.outMs ?? [])].flat()),
  ];
}

declare global {
  interface HTMLElementTagNameMap {
    'station-page': StationPage;
  }
}
