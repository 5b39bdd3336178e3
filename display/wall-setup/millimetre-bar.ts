import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { place } from '../parts/place.ts';

/** What the bar must measure, in mm. */
export const BAR_MM = 100;

/** A bar of 100 mm with a tick every 10, as long as the settings make it. A ruler held to it says whether they are right. */
@customElement('millimetre-bar')
export class MillimetreBar extends LitElement {
  static override styles = css`
    *,
    *::before {
      box-sizing: border-box;
    }
    :host {
      display: block;
      overflow: hidden;
    }
    .bar {
      position: relative;
      height: 2.6em;
      border: solid var(--line-strong);
      border-width: 0 var(--hairline);
      background: linear-gradient(var(--line-strong), var(--line-strong)) 0 100% / 100% 0.5em no-repeat;
    }
    .tick {
      position: absolute;
      bottom: 0.5em;
      width: var(--hairline);
      height: 0.6em;
      margin-left: calc(var(--hairline) / -2);
      background: var(--line-strong);
    }
    .tick.half {
      height: 1.1em;
    }
  `;

  @property({ type: Number }) pxPerMm = 1;
  /** What it is, for a screen reader. */
  @property() words = '';

  protected override render(): TemplateResult {
    // Not rounded to tenths as lengths usually are: the error would grow with the screen.
    return html`<div class="bar" role="img" aria-label=${this.words} ${place({ width: `${BAR_MM * this.pxPerMm}px` })}>
      ${[10, 20, 30, 40, 50, 60, 70, 80, 90].map(
        (mm) => html`<div class="tick ${mm === 50 ? 'half' : ''}" ${place({ left: `${(mm / BAR_MM) * 100}%` })}></div>`,
      )}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'millimetre-bar': MillimetreBar;
  }
}
