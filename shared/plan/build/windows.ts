import type { Step } from '../../documents/method.ts';
import { beginsByItself } from '../../documents/method.ts';
import type { StepPins } from '../../floor/events.ts';
import type { Ripening } from '../../floor/ripening.ts';
import type { StepLife } from '../../floor/state.ts';
import { PRICES } from '../day/problem.ts';
import type { Window } from './problem-draft.ts';

/** A minute that a dough stands waiting for hands, once its step is done: it is neither wanted nor spoiled yet. */
const WAIT_PRICE = 0.2;
/** A minute that something waits which nothing happens to. */
const KEEP_PRICE = 0.01;
/** A minute in the oven beside the target. */
const BAKE_PRICE = 5;
/** Rests longer than this bear a deviation in proportion. */
const FULL_PRICE_MIN = 60;

/** Minutes as whole seconds. */
export function secondsOf(minutes: number): number {
  return Math.round(minutes * 60);
}

/** How long a rest lasts, as its method says: a rest without a latest bears what the step that ends it bears to be late. */
export function restWindow(step: Step, next: Step | null): Window {
  const { earliest, target, latest } = step.minutes;
  const lost = next?.toleranceMin.lost;
  return windowOf(earliest ?? target, target, latest ?? (lost === undefined ? null : target + lost));
}

/**
 * How long a rest that has begun lasts from its start on: by how warm its dough is, where anybody has said; else by what was pinned then;
 * and the minutes given since.
 */
export function begunRestWindow(step: Step, next: Step | null, life: StepLife, ripening: Ripening | null): Window {
  const { pins, moreMin } = life;
  if (pins === null) return restWindow(step, next);
  const bounds = ripening === null ? byMinutes(pins) : byWarmth(ripening, life);
  const targetMin = bounds.targetMin + moreMin;
  const lost = next?.toleranceMin.lost;
  const latestMin = bounds.latestMin === null ? (lost === undefined ? null : targetMin + lost) : Math.max(bounds.latestMin, targetMin);
  return windowOf(Math.min(bounds.earliestMin, targetMin), targetMin, latestMin);
}

interface Bounds {
  readonly earliestMin: number;
  readonly targetMin: number;
  readonly latestMin: number | null;
}

function byMinutes({ earliestMin, targetMin, latestMin, factor }: StepPins): Bounds {
  return {
    earliestMin: (earliestMin ?? targetMin) * factor,
    targetMin: targetMin * factor,
    latestMin: latestMin === undefined ? null : latestMin * factor,
  };
}

function byWarmth({ earliestMs, ripeMs, latestMs }: Ripening, { startedMs }: StepLife): Bounds {
  const minutesTo = (atMs: number): number => (atMs - (startedMs ?? 0)) / 60_000;
  return { earliestMin: minutesTo(earliestMs), targetMin: minutesTo(ripeMs), latestMin: latestMs === null ? null : minutesTo(latestMs) };
}

function windowOf(earliestMin: number, targetMin: number, latestMin: number | null): Window {
  const share = Math.min(1, FULL_PRICE_MIN / Math.max(1, targetMin));
  return {
    minS: secondsOf(earliestMin),
    targetS: secondsOf(targetMin),
    mostS: latestMin === null ? null : secondsOf(latestMin),
    awayPrice: latestMin === null ? KEEP_PRICE : PRICES.ripenessMin * share,
  };
}

/** How long a step may wait after the one before it: not at all where it begins by itself. */
export function waitWindow(before: Step | null, step: Step): Window {
  if (before !== null && before.kind === 'bake') return outWindow(before, step);
  if (beginsByItself(step)) return { minS: 0, mostS: 0, targetS: null, awayPrice: 0 };
  const { lost } = step.toleranceMin;
  return {
    minS: 0,
    mostS: lost === undefined ? null : secondsOf(lost),
    targetS: 0,
    awayPrice: lost === undefined ? KEEP_PRICE : WAIT_PRICE,
  };
}

/** A bake has had its target when its activity ends; what ends it comes before its latest, and before it is being lost. */
function outWindow(bake: Step, step: Step): Window {
  const { target, latest } = bake.minutes;
  const { lost } = step.toleranceMin;
  const limits = [...(latest === undefined ? [] : [latest - target]), ...(lost === undefined ? [] : [lost])];
  return { minS: 0, mostS: limits.length === 0 ? null : secondsOf(Math.min(...limits)), targetS: 0, awayPrice: BAKE_PRICE };
}
