import { html, type TemplateResult } from 'lit';
import { place } from '../parts/place.ts';
import { fittingMarks, type AxisMark } from './plot-axis.ts';

/** The axis of time below a picture, styled by `plotStyles`. */
export function timeAxis(marks: readonly AxisMark[]): TemplateResult {
  return html`<div class="axis">
    ${fittingMarks(marks).map(
      ({ words, at, isStrong, edge }) =>
        html`<span class="${edge} ${isStrong ? 'strong' : ''}" ${place({ left: edge === '' ? `${at * 100}%` : null })}>${words}</span>`,
    )}
  </div>`;
}
