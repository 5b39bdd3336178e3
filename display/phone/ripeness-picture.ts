import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { clockText } from '../parts/clock-text.ts';
import { place } from '../parts/place.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { WARMTH } from '../words/warmth.ts';
import { baseStyles } from './phone-styles.ts';
import { timeAxis } from './plot-marks.ts';
import { plotStyles } from './plot-styles.ts';
import type { CurvePoint, RipenessCurve } from './ripeness-curve.ts';

/** Units of the drawing across and down; the card stretches it. */
const SIDE = 100;
/** A temperature scale shows at least so many kelvin, or a dough that hardly changes would look wild. */
const LEAST_SPAN_K = 6;

/**
 * How a rest ripens, as a picture: the dough's temperature with its readings, and its ripeness, on one even axis of time; what is
 * foreseen is dashed, now and the ripe point are marked. `label` says the same in words.
 */
@customElement('ripeness-picture')
export class RipenessPicture extends LitElement {
  static override styles = [
    baseStyles,
    plotStyles,
    css`
      .ripeness {
        stroke: var(--ink);
        stroke-width: 5;
      }
      .dough {
        stroke: var(--ink-soft);
        stroke-width: 2;
      }
      .ripe {
        stroke: var(--call);
        stroke-width: 4;
      }
      svg .may-be {
        fill: var(--line);
      }
      .legend {
        display: flex;
        flex-wrap: wrap;
        gap: 0 var(--space-4);
      }
      .legend i {
        display: inline-block;
        width: 22px;
        margin-inline-end: var(--space-2);
        vertical-align: middle;
        border-top: 2px solid var(--ink-soft);
      }
      .legend .thick {
        border-top: 5px solid var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) curve: RipenessCurve | null = null;
  /** What the picture shows, in words. */
  @property() label = '';
  @property({ attribute: false }) nowMs = 0;
  /** What its instant is called: a record has no now. */
  @property() nowWord: string = WARMTH.now;
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) unit: 'C' | 'F' = 'C';

  protected override render(): TemplateResult | typeof nothing {
    const { curve } = this;
    if (curve === null) return nothing;
    const scale = temperatureScale(curve);
    const x = (atMs: number): number => (atMs - curve.fromMs) / (curve.toMs - curve.fromMs);
    const y = (celsius: number): number => (scale.mostC - celsius) / (scale.mostC - scale.leastC);
    return html`<div role="img" aria-label=${this.label}>
      <div class="plot">
        <span class="scale" ${place({ top: '0%' })}>${temperatureText(scale.mostC, this.unit)}</span>
        <span class="scale" ${place({ top: '100%' })}>${temperatureText(scale.leastC, this.unit)}</span><span class="share">100 %</span>
        ${this.lines(curve, x, y)}
        ${curve.readings.map(
          ({ atMs, celsius }) => html`<span class="dot" ${place({ left: `${x(atMs) * SIDE}%`, top: `${y(celsius) * SIDE}%` })}></span>`,
        )}
      </div>
      ${this.axis(curve, x)}
      <div class="legend">
        <span><i class="thick"></i>${WARMTH.ripeness}</span><span><i></i>${WARMTH.dough}</span>
      </div>
    </div>`;
  }

  private lines(curve: RipenessCurve, x: (atMs: number) => number, y: (celsius: number) => number): TemplateResult {
    const { points, between, ripeMs } = curve;
    const gone = points.filter(({ atMs }) => atMs <= this.nowMs);
    const foreseen = [...gone.slice(-1), ...points.filter(({ atMs }) => atMs > this.nowMs)];
    const line = (some: readonly CurvePoint[], height: (point: CurvePoint) => number): string =>
      some.map((point) => `${round(x(point.atMs) * SIDE)},${round(height(point) * SIDE)}`).join(' ');
    const ripeness = ({ ripePct }: CurvePoint): number => 1 - Math.min(100, ripePct) / 100;
    const dough = ({ doughC }: CurvePoint): number => y(doughC);
    const upright = (name: string, atMs: number): TemplateResult =>
      svg`<line class=${name} x1=${x(atMs) * SIDE} x2=${x(atMs) * SIDE} y1="0" y2=${SIDE}></line>`;
    return html`<svg viewBox="0 0 ${SIDE} ${SIDE}" preserveAspectRatio="none" aria-hidden="true">
      ${
        between === null
          ? nothing
          : svg`<rect class="may-be" x=${x(between.fromMs) * SIDE} width=${(Math.min(1, x(between.toMs)) - x(between.fromMs)) * SIDE} y="0" height=${SIDE}></rect>`
      }
      ${svg`<polyline class="dough" points=${line(gone, dough)}></polyline>
      <polyline class="dough foreseen" points=${line(foreseen, dough)}></polyline>
      <polyline class="ripeness" points=${line(gone, ripeness)}></polyline>
      <polyline class="ripeness foreseen" points=${line(foreseen, ripeness)}></polyline>`}
      ${upright('now', this.nowMs)} ${ripeMs > curve.toMs ? nothing : upright('ripe', ripeMs)}
    </svg>`;
  }

  /** When it is ripe, now, and when it began. */
  private axis({ fromMs, ripeMs }: RipenessCurve, x: (atMs: number) => number): TemplateResult {
    return timeAxis([
      { words: WARMTH.ripe(clockText(ripeMs, this.zone)), at: x(ripeMs), isStrong: true },
      { words: this.nowWord, at: x(this.nowMs), isStrong: false },
      { words: clockText(fromMs, this.zone), at: x(fromMs), isStrong: false },
    ]);
  }
}

/** From a little below the coolest to a little above the warmest, in whole degrees. */
function temperatureScale({ points, readings }: RipenessCurve): { readonly leastC: number; readonly mostC: number } {
  const all = [...points.map(({ doughC }) => doughC), ...readings.map(({ celsius }) => celsius)];
  const [coolestC, warmestC] = [Math.min(...all), Math.max(...all)];
  const spareK = Math.max(1, (LEAST_SPAN_K - (warmestC - coolestC)) / 2);
  return { leastC: Math.floor(coolestC - spareK), mostC: Math.ceil(warmestC + spareK) };
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

declare global {
  interface HTMLElementTagNameMap {
    'ripeness-picture': RipenessPicture;
  }
}
