import { decide } from '../../../shared/floor/decide.ts';
import type { RecordedEvent } from '../../../shared/floor/events.ts';
import { evolveAll } from '../../../shared/floor/evolve.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { buildDay } from '../../../shared/plan/build/build-day.ts';
import { spreadsOf } from '../../../shared/plan/try/spreads.ts';
import { tryDay } from '../../../shared/plan/try/try-day.ts';
import { accepted, assert, type Result } from '../../../shared/result.ts';
import { HOUSE_DEVICE_ID } from '../../floor/house-device.ts';
import { keepCommand } from '../keep-proposal.ts';
import { dayInputOf } from './day-input.ts';
import type { PlannerAnswer, PlannerJob, ProposedForTry } from './planner-job.ts';
import type { Tell } from './run-job.ts';
import { withTriedOrders } from './tentative.ts';

/** Plays a day many times with lengths that spread: the plan in force, or the floor as it would be with a proposal kept. */
export function playDay(state: FloorState, job: Extract<PlannerJob, { kind: 'tryDay' }>, tell: Tell): PlannerAnswer {
  const { nowMs, runs, seed, proposed } = job;
  const played = proposed === null ? accepted(state) : withProposal(state, proposed, nowMs);
  if (!played.ok) return { kind: 'impossible', faults: [{ code: played.fault, message: `the day cannot be kept: ${played.fault}` }] };
  const input = played.value.plan === null ? null : dayInputOf(played.value, nowMs, { proposed: [] });
  if (input === null) return { kind: 'nothingPlanned' };
  const built = buildDay(input);
  assert(built.ok, 'what is on the floor can always be built');
  if (built.value.previous === null) return { kind: 'nothingPlanned' };
  const onRun = (done: number): void => tell(() => ({ schedulesDone: done, schedules: runs, best: null }));
  const result = tryDay(built.value, built.value.previous, { runs, seed, spreads: spreadsOf(state), onRun });
  return { kind: 'tried', result };
}

/** The floor as it would be if the proposal were kept now, orders as it tries them. */
function withProposal(state: FloorState, { commandId, day }: ProposedForTry, nowMs: number): Result<FloorState, string> {
  const tried = withTriedOrders(state, day.ask.changes);
  const context = { commandId, deviceId: HOUSE_DEVICE_ID, stationId: null, nowMs, tapMs: nowMs, tapUncertain: false };
  const decision = decide(tried, keepCommand(day), context);
  if (!decision.ok) return { ok: false, fault: decision.fault.code };
  const recorded = decision.value.map((event, ordinal): RecordedEvent => ({
    sequence: tried.sequence + ordinal + 1,
    commandId,
    ordinal,
    deviceId: HOUSE_DEVICE_ID,
    event,
  }));
  return accepted(evolveAll(tried, recorded));
}
