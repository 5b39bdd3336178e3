import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { boardRows, type Row } from '../../shared/floor/board.ts';
import { ovenLanes, type DeckLanes } from '../../shared/floor/oven-lanes.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { SoundReadiness } from '../../shared/wire/up.ts';
import type { FloorView } from '../link/floor-link.ts';
import { browserZone } from '../parts/browser-zone.ts';
import { clockText, nextTextChangeMs } from '../parts/clock-text.ts';
import { FontStretch } from '../parts/font-stretch.ts';
import { glassHere } from '../parts/glass-size.ts';
import '../parts/icon-mark.ts';
import '../parts/phones-panel.ts';
import type { Look } from '../parts/look.ts';
import { place, px, type Placement } from '../parts/place.ts';
import { pressingElsewhere } from '../parts/station-rows.ts';
import { TickingClock, type ClockSource } from '../parts/ticking-clock.ts';
import { ViewportSize } from '../parts/viewport-size.ts';
import { paceWords, WALL } from '../words/wall.ts';
import { announcementOf } from './announcement.ts';
import { arrange, refreshRows, type Arrangement } from './arrangement.ts';
import { ScreenTooSmall } from './governor.ts';
import { headerSidePx } from './left-columns.ts';
import { emptyCodePx, joinCodePx } from './join-place.ts';
import { LookNow } from './look-now.ts';
import { noticeOf, stationEmptyNotice, type Notice } from './notice.ts';
import { worksAtOvens } from './oven-station.ts';
import type { RowsPlan } from './rows-plan.ts';
import { DEFAULT_VIEWING, type Viewing } from './settings.ts';
import { soundState } from './sound-state.ts';
import { typeSizes, widthSizes, type Screen } from './type-sizes.ts';
import { axisWidthPx, noticeLengths, tooSmallSizes, wallLengths } from './wall-lengths.ts';
import './sound-panel.ts';
import { DEFAULT_WALL_LOOK, wallLookAt, type WallLook } from './wall-look.ts';
import './wall-axis.ts';
import './wall-elsewhere.ts';
import './wall-header.ts';
import './wall-joining.ts';
import './wall-lines.ts';
import './wall-notice.ts';
import './wall-ovens.ts';
import { wallPageStyles } from './wall-page-styles.ts';

/**
 * The wall: every open dough left and right of NOW, the decks below; or what one station has of it. Says `look-now` where
 * the page is to turn light or dark; a key is the page's business.
 */
