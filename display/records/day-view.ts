import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { dayAnswerSchema, type DayAnswer, type NamesAnswer } from '../../shared/records/answers.ts';
import type { ChainItem } from '../../shared/records/critical-chain.ts';
import { dayRecord, ON_TIME_MIN, type DayRecord } from '../../shared/records/day-record.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { clockText } from '../parts/clock-text.ts';
import { place } from '../parts/place.ts';
import { movedText } from '../parts/moved-text.ts';
import { weightText } from '../parts/weight-text.ts';
import { BATCH_RECORD } from '../words/batch-record.ts';
import { hoursWords } from '../words/clock.ts';
import { DAY_RECORD } from '../words/day-record.ts';
import { LOSSES } from '../words/floor.ts';
import { AskedController, askedView } from './asked.ts';
import { verbText } from './batch-happened.ts';
import './day-picture.ts';
import { following } from './follow.ts';
import { tableOf, tableSection } from './record-table.ts';
import { recordsStyles } from './records-styles.ts';
import { nameIn, NO_NAMES, placeName, searchOf, type RecordsTools } from './records-tools.ts';

/** A day as it was, beside as it was planned: what was late and why, what was spoiled and saved, how full the ovens were. */
@customElement('day-view')
export class DayView extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    recordsStyles,
    css`
      .top {
        align-items: end;
      }
      dl {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-3) var(--space-6);
        margin: 0;
      }
      dd {
        font-size: var(--type-figure);
        font-weight: var(--weight-strong);
      }
      .top .buttons {
        align-items: end;
      }
      .bar {
        display: inline-block;
        width: 10rem;
        height: 12px;
        margin-inline-end: var(--space-2);
        border: 1px solid var(--ink);
      }
      .bar i {
        display: block;
        height: 100%;
        background: var(--ink);
      }
      details summary {
        min-height: var(--target-desk);
        font-weight: var(--weight-word);
        cursor: pointer;
      }
    `,
  ];

  @property({ attribute: false }) tools: RecordsTools | null = null;
  @property({ attribute: false }) names: NamesAnswer = NO_NAMES;
  @property({ attribute: false }) query = new URLSearchParams();
  private readonly asked = new AskedController<DayAnswer>(this, 'day', dayAnswerSchema);
  private worked: { readonly of: DayAnswer; readonly record: DayRecord | null } | null = null;

  protected override willUpdate(): void {
    if (this.tools !== null) this.asked.ask(this.tools, { date: this.query.get('date') ?? undefined });
  }

  protected override render(): TemplateResult {
    return askedView(this.asked.shown, (answer) => {
      if (this.worked?.of !== answer) this.worked = { of: answer, record: dayRecord(answer) };
      return html`${this.top(answer)}
      ${this.worked.record === null ? html`<p role="status">${DAY_RECORD.nothing}</p>` : this.whole(answer, this.worked.record)}`;
    });
  }

  private top({ date, previous, next, isClosed }: DayAnswer): TemplateResult {
    const link = (to: string | null, words: string): TemplateResult | typeof nothing =>
      to === null ? nothing : html`<a href=${searchOf('days', { date: to })} @click=${following(this.tools)}>${words}</a>`;
    return html`<div class="top">
      <h2>${date}</h2>
      ${isClosed ? nothing : html`<p class="soft">${DAY_RECORD.open}</p>`}
      <div class="buttons screen-only">
        ${link(previous, DAY_RECORD.previous)} ${link(next, DAY_RECORD.next)}
        <label
          >${DAY_RECORD.date}<input
            type="date"
            .value=${live(date)}
            min=${this.names.firstDate ?? nothing}
            max=${this.names.lastDate ?? nothing}
            @change=${(event: Event) => {
              if (event.target instanceof HTMLInputElement && event.target.value !== '')
                this.tools?.goTo(searchOf('days', { date: event.target.value }));
            }}
        /></label>
        <button class="plain" @click=${() => globalThis.print()}>${BATCH_RECORD.print}</button>
      </div>
    </div>`;
  }

  private whole(answer: DayAnswer, record: DayRecord): TemplateResult {
    const discarded = answer.spoiled.reduce((sum, { pieces }) => sum + (pieces ?? 0), 0);
    const fact = (name: string, value: unknown): TemplateResult =>
      html`<div>
        <dt>${name}</dt>
        <dd>${value}</dd>
      </div>`;
    return html`<section aria-labelledby="facts">
        <h2 id="facts" class="unseen">${DAY_RECORD.facts}</h2>
        <dl>
          ${fact(DAY_RECORD.onTime, DAY_RECORD.ofOver(record.onTime, record.over))} ${fact(DAY_RECORD.lateCalls, answer.calls.late)}
          ${fact(DAY_RECORD.lostCalls, answer.calls.lost)} ${fact(DAY_RECORD.spoiledPieces, discarded)}
        </dl>
      </section>
      <section aria-labelledby="axis">
        <h2 id="axis">${DAY_RECORD.axis}</h2>
        <day-picture .record=${record} .zone=${this.names.zone}></day-picture>
        <details>
          <summary>${DAY_RECORD.table}</summary>
          ${this.rowsTable(record)}
        </details>
      </section>
      ${this.late(answer, record)} ${this.chain(answer, record)} ${this.waste(answer)} ${this.ovens(answer)} ${this.orders(answer)}`;
  }

  private rowsTable({ rows }: DayRecord): TemplateResult {
    const span = (some: readonly (number | null)[], more: readonly (number | null)[]): string => {
      const from = some.filter((ms) => ms !== null);
      const to = more.filter((ms) => ms !== null);
      return from.length === 0 || to.length === 0 ? '' : `${this.clock(Math.min(...from))}–${this.clock(Math.max(...to))}`;
    };
    return tableOf(
      DAY_RECORD.table,
      [
        { head: DAY_RECORD.part },
        { head: DAY_RECORD.name },
        { head: DAY_RECORD.planned, isFigure: true },
        { head: DAY_RECORD.actual, isFigure: true },
        { head: DAY_RECORD.off, isFigure: true },
        { head: DAY_RECORD.became },
      ],
      rows.map(({ piece, steps, offMin }) => [
        html`<a href=${searchOf('batch', { id: piece.id })} @click=${following(this.tools)}>${piece.tag}</a>`,
        this.nameOf(piece),
        span(
          steps.map(({ plannedStartMs }) => plannedStartMs),
          steps.map(({ plannedEndMs }) => plannedEndMs),
        ),
        span(
          steps.map(({ startedMs, endedMs }) => startedMs ?? endedMs),
          steps.map(({ endedMs }) => endedMs),
        ),
        offMin === null ? '' : movedText(Math.round(offMin)),
        piece.ending === null ? BATCH_RECORD.stillHere : BATCH_RECORD.endings[piece.ending],
      ]),
    );
  }

  private late(answer: DayAnswer, record: DayRecord): TemplateResult {
    return html`<section aria-labelledby="late">
      <h2 id="late">${DAY_RECORD.late}</h2>
      ${
        record.late.length === 0
          ? html`<p>${DAY_RECORD.noneLate(ON_TIME_MIN)}</p>`
          : tableOf(
              DAY_RECORD.late,
              [{ head: DAY_RECORD.part }, { head: DAY_RECORD.name }, { head: DAY_RECORD.off, isFigure: true }, { head: DAY_RECORD.cause }],
              record.late.map(({ row: { piece, offMin }, worst }) => [
                html`<a href=${searchOf('batch', { id: piece.id })} @click=${following(this.tools)}>${piece.tag}</a>`,
                this.nameOf(piece),
                movedText(Math.round(offMin ?? 0)),
                worst === null ? '' : this.because(answer, worst),
              ]),
            )
      }
    </section>`;
  }

  private chain(answer: DayAnswer, record: DayRecord): TemplateResult | typeof nothing {
    const minutes = (value: number): string => (Math.round(value) < 1 ? '' : DAY_RECORD.minutes(String(Math.round(value))));
    return tableSection(
      'chain',
      DAY_RECORD.chainTitle,
      [
        { head: BATCH_RECORD.step },
        { head: BATCH_RECORD.start, isFigure: true },
        { head: BATCH_RECORD.end, isFigure: true },
        { head: DAY_RECORD.cause },
        { head: DAY_RECORD.waited, isFigure: true },
        { head: DAY_RECORD.over, isFigure: true },
      ],
      record.chain.map((item) => {
        const step = record.stepsById.get(item.stepId);
        return [
          this.stepText(answer, item.stepId),
          step === undefined ? '' : this.clock(step.startMs),
          step === undefined ? '' : this.clock(step.endMs),
          item.link.kind === 'resource'
            ? DAY_RECORD.link.resource(placeName(this.names, item.link.resource))
            : DAY_RECORD.link[item.link.kind],
          minutes(item.waitedMin),
          minutes(item.overMin),
        ];
      }),
      html`<p class="soft">${DAY_RECORD.chainIntro}</p>`,
    );
  }

  private waste({ spoiled, saved }: DayAnswer): TemplateResult {
    const rows = (some: DayAnswer['spoiled']): readonly (readonly unknown[])[] =>
      some.map(({ pieceId, tag, what, reason, grams, pieces }) => [
        html`<a href=${searchOf('batch', { id: pieceId })} @click=${following(this.tools)}>${tag}</a>`,
        whatText(what),
        pieces ?? '',
        weightText(grams, this.names.units),
        reason ?? '',
      ]);
    const columns = [
      { head: DAY_RECORD.part },
      { head: DAY_RECORD.what },
      { head: DAY_RECORD.pieces, isFigure: true },
      { head: DAY_RECORD.weight, isFigure: true },
      { head: DAY_RECORD.reason },
    ];
    return html`<section aria-labelledby="spoiled">
        <h2 id="spoiled">${DAY_RECORD.spoiled}</h2>
        ${spoiled.length === 0 ? html`<p>${DAY_RECORD.noneSpoiled}</p>` : tableOf(DAY_RECORD.spoiled, columns, rows(spoiled))}
      </section>
      ${tableSection('saved', DAY_RECORD.saved, columns, rows(saved))}`;
  }

  private ovens({ decks }: DayAnswer): TemplateResult | typeof nothing {
    return tableSection(
      'ovens',
      DAY_RECORD.ovens,
      [{ head: DAY_RECORD.deck }, { head: DAY_RECORD.full }],
      decks.map(({ deck, slots, slotMin, spanMin }) => {
        const share = slotMin / Math.max(1, slots * spanMin);
        const words = DAY_RECORD.fullOf(`${Math.round(share * 100)} %`, hoursWords(Math.round((spanMin / 60) * 10) / 10));
        return [
          placeName(this.names, deck),
          html`<span class="bar" aria-hidden="true"><i ${place({ width: `${(share * 100).toFixed(1)}%` })}></i></span> ${words}`,
        ];
      }),
    );
  }

  private orders({ orders }: DayAnswer): TemplateResult | typeof nothing {
    return tableSection(
      'orders',
      DAY_RECORD.orders,
      [
        { head: DAY_RECORD.product },
        { head: DAY_RECORD.pieces, isFigure: true },
        { head: DAY_RECORD.wanted, isFigure: true },
        { head: DAY_RECORD.became },
      ],
      orders.map(({ product, pieces, readyMs, isWithdrawn }) => [
        nameIn(this.names, 'products', product),
        pieces,
        this.clock(readyMs),
        isWithdrawn ? DAY_RECORD.withdrawn : '',
      ]),
    );
  }

  private because(answer: DayAnswer, { stepId, waitedMin, overMin, link }: ChainItem): string {
    const isWait = waitedMin >= overMin;
    const words = DAY_RECORD.because(this.stepText(answer, stepId), isWait, String(Math.round(isWait ? waitedMin : overMin)));
    if (!isWait || link.kind === 'dough' || link.kind === 'begin') return words;
    return `${words}: ${link.kind === 'resource' ? DAY_RECORD.link.resource(placeName(this.names, link.resource)) : DAY_RECORD.link.hands}`;
  }

  private stepText(answer: DayAnswer, chainId: string): string {
    const [pieceId = '', step = ''] = chainId.split(' ');
    const tag = answer.pieces.find(({ id }) => id === pieceId)?.tag ?? '';
    const own = answer.steps.filter((other) => other.pieceId === pieceId);
    const found = own.find((other) => other.step === step);
    if (found === undefined) return `${tag} ${step}`;
    const same = own.filter(({ verb }) => verb === found.verb);
    return `${tag} ${verbText(found.verb, same.length < 2 ? null : same.indexOf(found) + 1, step)}`;
  }

  private nameOf({ product, formula }: DayAnswer['pieces'][number]): string {
    return product === null ? nameIn(this.names, 'formulas', formula) : nameIn(this.names, 'products', product);
  }

  private clock(atMs: number): string {
    return clockText(atMs, this.names.zone);
  }
}

function whatText(what: string): string {
  if (what in DAY_RECORD.whats) return DAY_RECORD.whats[what as keyof typeof DAY_RECORD.whats];
  return what in LOSSES ? LOSSES[what as keyof typeof LOSSES] : what;
}

declare global {
  interface HTMLElementTagNameMap {
    'day-view': DayView;
  }
}
