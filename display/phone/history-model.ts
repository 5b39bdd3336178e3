import type { Despite } from '../../shared/floor/events.ts';
import type { Correction, FloorState, StepLife, Workpiece } from '../../shared/floor/state.ts';
import { wayOf } from '../../shared/floor/way.ts';
import { placeOf, type Whereabouts } from './where-model.ts';

/** A step that was begun, as it is remembered. */
export interface Past extends Whereabouts {
  readonly status: StepLife['status'];
  readonly startedMs: number | null;
  readonly endedMs: number | null;
  /** Nobody tapped its end: a later step was seen under way. */
  readonly isInferred: boolean;
  readonly stationIds: readonly string[];
  readonly deviceId: string | null;
  readonly reason: string | null;
  readonly despite: readonly Despite[];
}

/** The steps begun so far, the newest first. */
export function historyOf(state: FloorState, workpiece: Workpiece): readonly Past[] {
  const way = wayOf(state, workpiece);
  const pasts = way.flatMap((step) => {
    const life = workpiece.steps[step.id];
    return life === undefined ? [] : [{ ...placeOf(way, step), ...pastOf(life) }];
  });
  return pasts.reverse();
}

function pastOf(life: StepLife): Omit<Past, keyof Whereabouts> {
  return {
    status: life.status,
    startedMs: life.startedMs,
    endedMs: life.endedMs,
    isInferred: life.inferred,
    stationIds: [...(life.stationId === null ? [] : [life.stationId]), ...life.helperIds],
    deviceId: life.endedBy ?? life.startedBy,
    reason: life.reason,
    despite: life.despite,
  };
}

/** A start or an end that can be put right. */
export interface Edge extends Whereabouts {
  readonly edge: 'start' | 'end';
  readonly atMs: number;
}

/** The instants that a thumb may have got wrong lately: what began last, and what ended last. */
export function lastEdges(pasts: readonly Past[]): readonly Edge[] {
  const began = pasts.find((past) => past.status === 'started');
  const ended = pasts.find((past) => past.status === 'done');
  const edges: Edge[] = [];
  if (began !== undefined && began.startedMs !== null) edges.push({ ...whereOf(began), edge: 'start', atMs: began.startedMs });
  if (ended !== undefined && ended.endedMs !== null) edges.push({ ...whereOf(ended), edge: 'end', atMs: ended.endedMs });
  return edges;
}

function whereOf({ stepId, verb, nth }: Past): Whereabouts {
  return { stepId, verb, nth };
}

/** What was said otherwise before, the newest first. */
export function correctionsOf(workpiece: Workpiece): readonly Correction[] {
  return [...workpiece.corrections].reverse();
}

/** A tag taken apart: what stays and the number that may be wrong. "C12b·2" is C, 12 and "b·2". */
export function tagParts(tag: string): { readonly letters: string; readonly number: number; readonly rest: string } | null {
  const parts = /^([A-Z][a-z]?)(\d+)(.*)$/.exec(tag);
  if (parts === null) return null;
  const [, letters = '', digits = '', rest = ''] = parts;
  return { letters, number: Number(digits), rest };
}
