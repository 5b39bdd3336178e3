import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { place, px } from '../parts/place.ts';
import { fittingText, textWidthPx } from '../parts/text-width.ts';
import type { DeckModel } from './deck-model.ts';
import { widthSizes, type TypeSizes } from './type-sizes.ts';

/** What a deck says of itself, and how wide that is. */
interface StateText {
  readonly temperature: string;
  readonly temperaturePx: number;
  readonly text: string;
  readonly widthPx: number;
  readonly isSmall: boolean;
}

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
      padding: 0 var(--gap) 0 calc(var(--edge) + var(--gap));
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
      padding: 0.04em 0.3em;
      border: 3px dashed var(--lost);
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
    .state.small {
      font-size: var(--near);
    }
  `;

  @property({ attribute: false }) model: DeckModel | null = null;
  @property({ attribute: false }) sizes: TypeSizes | null = null;
  /** Width of the names' column in px. */
  @property({ type: Number }) namePx = 0;
  /** Width of the whole deck in px. */
  @property({ type: Number }) widthPx = 0;
  @property({ type: Number }) gapPx = 0;
  @property({ type: Number }) edgePx = 0;

  protected override render(): TemplateResult | typeof nothing {
    const { model, sizes } = this;
    if (model === null || sizes === null) return nothing;
    const wide = widthSizes(sizes);
    const state = this.stateText(model, wide);
    return html`<div class="name" ${place({ width: px(this.namePx) })}>${fittingText(model.name, wide.secondPx, this.namePx + 1)}</div>
      <div class="temperature">${state.temperature}</div>
      ${this.clash(model, state, sizes)}
      <div class="state ${model.isDue ? '' : 'free'} ${state.isSmall ? 'small' : ''}">${state.text}</div>`;
  }

  /** The first way that fits at the size that is read from afar. Why a deck cannot be used may be too long: then it is written smaller, and shortened. */
  private stateText(model: DeckModel, wide: TypeSizes): StateText {
    const ways = model.states.map(({ temperature, state }) => {
      const temperaturePx = textWidthPx(temperature, wide.nearPx);
      const roomPx = this.widthPx - this.edgePx - this.namePx - temperaturePx - 4 * this.gapPx;
      return { temperature, text: state, temperaturePx, roomPx, widthPx: textWidthPx(state, wide.secondPx) };
    });
    const fits = ways.find(({ widthPx, roomPx }) => widthPx <= roomPx);
    if (fits !== undefined) return { ...fits, isSmall: false };
    const last = ways.at(-1);
    if (last === undefined) throw new Error('a deck says at least one thing');
    const text = fittingText(last.text, wide.nearPx, last.roomPx);
    return { ...last, text, widthPx: textWidthPx(text, wide.nearPx), isSmall: true };
  }

  /** The clash, without its clock time where that does not fit, not at all where even the tags do not: the axis shows it still. */
  private clash(model: DeckModel, state: StateText, sizes: TypeSizes): TemplateResult | typeof nothing {
    if (model.clash === null) return nothing;
    const { nearPx } = widthSizes(sizes);
    const takenPx = this.edgePx + this.namePx + state.temperaturePx + state.widthPx;
    const roomPx = this.widthPx - takenPx - 5 * this.gapPx - sizes.nearPx * 0.6 - 8;
    const text = [model.clash, model.clash.split(' ').slice(0, -1).join(' ')].find((candidate) => textWidthPx(candidate, nearPx) <= roomPx);
    return text === undefined ? nothing : html`<div class="clash">${text}</div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-deck': WallDeck;
  }
}
