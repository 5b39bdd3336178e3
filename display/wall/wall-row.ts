import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../parts/role-mark.ts';
import { place, px } from '../parts/place.ts';
import { fittingText, textWidthPx } from '../parts/text-width.ts';
import { unseenStyles } from '../parts/unseen-styles.ts';
import { fittingTag, fittingTags, secondLine, type RowModel } from './row-model.ts';
import { whatPx, type LeftColumns } from './left-columns.ts';
import type { TypeSizes } from './type-sizes.ts';

/** A line left of NOW: mark, tag, verb, countdown. Symbol, edge and word carry the role; no line floods with colour. */
@customElement('wall-row')
export class WallRow extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      position: relative;
      display: grid;
      grid-template-columns: var(--edge) var(--mark) var(--tag) minmax(0, 1fr) auto;
      column-gap: var(--gap);
      align-items: center;
      align-content: center;
      height: 100%;
      padding-right: var(--gap);
      white-space: nowrap;
      line-height: 1;
    }
    .edge {
      position: absolute;
      inset: 5px auto 5px 0;
      width: var(--edge);
    }
    .edge.call {
      background: var(--call);
    }
    .edge.late {
      background: var(--late);
      border: 3px solid var(--ink);
      border-left: 0;
    }
    .edge.lost {
      inset: 0;
      width: auto;
      border: var(--frame) solid var(--lost);
    }
    role-mark {
      grid-column: 2;
      font-size: var(--mark);
    }
    .tag {
      grid-column: 3;
      font-size: var(--glance);
      font-weight: var(--weight-strong);
    }
    .what {
      grid-column: 4;
      min-width: 0;
    }
    .merged {
      grid-column: 3 / 5;
    }
    .verb {
      font-size: var(--verb);
      font-weight: var(--weight-word);
      line-height: 0.94;
    }
    .strong .verb {
      font-weight: var(--weight-strong);
    }
    .tags {
      margin-left: 0.3em;
    }
    .note {
      font-size: var(--near);
      line-height: 1.04;
      color: var(--ink-soft);
    }
    .strong .note {
      color: var(--ink);
      font-weight: var(--weight-word);
    }
    .countdown {
      grid-column: 5;
      font-size: var(--glance);
      font-weight: var(--weight-word);
      text-align: right;
    }
    .countdown.strong {
      font-weight: var(--weight-strong);
    }
    .detail {
      grid-column: 3 / 6;
      margin-top: 0.1em;
      font-size: var(--near);
      line-height: 1.2;
      white-space: normal;
      color: var(--ink-soft);
    }
    ${unseenStyles}
  `;

  @property({ attribute: false }) model: RowModel | null = null;
  @property({ attribute: false }) columns: LeftColumns | null = null;
  @property({ attribute: false }) sizes: TypeSizes | null = null;
  /** Width of the whole line in px. */
  @property({ type: Number }) widthPx = 0;
  /** How many lines there are below for what to look for. */
  @property({ type: Number }) detailLines = 0;

  protected override render(): TemplateResult | typeof nothing {
    const { model, columns, sizes } = this;
    if (model === null || columns === null || sizes === null) return nothing;
    const strong = model.role === 'running' ? '' : 'strong';
    const isMerged = model.tags.length > 1;
    const roomPx = whatPx(columns, this.widthPx, isMerged);
    const verbPx = whatPx(columns, this.widthPx, false);
    const notes = secondLine(model, sizes.nearPx, roomPx).text;
    return html`${strong === '' ? nothing : html`<div class="edge ${model.role}"></div>`}
      <role-mark .level=${model.role} .progress=${model.progress} .heard=${model.isHeard}></role-mark>
      <span class="unseen">${model.roleWord}</span>
      ${isMerged ? nothing : this.tag(model, columns, sizes)}
      <div class="what ${isMerged ? 'merged' : ''} ${strong}">
        <div class="verb">${isMerged ? this.mergedVerb(model, roomPx, sizes) : fittingText(model.verb, sizes.verbPx, roomPx)}</div>
        ${notes === '' ? nothing : html`<div class="note">${notes}</div>`}
      </div>
      <div class="countdown ${strong}" ${this.countdownSize(model.countdown, columns, sizes)}>${model.countdown}</div>
      ${this.detailLines > 0 && model.detail !== null ? this.detail(model.detail, sizes, verbPx + columns.tagPx + columns.countdownPx + 2 * columns.gapPx) : nothing}`;
  }

  private mergedVerb(model: RowModel, widthPx: number, sizes: TypeSizes): TemplateResult {
    const leftPx = widthPx - textWidthPx(model.verb, sizes.verbPx) - sizes.verbPx * 0.3;
    return html`${model.verb}<span class="tags">${fittingTags(model.shortTags, sizes.verbPx, leftPx)}</span>`;
  }

  private tag(model: RowModel, columns: LeftColumns, sizes: TypeSizes): TemplateResult {
    const { text, sizePx } = fittingTag(model.tags[0] ?? '', model.shortTags[0] ?? '', columns.tagPx + columns.gapPx / 2, sizes);
    return html`<div class="tag" ${place({ 'font-size': px(sizePx) })}>${text}</div>`;
  }

  private countdownSize(text: string, columns: LeftColumns, sizes: TypeSizes): ReturnType<typeof place> {
    return place({ 'font-size': textWidthPx(text, sizes.glancePx) <= columns.countdownPx + 1 ? null : px(sizes.secondPx) });
  }

  private detail(text: string, sizes: TypeSizes, widthPx: number): TemplateResult {
    // A line that breaks at a word is a little shorter than the column.
    const roomPx = this.detailLines === 1 ? widthPx : widthPx * (this.detailLines - 0.25);
    return html`<div class="detail">${fittingText(text, sizes.nearPx, roomPx)}</div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-row': WallRow;
  }
}
