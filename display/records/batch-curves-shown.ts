import { html, nothing, type TemplateResult } from 'lit';
import type { NamesAnswer } from '../../shared/records/answers.ts';
import type { BatchRecord } from '../../shared/records/batch-record.ts';
import '../phone/cooling-chart.ts';
import '../phone/core-picture.ts';
import '../phone/ripeness-picture.ts';
import { BATCH_RECORD } from '../words/batch-record.ts';
import { minutesWords } from '../words/clock.ts';
import { HOLDING, RULE_SET_NAMES } from '../words/holding.ts';
import { VERBS } from '../words/verbs.ts';
import type { BatchCurve, BatchCurves } from './batch-curves.ts';
import { readText, whenText } from './record-texts.ts';

/** How it ripened, baked and cooled, each as it stood when it was over. */
export function curvesSection({ curves }: BatchCurves, names: NamesAnswer): TemplateResult {
  return html`<section aria-labelledby="curves">
    <h2 id="curves">${BATCH_RECORD.curves}</h2>
    ${
      curves.length === 0
        ? html`<p class="soft">${BATCH_RECORD.noCurves}</p>`
        : html`<div class="figures">${curves.map((curve) => figureOf(curve, names))}</div>`
    }
  </section>`;
}

function figureOf(curve: BatchCurve, names: NamesAnswer): TemplateResult {
  const unit = names.units.temperature;
  const title = titleOf(curve);
  switch (curve.kind) {
    case 'ripeness':
      return html`<figure>
        <figcaption>${title}</figcaption>
        <ripeness-picture
          .curve=${curve.curve}
          .label=${labelOf(title, curve.curve.readings, names)}
          .nowMs=${curve.overMs}
          .nowWord=${BATCH_RECORD.over}
          .zone=${names.zone}
          .unit=${unit}
        ></ripeness-picture>
      </figure>`;
    case 'core':
      return html`<figure>
        <figcaption>${title}</figcaption>
        <core-picture
          .curve=${curve.curve}
          .label=${labelOf(title, curve.curve.readings, names)}
          .nowMs=${curve.overMs}
          .nowWord=${BATCH_RECORD.over}
          .zone=${names.zone}
          .unit=${unit}
        ></core-picture>
      </figure>`;
    case 'cooling':
      return html`<figure>
        <figcaption>${title}</figcaption>
        <cooling-chart
          .cooling=${curve.cooling}
          .nowMs=${curve.overMs}
          .nowWord=${BATCH_RECORD.over}
          .zone=${names.zone}
          .unit=${unit}
        ></cooling-chart>
      </figure>`;
  }
}

function titleOf(curve: BatchCurve): string {
  if (curve.kind === 'core') return BATCH_RECORD.core(curve.tag);
  if (curve.kind === 'cooling' || curve.verb === null) return BATCH_RECORD.cooling(curve.tag);
  return BATCH_RECORD.ripeness(curve.tag, VERBS[curve.verb].running);
}

/** The picture in words: what was read. */
function labelOf(title: string, readings: readonly { readonly atMs: number; readonly celsius: number }[], names: NamesAnswer): string {
  const read = readings.map(({ atMs, celsius }) => `${readText(celsius, names.units)} ${whenText(atMs, '', names.zone)}`);
  return [title, ...read].join('; ');
}

/** How food that has to be kept was kept, until it was used or over. */
export function keptSection({ root }: BatchRecord, { kept }: BatchCurves, names: NamesAnswer): TemplateResult | typeof nothing {
  if (kept.length === 0) return nothing;
  return html`<section aria-labelledby="kept">
    <h2 id="kept">${BATCH_RECORD.keptTitle}</h2>
    <ul>
      ${kept.map(
        ({ tag, overMs, ruleSet, mark, limitMs }) =>
          html`<li>
            ${whenText(overMs, root.serviceDate, names.zone)}
            ${BATCH_RECORD.keptLine(tag, minutesWords(Math.round(mark.outMin)), `${RULE_SET_NAMES[ruleSet]}, ${mark.clause}`)}${
              limitMs === null ? nothing : html`; ${BATCH_RECORD.keptLimit(whenText(limitMs, root.serviceDate, names.zone))}`
            }
          </li>`,
      )}
    </ul>
    <p class="soft">${HOLDING.advice}</p>
  </section>`;
}
