import type { BatchAnswer } from '../../shared/records/answers.ts';
import { foldOf } from '../../shared/records/batch-record.ts';
import { dueOf } from '../../shared/floor/due.ts';
import type { Cooling } from '../../shared/floor/cooling.ts';
import { holdingOf, markAt, type HoldingMark } from '../../shared/floor/holding.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import type { Verb } from '../../shared/documents/method.ts';
import type { RuleSetName } from '../../shared/trade/holding-rules.ts';
import { coreCurve, type CoreCurve } from '../phone/core-curve.ts';
import { ripenessCurve, type RipenessCurve } from '../phone/ripeness-curve.ts';

/** A curve of a batch as it stood when what it tells of was over. */
export type BatchCurve = { readonly tag: string; readonly verb: Verb | null; readonly overMs: number } & (
  | { readonly kind: 'ripeness'; readonly curve: RipenessCurve }
  | { readonly kind: 'core'; readonly curve: CoreCurve }
  | { readonly kind: 'cooling'; readonly cooling: Cooling }
);

/** How food that has to be kept was kept, as it stood when it was used, sold or thrown away. */
export interface KeptMark {
  readonly tag: string;
  readonly overMs: number;
  readonly ruleSet: RuleSetName;
  readonly mark: HoldingMark;
  readonly limitMs: number | null;
}

/** Curves and marks of a batch and of what went into it, the oldest first. */
export interface BatchCurves {
  readonly curves: readonly BatchCurve[];
  readonly kept: readonly KeptMark[];
}

/** Folds the events of a batch and looks at each rest, bake and keeping just before it was over: as a baker saw it then. */
export function batchCurves(answer: BatchAnswer): BatchCurves {
  const curves: BatchCurve[] = [];
  const kept: KeptMark[] = [];
  const shown = new Set([...answer.pieces, ...answer.sources].filter(({ kind }) => kind !== 'ferment').map(({ id }) => id));
  const look = (state: FloorState, workpiece: Workpiece, overMs: number): void => {
    const due = dueOf(state, workpiece);
    if (due === null) return;
    const { tag } = workpiece;
    const { verb } = due.step;
    const ripeness = ripenessCurve(state, workpiece, overMs);
    if (ripeness !== null) curves.push({ kind: 'ripeness', tag, verb, overMs, curve: ripeness });
    const core = due.core === null ? null : coreCurve(due.core, due.dueMs, overMs);
    if (core !== null) curves.push({ kind: 'core', tag, verb, overMs, curve: core });
  };
  const lookAtKept = (state: FloorState, workpiece: Workpiece, overMs: number): void => {
    const holding = holdingOf(state, workpiece);
    if (holding === null || kept.some((other) => other.tag === workpiece.tag && other.overMs === overMs)) return;
    const { rules, cooling, limit } = holding;
    kept.push({ tag: workpiece.tag, overMs, ruleSet: rules.name, mark: markAt(holding, overMs), limitMs: limit?.limitMs ?? null });
    if (cooling !== null && cooling.readings.length > 0) curves.push({ kind: 'cooling', tag: workpiece.tag, verb: null, overMs, cooling });
  };
  foldOf(answer, ({ event }, _after, before) => {
    switch (event.type) {
      case 'stepDone': {
        const workpiece = before.workpieces[event.workpieceId];
        if (workpiece !== undefined && shown.has(workpiece.id)) look(before, workpiece, event.atMs);
        return;
      }
      case 'workpieceDrawn': {
        const source = before.workpieces[event.fromWorkpieceId];
        if (source !== undefined && shown.has(source.id)) lookAtKept(before, source, event.atMs);
        return;
      }
      case 'workpieceFinished':
      case 'workpieceDiscarded': {
        const workpiece = before.workpieces[event.workpieceId];
        if (workpiece !== undefined && shown.has(workpiece.id)) lookAtKept(before, workpiece, event.atMs);
        return;
      }
      default:
    }
  });
  return { curves, kept };
}
