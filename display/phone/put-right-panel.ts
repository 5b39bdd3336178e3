import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { clockText } from '../parts/clock-text.ts';
import { nthWords, PANELS } from '../words/panels.ts';
import { VERBS } from '../words/verbs.ts';
import { valuesAround } from './around-model.ts';
import type { CardModel } from './card-model.ts';
import { CardPanel } from './card-panel.ts';
import { correctionWords, pastClock, pastNotes } from './history-words.ts';
import { correctionsOf, historyOf, lastEdges, tagParts, type Edge, type Past } from './history-model.ts';
import './number-choice.ts';
import type { ValueSaidEvent } from './number-choice.ts';
import './number-stepper.ts';
import type { ValueChosenEvent } from './number-stepper.ts';

/** Minutes by which an instant is put right with one touch. */
const SHIFTS_MIN = [-5, -1, 1, 5] as const;
/** Counts offered beside the one that was said: pieces get lost more often than they are found. */
const BELOW = 6;
const ABOVE = 1;
const COUNT = { least: 0, most: 100_000 } as const;
const MINUTE_MS = 60_000;

/** What was said of a dough, and what of it was wrong: a time, a count, a tag. What it said before is kept. */
@customElement('put-right-panel')
export class PutRightPanel extends CardPanel {
  static override styles = [
    ...CardPanel.styles,
    css`
      section {
        display: grid;
        gap: var(--space-4);
      }
      section h3 {
        margin-bottom: -12px;
      }
      li {
        padding: 3px 0;
        font-size: var(--type-text);
        overflow-wrap: anywhere;
      }
      li strong {
        font-weight: var(--weight-word);
      }
    `,
  ];

  @state() private count: number | null = null;
  @state() private number: number | null = null;

  protected override panel(card: CardModel, floor: FloorState, workpiece: Workpiece): TemplateResult {
    const pasts = historyOf(floor, workpiece);
    const corrections = correctionsOf(workpiece);
    return html`
      <h2>${PANELS.putRightTitle(card.tag)}</h2>
      ${lastEdges(pasts).map((edge) => this.edge(card, edge))}
      ${workpiece.pieces === null ? nothing : this.countOf(workpiece, workpiece.pieces)} ${this.tagOf(workpiece)}
      <section>
        <h3>${PANELS.history}</h3>
        ${
          pasts.length === 0
            ? html`<p>${PANELS.noHistory}</p>`
            : html`<ol>
                ${pasts.map((past) => this.past(floor, past))}
              </ol>`
        }
      </section>
      ${
        corrections.length === 0
          ? nothing
          : html`<section>
              <h3>${PANELS.corrections}</h3>
              <ol>
                ${corrections.map((correction) => html`<li><strong>${clockText(correction.atMs, this.zone)}</strong> ${correctionWords(floor, workpiece.id, correction, this.zone)}</li>`)}
              </ol>
            </section>`
      }
    `;
  }

  private past(floor: FloorState, past: Past): TemplateResult {
    const words = [nthWords(VERBS[past.verb].running, past.nth), ...pastNotes(floor, past)];
    return html`<li><strong>${pastClock(past, this.zone)}</strong> ${words.join(' · ')}</li>`;
  }

  private edge(card: CardModel, { stepId, verb, nth, edge, atMs }: Edge): TemplateResult {
    const step = nthWords(VERBS[verb].running, nth);
    const title = `${edge === 'start' ? PANELS.began(step) : PANELS.ended(step)} ${clockText(atMs, this.zone)}`;
    return html`
      <section role="group" aria-label=${title}>
        <h3>${title}</h3>
        <div class="row">
          ${SHIFTS_MIN.map((minutes) =>
            this.chip(`${minutes > 0 ? '+' : '−'}${Math.abs(minutes)} min`, () =>
              this.say({ type: 'correctTime', workpieceId: card.row.workpieceId, stepId, edge, toMs: atMs + minutes * MINUTE_MS }),
            ),
          )}
        </div>
      </section>
    `;
  }

  private countOf(workpiece: Workpiece, pieces: number): TemplateResult {
    const count = this.count ?? pieces;
    const say = (reason: string): void => this.say({ type: 'correctCount', workpieceId: workpiece.id, pieces: count, reason });
    return html`
      <section role="group" aria-label=${PANELS.pieces}>
        <number-choice
          keeps
          label=${PANELS.pieces}
          .values=${valuesAround(pieces, 1, BELOW, ABOVE, COUNT)}
          .value=${count}
          @value-said=${(event: ValueSaidEvent) => (this.count = event.value)}
          @value-chosen=${(event: ValueChosenEvent) => (this.count = event.value)}
        ></number-choice>
        ${
          count === pieces
            ? nothing
            : html`<h3>${PANELS.setCount(count)}:</h3>
                <div class="two">${PANELS.countReasons.map((reason) => this.chip(reason, () => say(reason)))}</div>`
        }
      </section>
    `;
  }

  private tagOf(workpiece: Workpiece): TemplateResult | typeof nothing {
    const parts = tagParts(workpiece.tag);
    if (parts === null) return nothing;
    const number = this.number ?? parts.number;
    const toTag = `${parts.letters}${number}${parts.rest}`;
    return html`
      <section role="group" aria-label=${PANELS.tag}>
        <number-stepper
          label=${PANELS.tag}
          .value=${number}
          .least=${1}
          .most=${9999}
          @value-chosen=${(event: ValueChosenEvent) => (this.number = event.value)}
        ></number-stepper>
        ${number === parts.number ? nothing : this.doing(PANELS.setTag(toTag), true, () => this.say({ type: 'correctTag', workpieceId: workpiece.id, toTag }))}
      </section>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'put-right-panel': PutRightPanel;
  }
}
