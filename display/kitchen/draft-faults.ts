import type { z } from 'zod';
import { pathText } from '../../shared/documents/path-text.ts';
import { houseFaults } from '../../shared/documents/house-faults.ts';
import { houseSchema, type House } from '../../shared/documents/house.ts';
import { kitchenFaults, type FileFault } from '../../shared/documents/kitchen-faults.ts';
import { kitchenSchema, type Kitchen } from '../../shared/documents/kitchen.ts';
import { changeFaults } from '../../shared/floor/kitchen-change.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { NUMBER_NEEDED, ONE_NEEDED, TEXT_NEEDED, WHOLE_NEEDED } from '../words/fields.ts';
import { atLeastWords, atMostWords, faultOfWords, KITCHEN, moreThanWords } from '../words/kitchen.ts';
import { faultText } from '../desk/fault-text.ts';
import { SOUND } from '../words/sound.ts';
import { valueAt, type Inwards } from '../desk/inwards.ts';

/** What is wrong with a draft. One whose shape is wrong cannot even be sent. */
export interface DraftFaults {
  readonly isSendable: boolean;
  readonly faults: readonly FileFault[];
}

/** What the house would say of a kitchen, said while it is typed. Paths begin with `kitchen`. */
export function faultsOfKitchen(kitchen: Kitchen, floor: FloorState): DraftFaults {
  const parsed = kitchenSchema.safeParse(kitchen);
  if (!parsed.success) return { isSendable: false, faults: shapeFaultsIn('kitchen', parsed.error) };
  return { isSendable: true, faults: [...kitchenFaults(parsed.data), ...changeFaults(floor, parsed.data)] };
}

/** The same for the house. Paths begin with `house`. */
export function faultsOfHouse(house: House): DraftFaults {
  const parsed = houseSchema.safeParse(house);
  if (!parsed.success) return { isSendable: false, faults: shapeFaultsIn('house', parsed.error) };
  return { isSendable: true, faults: houseFaults(parsed.data) };
}

function shapeFaultsIn(document: 'kitchen' | 'house', error: z.ZodError): FileFault[] {
  return error.issues.map((issue) => ({ path: pathText([document, ...issue.path]), message: shapeWords(document, issue) }));
}

/** A schema's own words are for people who write files. */
function shapeWords(document: 'kitchen' | 'house', issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'too_small':
      if (issue.origin === 'array') return ONE_NEEDED;
      if (issue.origin === 'string') return TEXT_NEEDED;
      return (issue.inclusive === false ? moreThanWords : atLeastWords)(Number(issue.minimum));
    case 'too_big':
      return atMostWords(Number(issue.maximum));
    case 'invalid_type':
      return issue.expected === 'int' ? WHOLE_NEEDED : NUMBER_NEEDED;
    case 'invalid_format':
      // Keys have a form of their own, and clock times: those of a house, and of a kitchen where something begins and ends.
      return document === 'house' || ['from', 'to'].includes(String(issue.path.at(-1))) ? SOUND.timeNeeded : KITCHEN.keyHint;
    case 'invalid_value':
      return ONE_NEEDED;
    default:
      return issue.message;
  }
}

/** A fault in words, with the name of the innermost thing that its path leads through. */
export function namedFault(fault: FileFault, documents: { readonly kitchen: Kitchen; readonly house: House }): string {
  const parts = [...fault.path.matchAll(/[^.[\]]+/g)].map(([part]) => (/^\d+$/.test(part) ? Number(part) : part));
  for (let length = parts.length; length > 1; length -= 1) {
    const thing = valueAt(documents, parts.slice(0, length));
    if (typeof thing === 'object' && thing !== null && 'name' in thing && typeof thing.name === 'string')
      return faultOfWords(thing.name, faultText(fault));
  }
  if (parts[0] === 'kitchen' && parts[1] === 'bench') return faultOfWords(KITCHEN.benchWork, faultText(fault));
  return faultText(fault);
}

/** The faults at a place and below it. */
export function faultsWithin(faults: readonly FileFault[], document: 'kitchen' | 'house', place: Inwards): readonly FileFault[] {
  const path = pathText([document, ...place]);
  return faults.filter((fault) => fault.path === path || fault.path.startsWith(`${path}.`) || fault.path.startsWith(`${path}[`));
}
