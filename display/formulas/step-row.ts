import { html, nothing, type TemplateResult } from 'lit';
import type { Step } from '../../shared/documents/method.ts';
import { place } from '../parts/place.ts';
import { KIND_MARKS, METHOD } from '../words/method.ts';
import { VERBS } from '../words/verbs.ts';
import type { EditorContext } from './editor-context.ts';
import { lengthText } from './length-text.ts';
import { additionName, namesOf } from './step-names.ts';
import type { WayStretch } from './way-lengths.ts';

/** One step as the list reads it: what, how long and how it ends, where, what goes in; and its length to scale. */
export interface StepRow {
  readonly step: Step;
  readonly number: number;
  readonly isOpen: boolean;
  readonly isFaulty: boolean;
  readonly stretch: WayStretch;
  readonly context: EditorContext;
}

/** The button that opens a step. */
export function stepRow({ step, number, isOpen, isFaulty, stretch, context }: StepRow, click: () => void): TemplateResult {
  return html`<button type="button" class="row" data-step=${step.id} aria-expanded=${isOpen} @click=${click}>
    <span class="number">${number}</span>
    <span class="what">
      <span class="verb"
        >${VERBS[step.verb].running}${isFaulty ? html` <span class="wrong"><span aria-hidden="true">!</span><span class="unseen">${METHOD.faulty}</span></span>` : nothing}</span
      >
      <span class="more">${moreOf(step, context)}</span>
    </span>
    <span class="long">
      <span class="minutes">${lengthText(step.minutes.target)}</span>
      <span class="range">${rangeOf(step)}</span>
    </span>
    <span class="track" aria-hidden="true"
      ><span class="bar ${step.kind}" ${place({ 'inset-inline-start': percent(stretch.fromShare), width: percent(stretch.share) })}></span
    ></span>
  </button>`;
}

function moreOf(step: Step, context: EditorContext): string {
  const { kitchen } = context;
  const station = step.station === undefined ? undefined : (namesOf(kitchen.stations)[step.station] ?? step.station);
  const where = step.place === undefined ? undefined : (namesOf(kitchen.restPlaces)[step.place] ?? step.place);
  const added = step.additions.map((addition) => `+ ${additionName(addition, context)}`);
  // Somebody at a place who stands where the dough does is said once.
  const places = [...new Set([station, where])];
  return [KIND_MARKS[step.kind], ...places, ...added].filter((text) => text !== undefined).join(' · ');
}

function rangeOf({ minutes: { earliest, latest }, minutesPerPiece }: Step): string {
  if (minutesPerPiece !== undefined) return METHOD.perPieceShort(Number.isFinite(minutesPerPiece) ? String(minutesPerPiece) : '–');
  if (earliest === undefined && latest === undefined) return '';
  if (latest === undefined) return METHOD.fromLength(lengthText(earliest ?? 0));
  return earliest === undefined ? METHOD.toLength(lengthText(latest)) : `${lengthText(earliest)} – ${lengthText(latest)}`;
}

function percent(share: number): string {
  return `${(share * 100).toFixed(3)}%`;
}
