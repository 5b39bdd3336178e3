import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { place, px } from '../parts/place.ts';
import { unseenStyles } from '../parts/unseen-styles.ts';
import { AXIS_LABEL } from '../words/clock.ts';
import { axisMarks } from './axis.ts';

/** The marks of the shared time axis, behind everything right of NOW. */
@customElement('wall-axis')
export class WallAxis extends LitElement {
  static override styles = css`
    :host,
    * {
      box-sizing: border-box;
    }
    :host {
      display: block;
      font-size: var(--near);
      color: var(--ink-soft);
      white-space: nowrap;
      pointer-events: none;
    }
    .line {
      position: absolute;
      top: calc(var(--header) - 0.2em);
      bottom: 0;
      width: var(--hairline);
      margin-left: -1px;
      background: var(--line);
    }
    .text {
      position: absolute;
      top: 0;
      height: calc(var(--header) - 0.2em);
      display: flex;
      align-items: flex-end;
      padding-bottom: 0.1em;
      line-height: 1.1;
      transform: translateX(-50%);
    }
    ${unseenStyles}
  `;

  @property({ type: Number }) widthPx = 0;
  /** Size of the marks' texts. */
  @property({ type: Number }) sizePx = 0;

  protected override render(): TemplateResult {
    return html`<span class="unseen">${AXIS_LABEL}</span> ${axisMarks(this.widthPx, this.sizePx).map(({ xPx, text }) => {
        const left = px(Math.round(xPx));
        return html`<div class="line" ${place({ left })}></div>
          ${text === null ? nothing : html`<div class="text" ${place({ left })}>${text}</div>`}`;
      })}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wall-axis': WallAxis;
  }
}
