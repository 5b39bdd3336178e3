import type { Step } from '../../documents/method.ts';
import type { Activity } from '../day/problem.ts';
import type { ActivityStep, RestStep, StepOf } from './built-day.ts';
import type { BuildContext } from './context.ts';
import { InUse } from './in-use.ts';
import type { PlanBefore } from './plan-before.ts';
import type { Point } from './problem-draft.ts';
import type { ResourceTable } from './resource-table.ts';
import { threadKey, type Thread } from './thread.ts';

/** An id of a step for what a cut or load on the floor goes on from, where none of its own steps is over. */
const MADE = 'made';

type Growing<Of> = { -readonly [Key in keyof Of]: Of[Key] extends readonly (infer Item)[] ? Item[] : Of[Key] };

/** A day while it is put together: the problem, and beside each activity and rest the step that it stands for. */
export class DayDraft {
  readonly context: BuildContext;
  readonly table: ResourceTable;
  readonly plan: PlanBefore;
  readonly inUse: InUse;
  readonly steps: Growing<ActivityStep>[] = [];
  readonly rests: Growing<RestStep>[] = [];

  constructor(context: BuildContext, table: ResourceTable, plan: PlanBefore) {
    this.context = context;
    this.table = table;
    this.plan = plan;
    this.inUse = new InUse(context.draft.resources, context.nowS);
  }

  /** Adds an activity for a step of a thread. */
  activity(thread: Thread, step: Step | null, status: StepOf['status'], what: Omit<Activity, 'key' | 'batch'>): number {
    const isEnd = status === 'mark' && this.rests.some((rest) => rest.stepId === step?.id && threadKey(rest) === threadKey(thread.place));
    const key = `${threadKey(thread.place)}|${step?.id ?? MADE}${isEnd ? '~end' : ''}`;
    const { durationS, releaseS, fixedStartS, pinnedStartS, previousStartS, isToldAlready } = what;
    const { batch } = thread;
    const activity = this.context.draft.activity({
      key,
      batch,
      durationS,
      releaseS,
      fixedStartS,
      pinnedStartS,
      previousStartS,
      isToldAlready,
    });
    const { place, formula, product, tag, pieces, grams } = thread;
    this.steps.push({
      batchKey: place.batchKey,
      workpieceId: place.workpieceId,
      cut: place.cut,
      load: place.load,
      stepId: step?.id ?? MADE,
      verb: step?.verb ?? 'wait',
      kind: step?.kind ?? 'timed',
      formulaId: formula.id,
      productId: product?.id ?? null,
      tag,
      pieces,
      grams,
      stationId: stationOf(step),
      restPlaceId: step?.place ?? null,
      status,
      holds: [],
      activity,
    });
    return activity;
  }

  /** Adds an activity that stands where it stands. */
  fixed(thread: Thread, step: Step | null, startMs: number, endMs: number, status: 'begun' | 'over'): number {
    const { context } = this;
    const startS = context.secondOf(startMs);
    const durationS = Math.max(0, context.secondOf(endMs) - startS);
    return this.activity(thread, step, status, {
      durationS,
      releaseS: 0,
      fixedStartS: startS,
      pinnedStartS: null,
      previousStartS: null,
      isToldAlready: false,
    });
  }

  /** Adds a rest. Returns its number. */
  rest(thread: Thread, step: Step, from: Point, targetS: number, status: StepOf['status']): number {
    const { place, formula, product, tag, pieces, grams } = thread;
    return (
      this.rests.push({
        batchKey: place.batchKey,
        workpieceId: place.workpieceId,
        cut: place.cut,
        load: place.load,
        stepId: step.id,
        verb: step.verb,
        kind: step.kind,
        formulaId: formula.id,
        productId: product?.id ?? null,
        tag,
        pieces,
        grams,
        stationId: stationOf(step),
        restPlaceId: step.place ?? null,
        status,
        holds: [],
        from,
        to: [],
        targetS,
        lags: [],
      }) - 1
    );
  }

  /** Something that ends a rest. */
  endRest(rest: number, at: Point, lag: number | null): void {
    const ended = this.rests[rest];
    ended?.to.push({ activity: at.activity, edge: at.edge });
    if (lag !== null) ended?.lags.push(lag);
  }

  /** The activity at a point is wanted so that the point is at an instant. */
  pinEdge(point: Point, atMs: number): void {
    const { draft } = this.context;
    const activity = draft.activities[point.activity];
    if (activity === undefined || activity.fixedStartS !== null) return;
    const lengthS = point.edge === 'end' ? activity.durationS : 0;
    draft.amend(point.activity, { pinnedStartS: this.context.secondOf(atMs) - lengthS - point.offsetS });
  }
}

/** Whose work it is. */
function stationOf(step: Step | null): string | null {
  return step?.station ?? step?.claims.find((claim) => claim.kind === 'hands')?.ids[0] ?? null;
}
