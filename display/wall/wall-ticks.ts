import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { place, px } from '../parts/place.ts';
import type { GroupTicks } from './group-ticks.ts';

/** The doughs of a group right of NOW: ticks above, tags below. */
@customElement('wall-ticks')
export class WallTicks extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      position: relative;
      display: block;
      height: 100%;
      font-size: var(--near);
      white-space: nowrap;
      color: var(--ink-soft);
    }
    .tick {
      position: absolute;
      top: calc(50% - 0.74em);
      width: 5px;
      height: 0.42em;
      margin-left: -2px;
      background: var(--ink-soft);
    }
    .comb {
      position: absolute;
      top: calc(50% - 0.38em);
      height: var(--hairline);
      background: var(--ink-soft);
    }
    .label {
      position: absolute;
      top: calc(50% - 0.32em);
      background: var(--paper);
      box-shadow: 0 0 0 2px var(--paper);
      font-weight: var(--weight-word);
      line-height: 1;
    }
  `;

  @property({ attribute: false }) ticks: GroupTicks | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { ticks } = this;
    if (ticks === null) return nothing;
    return html`${ticks.labels.map((label) => html`<div class="label" ${place({ left: px(Math.round(label.leftPx)) })}>${label.text}</div>`)}
    ${ticks.combs.map(({ fromPx, toPx }) => html`<div class="comb" ${place({ left: px(Math.round(fromPx)), width: px(Math.round(toPx - fromPx)) })}></div>`)}
    ${ticks.ticksPx.map((tickPx) => html`<div class="tick" ${place({ left: px(Math.round(tickPx)) })}></div>`)}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-ticks': WallTicks;
  }
}
