import { html, type nothing, type TemplateResult } from 'lit';
import { verbSchema, type Verb } from '../../shared/documents/method.ts';
import type { BatchAnswer, NamesAnswer } from '../../shared/records/answers.ts';
import type { BatchRecord, StepLine } from '../../shared/records/batch-record.ts';
import { weightText } from '../parts/weight-text.ts';
import { BATCH_RECORD } from '../words/batch-record.ts';
import { LOSSES } from '../words/floor.ts';
import { CORRECTED, nthWords } from '../words/panels.ts';
import { VERBS } from '../words/verbs.ts';
import { tableSection } from './record-table.ts';
import { lastedText, offText, whenText } from './record-texts.ts';
import { deviceName, nameIn, placeName } from './records-tools.ts';

type Section = TemplateResult | typeof nothing;

/** A verb as words; a step that no way has any more is told by its id. */
export function verbText(verb: string, nth: number | null, step: string): string {
  const known: Verb | undefined = verbSchema.safeParse(verb).data;
  return known === undefined ? step : nthWords(VERBS[known].running, nth);
}

/** Every step that was begun: planned against actual, who and where, and what was looked for. */
export function stepsSection({ root, steps }: BatchRecord, names: NamesAnswer): Section {
  const when = (atMs: number | null): string => whenText(atMs, root.serviceDate, names.zone);
  const notes = (step: StepLine): string =>
    [
      ...(step.status === 'skipped' ? [`${BATCH_RECORD.skipped}${step.reason === null ? '' : `: ${step.reason}`}`] : []),
      ...(step.status === 'started' ? [BATCH_RECORD.began] : []),
      ...(step.isInferred ? [BATCH_RECORD.notTapped] : []),
      ...(step.moreMin > 0 ? [BATCH_RECORD.moreTime(step.moreMin)] : []),
      ...(step.factor !== null && Math.abs(step.factor - 1) > 0.005 ? [BATCH_RECORD.taught(step.factor.toFixed(2))] : []),
      ...(step.check === null ? [] : [BATCH_RECORD.check(step.check)]),
    ].join('; ');
  return tableSection(
    'steps',
    BATCH_RECORD.steps,
    [
      { head: BATCH_RECORD.step },
      { head: BATCH_RECORD.planned, isFigure: true },
      { head: BATCH_RECORD.start, isFigure: true },
      { head: BATCH_RECORD.end, isFigure: true },
      { head: BATCH_RECORD.late, isFigure: true },
      { head: BATCH_RECORD.lasted, isFigure: true },
      { head: BATCH_RECORD.target, isFigure: true },
      { head: BATCH_RECORD.place },
      { head: BATCH_RECORD.who },
      { head: BATCH_RECORD.notes, isWide: true },
    ],
    steps.map((step) => [
      `${step.tag} ${verbText(step.verb, step.nth, step.step)}`,
      step.plannedStartMs === null ? '' : `${when(step.plannedStartMs)}–${when(step.plannedEndMs)}`,
      when(step.startedMs),
      when(step.endedMs),
      offText(step.startedMs ?? step.endedMs, step.startedMs === null ? step.plannedEndMs : step.plannedStartMs),
      lastedText(step.startedMs, step.endedMs),
      step.targetMin === null ? '' : lastedText(0, Math.round(step.targetMin * 60_000)),
      [
        ...[...(step.station === null ? [] : [step.station]), ...step.helpers].map((id) => nameIn(names, 'stations', id)),
        ...(step.place === null ? [] : [placeName(names, step.place)]),
      ].join(', '),
      [...new Set([step.startedBy, step.endedBy])].flatMap((id) => (id === null ? [] : [deviceName(names, id)])).join(', '),
      notes(step),
    ]),
  );
}

export function moreTimeSection({ root, moreTime, steps }: BatchRecord, names: NamesAnswer): Section {
  return tableSection(
    'more-time',
    BATCH_RECORD.moreTimes,
    [{ head: BATCH_RECORD.step }, { head: BATCH_RECORD.what }, { head: BATCH_RECORD.at, isFigure: true }, { head: BATCH_RECORD.who }],
    moreTime.map(({ tag, stepId, minutes, atMs, deviceId }) => [
      `${tag} ${stepName(steps, tag, stepId)}`,
      BATCH_RECORD.moreTime(minutes),
      whenText(atMs, root.serviceDate, names.zone),
      deviceName(names, deviceId),
    ]),
  );
}

