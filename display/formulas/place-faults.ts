import type { FileFault } from '../../shared/documents/kitchen-faults.ts';

/** The faults at a path and below it. */
export function faultsWithin(faults: readonly FileFault[], path: string): readonly FileFault[] {
  return faults.filter((fault) => isWithin(fault.path, path));
}

/** The faults at exactly a path. */
export function faultsAt(faults: readonly FileFault[], path: string): readonly FileFault[] {
  return faults.filter((fault) => fault.path === path);
}

/** Whether a path is another one, or leads further inwards from it. */
export function isWithin(path: string, outer: string): boolean {
  return path === outer || path.startsWith(`${outer}.`) || path.startsWith(`${outer}[`);
}
