import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { clockText } from '../parts/clock-text.ts';
import { place } from '../parts/place.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { WARMTH } from '../words/warmth.ts';
import type { CoreCurve } from './core-curve.ts';
import { baseStyles } from './phone-styles.ts';
import { timeAxis } from './plot-marks.ts';
import { plotStyles } from './plot-styles.ts';

/** Units of the drawing across and down; the card stretches it. */
const SIDE = 100;
const HEADROOM_K = 4;
/** A core is read from the dough's warmth on. */
const COLDEST_C = 20;

/**
 * How a core goes toward its target, as a picture: what was read, the line that it is on and when it may be there, the target and the
 * plateau above which no crumb goes. `label` says the same in words.
 */
@customElement('core-picture')
export class CorePicture extends LitElement {
  static override styles = [
    baseStyles,
    plotStyles,
    css`
      .core {
        stroke: var(--ink);
        stroke-width: 4;
      }
      .target {
        stroke: var(--call);
        stroke-width: 3;
      }
      .plateau {
        stroke: var(--ink-soft);
        stroke-width: 1;
        stroke-dasharray: 2 4;
      }
      svg .may-be {
        fill: var(--line);
      }
    `,
  ];

  @property({ attribute: false }) curve: CoreCurve | null = null;
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
    const mostC = Math.max(curve.plateauC, curve.targetC) + HEADROOM_K;
    const leastC = Math.min(COLDEST_C, ...curve.readings.map(({ celsius }) => celsius));
    const x = (atMs: number): number => round(((atMs - curve.fromMs) / (curve.toMs - curve.fromMs)) * SIDE);
    const y = (celsius: number): number => round(((mostC - celsius) / (mostC - leastC)) * SIDE);
    const scale = (celsius: number): TemplateResult =>
      html`<span class="scale" ${place({ top: `${y(celsius)}%` })}>${temperatureText(celsius, this.unit)}</span>`;
    return html`<div role="img" aria-label=${this.label}>
      <div class="plot">
        ${scale(curve.targetC)} ${scale(leastC)} ${this.lines(curve, x, y)}
        ${curve.readings.map(
          ({ atMs, celsius }) => html`<span class="dot" ${place({ left: `${x(atMs)}%`, top: `${y(celsius)}%` })}></span>`,
        )}
      </div>
      ${timeAxis([
        ...(curve.reachesMs === null
          ? []
          : [{ words: clockText(curve.reachesMs, this.zone), at: x(curve.reachesMs) / SIDE, isStrong: true }]),
        { words: this.nowWord, at: x(this.nowMs) / SIDE, isStrong: false },
        { words: clockText(curve.fromMs, this.zone), at: 0, isStrong: false },
      ])}
    </div>`;
  }

  private lines(curve: CoreCurve, x: (atMs: number) => number, y: (celsius: number) => number): TemplateResult {
    const line = (some: CoreCurve['points']): string => some.map(({ atMs, coreC }) => `${x(atMs)},${y(coreC)}`).join(' ');
    const gone = curve.points.filter(({ atMs }) => atMs <= this.nowMs);
    const foreseen = [...gone.slice(-1), ...curve.points.filter(({ atMs }) => atMs > this.nowMs)];
    const level = (name: string, celsius: number): TemplateResult =>
      svg`<line class=${name} x1="0" x2=${SIDE} y1=${y(celsius)} y2=${y(celsius)}></line>`;
    const { between } = curve;
    return html`<svg viewBox="0 0 ${SIDE} ${SIDE}" preserveAspectRatio="none" aria-hidden="true">
      ${
        between === null
          ? nothing
          : svg`<rect class="may-be" x=${x(between.fromMs)} width=${Math.max(0, Math.min(SIDE, x(between.toMs)) - x(between.fromMs))} y="0" height=${SIDE}></rect>`
      }
      ${level('plateau', curve.plateauC)} ${level('target', curve.targetC)}
      ${svg`<polyline class="core" points=${line(gone)}></polyline>
      <polyline class="core foreseen" points=${line(foreseen)}></polyline>
      <line class="now" x1=${x(this.nowMs)} x2=${x(this.nowMs)} y1="0" y2=${SIDE}></line>`}
    </svg>`;
  }
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

declare global {
  interface HTMLElementTagNameMap {
    'core-picture': CorePicture;
  }
}
