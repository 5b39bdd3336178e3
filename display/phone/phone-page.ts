import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { FloorState } from '../../shared/floor/state.ts';
import type { AnsweredTap, FloorView } from '../link/floor-link.ts';
import { nextTextChangeMs } from '../parts/clock-text.ts';
import { floorDateOf } from '../parts/day-tag.ts';
import type { LookChoice } from '../parts/look.ts';
import { isOfStation } from '../parts/station-rows.ts';
import { SteadyRows } from '../parts/steady-rows.ts';
import { stillOf } from '../parts/still-of.ts';
import { TickingClock, type ClockSource } from '../parts/ticking-clock.ts';
import { unsentIds } from '../parts/unsent-ids.ts';
import type { Language } from '../words/page-language.ts';
import { PHONE } from '../words/phone.ts';
import { THIS_PHONE } from '../words/this-phone.ts';
import { ActGate } from './act-gate.ts';
import './answer-note.ts';
import './bottom-bar.ts';
import { cardOf, type CardModel } from './card-model.ts';
import type { CardPanel } from './card-panel.ts';
import './device-panel.ts';
import { didWords } from './did-words.ts';
import './dough-card.ts';
import type { DoughCard } from './dough-card.ts';
import './end-day-button.ts';
import { elsewhereOf, filterIn } from './filter-model.ts';
import { zoneOf } from './floor-facts.ts';
import './late-elsewhere.ts';
import { Later } from '../parts/later.ts';
import './list-foot.ts';
import { cardKey, OpenedCard } from './opened-card.ts';
import { pageStyles } from './page-styles.ts';
import { panelOf } from './panel-of.ts';
import { openPanel, withoutPanel, withPanel, type PanelTrail } from './panel-trail.ts';
import {
  FloorCommandEvent,
  type GoBackEvent,
  type NewlyShownEvent,
  type Panel,
  type PanelWantedEvent,
  type RowsMovedEvent,
  type Screen,
} from './phone-events.ts';
import './phone-header.ts';
import './phone-list.ts';
import { baseStyles } from './phone-styles.ts';
import { duesOfPlaces, placesOf } from './places-model.ts';
import type { PlacesView } from './places-view.ts';
import './pocket-cover.ts';
import type { SlotsChosenEvent } from './slot-picker.ts';
import './sound-ask.ts';
import './sound-settings.ts';
import './sound-strip.ts';
import './station-filter.ts';

/** The clocks that a page is drawn and tapped by. */
export interface PhoneClock extends ClockSource {
  /** Real milliseconds that only run forward. */
  monotonicMs(): number;
}

