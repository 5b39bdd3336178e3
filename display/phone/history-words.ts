import type { Correction, FloorState } from '../../shared/floor/state.ts';
import { wayOf } from '../../shared/floor/way.ts';
import { clockText } from '../parts/clock-text.ts';
import { CORRECTED, DESPITE, nthWords, PANELS } from '../words/panels.ts';
import { VERBS } from '../words/verbs.ts';
import { stationName } from './floor-facts.ts';
import type { Past } from './history-model.ts';
import { placeOf } from './where-model.ts';

/** When a step was: its start and its end as far as they are known, "04:10–04:25". */
export function pastClock(past: Past, zone: string): string {
  const started = past.startedMs === null ? null : clockText(past.startedMs, zone);
  const ended = past.endedMs === null ? null : clockText(past.endedMs, zone);
  if (started === null || started === ended) return ended ?? '';
  return ended === null ? `${started}–` : `${started}–${ended}`;
}

/** What is to be known of a past step beside when it was: who, that nobody tapped it, why it was left out. */
export function pastNotes(state: FloorState, past: Past): readonly string[] {
  return [
    ...(past.isInferred ? [`(${PANELS.notTapped})`] : []),
    ...(past.status === 'skipped' ? [PANELS.skipped] : []),
    ...past.stationIds.map((stationId) => stationName(state, stationId)),
    ...(past.reason === null ? [] : [past.reason]),
    ...past.despite.map((despite) => DESPITE[despite]),
  ];
}

/** "bulk done 04:20 → 04:15": what was said before, and what is true. */
export function correctionWords(state: FloorState, workpieceId: string, correction: Correction, zone: string): string {
  const workpiece = state.workpieces[workpieceId];
  const way = workpiece === undefined ? [] : wayOf(state, workpiece);
  const stepWords = (stepId: string | number | null): string => {
    const step = way.find((candidate) => candidate.id === stepId);
    if (step === undefined) return String(stepId ?? '');
    const { verb, nth } = placeOf(way, step);
    return nthWords(VERBS[verb].running, nth);
  };
  const say = (value: string | number): string => {
    if (correction.what === 'where') return stepWords(value);
    return correction.what === 'start' || correction.what === 'end' ? clockText(Number(value), zone) : String(value);
  };
  const about = correction.stepId === null ? '' : `${stepWords(correction.stepId)} `;
  return `${about}${CORRECTED[correction.what]} ${say(correction.from)} → ${say(correction.to)}`;
}
