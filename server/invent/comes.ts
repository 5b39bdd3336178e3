import { promptAt, type Due } from '../../shared/floor/due.ts';
import type { Chance } from './chance.ts';
import { bakeShare } from './house-truth.ts';

const MINUTE_MS = 60_000;
const SECOND_MS = 1000;
const FETCHED_AFTER_MIN = 650;

/** What tells one visit from the next at the same workpiece. */
export function visitKey(due: Due, nowMs: number): string {
  const { workpiece, action, phase } = due;
  const prompt = promptAt(due, nowMs)?.phase ?? '';
  return `${workpiece.id} ${action.id} ${phase} ${workpiece.steps[due.step.id]?.moreMin ?? 0} ${prompt}`;
}

/** Nobody comes to a pot that has no feed ahead, nor to a filling that is kept until it is drawn from. */
export function isLeftAlone(due: Due): boolean {
  if (due.workpiece.stock !== null) return due.phase === 'resting' && due.workpiece.stock.plannedFeeds.length === 0;
  return due.phase === 'resting' && due.action.id === due.step.id && due.prompt === null;
}

/** Whether it bakes: the oven and not the clock says when somebody takes it out. */
export function isBake(due: Due): boolean {
  return due.step.kind === 'bake' && due.phase === 'resting' && due.startedMs !== null;
}

/** When a bake is done by what is true of its place, whatever the house knows of it. */
export function bakedMs(due: Due, chance: Chance): number {
  const targetMin = due.workpiece.steps[due.step.id]?.pins?.targetMin ?? due.step.minutes.target;
  const trueMin = targetMin * bakeShare(due.workpiece.slotIds) * chance.factor(0.015);
  return (due.startedMs ?? due.dueMs) + trueMin * MINUTE_MS;
}

/** Dough that is in the cold overnight is fetched by the clock, whatever the cold has done to it: null for all other. */
export function fetchedMs(due: Due, chance: Chance): number | null {
  if (due.step.verb !== 'retard' || due.startedMs === null) return null;
  return due.startedMs + FETCHED_AFTER_MIN * chance.factor(0.02) * MINUTE_MS;
}

/** How long after it is due somebody comes to it, in ms; negative for one who looks before the time. */
export function delayMs(due: Due, chance: Chance): number {
  const toEarliestMs = Math.max(0, due.dueMs - due.earliestMs);
  const bearsMs = due.lateMs - due.dueMs;
  if (due.isAtOnce) return chance.between(3, 50) * SECOND_MS;
  if (due.phase === 'planned') return chance.between(-4, 5) * MINUTE_MS;
  if (due.phase === 'judging') return chance.near(0.2, 0.8) * MINUTE_MS;
  const shown = chance.between(0, 1);
  // The dough was ready before its time, and somebody saw it.
  if (shown < 0.13 && due.phase === 'resting') return -Math.min(toEarliestMs, chance.between(1, 9) * MINUTE_MS);
  if (shown < 0.9) return Math.min(bearsMs * 0.8, chance.between(0.2, 3) * MINUTE_MS);
  // Now and then it is forgotten for a while.
  return Math.min(bearsMs + 4 * MINUTE_MS, chance.between(3, 12) * MINUTE_MS);
}
