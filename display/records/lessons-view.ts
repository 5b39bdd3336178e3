import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { NamesAnswer } from '../../shared/records/answers.ts';
import { LEAST_TIMES } from '../../shared/records/lesson-rules.ts';
import {
  lessonAboutSchema,
  lessonsAnswerSchema,
  type Lesson,
  type LessonGroup,
  type LessonsAnswer,
} from '../../shared/records/lessons-answer.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { weightText } from '../parts/weight-text.ts';
import { zonedDate } from '../parts/zoned-instant.ts';
import { minutesWords } from '../words/clock.ts';
import { LESSONS } from '../words/lessons.ts';
import { RECORDS } from '../words/records.ts';
import { AskedController, askedView } from './asked.ts';
import { leave, takeOver, type LessonOutcome } from './lesson-taken.ts';
import { figureText, groupText, pieceMinutesText, subjectText, trendText } from './lesson-texts.ts';
import { tableSection, type Column } from './record-table.ts';
import { recordsStyles } from './records-styles.ts';
import { nameIn, NO_NAMES, searchOf, type RecordsTools } from './records-tools.ts';
import { drawnStyles, spreadDrawn, trendDrawn } from './spread-drawn.ts';

/** Fewer times than these say nothing even to be looked at. */
const LEAST_SHOWN = 3;
/** What the floor goes by without anybody's leave. */
const BY_ITSELF: ReadonlySet<Lesson['about']> = new Set(['rise', 'ripeness', 'heat']);

