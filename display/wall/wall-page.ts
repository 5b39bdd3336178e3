import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { ovenLanes, type DeckLanes } from '../../shared/floor/oven-lanes.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { SoundReadiness } from '../../shared/wire/up.ts';
import type { FloorView } from '../link/floor-link.ts';
import { clockText, nextTextChangeMs } from '../parts/clock-text.ts';
import { place, type Placement } from '../parts/place.ts';
import { TickingClock, type ClockSource } from '../parts/ticking-clock.ts';
import { ViewportSize } from '../parts/viewport-size.ts';
import { unseenStyles } from '../parts/unseen-styles.ts';
import { paceWords, WALL } from '../words/wall.ts';
import { announcementOf } from './announcement.ts';
import { arrange, refreshRows, type Arrangement } from './arrangement.ts';
import { ScreenTooSmall } from './governor.ts';
import { noticeOf, type Notice } from './notice.ts';
import type { RowsPlan } from './rows-plan.ts';
import { DEFAULT_VIEWING, type Viewing } from './settings.ts';
import { soundState } from './sound-state.ts';
import { typeSizes, type Screen } from './type-sizes.ts';
import { axisWidthPx, noticeLengths, wallLengths } from './wall-lengths.ts';
import './sound-panel.ts';
import './wall-axis.ts';
import './wall-header.ts';
import './wall-lines.ts';
import './wall-notice.ts';
import './wall-ovens.ts';

/** The wall: every open dough left and right of NOW, the decks below. Fires nothing; a key is the page's business. */
@customElement('wall-page')
export class WallPage extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      position: relative;
      display: block;
      height: 100vh;
      height: 100dvh;
      overflow: hidden;
      background: var(--paper);
      color: var(--ink);
    }
    main {
      position: relative;
      display: flex;
      flex-direction: column;
      height: 100%;
    }
    .band {
      display: flex;
      align-items: center;
      justify-content: center;
      height: var(--band);
      flex: none;
      background: repeating-linear-gradient(-45deg, var(--ink) 0 22px, var(--block) 22px 44px);
      font-size: var(--near);
      font-weight: var(--weight-strong);
      line-height: 1;
    }
    .band span {
      padding: 0.14em 0.8em;
      background: var(--paper);
      color: var(--ink);
    }
    .floor {
      position: relative;
      display: flex;
      flex-direction: column;
      flex: 1;
      min-height: 0;
    }
    .alone {
      align-items: center;
      justify-content: center;
      text-align: center;
    }
    wall-header {
      width: var(--left);
      flex: none;
    }
    wall-axis {
      position: absolute;
      inset: 0 0 0 var(--left);
    }
    .now {
      position: absolute;
      inset-block: 0;
      left: calc(var(--left) - var(--now) / 2);
      width: var(--now);
      background: var(--line-strong);
    }
    wall-lines {
      flex: 1;
      min-height: 0;
    }
    wall-ovens {
      flex: none;
    }
    ${unseenStyles}
  `;

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) clockSource: ClockSource | null = null;
  @property({ attribute: false }) viewing: Viewing = DEFAULT_VIEWING;
  @property({ attribute: false }) sound: SoundReadiness = 'waiting';

  private readonly viewport = new ViewportSize(this);
  private readonly clock = new TickingClock(
    this,
    () => this.clockSource,
    (nowMs) => nextTextChangeMs(this.shownDuesMs, nowMs),
  );
  private arrangement: Arrangement | null = null;
  private arrangedFor = '';
  private shownDuesMs: readonly number[] = [];
  private isTooSmall = false;

  /** Here and not in willUpdate, which comes before the clock has been read. */
  protected override update(changed: PropertyValues<this>): void {
    this.keepArranged();
    super.update(changed);
  }

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null) return nothing;
    const notice = noticeOf(view, this.isTooSmall);
    const isAlone = notice?.isAlone === true;
    return html`<main ${place(this.lengths())}>
        <h1 class="unseen">${WALL.pageTitle}</h1>
        ${view.pace === 1 ? nothing : html`<div class="band" role="note"><span>${paceWords(view.pace)}</span></div>`}
        <div class="floor ${isAlone ? 'alone' : ''}">
          ${isAlone ? html`<wall-notice .heading=${notice.heading} .lines=${notice.lines}></wall-notice>` : nothing}
          ${isAlone || this.arrangement === null || view.state === null ? nothing : this.floor(view, view.state, this.arrangement, notice)}
        </div>
        <div class="unseen" role="alert">${view.state === null ? '' : announcementOf(view.state, this.clock.nowMs)}</div>
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
    const roles = view.connection.phase === 'lost' ? announcementOf(state, this.clock.nowMs) : '';
    const { inch, metres, arcmin } = this.viewing;
    return [view.sequence, state.sequence, view.pace, this.viewport.widthPx, this.viewport.heightPx, inch, metres, arcmin, roles].join(' ');
  }

  private screenNow(): Screen {
    const { inch, metres, arcmin } = this.viewing;
    return { diagonalInch: inch, distanceM: metres, arcmin, widthPx: this.viewport.widthPx, heightPx: this.viewport.heightPx };
  }

  private arrangeAnew(state: FloorState, isPaced: boolean): void {
    try {
      this.arrangement = arrange(state, this.clock.nowMs, this.screenNow(), isPaced, this.arrangement);
      this.isTooSmall = false;
    } catch (error) {
      if (!(error instanceof ScreenTooSmall)) throw error;
      this.arrangement = null;
      this.isTooSmall = true;
    }
  }

  private floor(view: FloorView, state: FloorState, arrangement: Arrangement, empty: Notice | null): TemplateResult {
    const { plan } = arrangement;
    const { nowMs } = this.clock;
    const rows = refreshRows(plan.rows, state, nowMs);
    const decks = ovenLanes(state, nowMs);
    this.shownDuesMs = duesOf(rows, decks);
    const axisPx = axisWidthPx(plan, this.viewport.widthPx);
    const zone = state.house?.document.zone ?? 'UTC';
    const sound = soundState(view, this.sound);
    const lastContact = view.connection.phase === 'lost' ? clockText(view.connection.lastContactMs, zone) : null;
    return html`${plan.showsAxis ? html`<wall-axis .widthPx=${axisPx} .sizePx=${plan.sizes.nearPx}></wall-axis>` : nothing}
      <wall-header
        .clock=${clockText(nowMs, zone)}
        .houseName=${state.house?.document.name ?? ''}
        .soundWords=${sound.words}
        .soundIsLate=${sound.isLate}
        .lastContact=${lastContact}
      ></wall-header>
      <wall-lines .state=${state} .arrangement=${arrangement} .rows=${rows} .nowMs=${nowMs} .axisPx=${axisPx} .notice=${empty}></wall-lines>
      <wall-ovens .state=${state} .arrangement=${arrangement} .decks=${decks} .nowMs=${nowMs} .axisPx=${axisPx}></wall-ovens>
      ${plan.showsAxis ? html`<div class="now"></div>` : nothing}`;
  }

  private lengths(): Placement {
    return this.arrangement === null ? noticeLengths(typeSizes(this.screenNow(), 0, 1)) : wallLengths(this.arrangement, this.clock.nowMs);
  }
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
