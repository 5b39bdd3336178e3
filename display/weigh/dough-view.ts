import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { House } from '../../shared/documents/house.ts';
import { clockText } from '../parts/clock-text.ts';
import '../parts/icon-mark.ts';
import { degreesIn, readingText } from '../phone/degrees.ts';
import { baseStyles } from '../phone/phone-styles.ts';
import { NUMBERS, numberWords } from '../words/numbers.ts';
import { WEIGH } from '../words/weigh.ts';
import type { DoughModel } from './dough-model.ts';
import { weighStyles } from './weigh-styles.ts';

/** The dough out of the mixer: how warm it should be, what the water lets expect, and what was read. */
@customElement('dough-view')
export class DoughView extends LitElement {
  static override styles = [baseStyles, weighStyles];

  @property({ attribute: false }) model: DoughModel | null = null;
  @property({ attribute: false }) unit: House['units']['temperature'] = 'C';
  @property({ attribute: false }) zone = 'UTC';

  protected override render(): TemplateResult | typeof nothing {
    const { model, unit } = this;
    if (model === null) return nothing;
    const { targetC, expectedC, last } = model;
    return html`
      <h2 tabindex="-1">${WEIGH.doughTitle(model.tag)}</h2>
      ${
        targetC === null
          ? nothing
          : html`<p class="huge">
              <span class="unseen">${NUMBERS.wanted('')}</span>${numberWords(degreesIn(unit, targetC))}<small> °${unit}</small>
            </p>`
      }
      ${expectedC === null ? nothing : html`<p class="note">${WEIGH.doughExpected(readingText(expectedC, unit))}</p>`}
      ${
        last === null
          ? nothing
          : html`<p class="note strong mark">
              <icon-mark name="done"></icon-mark
              ><span>${WEIGH.doughRead(readingText(last.celsius, unit), clockText(last.atMs, this.zone))}</span>
            </p>`
      }
      <p class="caution">${WEIGH.mixerCaution}</p>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'dough-view': DoughView;
  }
}
