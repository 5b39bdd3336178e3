import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { StepRow } from '../../shared/records/answers.ts';
import type { DayRecord, DayRow } from '../../shared/records/day-record.ts';
import { clockText } from '../parts/clock-text.ts';
import { place } from '../parts/place.ts';
import { DAY_RECORD } from '../words/day-record.ts';

const HOUR_MS = 3_600_000;
/** Hours between two marks of the axis, the first that leaves no more than `MOST_MARKS`. */
const EVERY_HOURS = [1, 2, 3, 4, 6, 12, 24];
const MOST_MARKS = 14;

/** A day on one even axis: a row for each dough and part, above as it was planned, below as it was. The table beside it says the same. */
@customElement('day-picture')
export class DayPicture extends LitElement {
  static override styles = css`
    :host {
      display: block;
      font-size: var(--type-small);
    }
    .rows {
      position: relative;
      display: grid;
      grid-template-columns: 4.5rem minmax(0, 1fr);
      gap: 3px var(--space-2);
    }
    .tag {
      font-weight: var(--weight-word);
      line-height: 1.2;
      white-space: nowrap;
    }
    .track {
      position: relative;
      height: 20px;
      border-bottom: var(--hairline) solid var(--line);
    }
    .track i {
      position: absolute;
      min-width: 2px;
      box-sizing: border-box;
    }
    .planned {
      top: 0;
      height: 5px;
      border: 1px solid var(--ink-soft);
    }
    .hands,
    .judged {
      top: 7px;
      height: 12px;
      background: var(--ink);
    }
    .timed {
      top: 11px;
      height: 4px;
      background: var(--ink-soft);
    }
    .bake {
      top: 7px;
      height: 12px;
      border: 2px solid var(--ink);
      background: repeating-linear-gradient(45deg, var(--ink) 0 2px, transparent 2px 6px);
    }
    .hours {
      position: absolute;
      inset-block: 0;
      width: 1px;
      background: var(--line);
    }
    .axis {
      position: relative;
      height: 1.4em;
    }
    .axis span {
      position: absolute;
      transform: translateX(-50%);
      color: var(--ink-soft);
      white-space: nowrap;
    }
    .legend {
      display: flex;
      flex-wrap: wrap;
      gap: var(--space-1) var(--space-4);
      margin-top: var(--space-2);
    }
    .legend span {
      display: inline-flex;
      align-items: center;
      gap: var(--space-2);
    }
    .legend .track {
      display: inline-block;
      width: 28px;
      border: none;
    }
    .legend .track i {
      inset-inline: 0;
    }
    @media print {
      .track i {
        print-color-adjust: exact;
      }
    }
  `;

  @property({ attribute: false }) record: DayRecord | null = null;
  @property({ attribute: false }) zone = 'UTC';

  protected override render(): TemplateResult | typeof nothing {
    const { record } = this;
    if (record === null) return nothing;
    const { fromMs, toMs, rows } = record;
    const at = (atMs: number): string => `${(((atMs - fromMs) / Math.max(1, toMs - fromMs)) * 100).toFixed(2)}%`;
    const label = DAY_RECORD.axisLabel(rows.length, clockText(fromMs, this.zone), clockText(toMs, this.zone));
    const marks = hourMarks(fromMs, toMs, this.zone);
    return html`<div role="img" aria-label=${label}>
        <div class="rows">
          ${rows.map((row) => html`<span class="tag">${row.piece.tag}</span>${this.track(row, at, marks)}`)}
          <span></span>
          <div class="axis">${marks.map((atMs) => html`<span ${place({ left: at(atMs) })}>${clockText(atMs, this.zone)}</span>`)}</div>
        </div>
      </div>
      <div class="legend" aria-hidden="true">
        ${(['planned', 'hands', 'timed', 'bake'] as const).map(
          (kind) =>
            html`<span
              ><b class="track"><i class=${kind}></i></b>${DAY_RECORD.legend[kind === 'timed' ? 'rest' : kind]}</span
            >`,
        )}
      </div>`;
  }

  private track({ steps }: DayRow, at: (atMs: number) => string, marks: readonly number[]): TemplateResult {
    const bar = (name: string, fromMs: number, toMs: number): TemplateResult =>
      html`<i class=${name} ${place({ left: at(fromMs), width: `calc(${at(toMs)} - ${at(fromMs)})` })}></i>`;
    const planned = steps.flatMap(({ plannedStartMs, plannedEndMs }) =>
      plannedStartMs === null || plannedEndMs === null ? [] : [bar('planned', plannedStartMs, plannedEndMs)],
    );
    const actual = steps.flatMap((step) => {
      const span = spanOf(step);
      return span === null ? [] : [bar(step.kind, ...span)];
    });
    return html`<div class="track">
      ${marks.map((atMs) => html`<b class="hours" ${place({ left: at(atMs) })}></b>`)}${planned}${actual}
    </div>`;
  }
}

function spanOf({ startedMs, endedMs }: StepRow): readonly [number, number] | null {
  const end = endedMs ?? startedMs;
  return end === null ? null : [startedMs ?? end, end];
}

/** Whole hours of the house's clock, as many as there is room for. A night with a change of clocks has an hour more or less. */
function hourMarks(fromMs: number, toMs: number, zone: string): readonly number[] {
  const every = EVERY_HOURS.find((hours) => (toMs - fromMs) / HOUR_MS / hours <= MOST_MARKS) ?? 24;
  const marks: number[] = [];
  for (let atMs = Math.ceil(fromMs / HOUR_MS) * HOUR_MS; atMs <= toMs; atMs += HOUR_MS) {
    const hour = Number(clockText(atMs, zone).slice(0, 2));
    if (hour % every === 0) marks.push(atMs);
  }
  return marks;
}

declare global {
  interface HTMLElementTagNameMap {
    'day-picture': DayPicture;
  }
}