/** What the days teach, each against what is assumed: to be written down with one touch, or left as it is. */
@customElement('lessons-view')
export class LessonsView extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    recordsStyles,
    drawnStyles,
    css`
      .found {
        font-weight: var(--weight-strong);
      }
      .told:focus-visible {
        outline-offset: 4px;
      }
      td ul {
        display: grid;
        gap: 2px;
      }
      .buttons button {
        white-space: nowrap;
      }
      td p + p {
        margin-top: var(--space-1);
      }
    `,
  ];

  @property({ attribute: false }) tools: RecordsTools | null = null;
  @property({ attribute: false }) names: NamesAnswer = NO_NAMES;
  @property({ attribute: false }) query = new URLSearchParams();
  /** What became of the last answer, and what it was about. */
  @state() private told: { readonly lesson: string; readonly text: string } | null = null;
  @state() private isAnswering = false;
  private readonly asked = new AskedController<LessonsAnswer>(this, 'lessons', lessonsAnswerSchema);

  protected override willUpdate(): void {
    if (this.tools !== null) this.asked.ask(this.tools, this.days());
  }

  protected override render(): TemplateResult {
    return html`<form role="search" class="screen-only" @submit=${this.submitted}>
        ${this.dateField('from', RECORDS.from)} ${this.dateField('to', RECORDS.to)}
        <button class="plain filled">${LESSONS.show}</button>
      </form>
      <p class="told" role="status" tabindex="-1">${this.told === null ? nothing : `${this.told.lesson}: ${this.told.text}`}</p>
      ${askedView(this.asked.shown, (answer) => this.answer(answer))}`;
  }

  private answer({ from, to, lessons, changes, losses }: LessonsAnswer): TemplateResult {
    const shown = lessons.filter(({ spread }) => spread.n >= LEAST_SHOWN);
    const worth = shown.filter(({ proposal, left }) => proposal !== null && left === null);
    const left = shown.filter((lesson) => lesson.left !== null);
    const { units } = this.names;
    return html`<p class="soft">${LESSONS.period(from, to)}</p>
      ${shown.length === 0 ? html`<p role="status">${LESSONS.none}</p>` : nothing}
      ${
        worth.length === 0 && shown.length > 0
          ? html`<section aria-labelledby="worth">
              <h2 id="worth">${LESSONS.worth}</h2>
              <p>${LESSONS.worthNone}</p>
            </section>`
          : this.table('worth', LESSONS.worth, worth, true, html`<p class="soft">${LESSONS.rule(LEAST_TIMES)}</p>`)
      }
      ${this.table('left', LESSONS.left, left, true)}
      ${lessonAboutSchema.options.map((about) => {
        const own = shown.filter((lesson) => lesson.about === about && !worth.includes(lesson) && !left.includes(lesson));
        return this.table(
          about,
          LESSONS[about],
          own,
          false,
          BY_ITSELF.has(about) ? html`<p class="soft">${LESSONS.byItself}</p>` : nothing,
        );
      })}
      ${tableSection(
        'changes',
        LESSONS.changes,
        [{ head: LESSONS.what }, { head: LESSONS.assumedFound }, { head: LESSONS.version, isFigure: true }, { head: LESSONS.changedOn }],
        changes.map(({ subject, step, fromMin, toMin, version, atMs }) => [
          `${nameIn(this.names, subject.kind === 'formula' ? 'formulas' : 'products', subject.id)}, ${this.stepText(lessons, subject.id, step)}`,
          LESSONS.assumedToFound(minutesWords(fromMin), minutesWords(toMin)),
          version,
          atMs === null ? '' : zonedDate(atMs, this.names.zone),
        ]),
      )}
      ${
        losses.length === 0
          ? nothing
          : html`<section aria-labelledby="losses">
              <h2 id="losses">${LESSONS.losses}</h2>
              <ul>
                ${losses.map(({ what, grams, times }) => html`<li>${LESSONS.loss(LESSONS.lossKinds[what] ?? what, weightText(grams, units), times)}</li>`)}
              </ul>
            </section>`
      }`;
  }

  /** A step of a change by what it does, where a lesson knows it. */
  private stepText(lessons: readonly Lesson[], id: string, step: string): string {
    const known = lessons.find((lesson) => lesson.subject.id === id && lesson.step?.id === step);
    return known === undefined ? step : subjectText(known, this.names).replace(/^.*, /, '');
  }

  private table(
    id: string,
    heading: string,
    lessons: readonly Lesson[],
    isAnswered: boolean,
    more: TemplateResult | typeof nothing = nothing,
  ): TemplateResult | typeof nothing {
    const hasParts = lessons.some(({ groups }) => groups.some(isShown));
    const columns: Column[] = [
      { head: LESSONS.what },
      { head: LESSONS.assumedFound },
      { head: LESSONS.times, isFigure: true },
      { head: LESSONS.spread },
      { head: LESSONS.trend },
      ...(hasParts ? [{ head: LESSONS.parts }] : []),
      ...(isAnswered ? [{ head: LESSONS.answer }] : []),
    ];
    return tableSection(
      id,
      heading,
      columns,
      lessons.map((lesson) => this.row(lesson, hasParts, isAnswered)),
      more,
    );
  }

  private row(lesson: Lesson, hasParts: boolean, isAnswered: boolean): readonly unknown[] {
    const { about, spread, trend, assumed, leftOut, groups } = lesson;
    const { units } = this.names;
    const text = (value: number): string => figureText(about, value, units);
    return [
      subjectText(lesson, this.names),
      html`<p class="found">
          ${assumed === null ? LESSONS.found(text(lesson.estimate)) : LESSONS.assumedToFound(text(assumed), text(lesson.estimate))}
        </p>
        ${this.perPiece(lesson)}`,
      LESSONS.timed(spread.n, leftOut),
      html`${spreadDrawn(spread, assumed)}
        <p class="soft">
          ${LESSONS.spreadWords(
            LESSONS.between(text(spread.quarter), text(spread.threeQuarters)),
            LESSONS.between(text(spread.tenth), text(spread.nineTenths)),
            assumed === null ? null : text(assumed),
          )}
        </p>`,
      html`${trend === null ? nothing : trendDrawn(trend, spread.median)}
        <p>${trendText(lesson, units)}</p>`,
      ...(hasParts
        ? [
            html`<ul>
              ${groups.filter(isShown).map((group) => html`<li>${groupText(group, about, this.names)}</li>`)}
            </ul>`,
          ]
        : []),
      ...(isAnswered ? [this.buttons(lesson)] : []),
    ];
  }

  private perPiece({ minutesPerPiece, foundPerPiece }: Lesson): TemplateResult | typeof nothing {
    if (minutesPerPiece === 0) return nothing;
    const found = foundPerPiece === null ? null : pieceMinutesText(foundPerPiece.minutes);
    return html`<p class="soft">${LESSONS.perPiece(pieceMinutesText(minutesPerPiece), found)}</p>`;
  }

  private buttons(lesson: Lesson): TemplateResult | typeof nothing {
    const { proposal, left } = lesson;
    if (proposal === null) return nothing;
    const about = subjectText(lesson, this.names);
    const use = LESSONS.use(minutesWords(proposal.toMin), minutesWords(proposal.fromMin));
    return html`<div class="buttons screen-only">
        <button
          class="plain filled"
          aria-label="${about}: ${use}"
          ?disabled=${this.isAnswering}
          @click=${() => void this.settle(lesson, takeOver)}
        >
          ${use}
        </button>
        ${
          left === null
            ? html`<button
                class="plain"
                aria-label="${about}: ${LESSONS.leave}"
                ?disabled=${this.isAnswering}
                @click=${() => void this.settle(lesson, leave)}
              >
                ${LESSONS.leave}
              </button>`
            : nothing
        }
      </div>
      ${left === null ? nothing : html`<p class="soft">${LESSONS.leftOn(zonedDate(left.atMs, this.names.zone))}</p>`}`;
  }

  private async settle(lesson: Lesson, by: (tools: RecordsTools, lesson: Lesson) => Promise<LessonOutcome>): Promise<void> {
    const { tools } = this;
    if (tools === null || this.isAnswering) return;
    this.isAnswering = true;
    const about = subjectText(lesson, this.names);
    this.told = { lesson: about, text: LESSONS.using };
    const outcome = await by(tools, lesson);
    this.told = { lesson: about, text: outcomeText(outcome) };
    this.isAnswering = false;
    if (outcome.what === 'used' || outcome.what === 'left') this.asked.again(tools, this.days());
    await this.updateComplete;
    // The button that was pressed may be gone with its row.
    this.renderRoot.querySelector<HTMLElement>('.told')?.focus();
  }

  private dateField(name: 'from' | 'to', label: string): TemplateResult {
    return html`<label>${label}<input type="date" name=${name} .value=${live(this.query.get(name) ?? '')} /></label>`;
  }

  private days(): { from: string | undefined; to: string | undefined } {
    return { from: this.query.get('from') ?? undefined, to: this.query.get('to') ?? undefined };
  }

  private readonly submitted = (event: SubmitEvent): void => {
    event.preventDefault();
    if (!(event.target instanceof HTMLFormElement)) return;
    const said = new FormData(event.target);
    const [from, to] = ['from', 'to'].map((name) => said.get(name));
    this.tools?.goTo(searchOf('lessons', { ...(typeof from === 'string' ? { from } : {}), ...(typeof to === 'string' ? { to } : {}) }));
  };
}

/** One or two times of a station or deck say nothing. */
function isShown({ n }: LessonGroup): boolean {
  return n >= LEAST_SHOWN;
}

function outcomeText(outcome: LessonOutcome): string {
  switch (outcome.what) {
    case 'used':
      return LESSONS.used(outcome.version);
    case 'left':
      return LESSONS.wasLeft;
    default:
      return LESSONS[outcome.what];
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'lessons-view': LessonsView;
  }
}
