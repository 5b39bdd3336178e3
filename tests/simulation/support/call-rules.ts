import { calledStep, dueOf, levelSinceMs, roleAt } from '../../../shared/floor/due.ts';
import type { EventOf, FloorEvent } from '../../../shared/floor/events.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { Counts } from './counts.ts';
import { CLOCK_SLACK_MS, type HouseTruth } from './house-truth.ts';
import type { Violations } from './violation.ts';

/** S5, as far as the journal shows it: a call once for each level, step and start, and not before its time. */
export class CallRules {
  readonly #truth: HouseTruth;
  readonly #violations: Violations;
  readonly #counts: Counts;
  /** By workpiece: the steps and levels called since anything was last done about it. */
  readonly #raised = new Map<string, Set<string>>();

  constructor(truth: HouseTruth, violations: Violations, counts: Counts) {
    this.#truth = truth;
    this.#violations = violations;
    this.#counts = counts;
  }

  /** A call was raised on a state, at an instant of true time. */
  raised(state: FloorState, event: EventOf<'callRaised'>, trueMs: number): void {
    const { workpieceId, stepId, level } = event;
    const workpiece = state.workpieces[workpieceId];
    const due = workpiece === undefined ? null : dueOf(state, workpiece);
    const what = `${level} of ${workpiece?.tag ?? workpieceId} ${stepId}`;
    this.#counts.raised += 1;
    this.#violations.demand(
      'S5',
      due !== null && calledStep(due, event.atMs).id === stepId,
      () => `${what} was raised, and is not what stands next`,
    );
    if (due === null) return;
    const sinceMs = levelSinceMs(due, level, event.atMs);
    this.#violations.demand(
      'S5',
      event.dueMs === sinceMs && event.atMs >= sinceMs,
      () => `${what} was raised ${sinceMs - event.atMs} ms before its time`,
    );
    const houseMs = this.#truth.at(trueMs) + CLOCK_SLACK_MS * this.#truth.pace;
    this.#violations.demand(
      'S5',
      houseMs >= sinceMs,
      () => `${what} was raised ${Math.round(sinceMs - houseMs)} ms before its time in truth`,
    );
    this.#violations.demand('S5', roleAt(due, event.atMs) === level, () => `${what} was raised when it was ${roleAt(due, event.atMs)}`);
    const key = `${stepId} ${level}`;
    const called = this.#raised.get(workpieceId) ?? new Set<string>();
    this.#violations.demand('S5', !called.has(key), () => `${what} was raised again, with nothing done in between`);
    called.add(key);
    this.#raised.set(workpieceId, called);
  }

  /** Something else happened: what it is about may call anew. */
  touched(event: FloorEvent): void {
    if (event.type === 'callHeard' || event.type === 'callSounded' || event.type === 'temperatureRead') return;
    if ('workpieceId' in event) this.#raised.delete(event.workpieceId);
    if (event.type === 'commandUndone') for (const workpieceId of event.workpieceIds) this.#raised.delete(workpieceId);
  }
}
