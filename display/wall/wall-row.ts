import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../parts/role-mark.ts';
import { place, px } from '../parts/place.ts';
import { fittingText, textWidthPx } from '../parts/text-width.ts';
import { unseenStyles } from '../parts/unseen-styles.ts';
import { mainLine } from './main-line.ts';
import { fittingTag, fittingTags, secondLine, type RowModel } from './row-model.ts';
import { notePx, whatPx, type LeftColumns } from './left-columns.ts';
import { widthSizes, type TypeSizes } from './type-sizes.ts';

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
      grid-template-rows: calc(var(--glance) * 0.78) auto 1fr;
      column-gap: var(--gap);
      align-items: baseline;
      height: 100%;
      padding: var(--row-top, 0px) var(--gap) 0 0;
      white-space: nowrap;
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
      inset: 1px 0;
      width: auto;
      border: var(--frame) solid var(--lost);
    }
    role-mark {
      grid-area: 1 / 2;
      align-self: center;
      font-size: var(--mark);
    }
    /* Tag, verb and countdown stand on one line, by their capitals. */
    .tag,
    .verb,
    .countdown {
      line-height: calc(var(--glance) * 0.78);
    }
    .tag {
      grid-area: 1 / 3;
      font-size: var(--glance);
      font-weight: var(--weight-strong);
    }
    .verb {
      grid-area: 1 / 4;
      min-width: 0;
      font-size: var(--verb);
      font-weight: var(--weight-word);
    }
    .verb.merged {
      grid-area: 1 / 3 / 2 / 5;
    }
    .verb.strong {
      font-weight: var(--weight-strong);
    }
    .tags {
      margin-left: 0.3em;
    }
    .countdown {
      grid-area: 1 / 5;
      font-size: var(--glance);
      font-weight: var(--weight-word);
      text-align: right;
    }
    .countdown.strong {
      font-weight: var(--weight-strong);
    }
    .note {
      grid-area: 2 / 4 / 3 / 6;
      margin-top: var(--note-gap, 0.1em);
      font-size: var(--near);
      line-height: 1;
      color: var(--ink-soft);
    }
    .note.merged {
      grid-column-start: 3;
    }
    .note.strong {
      color: var(--ink);
      font-weight: var(--weight-word);
    }
    .detail {
      grid-area: 3 / 3 / 4 / 6;
      align-self: start;
      margin-top: var(--note-gap, 0.1em);
      font-size: var(--near);
      line-height: 1.1;
      white-space: normal;
      color: var(--ink-soft);
    }
    .detail.high {
      grid-row: 2 / 4;
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
    const merged = isMerged ? 'merged' : '';
    const wide = widthSizes(sizes);
    const main = mainLine(model, columns, this.widthPx, sizes);
    const notes = secondLine(model, wide.nearPx, notePx(columns, this.widthPx, isMerged)).text;
    return html`${strong === '' ? nothing : html`<div class="edge ${model.role}"></div>`}
      <role-mark .level=${model.role} .progress=${model.progress} .heard=${model.isHeard}></role-mark>
      <span class="unseen">${model.roleWord}</span>
      ${isMerged ? nothing : this.tag(model, columns, sizes)}
      <div class="verb ${merged} ${strong}" ${place({ 'font-size': main.isVerbSmall ? px(sizes.secondPx) : null })}>
        ${isMerged ? this.mergedVerb(model, whatPx(columns, this.widthPx, true), wide) : main.verb}
      </div>
      <div class="countdown ${strong}" ${place({ 'font-size': main.isCountdownSmall ? px(sizes.secondPx) : null })}>${model.countdown}</div>
      ${notes === '' ? nothing : html`<div class="note ${merged} ${strong}">${notes}</div>`}
      ${this.detailLines > 0 && model.detail !== null ? this.detail(model.detail, wide, notePx(columns, this.widthPx, true), notes === '') : nothing}`;
  }

  private mergedVerb(model: RowModel, widthPx: number, sizes: TypeSizes): TemplateResult {
    const leftPx = widthPx - textWidthPx(model.verb, sizes.verbPx) - sizes.verbPx * 0.3;
    return html`${model.verb}<span class="tags">${fittingTags(model.shortTags, sizes.verbPx, leftPx)}</span>`;
  }

  private tag(model: RowModel, columns: LeftColumns, sizes: TypeSizes): TemplateResult {
    const { text, sizePx } = fittingTag(model.tags[0] ?? '', model.shortTags[0] ?? '', columns.tagPx + columns.gapPx / 2, sizes);
    return html`<div class="tag" ${place({ 'font-size': px(sizePx) })}>${text}</div>`;
  }

  private detail(text: string, sizes: TypeSizes, widthPx: number, isHigh: boolean): TemplateResult {
    // Where there is no note, its line is free too. A line that breaks at a word is a little shorter than the column.
    const lines = this.detailLines + (isHigh ? 1 : 0);
    const roomPx = lines === 1 ? widthPx : widthPx * (lines - 0.25);
    return html`<div class="detail ${isHigh ? 'high' : ''}">${fittingText(text, sizes.nearPx, roomPx)}</div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-row': WallRow;
  }
}
