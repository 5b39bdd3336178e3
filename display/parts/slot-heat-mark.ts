import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { SlotHeat } from '../../shared/trade/slot-heat.ts';
import { slotHeatText, slotSureText } from './slot-heat-text.ts';

/** The scale goes from these factors, cool at the left, to hot at the right. */
const COOLEST = 1.4;
const HOTTEST = 0.7;
const WIDTH = 100;
const HEIGHT = 16;

/** How hot a slot is, on a scale from cool to hot with the reference in it and how far it is sure, and in words. */
@customElement('slot-heat-mark')
export class SlotHeatMark extends LitElement {
  static override styles = css`
    :host {
      display: block;
      font-size: var(--type-small);
      color: var(--ink);
      overflow-wrap: anywhere;
    }
    svg {
      display: block;
      width: 100%;
      max-width: 9em;
      height: 1em;
      overflow: visible;
    }
    svg * {
      vector-effect: non-scaling-stroke;
    }
    .scale {
      stroke: var(--ink-soft);
      stroke-width: 1;
    }
    .reference {
      stroke: var(--ink-soft);
      stroke-width: 2;
    }
    .sure {
      stroke: var(--ink);
      stroke-width: 5;
    }
    .heat {
      stroke: var(--ink);
      stroke-width: 3;
    }
    span {
      color: var(--ink-soft);
    }
  `;

  @property({ attribute: false }) heat: SlotHeat | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { heat } = this;
    if (heat === null) return nothing;
    const sure = slotSureText(heat);
    return html`${heat.between === null ? nothing : this.scale(heat, heat.between)}${slotHeatText(heat)}${sure === '' ? nothing : html`<span> · ${sure}</span>`}`;
  }

  private scale({ factor }: SlotHeat, { least, most }: NonNullable<SlotHeat['between']>): TemplateResult {
    const upright = (name: string, at: number, half: number): TemplateResult =>
      svg`<line class=${name} x1=${x(at)} x2=${x(at)} y1=${HEIGHT / 2 - half} y2=${HEIGHT / 2 + half}></line>`;
    const level = (name: string, from: number, to: number): TemplateResult =>
      svg`<line class=${name} x1=${x(from)} x2=${x(to)} y1=${HEIGHT / 2} y2=${HEIGHT / 2}></line>`;
    return html`<svg viewBox="0 0 ${WIDTH} ${HEIGHT}" preserveAspectRatio="none" aria-hidden="true">
      ${level('scale', COOLEST, HOTTEST)} ${upright('reference', 1, 4)} ${level('sure', most, least)} ${upright('heat', factor, HEIGHT / 2)}
    </svg>`;
  }
}

function x(factor: number): number {
  const share = Math.log(COOLEST / factor) / Math.log(COOLEST / HOTTEST);
  return Math.round(Math.min(1, Math.max(0, share)) * WIDTH * 10) / 10;
}

declare global {
  interface HTMLElementTagNameMap {
    'slot-heat-mark': SlotHeatMark;
  }
}
