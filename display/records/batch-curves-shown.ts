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
  const title = titleOf(curve);
  return html`<figure>
    <figcaption>${title}</figcaption>
    ${pictureOf(curve, title, names)}
  </figure>`;
}

function pictureOf(curve: BatchCurve, title: string, { zone, units }: NamesAnswer): TemplateResult {
  const { overMs } = curve;
  const over = BATCH_RECORD.over;
  const unit = units.temperature;
  if (curve.kind === 'cooling')
    return html`<cooling-chart .cooling=${curve.cooling} .nowMs=${overMs} .nowWord=${over} .zone=${zone} .unit=${unit}></cooling-chart>`;
  const read = curve.curve.readings.map(({ atMs, celsius }) => `${readText(celsius, units)} ${whenText(atMs, '', zone)}`);
  // In words it is what was read.
  const label = [title, ...read].join('; ');
  return curve.kind === 'core'
    ? html`<core-picture
        .curve=${curve.curve}
        .label=${label}
        .nowMs=${overMs}
        .nowWord=${over}
        .zone=${zone}
        .unit=${unit}
      ></core-picture>`
    : html`<ripeness-picture
        .curve=${curve.curve}
        .label=${label}
        .nowMs=${overMs}
        .nowWord=${over}
        .zone=${zone}
        .unit=${unit}
      ></ripeness-picture>`;
}

function titleOf(curve: BatchCurve): string {
  if (curve.kind === 'core') return BATCH_RECORD.core(curve.tag);
  if (curve.kind === 'cooling' || curve.verb === null) return BATCH_RECORD.cooling(curve.tag);
  return BATCH_RECORD.ripeness(curve.tag, VERBS[curve.verb].running);
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