/** Corrections with what was said first, and what was taken back. */
export function changesSection({ root, changes, steps }: BatchRecord, names: NamesAnswer): Section {
  const when = (text: string): string => whenText(Number(text), root.serviceDate, names.zone);
  return tableSection(
    'changes',
    BATCH_RECORD.changes,
    [
      { head: BATCH_RECORD.step },
      { head: BATCH_RECORD.what },
      { head: BATCH_RECORD.was, isFigure: true },
      { head: BATCH_RECORD.became, isFigure: true },
      { head: BATCH_RECORD.at, isFigure: true },
      { head: BATCH_RECORD.who },
    ],
    changes.map(({ tag, stepId, what, was, became, atMs, deviceId }) => {
      const isTime = what === 'start' || what === 'end';
      const words = what === 'undone' || what === 'reopened' ? BATCH_RECORD[what] : CORRECTED[what];
      return [
        stepId === null ? tag : `${tag} ${stepName(steps, tag, stepId)}`,
        words,
        what === 'undone' ? '' : isTime ? when(was) : was,
        isTime ? when(became) : became,
        whenText(atMs, root.serviceDate, names.zone),
        deviceName(names, deviceId),
      ];
    }),
  );
}

export function callsSection({ calls, pieces }: BatchAnswer, { root, steps }: BatchRecord, names: NamesAnswer): Section {
  const when = (atMs: number | null): string => whenText(atMs, root.serviceDate, names.zone);
  const tags = new Map(pieces.map(({ id, tag }) => [id, tag]));
  const inOrder = [...calls].filter(({ became }) => became !== 'undone').sort((a, b) => a.raisedMs - b.raisedMs);
  return tableSection(
    'calls',
    BATCH_RECORD.calls,
    [
      { head: BATCH_RECORD.step },
      { head: BATCH_RECORD.level },
      { head: BATCH_RECORD.due, isFigure: true },
      { head: BATCH_RECORD.heard, isFigure: true },
      { head: BATCH_RECORD.done, isFigure: true },
    ],
    inOrder.map(({ pieceId, step, level, dueMs, heardMs, endedMs, became }) => [
      `${tags.get(pieceId) ?? ''} ${stepName(steps, tags.get(pieceId) ?? '', step)}`,
      BATCH_RECORD.levels[level],
      when(dueMs),
      heardMs === null ? html`<span class="soft">${BATCH_RECORD.never}</span>` : when(heardMs),
      became === 'done' ? when(endedMs) : '',
    ]),
  );
}

/** What is no longer there, and why; what was left out or used past its limit, and why. */
export function lossesSection({ root, losses, reasons }: BatchRecord, names: NamesAnswer): Section {
  const rows = [
    ...losses.map(({ tag, what, grams, pieces, atMs, deviceId }) => ({
      atMs,
      cells: [tag, LOSSES[what], weightText(grams, names.units), pieces ?? '', '', atMs, deviceId] as const,
    })),
    ...reasons.map(({ tag, what, reason, atMs, deviceId }) => ({
      atMs,
      cells: [tag, BATCH_RECORD.reasons[what], '', '', reason, atMs, deviceId] as const,
    })),
  ].sort((a, b) => a.atMs - b.atMs);
  return tableSection(
    'losses',
    BATCH_RECORD.losses,
    [
      { head: BATCH_RECORD.part },
      { head: BATCH_RECORD.what },
      { head: BATCH_RECORD.weight, isFigure: true },
      { head: BATCH_RECORD.pieces, isFigure: true },
      { head: BATCH_RECORD.reason },
      { head: BATCH_RECORD.at, isFigure: true },
      { head: BATCH_RECORD.who },
    ],
    rows.map(({ cells: [tag, what, weight, pieces, reason, atMs, deviceId] }) => [
      tag,
      what,
      weight,
      pieces,
      reason,
      whenText(atMs, root.serviceDate, names.zone),
      deviceName(names, deviceId),
    ]),
  );
}

/** A step by its words, where the record has it. */
function stepName(steps: readonly StepLine[], tag: string, stepId: string): string {
  const found = steps.find((step) => step.step === stepId && step.tag === tag) ?? steps.find((step) => step.step === stepId);
  return found === undefined ? stepId : verbText(found.verb, found.nth, stepId);
}
