import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { barWords, densityWords, SETUP } from '../words/wall-setup.ts';
import { DEFAULT_VIEWING, viewingSchema, type Viewing } from '../wall/settings.ts';
import { pxPerMm, type Screen } from '../wall/type-sizes.ts';
import './millimetre-bar.ts';
import { sectionStyles } from './section-styles.ts';
import { ViewingChangedEvent, type NumberGivenEvent } from './setup-events.ts';
import './setup-number.ts';
import { setupStyles } from './setup-styles.ts';

/** Fine enough for a bar that a ruler is held to: half a millimetre at 20 inches. */
const STEP_INCH = 0.1;

/** How large the screen is, and the bar that shows whether that is so. Says `viewing-changed`. */
@customElement('setup-screen')
export class SetupScreen extends LitElement {
  static override styles = [
    setupStyles,
    sectionStyles,
    css`
      .bar {
        padding-block: var(--space-3);
      }
    `,
  ];

  @property({ attribute: false }) viewing: Viewing = DEFAULT_VIEWING;
  @property({ attribute: false }) screen: Screen | null = null;
  /** Pixels of the screen to one of the page. */
  @property({ type: Number }) pixelRatio = 1;
  @property() language = 'en';

  protected override render(): TemplateResult | typeof nothing {
    const { screen, viewing } = this;
    if (screen === null) return nothing;
    const inch = this.number(viewing.inch, 1);
    const { inch: bounds } = viewingSchema.shape;
    return html`<section aria-labelledby="screen">
      <h2 id="screen">${SETUP.screen}</h2>
      <div class="beside">
        <div class="stack">
          <setup-number
            .label=${SETUP.diagonal}
            .unit=${SETUP.inch}
            .lessLabel=${SETUP.barLess}
            .moreLabel=${SETUP.barMore}
            .value=${viewing.inch}
            .least=${bounds.minValue ?? 0}
            .most=${bounds.maxValue ?? 0}
            .step=${STEP_INCH}
            .language=${this.language}
            @number-given=${(event: NumberGivenEvent) => this.dispatchEvent(new ViewingChangedEvent({ ...viewing, inch: event.value }))}
          ></setup-number>
          <p class="soft">${this.density(screen, inch)}</p>
        </div>
        <div class="stack">
          <p id="bar-lead">${SETUP.barLead}</p>
          <millimetre-bar class="bar" .pxPerMm=${pxPerMm(screen)} .words=${barWords(inch)}></millimetre-bar>
        </div>
      </div>
    </section>`;
  }

  /** In the screen's own pixels, as they stand on its box; the page's are `pixelRatio` of them. */
  private density(screen: Screen, inch: string): string {
    const { widthPx, heightPx } = screen.glass ?? screen;
    const [width, height] = [widthPx, heightPx].map((px) => Math.round(px * this.pixelRatio));
    return densityWords(inch, width ?? 0, height ?? 0, this.number(pxPerMm(screen) * this.pixelRatio, 2), this.number(this.pixelRatio, 2));
  }

  private number(value: number, digits: number): string {
    return value.toLocaleString(this.language, { maximumFractionDigits: digits, useGrouping: false });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'setup-screen': SetupScreen;
  }
}
