import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { place, px } from '../parts/place.ts';
import { fittingText, textWidthPx } from '../parts/text-width.ts';
import type { DeckModel } from './deck-model.ts';
import type { TypeSizes } from './type-sizes.ts';

/** A deck left of NOW: name, temperature, when it is free. */
@customElement('wall-deck')
export class WallDeck extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      display: grid;
      grid-template-columns: auto auto minmax(0, 1fr) auto;
      column-gap: var(--gap);
      align-items: center;
      height: 100%;
      padding: 0 var(--gap);
      font-size: var(--second);
      font-weight: var(--weight-strong);
      line-height: 1;
      white-space: nowrap;
    }
    .temperature {
      font-size: var(--near);
      font-weight: var(--weight-text);
      color: var(--ink-soft);
    }
    .clash {
      justify-self: start;
      padding: 0.06em 0.3em;
      border: 4px dashed var(--lost);
      border-radius: var(--radius);
      font-size: var(--near);
      font-weight: var(--weight-word);
    }
    .state {
      grid-column: 4;
    }
    .state.free {
      font-weight: var(--weight-word);
    }
  `;

  @property({ attribute: false }) model: DeckModel | null = null;
  @property({ attribute: false }) sizes: TypeSizes | null = null;
  /** Width of the names' column in px. */
  @property({ type: Number }) namePx = 0;
  /** Width of the whole deck in px. */
  @property({ type: Number }) widthPx = 0;
  @property({ type: Number }) gapPx = 0;

  protected override render(): TemplateResult | typeof nothing {
    const { model, sizes } = this;
    if (model === null || sizes === null) return nothing;
    const sizePx =
      textWidthPx(model.name, sizes.secondPx) <= this.namePx + 1 ? sizes.secondPx : Math.max(sizes.nearPx, sizes.secondPx * 0.7);
    return html`<div ${place({ width: px(this.namePx), 'font-size': px(sizePx) })}>${fittingText(model.name, sizePx, this.namePx + 1)}</div>
      <div class="temperature">${model.temperature}</div>
      ${this.clash(model, sizes)}
      <div class="state ${model.isDue ? '' : 'free'}">${model.state}</div>`;
  }

  /** The clash, without its clock time where that does not fit, not at all where even the tags do not: the axis shows it still. */
  private clash(model: DeckModel, sizes: TypeSizes): TemplateResult | typeof nothing {
    if (model.clash === null) return nothing;
    const takenPx = this.namePx + textWidthPx(model.temperature, sizes.nearPx) + textWidthPx(model.state, sizes.secondPx);
    const roomPx = this.widthPx - takenPx - 5 * this.gapPx - sizes.nearPx * 0.6 - 8;
    const text = [model.clash, model.clash.split(' ').slice(0, -1).join(' ')].find(
      (candidate) => textWidthPx(candidate, sizes.nearPx) <= roomPx,
    );
    return text === undefined ? nothing : html`<div class="clash">${text}</div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-deck': WallDeck;
  }
}
