import type { Step, Verb } from '../../shared/documents/method.ts';
import type { FloorState } from '../../shared/floor/state.ts';

const OVEN_VERBS: ReadonlySet<Verb> = new Set<Verb>(['load', 'takeOut']);

/**
 * Whether a station loads ovens or takes out of them, by the methods in force. Where a method leaves open who does, every
 * station does; without a station everybody's wall is meant.
 */
export function worksAtOvens(state: FloorState, stationId: string | null): boolean {
  if (stationId === null) return true;
  const methods = [...Object.values(state.formulas).map(({ method }) => method), ...Object.values(state.products).map(({ way }) => way)];
  return methods.some((steps) => steps.some((step) => OVEN_VERBS.has(step.verb) && isDoneAt(step, stationId)));
}

function isDoneAt(step: Step, stationId: string): boolean {
  const hands = step.claims.filter((claim) => claim.kind === 'hands').flatMap((claim) => claim.ids);
  const named = step.station === undefined ? hands : [step.station];
  return named.length === 0 || named.includes(stationId);
}
