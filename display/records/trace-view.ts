import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { NamesAnswer } from '../../shared/records/answers.ts';
import { traceAnswerSchema, type TraceAnswer } from '../../shared/records/trace-answer.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { weightText } from '../parts/weight-text.ts';
import { zonedDate } from '../parts/zoned-instant.ts';
import { TRACE } from '../words/trace.ts';
import { AskedController, askedView } from './asked.ts';
import { following } from './follow.ts';
import { recordsStyles } from './records-styles.ts';
import { nameIn, NO_NAMES, searchOf, type RecordsTools } from './records-tools.ts';
import './trace-picture.ts';
import './trace-search.ts';
import { lotsSection, productsSection, stillHereSection, waySection } from './trace-tables.ts';

/** What a trace can begin with, as the address says it. */
const ASKED = ['lot', 'ingredient', 'product', 'date', 'id', 'after'] as const;

/**
 * From a lot number to every product that holds it, or from a product to every lot number in it: drawn, and as lists. On paper it is the
 * recall sheet: what was made, what became of it and where it went, with room for who was told (Regulation (EC) 178/2002, articles 18
 * and 19).
 */
@customElement('trace-view')
export class TraceView extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    recordsStyles,
    css`
      .top {
        margin-top: var(--space-5);
      }
      .top p {
        color: var(--ink-soft);
      }
      .top .buttons {
        margin-inline-start: auto;
      }
      dl {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr));
        gap: var(--space-3) var(--space-5);
        margin: var(--space-4) 0 0;
      }
      .why {
        max-width: 60rem;
        margin-top: var(--space-3);
      }
      figure {
        margin: var(--space-5) 0 0;
      }
      figcaption {
        margin-bottom: var(--space-2);
      }
      figcaption b {
        font-weight: var(--weight-word);
      }
      .day {
        white-space: nowrap;
      }
      #products ~ .wide th:last-child,
      #products ~ .wide td:last-child,
      .paper-only {
        display: none;
      }
      .caution {
        margin-top: var(--space-6);
        padding-top: var(--space-3);
        border-top: 2px solid var(--ink);
        font-size: var(--type-small);
      }
      @media print {
        .paper-only {
          display: block;
        }
        .top {
          margin-top: 0;
        }
        section,
        .wide {
          break-inside: auto;
        }
        table {
          width: 100%;
        }
        #products ~ .wide th:last-child,
        #products ~ .wide td:last-child {
          display: table-cell;
          min-width: 9rem;
        }
        .lines {
          display: grid;
          gap: var(--space-5);
          margin-top: var(--space-6);
          break-inside: avoid;
        }
        .lines p {
          padding-bottom: 2px;
          border-bottom: 1px solid var(--ink);
        }
        .caution {
          break-inside: avoid;
        }
      }
    `,
  ];

  @property({ attribute: false }) tools: RecordsTools | null = null;
  @property({ attribute: false }) names: NamesAnswer = NO_NAMES;
  @property({ attribute: false }) query = new URLSearchParams();
  private readonly asked = new AskedController<TraceAnswer>(this, 'trace', traceAnswerSchema);

  protected override willUpdate(): void {
    if (this.tools !== null && this.isAsked()) this.asked.ask(this.tools, this.askedWith());
  }

  protected override render(): TemplateResult {
    return html`<trace-search
        class="screen-only"
        .tools=${this.tools}
        .names=${this.names}
        .query=${this.query}
        ?isBeginning=${!this.isAsked()}
      ></trace-search>
      ${this.isAsked() ? askedView(this.asked.shown, (answer) => this.whole(answer)) : nothing}`;
  }

  private whole(answer: TraceAnswer): TemplateResult {
    const given = { names: this.names, tools: this.tools };
    const isOnward = answer.direction === 'onward';
    const today = this.tools === null ? '' : zonedDate(this.tools.wallMs(), this.names.zone);
    const next = html`<p class="screen-only">
        <a href=${searchOf('trace', { ...this.askedWith(), after: answer.after ?? '' })} @click=${following(this.tools)}
          >${TRACE.nextProducts}</a
        >
      </p>
      <p class="paper-only">${TRACE.pageOnly}</p>`;
    return html`<article aria-labelledby="of">
      <div class="top">
        <h2 id="of"><span class="paper-only">${isOnward ? TRACE.sheet : nothing}</span> ${this.heading(answer)}</h2>
        <p>
          ${this.ingredients(answer)}${this.names.house === '' ? nothing : html` · ${this.names.house}`}<span class="paper-only"
            >${TRACE.made(today)}</span
          >
        </p>
        <div class="buttons screen-only">
          <button class="plain" @click=${() => globalThis.print()}>${isOnward ? TRACE.print : TRACE.printBack}</button>
        </div>
      </div>
      ${this.facts(answer)}
      <figure class="screen-only">
        <figcaption>
          <b>${TRACE.picture}.</b> ${TRACE.pictureSame}
          ${answer.nodesLeftOut === 0 ? nothing : TRACE.pictureNearest(answer.nodes.length, answer.nodesLeftOut)}
        </figcaption>
        <trace-picture tabindex="0" role="group" aria-label=${TRACE.picture} .answer=${answer} .names=${this.names}></trace-picture>
      </figure>
      ${
        isOnward
          ? html`${productsSection(answer, next, given)} ${stillHereSection(answer, given)} ${lotsSection(answer, given)}`
          : html`${lotsSection(answer, given)} ${productsSection(answer, nothing, given)}`
      }
      <div class="screen-only">${waySection(answer, given)}</div>
      ${
        isOnward
          ? html`<div class="paper-only">
              <div class="lines">
                <p>${TRACE.reportedBy}</p>
                <p>${TRACE.authority}</p>
                <p>${TRACE.signed}</p>
              </div>
            </div>`
          : nothing
      }
      <p class="caution">${TRACE.caution}</p>
    </article>`;
  }

  private facts({ direction, total, lotsG }: TraceAnswer): TemplateResult {
    const facts: readonly (readonly [string, string])[] = [
      ...(direction === 'onward' ? [[TRACE.weighedInAll, weightText(lotsG, this.names.units)] as const] : []),
      [TRACE.products, String(total.products)],
      [TRACE.days, String(total.days)],
      [TRACE.finished, TRACE.pieces(total.finished)],
      [TRACE.discarded, TRACE.pieces(total.discarded)],
      [TRACE.here, TRACE.pieces(total.here)],
      ...(total.carried > 0 ? [[TRACE.carried, TRACE.pieces(total.carried)] as const] : []),
    ];
    return html`<dl aria-label=${TRACE.inShort}>
        ${facts.map(
          ([name, value]) =>
            html`<div>
              <dt>${name}</dt>
              <dd>${value}</dd>
            </div>`,
        )}
      </dl>
      ${total.carried > 0 ? html`<p class="why">${TRACE.carriedWhy}</p>` : nothing}`;
  }

  private heading({ direction, nodes }: TraceAnswer): string {
    if (direction === 'onward') return TRACE.lotHeading(this.query.get('lot') ?? '');
    const product = this.query.get('product');
    if (product !== null) return TRACE.backHeading(`${nameIn(this.names, 'products', product)}, ${this.query.get('date') ?? ''}`);
    const named = nodes.find(({ piece }) => piece.id === this.query.get('id'))?.piece;
    return TRACE.backHeading(named === undefined ? '' : `${named.tag}, ${named.serviceDate}`);
  }

  private ingredients({ direction, lots }: TraceAnswer): string {
    if (direction === 'back') return '';
    return [...new Set(lots.map(({ ingredient }) => nameIn(this.names, 'ingredients', ingredient)))].join(', ');
  }

  private isAsked(): boolean {
    return ['lot', 'product', 'id'].some((name) => (this.query.get(name) ?? '') !== '');
  }

  private askedWith(): Readonly<Record<string, string>> {
    return Object.fromEntries(ASKED.flatMap((name) => (this.query.get(name) === null ? [] : [[name, this.query.get(name) ?? '']])));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'trace-view': TraceView;
  }
}
