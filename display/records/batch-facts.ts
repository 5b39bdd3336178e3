import { html, nothing, type TemplateResult } from 'lit';
import { allergenSchema, type Allergen } from '../../shared/documents/allergen.ts';
import type { BatchAnswer, NamesAnswer } from '../../shared/records/answers.ts';
import type { BatchRecord } from '../../shared/records/batch-record.ts';
import { euText } from '../parts/allergen-text.ts';
import { weightText } from '../parts/weight-text.ts';
import { BATCH_RECORD } from '../words/batch-record.ts';
import { offText, whenText } from './record-texts.ts';

/** A batch in short: when, how much, how many, what is in it. */
export function factsSection({ pieces }: BatchAnswer, { root, steps, yielded }: BatchRecord, names: NamesAnswer): TemplateResult {
  const endedMs = Math.max(...pieces.map((piece) => piece.endedMs ?? 0));
  const isOver = pieces.every((piece) => piece.endedMs !== null);
  const plannedEndMs = Math.max(0, ...steps.map((step) => step.plannedEndMs ?? 0));
  const when = (atMs: number | null): string => whenText(atMs, root.serviceDate, names.zone);
  const { plannedPieces, finishedPieces, discardedPieces, openPieces, finishedG } = yielded;
  const fact = (name: string, value: unknown): TemplateResult =>
    html`<div>
      <dt>${name}</dt>
      <dd>${value}</dd>
    </div>`;
  return html`<section aria-labelledby="facts">
    <h2 id="facts" class="unseen">${BATCH_RECORD.facts}</h2>
    <dl>
      ${fact(BATCH_RECORD.start, html`${when(root.startedMs)} <span class="soft">${offText(root.startedMs, root.plannedStartMs)}</span>`)}
      ${isOver ? fact(BATCH_RECORD.end, html`${when(endedMs)} <span class="soft">${plannedEndMs === 0 ? '' : offText(endedMs, plannedEndMs)}</span>`) : nothing}
      ${fact(BATCH_RECORD.weight, weightText(yielded.scaledToG, names.units))}
      ${
        plannedPieces === null && finishedPieces === 0
          ? nothing
          : fact(
              BATCH_RECORD.finished,
              plannedPieces === null
                ? finishedPieces
                : html`${BATCH_RECORD.ofPlanned(finishedPieces, plannedPieces)}
                  ${finishedG === 0 ? nothing : html`<span class="soft">${weightText(finishedG, names.units)}</span>`}`,
            )
      }
      ${discardedPieces === 0 ? nothing : fact(BATCH_RECORD.discarded, discardedPieces)}
      ${openPieces === 0 ? nothing : fact(BATCH_RECORD.stillHere, openPieces)}
    </dl>
    <dl>${fact(BATCH_RECORD.allergens, euText(allergensOf(pieces)))}</dl>
    <p class="soft">${BATCH_RECORD.allergensBy}</p>
  </section>`;
}

/** Of every part of the batch: what came into one load alone is of the batch too. */
function allergensOf(pieces: BatchAnswer['pieces']): readonly Allergen[] {
  const all = new Set(pieces.flatMap(({ allergens }) => allergens));
  return [...all].sort().flatMap((allergen) => allergenSchema.safeParse(allergen).data ?? []);
}
