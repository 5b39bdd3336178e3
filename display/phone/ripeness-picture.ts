import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { clockText } from '../parts/clock-text.ts';
import { place } from '../parts/place.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { WARMTH } from '../words/warmth.ts';
import { baseStyles } from './phone-styles.ts';
import type { CurvePoint, RipenessCurve } from './ripeness-curve.ts';

/** Units of the drawing across and down; the card stretches it. */
const SIDE = 100;
/** A temperature scale shows at least so many kelvin, or a dough that hardly changes would look wild. */
const LEAST_SPAN_K = 6;
/** Texts on the time axis nearer to one another than this share of it would touch. */
const LEAST_APART = 0.2;

/**
 * How a rest ripens, as a picture: the dough's temperature with its readings, and its ripeness, on one even axis of time; what is
 * foreseen is dashed, now and the ripe point are marked. `label` says the same in words.
 */
@customElement('ripeness-picture')
export class RipenessPicture extends LitElement {
  static override styles = [
    baseStyles,
    css`
      :host {
        display: block;
        font-size: var(--type-small);
        color: var(--ink-soft);
      }
      .plot {
        position: relative;
        height: var(--target-big);
        margin-block: calc(var(--space-5) + var(--space-1)) var(--space-1);
        border-block: 1px solid var(--line);
      }
      svg {
        display: block;
        width: 100%;
        height: 100%;
        overflow: visible;
      }
      svg * {
        fill: none;
        vector-effect: non-scaling-stroke;
      }
      .ripeness {
        stroke: var(--ink);
        stroke-width: 5;
      }
      .dough {
        stroke: var(--ink-soft);
        stroke-width: 2;
      }
      .foreseen {
        stroke-dasharray: 7 5;
      }
      .now {
        stroke: var(--ink);
        stroke-width: 2;
      }
      .ripe {
        stroke: var(--call);
        stroke-width: 4;
      }
      svg .may-be {
        fill: var(--line);
      }
      .dot,
      .mark {
        position: absolute;
        transform: translate(-50%, -50%);
      }
      .dot {
        width: 12px;
        height: 12px;
        border: 3px solid var(--ink-soft);
        border-radius: 50%;
        background: var(--paper);
      }
      .scale {
        position: absolute;
        inset-block-end: 100%;
      }
      .scale.end {
        inset-inline-end: 0;
        font-weight: var(--weight-word);
        color: var(--ink);
      }
      .scale.low {
        inset-block: auto 0;
      }
      .axis {
        position: relative;
        height: 1.3em;
      }
      .axis span {
        position: absolute;
        transform: translateX(-50%);
        white-space: nowrap;
      }
      .axis .first {
        inset-inline-start: 0;
        transform: none;
      }
      .axis .last {
        inset-inline: auto 0;
        transform: none;
      }
      .axis .strong {
        font-weight: var(--weight-word);
        color: var(--ink);
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
  @property({ attribute: false }) zone = 'UTC';
  @property({ attribute: false }) unit: 'C' | 'F' = 'C';

  protected override render(): TemplateResult | typeof nothing {
    const { curve } = this;
    if (curve === null) return nothing;
    const scale = temperatureScale(curve);
    const x = (atMs: number): number => Math.min(1, Math.max(0, (atMs - curve.fromMs) / (curve.toMs - curve.fromMs)));
    const y = (celsius: number): number => (scale.mostC - celsius) / (scale.mostC - scale.leastC);
    return html`<div role="img" aria-label=${this.label}>
      <div class="plot">
        <span class="scale">${temperatureText(scale.mostC, this.unit)}</span><span class="scale end">100 %</span>
        ${this.lines(curve, x, y)}
        <span class="scale low">${temperatureText(scale.leastC, this.unit)}</span>
        ${curve.readings.map(
          ({ atMs, celsius }) =>
            html`<span class="dot" ${place({ left: `${x(atMs) * SIDE}%`, top: `${y(celsius) * SIDE}%` })}></span>`,
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
          : svg`<rect class="may-be" x=${x(between.fromMs) * SIDE} width=${(x(between.toMs) - x(between.fromMs)) * SIDE} y="0" height=${SIDE}></rect>`
      }
      ${svg`<polyline class="dough" points=${line(gone, dough)}></polyline>
      <polyline class="dough foreseen" points=${line(foreseen, dough)}></polyline>
      <polyline class="ripeness" points=${line(gone, ripeness)}></polyline>
      <polyline class="ripeness foreseen" points=${line(foreseen, ripeness)}></polyline>`}
      ${upright('now', this.nowMs)} ${ripeMs > curve.toMs ? nothing : upright('ripe', ripeMs)}
    </svg>`;
  }

  /** When it began, now, and when it is ripe; what would touch something more telling is left out. */
  private axis(curve: RipenessCurve, x: (atMs: number) => number): TemplateResult {
    const { fromMs, ripeMs, toMs } = curve;
    const nowX = x(this.nowMs);
    const isRipeShown = ripeMs <= toMs;
    const isNowShown = !isRipeShown || Math.abs(x(ripeMs) - nowX) >= LEAST_APART * 1.5;
    const isFirstShown = (!isNowShown || nowX >= LEAST_APART) && (!isRipeShown || x(ripeMs) >= LEAST_APART);
    const text = (words: string, at: number, name: string): TemplateResult => {
      const edge = at < LEAST_APART / 2 ? 'first' : at > 1 - LEAST_APART / 2 ? 'last' : '';
      return html`<span class="${name} ${edge}" ${place({ left: edge === '' ? `${at * SIDE}%` : null })}>${words}</span>`;
    };
    return html`<div class="axis">
      ${isFirstShown ? text(clockText(fromMs, this.zone), 0, '') : nothing} ${isNowShown ? text(WARMTH.now, nowX, '') : nothing}
      ${isRipeShown ? text(WARMTH.ripe(clockText(ripeMs, this.zone)), x(ripeMs), 'strong') : nothing}
    </div>`;
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
