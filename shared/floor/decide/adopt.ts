import { houseFaults } from '../../documents/house-faults.ts';
import { kitchenFaults } from '../../documents/kitchen-faults.ts';
import { isSameDocument } from '../../documents/same-document.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import { changeFaults } from '../kitchen-change.ts';
import { resourceName } from '../resources.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { MOST_FAULTS } from './faulty.ts';

/** The house becomes its next version, where nobody else has changed it since this device saw it. */
export function decideAdoptHouse(state: FloorState, command: CommandOf<'adoptHouse'>, _context: CommandContext): Decision {
  const version = state.house?.version ?? 0;
  if (command.fromVersion !== version) return refused({ code: 'documentChanged', version });
  const faults = houseFaults(command.house);
  if (faults.length > 0) return refused({ code: 'documentFaulty', faults });
  if (isSameDocument(state.house?.document, command.house)) return refused({ code: 'nothingChanges' });
  return accepted([{ type: 'houseAdopted', version: version + 1, house: command.house }]);
}

/**
 * The kitchen becomes its next version, where nobody else has changed it meanwhile, it is right in itself, and methods
 * and open doughs still find what they need. A block goes with the thing that it was on.
 */
export function decideAdoptKitchen(state: FloorState, command: CommandOf<'adoptKitchen'>, context: CommandContext): Decision {
  const version = state.kitchen?.version ?? 0;
  if (command.fromVersion !== version) return refused({ code: 'documentChanged', version });
  const faults = [...kitchenFaults(command.kitchen), ...changeFaults(state, command.kitchen)];
  if (faults.length > 0) return refused({ code: 'documentFaulty', faults: faults.slice(0, MOST_FAULTS) });
  if (isSameDocument(state.kitchen?.document, command.kitchen)) return refused({ code: 'nothingChanges' });
  const freed = state.blocked
    .filter(({ resource }) => resourceName(command.kitchen, resource) === null)
    .map(({ resource, atMs }): FloorEvent => ({ type: 'resourceFreed', resource, atMs: Math.max(atMs, context.tapMs) }));
  return accepted([{ type: 'kitchenAdopted', version: version + 1, kitchen: command.kitchen }, ...freed]);
}
