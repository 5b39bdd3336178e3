import { accepted, refused, type Result } from '../result.ts';
import { isPartTaken, listedG, type CalcFault, type CalcPart } from './calc-part.ts';

/**
 * How many times its listed weight the dough takes of each part, in the parts' order; the last part is the dough itself, once.
 * Refused where a name is repeated or missing, a part is unused or contains itself, or weighs nothing and is taken all the same.
 */
export function timesTaken(parts: readonly CalcPart[]): Result<readonly number[], CalcFault> {
  if (parts.length === 0) return refused({ code: 'noParts', field: 'parts', message: 'there are no parts' });
  const fault = nameFault(parts) ?? takenFault(parts);
  if (fault !== null) return refused(fault);
  const order = fromDoughDown(parts);
  if (!order.ok) return order;
  const unused = parts.findIndex((_part, index) => !order.value.includes(index));
  if (unused >= 0)
    return refused({ code: 'partUnused', field: `parts[${unused}].name`, message: `nothing takes the part "${parts[unused]?.name}"` });
  return shared(parts, order.value);
}

function nameFault(parts: readonly CalcPart[]): CalcFault | null {
  const repeated = parts.findIndex(({ name }, index) => parts.findIndex((part) => part.name === name) < index);
  if (repeated < 0) return null;
  return { code: 'partRepeated', field: `parts[${repeated}].name`, message: `there are two parts "${parts[repeated]?.name}"` };
}

function takenFault(parts: readonly CalcPart[]): CalcFault | null {
  const names = new Set(parts.map(({ name }) => name));
  for (const [index, { items }] of parts.entries()) {
    for (const [line, item] of items.entries()) {
      const field = `parts[${index}].items[${line}]`;
      if (!Number.isFinite(item.g)) return { code: 'notFinite', field: `${field}.g`, message: 'a weight is a finite number' };
      if (item.g < 0) return { code: 'negative', field: `${field}.g`, message: 'a weight is not negative' };
      if (isPartTaken(item) && !names.has(item.part))
        return { code: 'partMissing', field: `${field}.part`, message: `there is no part "${item.part}"` };
    }
  }
  return null;
}

/** The dough and everything it is made of, each before what it takes. */
function fromDoughDown(parts: readonly CalcPart[]): Result<readonly number[], CalcFault> {
  const indexOf = new Map(parts.map(({ name }, index) => [name, index]));
  const done: number[] = [];
  const open = new Set<number>();
  const visit = (index: number): CalcFault | null => {
    if (done.includes(index)) return null;
    open.add(index);
    for (const [line, item] of (parts[index]?.items ?? []).entries()) {
      const child = isPartTaken(item) ? indexOf.get(item.part) : undefined;
      if (child === undefined) continue;
      if (open.has(child))
        return {
          code: 'partOfItself',
          field: `parts[${index}].items[${line}].part`,
          message: `the part "${parts[child]?.name}" contains itself`,
        };
      const fault = visit(child);
      if (fault !== null) return fault;
    }
    open.delete(index);
    done.unshift(index);
    return null;
  };
  // From the dough last, so that a circle is found even where the dough does not reach it.
  for (const index of parts.keys()) {
    const fault = visit(index);
    if (fault !== null) return refused(fault);
  }
  return accepted(reached(parts, done, indexOf));
}

function reached(parts: readonly CalcPart[], order: readonly number[], indexOf: ReadonlyMap<string, number>): readonly number[] {
  const inDough = new Set([parts.length - 1]);
  for (const index of order) {
    if (!inDough.has(index)) continue;
    for (const item of parts[index]?.items ?? []) {
      const child = isPartTaken(item) ? indexOf.get(item.part) : undefined;
      if (child !== undefined) inDough.add(child);
    }
  }
  return order.filter((index) => inDough.has(index));
}

function shared(parts: readonly CalcPart[], order: readonly number[]): Result<readonly number[], CalcFault> {
  const indexOf = new Map(parts.map(({ name }, index) => [name, index]));
  const neededG = parts.map(() => 0);
  const times = parts.map(() => 0);
  for (const index of order) {
    const part = parts[index];
    if (part === undefined) continue;
    const ofOnesG = listedG(part);
    const takenG = neededG[index] ?? 0;
    if (takenG > 0 && ofOnesG === 0)
      return refused({ code: 'partWeightless', field: `parts[${index}].items`, message: `the part "${part.name}" weighs nothing` });
    const factor = index === parts.length - 1 ? 1 : takenG === 0 ? 0 : takenG / ofOnesG;
    times[index] = factor;
    for (const item of part.items) {
      const child = isPartTaken(item) ? indexOf.get(item.part) : undefined;
      if (child !== undefined) neededG[child] = (neededG[child] ?? 0) + item.g * factor;
    }
  }
  return accepted(times);
}
