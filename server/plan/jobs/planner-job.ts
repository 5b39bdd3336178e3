import type { MovedStep, PlannedStep, PlanWarning } from '../../../shared/floor/events.ts';
import type { PlannedCleaning } from '../../../shared/plan/planned-cleaning.ts';
import type { PlanFault, PlanFigures, ProposalAsk, ProposalDone } from '../../../shared/plan/plan-api.ts';
import type { TryResult } from '../../../shared/plan/try/try-result.ts';
import type { DayCost } from '../../../shared/plan/day/problem.ts';
import type { Hint } from './moved-because.ts';

/** How hard a search may try; the same again for the same seed. */
export interface SearchBudget {
  readonly schedules: number;
  readonly seed: number;
}

/** What of a plan's cost is trouble: doughs that spoil, orders that are late, pins that are broken. */
export type TroubleCost = Pick<DayCost, 'spoil' | 'late' | 'pins'>;

/** What the planner's thread is asked. Instants are house time. */
export type PlannerJob =
  /** A day for the orders of a service date, on top of what is on the floor. */
  | { readonly kind: 'propose'; readonly nowMs: number; readonly ask: ProposalAsk; readonly budget: SearchBudget }
  /** The plan in force, made true again. */
  | {
      readonly kind: 'replan';
      readonly nowMs: number;
      readonly budget: SearchBudget;
      readonly hint: Hint;
      /** What the plan in force was known to cost when it was last looked at; null where nobody knows. */
      readonly known: TroubleCost | null;
    }
  /** A better way to go on than the plan in force, whatever it moves. */
  | { readonly kind: 'improve'; readonly nowMs: number; readonly budget: SearchBudget }
  /** The day played many times: one that was proposed, or the plan in force. */
  | {
      readonly kind: 'tryDay';
      readonly nowMs: number;
      readonly runs: number;
      readonly seed: number;
      readonly proposed: ProposedForTry | null;
    };

/** A day that was proposed and may be kept by the command of that id. */
export interface ProposedForTry {
  readonly commandId: string;
  readonly day: Pick<ProposalDone, 'ask' | 'serviceDate' | 'batches' | 'steps'>;
}

/** A day that was found; what of it changes while it is kept is not in it. */
export type ProposedDay = Omit<ProposalDone, 'id' | 'serviceDate' | 'ask' | 'askedMs' | 'status' | 'doneMs' | 'isOutdated'>;

/** How the plan in force goes on. */
export interface Replanned {
  /** Steps that are not where the plan has them, as the plan is to have them. */
  readonly starts: readonly PlannedStep[];
  /** Those that were moved by enough to be told. */
  readonly moved: readonly MovedStep[];
  readonly warnings: readonly PlanWarning[];
  readonly figures: PlanFigures;
  readonly cleanings: readonly PlannedCleaning[];
  readonly cost: TroubleCost;
}

export type PlannerAnswer =
  | { readonly kind: 'proposed'; readonly day: ProposedDay }
  /** The day cannot be planned at all: why, for each thing that is in the way. */
  | { readonly kind: 'impossible'; readonly faults: readonly PlanFault[] }
  | { readonly kind: 'replanned'; readonly plan: Replanned }
  | { readonly kind: 'improved'; readonly before: PlanFigures; readonly plan: Replanned }
  | { readonly kind: 'tried'; readonly result: TryResult }
  /** The floor follows no plan, or nothing of it is left to be done. */
  | { readonly kind: 'nothingPlanned' };
