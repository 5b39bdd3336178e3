import { countsAsC, riseFromDough } from '../trade/water-temperature.ts';
import { formulaOf } from './contents.ts';
import { countedC, expectedDoughC, iceCOf } from './dough-temperature.ts';
import { riseOf } from './rise.ts';
import type { FloorState, Workpiece } from './state.ts';

/** How long after the mixing a reading still tells of it, in milliseconds: a dough of kilograms has hardly changed. Our choice. */
const STANDS_MS = 10 * 60_000;
/** A reading nearer to what was expected than this is never asked about, in kelvin: our choice. */
const LEAST_WILD_K = 4;
/** Nor one within so many spreads of what the mixer has done so far: our choice. */
const WILD_SPREADS = 4;

/** What a dough's temperature after mixing says of its mixer. */
export interface DoughReading {
  readonly mixerId: string;
  readonly loadG: number;
  /** By how much the mixer warmed it, in kelvin. */
  readonly riseK: number;
  readonly expectedC: number;
  /** Farther from what was expected than this mixer's doughs have been. */
  readonly isWild: boolean;
}

/** What a reading of the dough teaches. Null where its water was not said, and before and after it could tell of the mixing. */
export function doughReadingOf(state: FloorState, workpiece: Workpiece, doughC: number, atMs: number): DoughReading | null {
  const { water } = workpiece;
  if (water === null || !isJustMixed(state, workpiece, atMs)) return null;
  const { mixerId, waterG, iceG, waterC } = water;
  const temperaturesC = countedC(water);
  const countsC = countsAsC({ waterG, iceG, tapC: waterC, iceC: iceCOf(state) });
  const loadG = workpiece.scaledToG;
  const before = riseOf(state, mixerId, workpiece.formulaId, loadG, workpiece.id);
  const expectedC = expectedDoughC(temperaturesC, countsC, before.riseK);
  const mostK = Math.max(LEAST_WILD_K, WILD_SPREADS * (before.spreadK ?? 0));
  return {
    mixerId,
    loadG,
    riseK: riseFromDough({ doughC, temperaturesC, waterC: countsC }),
    expectedC,
    isWild: Math.abs(doughC - expectedC) > mostK,
  };
}

/** From its last speed on, until it has rested for a few minutes. */
function isJustMixed(state: FloorState, workpiece: Workpiece, atMs: number): boolean {
  const method = formulaOf(state, workpiece)?.method ?? [];
  const last = method.findLastIndex((step) => step.verb === 'firstSpeed' || step.verb === 'secondSpeed');
  const lastSpeed = method[last];
  if (lastSpeed === undefined || workpiece.steps[lastSpeed.id] === undefined) return false;
  const rests = method.slice(last + 1).filter((step) => step.verb !== 'turnOut' && step.verb !== 'add');
  const restedMs = rests.flatMap((step) => workpiece.steps[step.id]?.startedMs ?? workpiece.steps[step.id]?.endedMs ?? []);
  return restedMs.every((fromMs) => atMs - fromMs <= STANDS_MS);
}
