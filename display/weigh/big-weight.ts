import { html, type TemplateResult } from 'lit';
import type { House } from '../../shared/documents/house.ts';
import { weightFigures } from '../parts/weight-text.ts';
import { weightSpoken } from './spoken-weight.ts';

/** A weight to be read at arm's length: figures with small units, and whole words for whoever hears them. */
export function bigWeight(grams: number, units: House['units'], divisionG: number): TemplateResult {
  return html`<p class="huge">
    <span class="unseen">${weightSpoken(grams, units, divisionG)}</span>
    ${weightFigures(grams, units, divisionG).map(
      ({ figure, unit }) => html`<span aria-hidden="true">${figure}<small> ${unit}</small></span>`,
    )}
  </p>`;
}
