import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import { ovenLanes } from '../../shared/floor/oven-lanes.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { SoundReadiness } from '../../shared/wire/up.ts';
import type { FloorView } from '../link/floor-link.ts';
import { clockText, countdownText, nextTextChangeMs } from '../parts/clock-text.ts';
import { place, px, type Placement } from '../parts/place.ts';
import { TickingClock, type ClockSource } from '../parts/ticking-clock.ts';
import { ViewportSize } from '../parts/viewport-size.ts';
import { ROLES } from '../words/en/roles.ts';
import { OTHER_STAGES, STAGES } from '../words/en/stages.ts';
import { moreWords, paceWords, WALL } from '../words/en/wall.ts';
import { announcementOf } from './announcement.ts';
import { arrange, refreshRows, type Arrangement } from './arrangement.ts';
import { deckModel } from './deck-model.ts';
import { entryKey, type Entry } from './entry.ts';
import { framePx, ScreenTooSmall, type DeckPlan } from './governor.ts';
import { groupTicks } from './group-ticks.ts';
import { noticeOf, type Notice } from './notice.ts';
import { rowModel } from './row-model.ts';
import type { Group, More } from './rows-plan.ts';
import { DEFAULT_VIEWING, type Viewing } from './settings.ts';
import { soundState } from './sound-state.ts';
import { stripModel } from './strip-model.ts';
import { typeSizes, type Screen } from './type-sizes.ts';
import './sound-panel.ts';
import './wall-axis.ts';
import './wall-deck.ts';
import './wall-group.ts';
import './wall-header.ts';
import './wall-lanes.ts';
import './wall-notice.ts';
import './wall-row.ts';
import './wall-strip.ts';
import './wall-ticks.ts';

