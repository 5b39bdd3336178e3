import { dueOf, type Due } from './due.ts';
import type { EventOf, FloorEvent } from './events.ts';
import { ripenedMin } from './ripening.ts';
import type { FloorState, RipenessSample, StepLife } from './state.ts';

const MINUTE_MS = 60_000;
/** Due farther from where it was ripe than this, a rest was ended by the plan. */
const BY_PLAN_MS = 2 * MINUTE_MS;
/** So many rests weigh as much as the formula's own minutes: our choice, so that one odd day moves little. */
const FORMULA_COUNTS = 3;
/** What is taught never makes a rest shorter or longer than these multiples of its minutes. */
const LEAST_FACTOR = 0.5;
const MOST_FACTOR = 2;

/** What bakers have taught of how long a rest takes, as a multiple of its minutes. */
export interface RipenessFactor {
  /** What its minutes are multiplied by when the next one begins. */
  readonly factor: number;
  /** Half of the rests lay between these; null where fewer than two are known. */
  readonly middleHalf: { readonly least: number; readonly most: number } | null;
  readonly count: number;
}

/**
 * What was taught of a rest of a formula: the median of what bakers closed it at, drawn towards 1 the fewer there are, between a
 * half and twice. A dough counts once, with what was said last.
 */
export function ripenessFactor(state: FloorState, formulaId: string, stepId: string): RipenessFactor {
  const samples = lastOfEach((state.ripeness[formulaId] ?? []).filter((sample) => sample.stepId === stepId));
  const logs = samples.map(({ factor }) => Math.log(factor)).sort((a, b) => a - b);
  const drawn = (quantile(logs, 0.5) * logs.length) / (logs.length + FORMULA_COUNTS);
  return {
    factor: Math.min(MOST_FACTOR, Math.max(LEAST_FACTOR, Math.exp(drawn))),
    middleHalf: logs.length < 2 ? null : { least: Math.exp(quantile(logs, 0.25)), most: Math.exp(quantile(logs, 0.75)) },
    count: logs.length,
  };
}

/**
 * What the end of a rest teaches, if anything: how many of its minutes, at its reference temperature, it had had when a baker closed
 * it, its dough's warmth being known. A rest that was closed late with nobody having asked for more time was only waited on, and one that the plan ended elsewhere than
 * where it was ripe says nothing.
 */
export function taughtByClosing(state: FloorState, { workpieceId, stepId, inferred, atMs }: EventOf<'stepDone'>): readonly FloorEvent[] {
  const workpiece = state.workpieces[workpieceId];
  if (workpiece === undefined || inferred === true) return [];
  const life = workpiece.steps[stepId];
  const due = dueOf(state, workpiece);
  if (due?.phase !== 'resting' || due.step.id !== stepId || life?.pins === undefined || life.pins === null) return [];
  if (!isJudged(due, life, atMs)) return [];
  const minutes = ripenedMin(state, workpiece, due.step, life, atMs);
  if (minutes === null || life.pins.targetMin === 0) return [];
  const factor = minutes / life.pins.targetMin;
  if (factor < LEAST_FACTOR / 2 || factor > MOST_FACTOR * 2) return [];
  return [{ type: 'ripenessLearned', workpieceId, formulaId: workpiece.formulaId, stepId, factor, atMs }];
}

function isJudged({ step, dueMs, lateMs, ripening }: Due, { moreMin }: StepLife, atMs: number): boolean {
  if (step.kind !== 'timed' || ripening === null) return false;
  if (moreMin > 0) return true;
  if (Math.abs(dueMs - ripening.ripeMs) > BY_PLAN_MS) return false;
  return atMs <= lateMs;
}

function lastOfEach(samples: readonly RipenessSample[]): readonly RipenessSample[] {
  return samples.filter((sample, index) => !samples.slice(index + 1).some((later) => later.workpieceId === sample.workpieceId));
}

/** Of sorted values, between neighbours in proportion (Hyndman & Fan's type 7); 0 of none. */
function quantile(sorted: readonly number[], share: number): number {
  const at = (sorted.length - 1) * share;
  const below = sorted[Math.max(0, Math.floor(at))] ?? 0;
  const above = sorted[Math.max(0, Math.ceil(at))] ?? below;
  return below + (above - below) * (at - Math.floor(at));
}
