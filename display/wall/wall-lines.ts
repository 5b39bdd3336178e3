import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Row } from '../../shared/floor/board.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { place, px, type Placement } from '../parts/place.ts';
import { textWidthPx } from '../parts/text-width.ts';
import { countdownText } from '../parts/clock-text.ts';
import { ROLES } from '../words/roles.ts';
import { OTHER_STAGES, STAGES } from '../words/stages.ts';
import { moreWords, WALL } from '../words/wall.ts';
import type { Arrangement } from './arrangement.ts';
import { shortTag } from './day-tags.ts';
import { entryKey, type Entry } from '../parts/entry.ts';
import { groupTicks } from './group-ticks.ts';
import { notePx, whatPx } from './left-columns.ts';
import { detailLinePx, framePx, noteGapPx, rowTextPx, type WallPlan } from './governor.ts';
import { fittingTags, rowModel, secondLine } from './row-model.ts';
import type { Group, More, RowsPlan } from './rows-plan.ts';
import { stripModel } from './strip-model.ts';
import { widthSizes } from './type-sizes.ts';
import './wall-group.ts';
import './wall-row.ts';
import './wall-strip.ts';
import './wall-ticks.ts';

/** The list of doughs: full rows, calls without a row, groups; each with its part of the axis. */
@customElement('wall-lines')
export class WallLines extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      position: relative;
      display: block;
    }
    ol {
      height: 100%;
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
  `;

  @property({ attribute: false }) state: FloorState | null = null;
  @property({ attribute: false }) arrangement: Arrangement | null = null;
  /** The arrangement's rows as they are now. */
  @property({ attribute: false }) rows: RowsPlan | null = null;
  @property({ type: Number }) nowMs = 0;
  @property({ type: Number }) axisPx = 0;

  protected override render(): TemplateResult | typeof nothing {
    const { state, arrangement, rows } = this;
    if (state === null || arrangement === null || rows === null) return nothing;
    return html`<ol aria-label=${WALL.doughs} ${place(rowLengths(arrangement.plan))}>
      ${repeat(rows.full, entryKey, (entry) => this.row(state, entry, arrangement))}
      ${rows.more === null ? nothing : this.more(state, rows.more, arrangement)}
      ${rows.groups.map((group) => this.group(state, group, arrangement))}
    </ol>`;
  }

  private row(state: FloorState, entry: Entry, { plan, columns }: Arrangement): TemplateResult {
    const model = rowModel(state, entry, this.nowMs);
    const { nearPx } = widthSizes(plan.sizes);
    // What is in the way and finds no room in the row stands beside it.
    const line = secondLine(model, nearPx, notePx(columns, plan.leftPx, model.tags.length > 1));
    return html`<li class="line row">
      <wall-row
        .model=${model}
        .columns=${columns}
        .sizes=${plan.sizes}
        .widthPx=${plan.leftPx}
        .detailLines=${plan.rows.detailLines}
      ></wall-row>
      ${plan.showsAxis ? html`<wall-strip .model=${stripModel(state, entry, this.nowMs, this.axisPx, nearPx, line.untold)}></wall-strip>` : nothing}
    </li>`;
  }

  private more(state: FloorState, more: More, arrangement: Arrangement): TemplateResult | typeof nothing {
    const [first] = more.rows;
    if (first === undefined) return nothing;
    return html`<li class="line group">
      <wall-group
        .words=${moreWords(more.rows.length)}
        .countdown=${this.countdown(state, first)}
        .level=${more.role}
        .levelWord=${ROLES[more.role]}
        .heard=${more.rows.every((row) => row.heardMs !== null)}
        .tags=${this.tags(state, more.rows, moreWords(more.rows.length), arrangement)}
      ></wall-group>
      ${this.ticks(state, more.rows, arrangement)}
    </li>`;
  }

  private group(state: FloorState, group: Group, arrangement: Arrangement): TemplateResult | typeof nothing {
    const [first] = group.rows;
    if (first === undefined) return nothing;
    const words = group.stage === null ? OTHER_STAGES : STAGES[group.stage];
    return html`<li class="line group">
      <wall-group
        .words=${`${group.rows.length} ${words}`}
        .countdown=${this.countdown(state, first)}
        .tags=${this.tags(state, group.rows, words, arrangement)}
      ></wall-group>
      ${this.ticks(state, group.rows, arrangement)}
    </li>`;
  }

  private ticks(state: FloorState, rows: readonly Row[], { plan }: Arrangement): TemplateResult | typeof nothing {
    if (!plan.showsAxis) return nothing;
    const tagOf = (row: Row): string => shortTag(state, row.tag, row.serviceDate);
    return html`<wall-ticks .ticks=${groupTicks(rows, this.nowMs, this.axisPx, widthSizes(plan.sizes).nearPx, tagOf)}></wall-ticks>`;
  }

  /** Without an axis the tags stand behind the words, as many as there is room for. */
  private tags(state: FloorState, rows: readonly Row[], words: string, { plan, columns }: Arrangement): string {
    if (plan.showsAxis) return '';
    const wide = widthSizes(plan.sizes);
    const roomPx = whatPx(columns, plan.leftPx, false) - textWidthPx(words, wide.secondPx) - wide.nearPx;
    const tags = fittingTags(
      rows.map((row) => shortTag(state, row.tag, row.serviceDate)),
      wide.nearPx,
      roomPx,
    );
    return textWidthPx(tags, wide.nearPx) <= roomPx ? tags : '';
  }

  private countdown(state: FloorState, row: Row): string {
    return countdownText(row.dueMs, this.nowMs, state.house?.document.zone ?? 'UTC');
  }
}

/** How far below a row's upper edge its text begins: in all rows alike, in the middle as most rows are, with one line below. */
function rowLengths(plan: WallPlan): Placement {
  const mostPx = rowTextPx(plan.sizes) + plan.rows.detailLines * detailLinePx(plan.sizes);
  const leastBelowPx = plan.rows.detailLines === 0 ? 0 : framePx(plan.sizes);
  const topPx = Math.min((plan.rowPx - rowTextPx(plan.sizes)) / 2, plan.rowPx - mostPx - leastBelowPx);
  // A note's descenders reach a little below its line.
  return { '--row-top': px(topPx - plan.sizes.nearPx * 0.03), '--note-gap': px(noteGapPx(plan.sizes)) };
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-lines': WallLines;
  }
}
