import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { FloorState } from '../../shared/floor/state.ts';
import type { AnsweredTap, FloorView } from '../link/floor-link.ts';
import { nextTextChangeMs } from '../parts/clock-text.ts';
import { stillOf } from '../parts/still-of.ts';
import { TickingClock } from '../parts/ticking-clock.ts';
import { ViewportSize } from '../parts/viewport-size.ts';
import { ActGate } from '../phone/act-gate.ts';
import '../phone/answer-note.ts';
import '../phone/bottom-bar.ts';
import { didWords } from '../phone/did-words.ts';
import { zoneOf } from '../phone/floor-facts.ts';
import { pageStyles } from '../phone/page-styles.ts';
import { FloorCommandEvent, type GoBackEvent } from '../phone/phone-events.ts';
import '../phone/phone-header.ts';
import type { PhoneClock } from '../phone/phone-page.ts';
import { baseStyles } from '../phone/phone-styles.ts';
import '../phone/pocket-cover.ts';
import { PHONE } from '../words/phone.ts';
import { WEIGH } from '../words/weigh.ts';
import type { DegreesSaidEvent } from './degrees-choice.ts';
import { firstView, pieceOf, unitsOf, viewsOf, type PieceModel } from './piece-model.ts';
import { pieceActions, pieceList, pieceMain, type Over, type PieceScreen } from './piece-screen.ts';
import './waiting-list.ts';
import { waitingOf } from './waiting-model.ts';
import { takeWaterCommand } from './water-model.ts';
import type { LotChosenEvent, ViewWantedEvent, WaterPanelWantedEvent, WeighView } from './weigh-events.ts';
import { allLines, doughPart, isOpen, nextOpenId } from './weigh-model.ts';
import { weighPageStyles } from './weigh-page-styles.ts';
import { weightText } from '../parts/weight-text.ts';
import { weightSpoken } from './spoken-weight.ts';

/** From this width on the list stands beside the line: a tablet at the mixer. */
const WIDE_PX = 900;

