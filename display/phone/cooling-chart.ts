import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Cooling } from '../../shared/floor/cooling.ts';
import { clockText } from '../parts/clock-text.ts';
import { place } from '../parts/place.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { WARMTH } from '../words/warmth.ts';
import { coolingPicture, pictureText, SIDE, type CoolingPicture } from './cooling-picture.ts';
import { baseStyles } from './phone-styles.ts';
import { timeAxis } from './plot-marks.ts';
import { plotStyles } from './plot-styles.ts';

/** How food from the heat cools, against the corridor of its rule: readings, what is foreseen, where it must not be. */
@customElement('cooling-chart')
export class CoolingChart extends LitElement {
  static override styles = [
    baseStyles,
    plotStyles,
    css`
      .foreseen {
        stroke: var(--ink-soft);
        stroke-width: 2;
      }
      svg .forbidden {
        fill: var(--line);
        stroke: var(--ink);
        stroke-width: 2;
      }
    `,
  ];

  @property({ attribute: false }) cooling: Cooling | null = null;
  @property({ attribute: false }) nowMs = 0;
  /** What its instant is called: a record has no now. */
  @property() nowWord: string = WARMTH.now;
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) unit: 'C' | 'F' = 'C';

  protected override render(): TemplateResult | typeof nothing {
    const { cooling } = this;
    const picture = cooling === null ? null : coolingPicture(cooling, this.nowMs);
    if (cooling === null || picture === null) return nothing;
    const scale = (celsius: number, y: number): TemplateResult =>
      html`<span class="scale" ${place({ top: `${y}%` })}>${temperatureText(celsius, this.unit)}</span>`;
    return html`<div role="img" aria-label=${pictureText(cooling, this.zone, this.unit)}>
      <div class="plot">
        ${scale(picture.hottestC, 0)} ${picture.corridor.map(({ toC, y }) => scale(toC, y))} ${lines(picture)}
        ${picture.dots.map(({ x, y }) => html`<span class="dot" ${place({ left: `${x}%`, top: `${y}%` })}></span>`)}
      </div>
      ${timeAxis([
        ...picture.corridor.map(({ byMs, x }) => ({ words: clockText(byMs, this.zone), at: x / SIDE, isStrong: true })),
        { words: this.nowWord, at: picture.nowX / SIDE, isStrong: false },
      ])}
    </div>`;
  }
}

function lines({ corridor, foreseen, nowX }: CoolingPicture): TemplateResult {
  return html`<svg viewBox="0 0 ${SIDE} ${SIDE}" preserveAspectRatio="none" aria-hidden="true">
    ${corridor.map(({ x, y }) => svg`<path class="forbidden" d=${`M${x} 0V${y}H${SIDE}V0Z`}></path>`)}
    ${svg`<polyline class="foreseen" points=${foreseen}></polyline>
    <line class="now" x1=${nowX} x2=${nowX} y1="0" y2=${SIDE}></line>`}
  </svg>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'cooling-chart': CoolingChart;
  }
}
