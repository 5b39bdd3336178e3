import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { CUSTOMARY, STANDING_MS } from '../../shared/records/alarm-health.ts';
import type { NamesAnswer } from '../../shared/records/answers.ts';
import { callsAnswerSchema, type AlarmHealth, type CallsAnswer, type Offender } from '../../shared/records/calls-answer.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { lengthText } from '../parts/moved-text.ts';
import { CALL_HEALTH } from '../words/call-health.ts';
import { minutesWords } from '../words/clock.ts';
import { LESSONS } from '../words/lessons.ts';
import { numberWords } from '../words/numbers.ts';
import { RECORDS } from '../words/records.ts';
import { AskedController, askedView } from './asked.ts';
import './calls-chart.ts';
import { following } from './follow.ts';
import { verbText } from './lesson-texts.ts';
import { tableSection } from './record-table.ts';
import { recordsStyles } from './records-styles.ts';
import { nameIn, NO_NAMES, searchOf, type RecordsTools } from './records-tools.ts';

const MINUTE_MS = 60_000;
/** Windows of ten minutes in an hour. */
const WINDOWS_AN_HOUR = 6;

/** How the calls of some days were, against what is customary, and what to write otherwise. */
@customElement('calls-view')
export class CallsView extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    recordsStyles,
    css`
      .beyond {
        font-weight: var(--weight-strong);
      }
    `,
  ];

  @property({ attribute: false }) tools: RecordsTools | null = null;
  @property({ attribute: false }) names: NamesAnswer = NO_NAMES;
  @property({ attribute: false }) query = new URLSearchParams();
  private readonly asked = new AskedController<CallsAnswer>(this, 'calls', callsAnswerSchema);

  protected override willUpdate(): void {
    if (this.tools !== null)
      this.asked.ask(this.tools, { from: this.query.get('from') ?? undefined, to: this.query.get('to') ?? undefined });
  }

  protected override render(): TemplateResult {
    return html`<form role="search" class="screen-only" @submit=${this.submitted}>
        ${this.dateField('from', RECORDS.from)} ${this.dateField('to', RECORDS.to)}
        <button class="plain filled">${CALL_HEALTH.show}</button>
      </form>
      ${askedView(this.asked.shown, (answer) => this.answer(answer))}`;
  }

  private answer({ from, to, health, days }: CallsAnswer): TemplateResult {
    if (health.calls === 0)
      return html`<p class="soft">${LESSONS.period(from, to)}</p>
        <p role="status">${CALL_HEALTH.none}</p>`;
    return html`<p class="soft">${LESSONS.period(from, to)}</p>
      ${tableSection(
        'measures',
        CALL_HEALTH.measures,
        [{ head: CALL_HEALTH.measure }, { head: CALL_HEALTH.value }, { head: CALL_HEALTH.customary }],
        measures(health).map(({ name, value, customary, isBeyond }) => [
          name,
          html`<span class=${isBeyond === true ? 'beyond' : ''}>${value}</span>`,
          customary === undefined
            ? ''
            : html`${customary}${isBeyond === undefined ? nothing : ` · ${isBeyond ? CALL_HEALTH.beyond : CALL_HEALTH.within}`}`,
        ]),
        html`<p class="soft">${CALL_HEALTH.customaryFrom}</p>`,
      )}
      ${tableSection(
        'offenders',
        CALL_HEALTH.offenders,
        [
          { head: CALL_HEALTH.step },
          { head: CALL_HEALTH.calls, isFigure: true },
          { head: CALL_HEALTH.ofAll, isFigure: true },
          { head: CALL_HEALTH.lateBy, isFigure: true },
          { head: CALL_HEALTH.change, isWide: true },
        ],
        health.offenders.map((offender) => [
          this.stepText(offender),
          offender.calls,
          LESSONS.percent(numberWords(Math.round(offender.share * 100))),
          offender.lateMin === null ? '' : minutesWords(Math.round(offender.lateMin)),
          this.adviceText(offender),
        ]),
        health.offenders.some(({ advice }) => advice?.by === 'work')
          ? html`<p><a href=${searchOf('lessons', this.asRange())} @click=${following(this.tools)}>${CALL_HEALTH.toLessons}</a></p>`
          : nothing,
      )}
      <section aria-labelledby="picture">
        <h2 id="picture">${CALL_HEALTH.picture}</h2>
        <calls-chart .windows=${health.windows.calling} .zone=${this.names.zone}></calls-chart>
      </section>
      ${tableSection(
        'days',
        CALL_HEALTH.pictureTo,
        [
          { head: CALL_HEALTH.date },
          { head: CALL_HEALTH.dayCalls, isFigure: true },
          { head: CALL_HEALTH.dayPeak, isFigure: true },
          { head: CALL_HEALTH.dayHours, isFigure: true },
        ],
        days.map(({ date, calls, peak, worked }) => [date, calls, peak, numberWords(worked / WINDOWS_AN_HOUR)]),
      )}`;
  }

  private stepText({ subject, step, verb, nth }: Offender): string {
    return `${nameIn(this.names, subject.kind === 'formula' ? 'formulas' : 'products', subject.id)}, ${verbText(verb, step, nth)}`;
  }

  private adviceText(offender: Offender): string {
    const { advice } = offender;
    if (advice === null) return '';
    const step = this.stepText(offender);
    const [from, to] = [minutesWords(advice.fromMin), minutesWords(advice.toMin)];
    if (advice.by === 'coming') return CALL_HEALTH.byComing(step, minutesWords(Math.round(advice.toMin - advice.fromMin)), from, to);
    return advice.toMin > advice.fromMin ? CALL_HEALTH.byWork(step, from, to) : CALL_HEALTH.byWorkShorter(step, from, to);
  }

  private dateField(name: 'from' | 'to', label: string): TemplateResult {
    return html`<label>${label}<input type="date" name=${name} .value=${live(this.query.get(name) ?? '')} /></label>`;
  }

  private asRange(): Readonly<Record<string, string>> {
    return Object.fromEntries(
      ['from', 'to'].flatMap((name) => (this.query.get(name) === null ? [] : [[name, this.query.get(name) ?? '']])),
    );
  }

  private readonly submitted = (event: SubmitEvent): void => {
    event.preventDefault();
    if (!(event.target instanceof HTMLFormElement)) return;
    const said = new FormData(event.target);
    const days = ['from', 'to'].map((name) => [name, said.get(name)] as const);
    this.tools?.goTo(
      searchOf('calls', Object.fromEntries(days.flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])))),
    );
  };
}