/** The weigh-out at the mixer: what waits, and of one dough its lines, its water, and its temperature after mixing. */
@customElement('weigh-page')
export class WeighPage extends LitElement {
  static override styles = [baseStyles, pageStyles, weighPageStyles];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) clock: PhoneClock | null = null;
  /** What is weighed; null for the list of what waits. */
  @property({ attribute: false }) pieceId: string | null = null;
  /** Refused taps that have not been put away, the oldest first. */
  @property({ attribute: false }) refusals: readonly AnsweredTap[] = [];
  /** Null until a thumb has chosen one. */
  @state() private chosenView: WeighView | null = null;
  @state() private wantedLineId: string | null = null;
  @state() private over: Over | null = null;
  /** Lots chosen for lines, by line; null for none. */
  @state() private lots: ReadonlyMap<string, string | null> = new Map();
  /** The answer that a wild reading was asked about by, once that is answered. */
  @state() private askedId: string | null = null;
  @state() private isPocketed = false;
  @query('main > *') private shownMain!: (Element & { stepBack?(): boolean }) | null;
  @query('.actions > *') private shownPanel!: (Element & { stepBack?(): boolean }) | null;

  private readonly size = new ViewportSize(this);
  private readonly ticking = new TickingClock(
    this,
    () => this.clock,
    (nowMs) => nextTextChangeMs([], nowMs),
  );
  private gate: ActGate | null = null;
  private piece: PieceModel | null = null;
  private shownKey = '';

  constructor() {
    super();
    this.addEventListener('newly-shown', () => this.gate?.shown());
    this.addEventListener('go-on', () => (this.isPocketed = false));
    this.addEventListener('view-wanted', (event: ViewWantedEvent) => this.show(event.view, event.lineId));
    this.addEventListener('short-wanted', () => (this.over = 'short'));
    this.addEventListener('water-panel-wanted', (event: WaterPanelWantedEvent) => (this.over = event.panel));
    this.addEventListener('over-closed', () => this.closeOver());
    this.addEventListener('lot-chosen', (event: LotChosenEvent) => this.chooseLot(event.lot));
    this.addEventListener('degrees-said', (event: DegreesSaidEvent) => this.sayDegrees(event.celsius));
    this.addEventListener('floor-command', (event: FloorCommandEvent) => this.said(event));
    this.addEventListener('undo-wanted', () => this.undo());
    this.addEventListener('go-back', (event: GoBackEvent) => {
      if (this.closeOne()) event.stopImmediatePropagation();
    });
  }

  /** Closes whatever stands over the weigh-out, one step of it. False where nothing does. */
  closeOne(): boolean {
    if (this.over !== null) {
      if (this.shownPanel?.stepBack?.() !== true) this.over = null;
      return true;
    }
    return this.shownMain?.stepBack?.() === true;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const { clock } = this;
    if (clock !== null)
      this.gate ??= new ActGate(
        this,
        () => clock.monotonicMs(),
        () => (this.isPocketed = true),
      );
    if (!changed.has('pieceId')) return;
    this.chosenView = null;
    this.wantedLineId = null;
    this.over = null;
    this.lots = new Map();
  }

  protected override render(): TemplateResult | typeof nothing {
    const { view, pieceId } = this;
    this.piece = null;
    if (view === null) return nothing;
    const { nowMs } = this.ticking;
    const still = stillOf(view);
    if (still !== null || view.state === null) return this.still(view, still ?? [PHONE.loading, PHONE.loadingMore]);
    if (pieceId === null) return this.waiting(view, view.state);
    this.piece = pieceOf(view, view.state, pieceId, this.wantedLineId, nowMs);
    return this.piece === null ? this.gone(view, view.state) : this.weighing(view, view.state, this.piece, nowMs);
  }

  private still(view: FloorView, [title, more]: readonly [string, string]): TemplateResult {
    return html`<header>${this.header(view, null)}</header>
      <main>
        <div class="still">
          <h1>${title}</h1>
          <p>${more}</p>
        </div>
      </main>`;
  }

  private waiting(view: FloorView, floor: FloorState): TemplateResult {
    return html`
      <header ?inert=${this.isPocketed}>${this.header(view, null)}</header>
      <main ?inert=${this.isPocketed}>
        <waiting-list .waiting=${waitingOf(floor)} .zone=${zoneOf(floor)} .units=${unitsOf(floor)}></waiting-list>
      </main>
      <footer ?inert=${this.isPocketed}>${this.note(view)}${this.bottom(view, floor, null)}</footer>
      ${this.cover()}
    `;
  }

  private gone(view: FloorView, floor: FloorState): TemplateResult {
    return html`
      <header>${this.header(view, this.pieceId)}</header>
      <main>
        <div class="still">
          <h1>${WEIGH.goneTitle}</h1>
          <p>${WEIGH.goneMore}</p>
        </div>
      </main>
      <footer>${this.note(view)}${this.bottom(view, floor, PHONE.back)}</footer>
    `;
  }

  private weighing(view: FloorView, floor: FloorState, piece: PieceModel, nowMs: number): TemplateResult {
    const screen = this.screenOf(view, floor, piece, nowMs);
    const { isWide } = screen;
    const isInert = this.isPocketed;
    return html`
      <header ?inert=${isInert}>${this.header(view, piece.workpiece.id)}${this.heading(screen)}</header>
      ${
        isWide
          ? html`<section class="beside" aria-label=${WEIGH.listTitle} ?inert=${isInert}>
              <div class="lines">${pieceList(screen, screen.view === 'line' ? (piece.placed?.line.id ?? null) : null)}</div>
              <list-actions .views=${viewsOf(piece)} .current=${screen.view}></list-actions>
            </section>`
          : nothing
      }
      <main ?inert=${isInert}>${pieceMain(screen)}</main>
      <footer ?inert=${isInert}>
        <p class="unseen" role="status">${spokenLine(screen)}</p>
        ${piece.wild !== null ? nothing : this.note(view)}
        <div class="actions">${pieceActions(screen)}</div>
        ${this.bottom(view, floor, PHONE.back)}
      </footer>
      ${this.cover()}
    `;
  }

  private screenOf(view: FloorView, floor: FloorState, piece: PieceModel, nowMs: number): PieceScreen {
    const isWide = this.size.widthPx >= WIDE_PX;
    const wanted = this.chosenView ?? firstView(piece);
    return {
      piece,
      floor,
      view: isWide && wanted === 'list' ? 'line' : wanted,
      over: this.over,
      lots: this.lots,
      nowMs,
      isWide,
      isAsked: view.lastAnswer !== null && view.lastAnswer.commandId === this.askedId,
    };
  }

  private header(view: FloorView, workpieceId: string | null): TemplateResult {
    return html`<phone-header .view=${view} .nowMs=${this.ticking.nowMs}>
      <a href=${workpieceId === null ? '/phone' : `/phone?card=${encodeURIComponent(workpieceId)}`}>
        ${this.piece === null ? WEIGH.toPhone : WEIGH.cardOf(this.piece.tag)}
      </a>
    </phone-header>`;
  }

  private heading({ view, piece: { tag, formulaName, out, units, placed } }: PieceScreen): TemplateResult {
    const weight = weightText(doughPart(out)?.totalG ?? 0, units);
    return html`<div class="title">
      <h1>${tag} ${formulaName}</h1>
      <span>${view === 'line' && placed !== null ? WEIGH.place(placed.place, placed.of) : weight}</span>
    </div>`;
  }

  private note(view: FloorView): TemplateResult {
    return html`<answer-note .view=${view} .refusals=${this.refusals}></answer-note>`;
  }

  private bottom(view: FloorView, floor: FloorState, back: string | null): TemplateResult {
    const undoes = view.undoable === null ? null : didWords(floor, view.undoable.command);
    return html`<bottom-bar ?hidden=${back === null && undoes === null} .back=${back} .undoes=${undoes}></bottom-bar>`;
  }

  private cover(): TemplateResult | typeof nothing {
    return this.isPocketed ? html`<pocket-cover></pocket-cover>` : nothing;
  }

  protected override updated(): void {
    this.toggleAttribute('has-piece', this.piece !== null);
    const view = this.piece === null ? 'none' : (this.chosenView ?? firstView(this.piece));
    const key = [this.pieceId, view, this.piece?.placed?.line.id, this.over, this.isPocketed].join(' ');
    if (key === this.shownKey) return;
    this.shownKey = key;
    this.gate?.shown();
  }

  private show(view: WeighView, lineId: string | null): void {
    const isOther = this.chosenView !== view;
    this.chosenView = view;
    this.wantedLineId = lineId ?? this.wantedLineId;
    this.over = null;
    // A line follows a line under the same buttons; another view has others, and the keyboard begins at its head.
    if (isOther) void this.focusHeading();
  }

  private async focusHeading(): Promise<void> {
    await this.updateComplete;
    const shown = this.shownMain;
    if (shown === null || !('updateComplete' in shown)) return;
    await shown.updateComplete;
    shown.shadowRoot?.querySelector('h2')?.focus({ preventScroll: true });
  }

  private closeOver(): void {
    this.over = null;
    this.askedId = this.view?.lastAnswer?.commandId ?? null;
  }

  private chooseLot(lot: string | null): void {
    const lineId = this.piece?.placed?.line.id;
    if (lineId !== undefined) this.lots = new Map([...this.lots, [lineId, lot]]);
  }

  private sayDegrees(celsius: number): void {
    const { piece, over } = this;
    if (piece === null || over === 'short' || over === 'forget') return;
    const workpieceId = piece.workpiece.id;
    if (over === 'water') {
      const command = piece.water === null ? null : takeWaterCommand(workpieceId, piece.water, celsius);
      if (command !== null) this.dispatchEvent(new FloorCommandEvent(command));
    } else this.dispatchEvent(new FloorCommandEvent({ type: 'readTemperature', workpieceId, where: over ?? 'dough', celsius }));
  }

  /** What comes after a word that was said: the next line, or the line that the water belongs to. */
  private said({ command }: FloorCommandEvent): void {
    this.over = null;
    const { piece } = this;
    if (piece === null) return;
    if (command.type === 'weighIngredient' && command.lineId === piece.placed?.line.id && (this.chosenView ?? 'line') === 'line')
      this.goOn(piece, command.lineId);
    if (command.type === 'takeWater') this.toWaterLine(piece);
  }

  private goOn(piece: PieceModel, doneId: string): void {
    const nextId = nextOpenId(piece.out, doneId);
    if (nextId !== null && nextId !== doneId) this.wantedLineId = nextId;
    else if (piece.water !== null && piece.workpiece.water === null && !piece.out.isMixed) this.show('water', doneId);
    else this.show('list', doneId);
  }

  private toWaterLine({ water, out }: PieceModel): void {
    const ids = water?.plan?.liquid.lineIds ?? [];
    const open = allLines(out).find(({ line }) => ids.includes(line.id) && isOpen(line));
    if (open === undefined) this.show('list', null);
    else this.show('line', open.line.id);
  }

  private undo(): void {
    const undoable = this.view?.undoable ?? null;
    if (undoable !== null) this.dispatchEvent(new FloorCommandEvent({ type: 'undoCommand', commandId: undoable.commandId }));
  }
}

/** The line at hand for who hears it: it changes under the same buttons. */
function spokenLine({ view, piece: { placed, units } }: PieceScreen): string {
  if (view !== 'line' || placed === null) return '';
  return `${placed.line.name}, ${weightSpoken(placed.line.grams, units, placed.line.divisionG)}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'weigh-page': WeighPage;
  }
}
