import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { place, px } from '../parts/place.ts';
import '../parts/role-mark.ts';
import { STAGES } from '../words/stages.ts';
import { VERBS } from '../words/verbs.ts';
import { sampleWords, SETUP, sizeWords } from '../words/wall-setup.ts';
import { LEAST_ARCMIN, NEAR_M, pxPerMm, typeSizes, CAPITAL_RATIO, type Screen } from '../wall/type-sizes.ts';

/** Rows as the wall writes them, in the sizes that the settings come to: what is read afar, what is read from nearer by. */
@customElement('sample-rows')
export class SampleRows extends LitElement {
  static override styles = css`
    *,
    *::before,
    *::after {
      box-sizing: border-box;
    }
    :host {
      display: grid;
      gap: var(--space-4);
    }
    .row {
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      gap: 0 0.35em;
      line-height: 1.1;
      overflow-wrap: anywhere;
    }
    role-mark {
      font-size: 0.7em;
      align-self: center;
    }
    .tag,
    .countdown {
      font-weight: var(--weight-strong);
    }
    .verb {
      font-weight: var(--weight-word);
    }
    .soft {
      color: var(--ink-soft);
    }
    .size {
      margin: 0 0 var(--space-1);
      color: var(--ink-soft);
    }
  `;

  @property({ attribute: false }) screen: Screen | null = null;
  /** The page's language, whose decimal sign is written. */
  @property() language = 'en';

  protected override render(): TemplateResult {
    const { screen } = this;
    if (screen === null) return html``;
    const { glancePx, verbPx, secondPx, nearPx } = typeSizes(screen, 0, 0.82);
    const nearM = Math.min(NEAR_M, screen.distanceM);
    return html`<div>
        ${this.size(screen, glancePx, screen.distanceM, screen.arcmin)}
        <div class="row" ${place({ 'font-size': px(glancePx) })}>
          <role-mark level="call"></role-mark><span class="tag">C2</span>
          <span class="verb" ${place({ 'font-size': px(verbPx) })}>${VERBS.fold.call}</span>
          <span class="countdown">0:00</span>
        </div>
        <div class="row" ${place({ 'font-size': px(glancePx) })}>
          <role-mark level="running" progress="0.3"></role-mark><span class="tag">R1</span>
          <span ${place({ 'font-size': px(verbPx) })}>${VERBS.prove.running}</span>
          <span class="countdown">24 min</span>
        </div>
      </div>
      <div>
        ${this.size(screen, secondPx, screen.distanceM, LEAST_ARCMIN)}
        <div class="row soft" ${place({ 'font-size': px(secondPx) })}>3 ${STAGES.cold} 09:40</div>
      </div>
      <div>
        ${this.size(screen, nearPx, nearM, LEAST_ARCMIN)}
        <div class="row soft" ${place({ 'font-size': px(nearPx) })}>${SETUP.sampleNear}</div>
      </div>`;
  }

  private size(screen: Screen, sizePx: number, metres: number, arcmin: number): TemplateResult {
    const capitalPx = sizePx * CAPITAL_RATIO;
    const millimetres = this.number(capitalPx / pxPerMm(screen));
    return html`<p class="size">
      ${sampleWords(this.number(metres), this.number(arcmin))} · ${sizeWords(millimetres, Math.round(capitalPx))}
    </p>`;
  }

  private number(value: number): string {
    return value.toLocaleString(this.language, { maximumFractionDigits: 1 });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sample-rows': SampleRows;
  }
}