/** The whole picture moves by a pixel now and then, so that nothing burns in. House ms. */
const SHIFT_EVERY_MS = 10 * 60_000;
const SHIFTS = ['0 0', '1px 0', '1px 1px', '0 1px'] as const;
/** Air right of the axis' end, as a share of the near size. */
const AXIS_END = 0.7;

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
    ol {
      position: relative;
      flex: 1;
      min-height: 0;
      margin: 0;
      padding: 0;
      list-style: none;
    }
    .line {
      display: grid;
      grid-template-columns: var(--left) minmax(0, 1fr);
    }
    .line > :nth-child(2) {
      margin-left: calc(var(--now) / 2);
    }
    .row {
      height: var(--row);
    }
    .group {
      height: var(--group);
    }
    .decks {
      position: relative;
      flex: none;
      border-top: var(--rule) solid var(--line-strong);
    }
    .deck + .deck {
      border-top: var(--hairline) solid var(--rest);
    }
    .oven + .oven {
      border-top: var(--hairline) solid var(--line-strong);
    }
    .more-decks {
      display: flex;
      align-items: center;
      padding-left: var(--gap);
      border-top: var(--hairline) solid var(--rest);
      font-size: var(--near);
      color: var(--ink-soft);
    }
    .unseen {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
      white-space: nowrap;
    }
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
    const nowMs = this.clock.nowMs;
    const rows = refreshRows(plan.rows, state, nowMs);
    const decks = ovenLanes(state, nowMs);
    this.shownDuesMs = [
      ...rows.full.map(([first]) => first),
      ...rows.groups.flatMap((group) => group.rows.slice(0, 1)),
      ...(rows.more?.rows.slice(0, 1) ?? []),
    ]
      .map((row) => row.dueMs)
      .concat(decks.map((deck) => deck.freeMs).filter((freeMs) => freeMs !== null));
    const zone = state.house?.document.zone ?? 'UTC';
    const sound = soundState(view, this.sound);
    const lastContact = view.connection.phase === 'lost' ? clockText(view.connection.lastContactMs, zone) : null;
    return html`${plan.showsAxis ? html`<wall-axis .widthPx=${this.axisPx(arrangement)} .sizePx=${plan.sizes.nearPx}></wall-axis>` : nothing}
      <wall-header
        .clock=${clockText(nowMs, zone)}
        .houseName=${state.house?.document.name ?? ''}
        .soundWords=${sound.words}
        .soundIsLate=${sound.isLate}
        .lastContact=${lastContact}
      ></wall-header>
      ${
        empty !== null
          ? html`<ol aria-label=${WALL.doughs}>
              <li><wall-notice .heading=${empty.heading} .lines=${empty.lines}></wall-notice></li>
            </ol>`
          : html`<ol aria-label=${WALL.doughs}>
              ${repeat(rows.full, entryKey, (entry) => this.row(state, entry, arrangement))}
              ${rows.more === null ? nothing : this.more(state, rows.more, arrangement)}
              ${rows.groups.map((group) => this.group(state, group, arrangement))}
            </ol>`
      }
      <section class="decks" aria-label=${WALL.ovens}>
        ${plan.decks.map((deck) => this.deck(state, deck, decks, arrangement))}
        ${plan.hiddenDecks === 0 ? nothing : html`<div class="more-decks" ${place({ height: px(plan.hiddenDecksPx) })}>+${plan.hiddenDecks} ${WALL.moreDecks}</div>`}
      </section>
      ${plan.showsAxis ? html`<div class="now"></div>` : nothing}`;
  }

  private row(state: FloorState, entry: Entry, arrangement: Arrangement): TemplateResult {
    const { plan, columns } = arrangement;
    const nowMs = this.clock.nowMs;
    const model = rowModel(state, entry, nowMs);
    return html`<li class="line row">
      <wall-row
        .model=${model}
        .columns=${columns}
        .sizes=${plan.sizes}
        .widthPx=${plan.leftPx}
        .detailLines=${plan.rows.detailLines}
      ></wall-row>
      ${plan.showsAxis ? html`<wall-strip .model=${stripModel(state, entry, nowMs, this.axisPx(arrangement), plan.sizes.nearPx)}></wall-strip>` : nothing}
    </li>`;
  }

  private more(state: FloorState, more: More, arrangement: Arrangement): TemplateResult | typeof nothing {
    const [first] = more.rows;
    if (first === undefined) return nothing;
    return html`<li class="line group">
      <wall-group
        .words=${moreWords(more.rows.length)}
        .countdown=${this.countdown(state, first.dueMs)}
        .level=${more.role}
        .levelWord=${ROLES[more.role]}
        .heard=${more.rows.every((row) => row.heardMs !== null)}
      ></wall-group>
      ${this.ticks(more.rows, arrangement)}
    </li>`;
  }

  private group(state: FloorState, group: Group, arrangement: Arrangement): TemplateResult | typeof nothing {
    const [first] = group.rows;
    if (first === undefined) return nothing;
    const words = group.stage === null ? OTHER_STAGES : STAGES[group.stage];
    return html`<li class="line group">
      <wall-group .words=${`${group.rows.length} ${words}`} .countdown=${this.countdown(state, first.dueMs)}></wall-group>
      ${this.ticks(group.rows, arrangement)}
    </li>`;
  }

  private ticks(rows: Group['rows'], arrangement: Arrangement): TemplateResult | typeof nothing {
    if (!arrangement.plan.showsAxis) return nothing;
    const ticks = groupTicks(rows, this.clock.nowMs, this.axisPx(arrangement), arrangement.plan.sizes.nearPx);
    return html`<wall-ticks .ticks=${ticks}></wall-ticks>`;
  }

  private deck(
    state: FloorState,
    deckPlan: DeckPlan,
    decks: ReturnType<typeof ovenLanes>,
    arrangement: Arrangement,
  ): TemplateResult | typeof nothing {
    const deck = decks[deckPlan.index];
    if (deck === undefined) return nothing;
    const { plan } = arrangement;
    const model = deckModel(state, deck, this.clock.nowMs, deckPlan.lanes, this.axisPx(arrangement), plan.sizes.nearPx);
    const isNewOven = decks[deckPlan.index - 1]?.ovenId !== deck.ovenId;
    return html`<div class="line deck ${isNewOven ? 'oven' : ''}" ${place({ height: px(deckPlan.heightPx) })}>
      <wall-deck
        .model=${model}
        .sizes=${plan.sizes}
        .namePx=${arrangement.deckNamePx}
        .widthPx=${plan.leftPx}
        .gapPx=${arrangement.columns.gapPx}
      ></wall-deck>
      ${plan.showsAxis ? html`<wall-lanes .model=${model} .lanePx=${plan.laneHeightPx}></wall-lanes>` : nothing}
    </div>`;
  }

  private countdown(state: FloorState, dueMs: number): string {
    return countdownText(dueMs, this.clock.nowMs, state.house?.document.zone ?? 'UTC');
  }

  private axisPx(arrangement: Arrangement): number {
    const { plan } = arrangement;
    return this.viewport.widthPx - plan.leftPx - nowPx(plan.sizes.glancePx) / 2 - plan.sizes.nearPx * AXIS_END;
  }

  /** The governor's lengths for the elements' styles; before the first snapshot only sizes that suit any wall. */
  private lengths(): Placement {
    const { arrangement } = this;
    if (arrangement === null) {
      const sizes = typeSizes(this.screenNow(), 0, 1);
      return {
        '--glance': px(sizes.glancePx),
        '--second': px(sizes.secondPx),
        '--near': px(sizes.nearPx),
        '--gap': px(sizes.nearPx / 2),
        '--edge': '0px',
        '--band': px(sizes.nearPx * 1.5),
      };
    }
    const { plan, columns } = arrangement;
    return {
      '--glance': px(plan.sizes.glancePx),
      '--verb': px(plan.sizes.verbPx),
      '--second': px(plan.sizes.secondPx),
      '--near': px(plan.sizes.nearPx),
      '--frame': px(framePx(plan.sizes)),
      '--edge': px(columns.edgePx),
      '--gap': px(columns.gapPx),
      '--mark': px(columns.markPx),
      '--tag': px(columns.tagPx),
      '--left': px(plan.leftPx),
      '--now': px(nowPx(plan.sizes.glancePx)),
      '--band': px(plan.bandPx),
      '--header': px(plan.headerPx),
      '--row': px(plan.rowPx),
      '--group': px(plan.groupPx),
      '--lane': px(plan.laneHeightPx),
      translate: SHIFTS[Math.floor(this.clock.nowMs / SHIFT_EVERY_MS) % SHIFTS.length] ?? null,
    };
  }
}

/** Thickness of the NOW line: an even number of px. */
function nowPx(glancePx: number): number {
  return 2 * Math.max(2, Math.round(glancePx * 0.045));
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-page': WallPage;
  }
}
