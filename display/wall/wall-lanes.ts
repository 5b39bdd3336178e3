import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import { place, px } from '../parts/place.ts';
import type { BlockedBlock, DeckModel, LoadBlock } from './deck-model.ts';
import type { LoadText } from './load-texts.ts';

/** A deck right of NOW: one lane for each slot; solid is in, dashed is booked, vermilion clashes, hatched cannot be used. */
@customElement('wall-lanes')
export class WallLanes extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      display: flex;
      flex-direction: column;
      justify-content: center;
      height: 100%;
      font-size: var(--near);
      font-weight: var(--weight-word);
      line-height: 1;
      white-space: nowrap;
    }
    .lanes {
      position: relative;
    }
    .lane {
      height: var(--lane);
    }
    .lane + .lane {
      border-top: 1px solid var(--line);
    }
    .load,
    .blocked,
    .text {
      position: absolute;
    }
    .load {
      border-radius: var(--radius);
    }
    .in {
      background: var(--block);
    }
    .booked {
      background: var(--paper);
      border: 3px dashed var(--ink-soft);
    }
    .clash {
      border: 5px dashed var(--lost);
    }
    .blocked {
      background: repeating-linear-gradient(-45deg, var(--running) 0 6px, var(--paper) 6px 20px);
      border-right: 4px solid var(--block);
    }
    .text {
      display: flex;
      align-items: center;
    }
    .text span {
      background: var(--paper);
      box-shadow: 0 0 0 2px var(--paper);
    }
    .text.inside span {
      background: none;
      box-shadow: none;
    }
    .text.dark span {
      color: var(--paper);
    }
  `;

  @property({ attribute: false }) model: DeckModel | null = null;
  @property({ type: Number }) lanePx = 0;

  protected override render(): TemplateResult | typeof nothing {
    const { model } = this;
    if (model === null) return nothing;
    return html`<div class="lanes">
      ${Array.from({ length: model.lanes }, () => html`<div class="lane"></div>`)} ${model.blocked.map((block) => this.blocked(block))}
      ${repeat(
        model.blocks,
        ({ key, lane }) => `${lane} ${key}`,
        (block) => this.load(block),
      )}
      ${repeat(
        model.texts,
        ({ key, lane }) => `${lane} ${key}`,
        (text) => this.text(text),
      )}
      ${model.blocked.map((block) => this.why(block))}
    </div>`;
  }

  private load(block: LoadBlock): TemplateResult {
    const inset = 3;
    const placement = {
      left: px(Math.round(block.fromPx)),
      width: px(Math.round(block.toPx) - Math.round(block.fromPx)),
      top: px(block.lane * this.lanePx + inset),
      height: px(block.lanes * this.lanePx - 2 * inset),
    };
    return html`<div class="load ${block.look}" ${place(placement)}></div>`;
  }

  private blocked({ toPx, lane, lanes }: BlockedBlock): TemplateResult {
    const placement = { left: '0px', width: px(Math.round(toPx)), top: px(lane * this.lanePx + 1), height: px(lanes * this.lanePx - 2) };
    return html`<div class="blocked" ${place(placement)}></div>`;
  }

  private why({ text, textLane, textPx }: BlockedBlock): TemplateResult {
    const placement = { left: px(Math.round(textPx)), top: px(textLane * this.lanePx), height: px(this.lanePx) };
    return html`<div class="text" ${place(placement)}><span>${text}</span></div>`;
  }

  private text(text: LoadText): TemplateResult {
    const placement = { left: px(Math.round(text.leftPx)), top: px(text.lane * this.lanePx), height: px(text.lanes * this.lanePx) };
    return html`<div class="text ${text.where === 'inside' ? 'inside' : ''} ${text.isOnDark ? 'dark' : ''}" ${place(placement)}>
      <span>${text.text}</span>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-lanes': WallLanes;
  }
}
