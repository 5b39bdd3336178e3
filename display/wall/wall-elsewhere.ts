import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Row } from '../../shared/floor/board.ts';
import type { Role } from '../../shared/floor/role.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { strongestRole } from '../parts/entry.ts';
import '../parts/role-mark.ts';
import { unseenStyles } from '../parts/unseen-styles.ts';
import type { Arrangement } from './arrangement.ts';
import { shortTag } from './day-tags.ts';
import { widthSizes } from './type-sizes.ts';
import { countElsewhere, elsewhereTags, elsewhereText, wordBehindCounts, wordsFit } from './elsewhere.ts';

/** On the wall of one station: how much is late or being lost at the others, and what. */
@customElement('wall-elsewhere')
export class WallElsewhere extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      position: relative;
      display: grid;
      grid-template-columns: var(--left) minmax(0, 1fr);
      align-items: center;
      line-height: 1;
      white-space: nowrap;
    }
    .count {
      display: grid;
      grid-template-columns: var(--edge) var(--mark) minmax(0, 1fr);
      column-gap: var(--gap);
      align-items: center;
      font-size: var(--second);
      font-weight: var(--weight-strong);
    }
    .count span,
    .none {
      grid-column: 3;
    }
    role-mark {
      grid-column: 2;
    }
    .counts {
      display: flex;
      gap: 0.3em;
      padding-left: calc(var(--edge) + var(--gap));
    }
    .counts role-mark {
      width: var(--mark);
      height: var(--mark);
    }
    .none {
      font-size: var(--near);
      font-weight: var(--weight-text);
      color: var(--ink-soft);
    }
    .tags {
      padding-left: calc(var(--now) / 2 + var(--gap));
      font-size: var(--near);
      font-weight: var(--weight-word);
    }
    .tags span {
      background: var(--paper);
    }
    ${unseenStyles}
  `;

  @property({ attribute: false }) state: FloorState | null = null;
  @property({ attribute: false }) arrangement: Arrangement | null = null;
  /** Rows of other stations that are late or being lost, the most pressing first. */
  @property({ attribute: false }) pressing: readonly Row[] = [];
  @property({ type: Number }) axisPx = 0;

  protected override render(): TemplateResult | typeof nothing {
    const { state, arrangement, pressing } = this;
    if (state === null || arrangement === null) return nothing;
    const { plan, columns } = arrangement;
    const tags = pressing.map((row) => `${shortTag(state, row.tag, row.serviceDate)} ${stationOf(state, row)}`);
    const nearPx = widthSizes(plan.sizes).nearPx;
    return html`${this.count(arrangement)}
    ${plan.showsAxis ? html`<div class="tags"><span>${elsewhereTags(tags, nearPx, this.axisPx - columns.gapPx)}</span></div>` : nothing}`;
  }

  private count({ plan, columns }: Arrangement): TemplateResult {
    const { pressing } = this;
    const counts = countElsewhere(pressing);
    const { secondPx } = widthSizes(plan.sizes);
    const roomPx = plan.leftPx - columns.edgePx - 2 * columns.gapPx;
    if (pressing.length === 0) return html`<div class="count"><span class="none">${elsewhereText(counts)}</span></div>`;
    if (wordsFit(counts, secondPx, roomPx - columns.markPx - columns.gapPx))
      return html`<div class="count">${this.mark(strongestRole(pressing), pressing)}<span>${elsewhereText(counts)}</span></div>`;
    const roles = (['lost', 'late'] as const).filter((role) => counts[role] > 0);
    const word = wordBehindCounts(counts, secondPx, roomPx, columns.markPx);
    return html`<div class="count counts">
      <span class="unseen">${elsewhereText(counts)}</span>
      ${roles.map((role) => {
        const rows = pressing.filter((row) => row.role === role);
        return html`${this.mark(role, rows)}<span aria-hidden="true">${rows.length}</span>`;
      })}
      <span aria-hidden="true">${word}</span>
    </div>`;
  }

  private mark(role: Role, rows: readonly Row[]): TemplateResult {
    return html`<role-mark .level=${role} .heard=${rows.every((row) => row.heardMs !== null)}></role-mark>`;
  }
}

/** The first station that the row is at, by its name. */
function stationOf(state: FloorState, row: Row): string {
  const [first] = row.stationIds;
  return state.kitchen?.document.stations.find(({ id }) => id === first)?.name ?? '';
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-elsewhere': WallElsewhere;
  }
}