/** The whole phone: the floor's list, a dough's card, where everything stands, or the phone itself, with undo below. */
@customElement('phone-page')
export class PhonePage extends LitElement {
  static override styles = [baseStyles, pageStyles];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) clock: PhoneClock | null = null;
  @property({ attribute: false }) screen: Screen = { kind: 'list' };
  /** The way back from this screen leads to the list. */
  @property({ attribute: false }) leadsToList = true;
  /** Whose doughs the list shows; null for everybody's. */
  @property({ attribute: false }) filterId: string | null = null;
  @property({ attribute: false }) language: Language = 'en';
  @property({ attribute: false }) look: LookChoice = 'browser';
  /** Refused taps that have not been put away, the oldest first. */
  @property({ attribute: false }) refusals: readonly AnsweredTap[] = [];
  @state() private trail: PanelTrail = [];
  @state() private isFiltering = false;
  /** The page was touched as only a pocket touches. */
  @state() private isPocketed = false;
  @query('dough-card') private card!: DoughCard | null;
  @query('places-view') private drawing!: PlacesView | null;
  @query('.actions > *') private openedPanel!: Partial<CardPanel> | null;

  private readonly ticking = new TickingClock(
    this,
    () => this.clock,
    (nowMs) => nextTextChangeMs(this.duesMs, nowMs),
  );
  private readonly rows = new SteadyRows();
  private readonly opened = new OpenedCard();
  private readonly later = new Later(() => import('./later-parts.ts'));
  private gate: ActGate | null = null;
  private duesMs: readonly number[] = [];
  private shownCard: CardModel | null = null;
  private shownKey = '';

  constructor() {
    super();
    this.addEventListener('rows-moved', (event: RowsMovedEvent) => this.gate?.moved(event.rows));
    this.addEventListener('newly-shown', (_event: NewlyShownEvent) => this.gate?.shown());
    this.addEventListener('panel-wanted', (event: PanelWantedEvent) => this.open(event.panel));
    this.addEventListener('skip-wanted', () => this.open('skip'));
    this.addEventListener('slots-chosen', (event: SlotsChosenEvent) => this.chooseSlots(event.slotIds));
    this.addEventListener('floor-command', () => (this.trail = []));
    this.addEventListener('filter-wanted', () => (this.isFiltering = true));
    this.addEventListener('filter-chosen', () => (this.isFiltering = false));
    this.addEventListener('go-on', () => (this.isPocketed = false));
    this.addEventListener('undo-wanted', () => this.undo());
    this.addEventListener('go-back', (event: GoBackEvent) => this.goBack(event));
  }

  /** The list is what is seen: also where the dough of a card has left the floor. */
  get showsList(): boolean {
    return this.screen.kind === 'list' || (this.screen.kind === 'card' && this.shownCard === null);
  }

  /** Closes whatever stands over the screen, one step of it. False where nothing does. */
  closeOne(): boolean {
    if (this.screen.kind === 'list' && this.isFiltering) {
      this.isFiltering = false;
      return true;
    }
    if (this.screen.kind !== 'card' || this.trail.length === 0) return false;
    if (this.openedPanel?.stepBack?.() !== true) this.trail = withoutPanel(this.trail);
    return true;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const { clock } = this;
    if (clock !== null)
      this.gate ??= new ActGate(
        this,
        () => clock.monotonicMs(),
        () => (this.isPocketed = true),
      );
    if (!changed.has('screen')) return;
    this.trail = [];
    this.isFiltering = false;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null) return nothing;
    const { nowMs } = this.ticking;
    this.duesMs = [];
    this.shownCard = null;
    const still = stillOf(view);
    if (still !== null || view.state === null) {
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
      <header ?inert=${this.isPocketed}>
        <phone-header .view=${view} .nowMs=${nowMs}></phone-header><sound-strip .view=${view}></sound-strip>
      </header>
      ${this.screenOf(view, view.state, nowMs)} ${this.isPocketed ? html`<pocket-cover></pocket-cover>` : nothing}
    `;
  }

  private screenOf(view: FloorView, floor: FloorState, nowMs: number): TemplateResult {
    switch (this.screen.kind) {
      case 'device':
        return this.device(view, floor, nowMs);
      case 'dayEnd':
        return this.dayEnd(view, floor, nowMs);
      case 'places':
        return this.places(view, floor, this.screen.workpieceId, nowMs);
      case 'card': {
        const card = cardOf(floor, this.screen.workpieceId, nowMs);
        return card === null ? this.list(view, floor, nowMs) : this.cardScreen(view, floor, card, nowMs);
      }
      case 'list':
        return this.list(view, floor, nowMs);
    }
  }

  private device(view: FloorView, floor: FloorState, nowMs: number): TemplateResult {
    return html`
      <main ?inert=${this.isPocketed}>
        <device-panel
          .device=${view.device}
          .stations=${floor.kitchen?.document.stations ?? []}
          .language=${this.language}
          .look=${this.look}
        >
          <sound-settings slot="sound" .view=${view} .nowMs=${nowMs}></sound-settings>
        </device-panel>
      </main>
      <footer ?inert=${this.isPocketed}>${this.bottom(view, floor)}</footer>
    `;
  }

  private dayEnd(view: FloorView, floor: FloorState, nowMs: number): TemplateResult {
    return html`
      <main tabindex="0" ?inert=${this.isPocketed}><day-end .floor=${floor} .nowMs=${nowMs} .zone=${zoneOf(floor)}></day-end></main>
      <footer ?inert=${this.isPocketed}>
        ${this.note(view)}<end-day-button .serviceDate=${floor.serviceDate}></end-day-button>${this.bottom(view, floor)}
      </footer>
    `;
  }

  private places(view: FloorView, floor: FloorState, wantedId: string | null, nowMs: number): TemplateResult {
    const places = placesOf(floor, nowMs);
    this.duesMs = duesOfPlaces(places);
    return html`
      <main ?inert=${this.isPocketed}>
        <places-view
          .places=${places}
          .wantedId=${wantedId}
          .nowMs=${nowMs}
          .zone=${zoneOf(floor)}
          .unit=${floor.house?.document.units.temperature ?? 'C'}
        ></places-view>
      </main>
      <footer ?inert=${this.isPocketed}>${this.note(view)}${this.bottom(view, floor)}</footer>
    `;
  }

  private list(view: FloorView, floor: FloorState, nowMs: number): TemplateResult {
    const stations = floor.kitchen?.document.stations ?? [];
    const filter = filterIn(stations, this.filterId);
    const all = this.rows.at(floor, nowMs);
    const rows = all.filter((row) => isOfStation(row, filter?.id ?? null));
    this.duesMs = all.map((row) => row.dueMs);
    const undoes = view.undoable === null ? null : didWords(floor, view.undoable.command);
    return html`
      <main ?inert=${this.isPocketed}>
        <late-elsewhere .elsewhere=${elsewhereOf(all, filter?.id ?? null)}></late-elsewhere>
        <phone-list
          .rows=${rows}
          .nowMs=${nowMs}
          .zone=${zoneOf(floor)}
          .floorDate=${floorDateOf(floor)}
          .stations=${new Map(stations.map((station) => [station.id, station.name]))}
          .unsentIds=${unsentIds(view)}
          .station=${filter?.name ?? null}
        ></phone-list>
      </main>
      <footer ?inert=${this.isPocketed}>
        ${this.note(view)}<sound-ask .view=${view} .nowMs=${nowMs}></sound-ask>
        ${
          this.isFiltering
            ? html`<div class="actions">
                  <station-filter
                    .stations=${stations}
                    .ownId=${view.device?.stationId ?? null}
                    .chosenId=${filter?.id ?? null}
                  ></station-filter>
                </div>
                ${this.bottom(view, floor)}`
            : html`<list-foot .shown=${filter?.name ?? THIS_PHONE.allShown} .undoes=${undoes}></list-foot>`
        }
      </footer>
    `;
  }

  private cardScreen(view: FloorView, floor: FloorState, card: CardModel, nowMs: number): TemplateResult {
    this.duesMs = [card.row.dueMs];
    this.shownCard = card;
    const slotIds = this.opened.slotIds(floor, card, nowMs);
    const obstacle = this.opened.obstacle(view, floor, card, nowMs);
    return html`
      <main ?inert=${this.isPocketed}>
        <dough-card
          .card=${card}
          .floor=${floor}
          .obstacle=${obstacle}
          .nowMs=${nowMs}
          .zone=${zoneOf(floor)}
          .unit=${floor.house?.document.units.temperature ?? 'C'}
          .chosenSlotIds=${slotIds}
          .stationId=${view.device?.stationId ?? null}
          .notSent=${unsentIds(view).has(card.row.workpieceId)}
        ></dough-card>
      </main>
      <footer ?inert=${this.isPocketed}>
        ${this.note(view)}
        <div class="actions">${panelOf(openPanel(this.trail), floor, card, slotIds, nowMs, { obstacle, hasPlaces: true })}</div>
        ${this.bottom(view, floor)}
      </footer>
    `;
  }

  private note(view: FloorView): TemplateResult {
    return html`<answer-note .view=${view} .refusals=${this.refusals}></answer-note>`;
  }

  private bottom(view: FloorView, floor: FloorState): TemplateResult {
    const isOver = this.isFiltering || this.trail.length > 0;
    const back = isOver || !this.leadsToList ? PHONE.back : PHONE.backToDoughs;
    const undoes = view.undoable === null ? null : didWords(floor, view.undoable.command);
    return html`<bottom-bar .back=${back} .undoes=${undoes}></bottom-bar>`;
  }

  protected override updated(): void {
    if (this.view !== null && this.view.state !== null) this.later.load();
    const key = this.keyOfScreen();
    if (key === this.shownKey) return;
    const isOtherScreen = key.split(' ')[0] !== this.shownKey.split(' ')[0];
    this.shownKey = key;
    this.gate?.shown();
    if (this.isPocketed || !isOtherScreen) return;
    if (this.screen.kind === 'card') this.card?.focusHeading();
    if (this.screen.kind === 'places') void this.showDrawing();
  }

  private async showDrawing(): Promise<void> {
    // It comes with what the page loads later.
    await customElements.whenDefined('places-view');
    const { drawing } = this;
    await drawing?.updateComplete;
    drawing?.focusHeading();
    drawing?.showWanted();
  }

  /** What decides whether a button still means what the thumb meant: the screen, the panel, and the step that it is about. */
  private keyOfScreen(): string {
    const over = `${openPanel(this.trail)} ${String(this.isFiltering)} ${String(this.isPocketed)}`;
    if (this.shownCard !== null) return `${cardKey(this.shownCard)} ${over}`;
    const kind = this.screen.kind === 'card' ? 'list' : this.screen.kind;
    return `${kind} ${String(this.view?.state !== null)} ${this.filterId ?? ''} ${over}`;
  }

  private open(panel: Panel): void {
    this.trail = withPanel(this.trail, panel);
  }

  private chooseSlots(slotIds: readonly string[]): void {
    if (this.shownCard === null) return;
    this.opened.choose(this.shownCard, slotIds);
    this.requestUpdate();
  }

  private undo(): void {
    const undoable = this.view?.undoable ?? null;
    if (undoable !== null) this.dispatchEvent(new FloorCommandEvent({ type: 'undoCommand', commandId: undoable.commandId }));
  }

  /** What stands over a screen closes before the screen does; that is the page owner's, who knows where it was opened from. */
  private goBack(event: GoBackEvent): void {
    if (this.closeOne()) event.stopImmediatePropagation();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'phone-page': PhonePage;
  }
}