@customElement('wall-page')
export class WallPage extends LitElement {
  static override styles = wallPageStyles;

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) clockSource: ClockSource | null = null;
  @property({ attribute: false }) viewing: Viewing = DEFAULT_VIEWING;
  @property({ attribute: false }) look: WallLook = DEFAULT_WALL_LOOK;
  /** What the browser asks for. */
  @property({ attribute: false }) browserLook: Look = 'day';
  /** Whose wall it is; null for everybody's. */
  @property({ attribute: false }) stationId: string | null = null;
  /** Where this wall is set up. */
  @property() setUpUrl = '/wall/setup';
  @property({ attribute: false }) sound: SoundReadiness = 'waiting';

  private readonly viewport = new ViewportSize(this);
  private readonly fontStretch = new FontStretch(this);
  private readonly clock = new TickingClock(
    this,
    () => this.clockSource,
    (nowMs) => nextTextChangeMs(this.shownDuesMs, nowMs),
  );
  private arrangement: Arrangement | null = null;
  private arrangedFor = '';
  private shownDuesMs: readonly number[] = [];
  private isTooSmall = false;

  constructor() {
    super();
    this.addController(
      new LookNow(this, () =>
        wallLookAt(this.look, this.clock.nowMs, this.view?.state?.house?.document.zone ?? browserZone(), this.browserLook),
      ),
    );
  }

  /** Here and not in willUpdate, which comes before the clock has been read. */
  protected override update(changed: PropertyValues<this>): void {
    this.keepArranged();
    super.update(changed);
  }

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null) return nothing;
    const notice = noticeOf(view, this.isTooSmall, this.stationId);
    const isAlone = notice?.isAlone === true;
    return html`<main ${place(this.lengths())}>
        <h1 class="unseen">${this.stationName === null ? WALL.pageTitle : `${WALL.pageTitle} · ${this.stationName}`}</h1>
        ${view.pace === 1 ? nothing : html`<div class="band" role="note"><span>${paceWords(view.pace)}</span></div>`}
        <div class="floor ${isAlone ? 'alone' : ''} ${notice !== null || this.arrangement?.plan.showsAxis === false ? 'wide' : ''}">
          ${isAlone ? html`<wall-notice centred .notice=${notice}></wall-notice>` : nothing}
          ${isAlone || this.arrangement === null || view.state === null ? nothing : this.whole(view, view.state, this.arrangement, notice)}
          ${this.joining(view)}
          <a class="set-up" href=${this.setUpUrl} aria-label=${WALL.setUp}><icon-mark name="wall"></icon-mark></a>
        </div>
        <div class="unseen" role="alert">${view.state === null ? '' : announcementOf(view.state, this.clock.nowMs, this.stationId)}</div>
      </main>
      ${this.sound === 'waiting' ? html`<sound-panel ${place(this.lengths())}></sound-panel>` : nothing}`;
  }

  private keepArranged(): void {
    const state = this.view?.state ?? null;
    if (this.view === null || state === null) {
      this.arrangement = null;
      this.arrangedFor = '';
      return;
    }
    const key = this.arrangementKey(this.view, state);
    if (key === this.arrangedFor) return;
    this.arrangedFor = key;
    this.arrangeAnew(state, this.view.pace !== 1);
  }

  /** What must change for anything to change its place. Without a link no event can say so: then the roles do. */
  private arrangementKey(view: FloorView, state: FloorState): string {
    const roles = view.connection.phase === 'lost' ? announcementOf(state, this.clock.nowMs, this.stationId) : '';
    const { inch, metres, arcmin } = this.viewing;
    return [
      view.sequence,
      state.sequence,
      view.pace,
      this.viewport.widthPx,
      this.viewport.heightPx,
      inch,
      metres,
      arcmin,
      this.fontStretch.value,
      this.stationId,
      roles,
    ].join(' ');
  }

  private screenNow(): Screen {
    const { inch, metres, arcmin } = this.viewing;
    const { widthPx, heightPx } = this.viewport;
    return { diagonalInch: inch, distanceM: metres, arcmin, widthPx, heightPx, fontStretch: this.fontStretch.value, glass: glassHere() };
  }

  private arrangeAnew(state: FloorState, isPaced: boolean): void {
    try {
      this.arrangement = arrange(state, this.clock.nowMs, this.screenNow(), isPaced, this.arrangement, this.stationId);
      this.isTooSmall = false;
    } catch (error) {
      if (!(error instanceof ScreenTooSmall)) throw error;
      this.arrangement = null;
      this.isTooSmall = true;
    }
  }

  private whole(view: FloorView, state: FloorState, arrangement: Arrangement, empty: Notice | null): TemplateResult {
    return empty === null ? this.floor(view, state, arrangement) : this.emptyFloor(view, state, arrangement, empty);
  }

  private floor(view: FloorView, state: FloorState, arrangement: Arrangement): TemplateResult {
    const { plan } = arrangement;
    const { nowMs } = this.clock;
    const rows = refreshRows(plan.rows, state, nowMs);
    const showsOvens = worksAtOvens(state, this.stationId);
    const decks = showsOvens ? ovenLanes(state, nowMs) : [];
    this.shownDuesMs = duesOf(rows, decks);
    const axisPx = axisWidthPx(plan, this.viewport.widthPx);
    const hasRows = shownRows(rows).length > 0;
    const codePx = joinCodePx(view, shownRows(rows), arrangement, axisPx, this.screenNow());
    return html`${plan.showsAxis ? html`<wall-axis .widthPx=${axisPx} .sizePx=${widthSizes(plan.sizes).nearPx}></wall-axis>` : nothing}
      ${this.header(view, state, arrangement)}
      <div class="lines">
        ${
          hasRows
            ? html`<wall-lines .state=${state} .arrangement=${arrangement} .rows=${rows} .nowMs=${nowMs} .axisPx=${axisPx}></wall-lines>`
            : html`<section aria-label=${WALL.doughs}><wall-notice .notice=${stationEmptyNotice()}></wall-notice></section>`
        }
        ${codePx === null ? nothing : html`<phones-panel reversed .addresses=${view.addresses} ${place({ '--code': px(codePx) })}></phones-panel>`}
      </div>
      ${this.stationId === null ? nothing : this.elsewhere(state, arrangement, axisPx)}
      ${showsOvens || plan.blockedMixersPx > 0 ? html`<wall-ovens .state=${state} .arrangement=${arrangement} .decks=${decks} .nowMs=${nowMs} .axisPx=${axisPx}></wall-ovens>` : nothing}
      ${plan.showsAxis ? html`<div class="now"></div>` : nothing}`;
  }

  /** Nothing is under way: the whole wall says how it begins. */
  private emptyFloor(view: FloorView, state: FloorState, arrangement: Arrangement, empty: Notice): TemplateResult {
    this.shownDuesMs = [];
    return html`${this.header(view, state, arrangement)}
      <section class="lines" aria-label=${WALL.doughs}>
        <wall-notice .notice=${empty} .addresses=${view.addresses} ${place({ '--code': px(emptyCodePx(this.screenNow())) })}></wall-notice>
      </section>`;
  }

  private header(view: FloorView, state: FloorState, { columns, plan }: Arrangement): TemplateResult {
    const { nowMs } = this.clock;
    const zone = state.house?.document.zone ?? 'UTC';
    const sound = soundState(view, this.sound, nowMs);
    return html`<wall-header
      .clock=${clockText(nowMs, zone)}
      .houseName=${this.stationName ?? state.house?.document.name ?? ''}
      .wrongWords=${view.health.isKept ? (view.health.areBackupsLate ? WALL.backupsLate : null) : WALL.notKept}
      .soundWords=${sound.words}
      .soundIsLate=${sound.isLate}
      .lastContact=${view.connection.phase === 'lost' ? clockText(view.connection.lastContactMs, zone) : null}
      .sideRoomPx=${headerSidePx(columns, plan)}
      .sideSizePx=${widthSizes(plan.sizes).nearPx}
    ></wall-header>`;
  }

  /** What somebody does on purpose, standing there, and for ten minutes at most: it may cover what is far off. */
  private joining(view: FloorView): TemplateResult | typeof nothing {
    const { joining, lockedUntilMs } = view.joining;
    if (joining === null && lockedUntilMs === null) return nothing;
    const codePx = px(emptyCodePx(this.screenNow()));
    return html`<wall-joining .status=${view.joining} .addresses=${view.addresses} ${place({ '--code': codePx })}></wall-joining>`;
  }

  private elsewhere(state: FloorState, arrangement: Arrangement, axisPx: number): TemplateResult {
    const pressing: readonly Row[] = pressingElsewhere(boardRows(state, this.clock.nowMs), this.stationId);
    return html`<wall-elsewhere .state=${state} .arrangement=${arrangement} .pressing=${pressing} .axisPx=${axisPx}></wall-elsewhere>`;
  }

  private get stationName(): string | null {
    return this.view?.state?.kitchen?.document.stations.find(({ id }) => id === this.stationId)?.name ?? null;
  }

  private lengths(): Placement {
    if (this.arrangement !== null) return wallLengths(this.arrangement, this.clock.nowMs);
    const screen = this.screenNow();
    const sizes = typeSizes(screen, 0, 1);
    return noticeLengths(this.isTooSmall ? tooSmallSizes(sizes, screen) : sizes, this.clock.nowMs);
  }
}

/** Every dough on the wall, with a row of its own or not. */
function shownRows(rows: RowsPlan): readonly Row[] {
  return [...rows.full.flat(), ...(rows.more?.rows ?? []), ...rows.groups.flatMap((group) => group.rows)];
}

/** Every instant that a countdown on the wall runs to. */
function duesOf(rows: RowsPlan, decks: readonly DeckLanes[]): number[] {
  const counted = [...rows.full, ...rows.groups.map((group) => group.rows), rows.more?.rows ?? []].flatMap((lines) => lines.slice(0, 1));
  return [...counted.map((row) => row.dueMs), ...decks.map((deck) => deck.freeMs).filter((freeMs) => freeMs !== null)];
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-page': WallPage;
  }
}
