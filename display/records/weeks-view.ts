import { css, html, LitElement, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { weeksAnswerSchema, type NamesAnswer, type WeeksAnswer } from '../../shared/records/answers.ts';
import { BEGUN_LATE_MIN } from '../../shared/records/day-record.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { movedText } from '../parts/moved-text.ts';
import { DAY_RECORD } from '../words/day-record.ts';
import { RECORDS } from '../words/records.ts';
import { AskedController, askedView } from './asked.ts';
import { following } from './follow.ts';
import { tableOf } from './record-table.ts';
import { recordsStyles } from './records-styles.ts';
import { NO_NAMES, searchOf, type RecordsTools } from './records-tools.ts';

const SIDE = 100;

/** Week by week: what was made and spoiled, how late it began and ended, how full the ovens were. */
@customElement('weeks-view')
export class WeeksView extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    recordsStyles,
    css`
      svg {
        display: block;
        width: 100%;
        height: 9rem;
        border-bottom: 2px solid var(--ink);
      }
      rect {
        fill: var(--ink);
      }
      figure {
        max-width: 70rem;
        margin: 0 0 var(--space-4);
      }
      figcaption {
        display: flex;
        justify-content: space-between;
        color: var(--ink-soft);
        font-size: var(--type-small);
      }
    `,
  ];

  @property({ attribute: false }) tools: RecordsTools | null = null;
  @property({ attribute: false }) names: NamesAnswer = NO_NAMES;
  @property({ attribute: false }) query = new URLSearchParams();
  private readonly asked = new AskedController<WeeksAnswer>(this, 'weeks', weeksAnswerSchema);

  protected override willUpdate(): void {
    if (this.tools !== null)
      this.asked.ask(this.tools, { from: this.query.get('from') ?? undefined, to: this.query.get('to') ?? undefined });
  }

  protected override render(): TemplateResult {
    return askedView(this.asked.shown, ({ weeks }) =>
      weeks.length === 0
        ? html`<p role="status">${RECORDS.nothingYet}</p>`
        : html`<h2>${DAY_RECORD.weeks}</h2>
            ${this.picture(weeks)} ${this.table(weeks)}`,
    );
  }

  private picture(weeks: WeeksAnswer['weeks']): TemplateResult {
    const most = Math.max(0.05, ...weeks.map(({ lateShare }) => lateShare ?? 0));
    const width = SIDE / weeks.length;
    const label = DAY_RECORD.weeksPicture(weeks.length);
    return html`<figure>
      <p>${DAY_RECORD.lateSteps(BEGUN_LATE_MIN)} <span class="soft">0–${percent(most)}</span></p>
      <svg viewBox="0 0 ${SIDE} ${SIDE}" preserveAspectRatio="none" role="img" aria-label=${label}>
        ${weeks.map(({ lateShare }, index) => {
          const height = ((lateShare ?? 0) / most) * SIDE;
          return svg`<rect x=${index * width + width * 0.15} width=${width * 0.7} y=${SIDE - height} height=${height}></rect>`;
        })}
      </svg>
      <figcaption><span>${weeks[0]?.monday ?? ''}</span><span>${weeks.at(-1)?.monday ?? ''}</span></figcaption>
    </figure>`;
  }

  private table(weeks: WeeksAnswer['weeks']): TemplateResult {
    const figure = { isFigure: true } as const;
    return tableOf(
      DAY_RECORD.weeks,
      [
        { head: DAY_RECORD.week },
        { head: DAY_RECORD.days, ...figure },
        { head: DAY_RECORD.batches, ...figure },
        { head: DAY_RECORD.finished, ...figure },
        { head: DAY_RECORD.discarded, ...figure },
        { head: DAY_RECORD.offMedian, ...figure },
        { head: DAY_RECORD.lateSteps(BEGUN_LATE_MIN), ...figure },
        { head: DAY_RECORD.lateCalls, ...figure },
        { head: DAY_RECORD.lostCalls, ...figure },
        { head: DAY_RECORD.oven, ...figure },
      ],
      [...weeks]
        .reverse()
        .map((week) => [
          html`<a href=${searchOf('batches', { from: week.monday, to: sundayOf(week.monday) })} @click=${following(this.tools)}
            >${week.monday}</a
          >`,
          week.days,
          week.batches,
          week.finishedPieces,
          week.discardedPieces,
          week.offMin === null ? '' : movedText(Math.round(week.offMin)),
          week.lateShare === null ? '' : percent(week.lateShare),
          week.lateCalls,
          week.lostCalls,
          week.ovenShare === null ? '' : percent(week.ovenShare),
        ]),
    );
  }
}

function percent(share: number): string {
  return `${Math.round(share * 100)}\u00a0%`;
}

function sundayOf(monday: string): string {
  return new Date(Date.parse(`${monday}T00:00:00Z`) + 6 * 86_400_000).toISOString().slice(0, 10);
}

declare global {
  interface HTMLElementTagNameMap {
    'weeks-view': WeeksView;
  }
}
