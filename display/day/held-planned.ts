import type { FloorState } from '../../shared/floor/state.ts';
import type { ProposalDone } from '../../shared/plan/plan-api.ts';

/** Whether a filling, a topping or anything else that is held is planned for a date: on the floor, or in a proposal. */
export function heldIsPlanned(floor: FloorState, proposal: ProposalDone | null, serviceDate: string): boolean {
  const onFloor = Object.values(floor.workpieces).some((workpiece) => workpiece.kind === 'prep' && workpiece.serviceDate === serviceDate);
  // A prep's name has in it what it is made for.
  return onFloor || (proposal?.steps.some(({ batchKey }) => batchKey.includes('>')) ?? false);
}
