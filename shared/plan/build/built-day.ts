import type { Verb, Step } from '../../documents/method.ts';
import type { Allocation } from '../orders/allocation.ts';
import type { DayProblem, Edge } from '../day/problem.ts';

/** Where a step belongs: a batch that is proposed, or a workpiece on the floor, and the cut and load that it still has to become. */
export interface StepPlace {
  /** Of a batch that is not on the floor: `country#1`, `custard>milk-buns#1`. Of a workpiece: its id. Of a cleaning: `clean>mixers@…`. */
  readonly batchKey: string;
  /** Null for what is not on the floor yet. */
  readonly workpieceId: string | null;
  /** Counted from 0. */
  readonly cut: number | undefined;
  readonly load: number | undefined;
  readonly stepId: string;
}

/** A step of the day as it stands in the problem. */
export interface StepOf extends StepPlace {
  readonly verb: Verb;
  readonly kind: Step['kind'];
  readonly formulaId: string | null;
  readonly productId: string | null;
  /** The tag on the floor; null for what is not there yet. */
  readonly tag: string | null;
  readonly pieces: number | null;
  readonly grams: number | null;
  readonly stationId: string | null;
  /** Where it stands meanwhile. */
  readonly restPlaceId: string | null;
  /** Indexes of the holds that keep its resources, those over several steps included. */
  readonly holds: readonly number[];
  /**
   * ahead: to be planned. begun: it runs. over: done or skipped, there because others follow it. mark: only an instant, such
   * as the end of the last rest.
   */
  readonly status: 'ahead' | 'begun' | 'over' | 'mark';
}

/** An activity of the problem as a step; `activity` is its index. */
export interface ActivityStep extends StepOf {
  readonly activity: number;
}

/** A step that waits: from an instant to the start of what ends it, or, kept for others to draw from, to the last of those. */
export interface RestStep extends StepOf {
  readonly from: { readonly activity: number; readonly edge: Edge; readonly offsetS: number };
  /** What ends it begins at these edges; empty where nothing does: then it lasts `targetS`. */
  readonly to: readonly { readonly activity: number; readonly edge: Edge }[];
  readonly targetS: number;
  /** Lags of the problem that its earliest, target and latest became. */
  readonly lags: readonly number[];
}

/** A day as the solver sees it, and what its numbers stand for. */
export interface BuiltDay {
  readonly problem: DayProblem;
  /** The instant of second 0; a whole second. */
  readonly originMs: number;
  /** One for each activity, in their order. */
  readonly steps: readonly ActivityStep[];
  readonly rests: readonly RestStep[];
  /** Where the plan in force has everything, with a guess for what it has not; null without a plan. */
  readonly previous: { readonly startsS: Int32Array; readonly options: Int32Array } | null;
  /** Which cut or load serves which order, and what no batch covers. */
  readonly orders: Allocation;
  /** The orders of the problem's goals, one for each goal; several goals may be of one order. */
  readonly goalOrders: readonly string[];
}
