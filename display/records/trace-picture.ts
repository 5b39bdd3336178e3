import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { NamesAnswer } from '../../shared/records/answers.ts';
import type { TraceAnswer } from '../../shared/records/trace-answer.ts';
import { TRACE } from '../words/trace.ts';
import { nameIn, NO_NAMES } from './records-tools.ts';
import { COLUMNS, traceLayers, type Box, type Line } from './trace-layers.ts';

/** Heights of the picture in rem, as the style sheet has them: a box, the gap below it, the heading of its column. */
const [BOX, GAP, HEAD] = [4.5, 0.75, 2.5];
/** Width of the drawing in its own units: each column has a box and the gap after it. */
const COLUMN = 100;
const BOX_WIDTH = 78;

/**
 * The way of lots through the house, from left to right: lots, pots and preps, doughs, cuts and loads, products. The lines are drawn, the
 * words stand over them. What it shows stands in the lists as well, so that nobody has to read it from here.
 */
@customElement('trace-picture')
export class TracePicture extends LitElement {
  static override styles = css`
    *,
    *::before,
    *::after {
      box-sizing: border-box;
    }
    :host {
      display: block;
      overflow-x: auto;
    }
    .drawing {
      position: relative;
      min-width: 60rem;
    }
    svg {
      position: absolute;
      inset: 0;
      width: 100%;
      height: 100%;
    }
    path {
      fill: none;
      stroke: var(--running);
      stroke-width: 2px;
      vector-effect: non-scaling-stroke;
    }
    path.back {
      stroke-dasharray: 6 4;
    }
    .columns {
      position: relative;
      display: grid;
      grid-template-columns: repeat(5, 1fr);
    }
    .head {
      height: 2.5rem;
      margin: 0;
      font-size: var(--type-small);
      font-weight: var(--weight-word);
      line-height: 1.2;
      color: var(--ink-soft);
    }
    .box {
      display: grid;
      align-content: center;
      width: 78%;
      height: 4.5rem;
      margin-bottom: 0.75rem;
      padding: 2px var(--space-2);
      overflow: hidden;
      border: var(--hairline) solid var(--ink);
      border-radius: var(--radius);
      background: var(--field);
      font-size: var(--type-small);
      line-height: 1.2;
    }
    .box span {
      overflow: hidden;
      text-overflow: ellipsis;
      white-space: nowrap;
    }
    .box .called {
      font-size: var(--type-text);
      font-weight: var(--weight-strong);
    }
    .box .dates {
      white-space: normal;
    }
    .box.carried {
      border-style: dashed;
    }
    .others {
      height: 5.25rem;
      margin: 0;
      font-size: var(--type-small);
      color: var(--ink-soft);
    }
  `;

  @property({ attribute: false }) answer: TraceAnswer | null = null;
  @property({ attribute: false }) names: NamesAnswer = NO_NAMES;

  protected override render(): TemplateResult | typeof nothing {
    if (this.answer === null) return nothing;
    const { columns, others, lines } = traceLayers(this.answer);
    const rows = Math.max(1, ...columns.map((boxes, index) => boxes.length + ((others[index] ?? 0) > 0 ? 1 : 0)));
    const height = HEAD + rows * (BOX + GAP);
    return html`<div class="drawing">
      <svg viewBox="0 0 ${COLUMN * COLUMNS} ${height}" preserveAspectRatio="none" aria-hidden="true">
        ${lines.map((line) => svg`<path class=${line.from[0] < line.to[0] ? '' : 'back'} d=${wayOf(line)} />`)}
      </svg>
      <div class="columns">
        ${columns.map(
          (boxes, index) =>
            html`<div>
              <p class="head">${TRACE.columns[index]}</p>
              ${boxes.map((box) => this.box(box))}
              ${(others[index] ?? 0) > 0 ? html`<p class="others">${TRACE.others(others[index] ?? 0)}</p>` : nothing}
            </div>`,
        )}
      </div>
    </div>`;
  }

  private box({ subject, of, count, firstDate, lastDate, feeds }: Box): TemplateResult {
    const name = (thing: { readonly kind: 'formula' | 'product' | 'ingredient'; readonly id: string }): string =>
      nameIn(this.names, LISTS[thing.kind], thing.id);
    const called = 'text' in subject ? subject.text : name(subject);
    return html`<div class=${feeds > 0 ? 'box carried' : 'box'}>
      <span class="called">${count > 1 ? TRACE.several(count, called) : called}</span>
      ${of === null ? nothing : html`<span>${name(of)}</span>`}
      <span class="dates">${firstDate === lastDate ? firstDate : TRACE.between(firstDate, lastDate)}</span>
      ${feeds > 0 && of === null ? html`<span>${TRACE.feeds}: ${feeds}</span>` : nothing}
    </div>`;
  }
}

const LISTS = { formula: 'formulas', product: 'products', ingredient: 'ingredients' } as const;

/** From the right edge of a box to the left edge of another, or round to one that stands further left. */
function wayOf({ from, to }: Line): string {
  const y = (row: number): number => HEAD + row * (BOX + GAP) + BOX / 2;
  const [fromX, fromY] = [from[0] * COLUMN + BOX_WIDTH, y(from[1])];
  const [toX, toY] = [to[0] * COLUMN, y(to[1])];
  const bend = Math.max(18, Math.abs(toX - fromX) / 2);
  return `M${fromX} ${fromY}C${fromX + bend} ${fromY} ${toX - bend} ${toY} ${toX} ${toY}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'trace-picture': TracePicture;
  }
}