interface Measure {
  readonly name: string;
  readonly value: string;
  readonly customary?: string;
  /** Missing where nothing is customary, or where it is no bound. */
  readonly isBeyond?: boolean;
}

function measures(health: AlarmHealth): readonly Measure[] {
  const { windows, levels, calls } = health;
  const floodShare = windows.worked === 0 ? 0 : windows.inFlood / windows.worked;
  const percent = (share: number): string => numberWords(share * 100);
  const whole = (count: number): string => String(Math.round((count / Math.max(1, calls)) * 100));
  const { shares } = CUSTOMARY;
  const mean = windows.mean ?? 0;
  const peak = windows.peak?.calls ?? 0;
  return [
    { name: CALL_HEALTH.calls, value: String(calls) },
    {
      name: CALL_HEALTH.mean,
      value: numberWords(mean),
      customary: CALL_HEALTH.atMost(String(CUSTOMARY.mean)),
      isBeyond: mean > CUSTOMARY.mean,
    },
    { name: CALL_HEALTH.peak, value: String(peak), customary: CALL_HEALTH.atMost(String(CUSTOMARY.peak)), isBeyond: peak > CUSTOMARY.peak },
    {
      name: CALL_HEALTH.flood,
      value: CALL_HEALTH.share(windows.inFlood, percent(floodShare)),
      customary: CALL_HEALTH.atMost(LESSONS.percent(percent(CUSTOMARY.floodShare))),
      isBeyond: floodShare > CUSTOMARY.floodShare,
    },
    {
      name: CALL_HEALTH.levels,
      value: CALL_HEALTH.shares(whole(levels.call), whole(levels.late), whole(levels.lost)),
      customary: CALL_HEALTH.about(CALL_HEALTH.shares(percent(shares.call), percent(shares.late), percent(shares.lost))),
    },
    { name: CALL_HEALTH.heard, value: timesText(health.heard) },
    { name: CALL_HEALTH.done, value: timesText(health.done) },
    { name: CALL_HEALTH.neverHeard, value: CALL_HEALTH.neverHeardOf(health.neverHeard, health.neverAnswered) },
    {
      name: CALL_HEALTH.repeats,
      value: String(health.repeats),
      customary: String(CUSTOMARY.repeats),
      isBeyond: health.repeats > CUSTOMARY.repeats,
    },
    {
      name: CALL_HEALTH.standing(minutesWords(STANDING_MS / MINUTE_MS)),
      value: String(health.standing),
      customary: String(CUSTOMARY.standing),
      isBeyond: health.standing > CUSTOMARY.standing,
    },
    { name: CALL_HEALTH.shelved, value: CALL_HEALTH.shelvedFor(health.shelved.times, lengthText(health.shelved.minutes)) },
    { name: CALL_HEALTH.undone, value: String(health.undone) },
  ];
}

function timesText({ n, medianMin, ninetiethMin }: AlarmHealth['heard']): string {
  if (medianMin === null || ninetiethMin === null) return '0';
  return CALL_HEALTH.times(minutesWords(Math.round(medianMin)), minutesWords(Math.round(ninetiethMin)), n);
}

declare global {
  interface HTMLElementTagNameMap {
    'calls-view': CallsView;
  }
}
