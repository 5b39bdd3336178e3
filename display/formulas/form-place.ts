import type { FileFault } from '../../shared/documents/kitchen-faults.ts';
import { faultText } from '../desk/fault-text.ts';
import type { Inwards } from '../desk/inwards.ts';

/** Where a form stands in a document, and what is wrong there. */
export interface FormPlace {
  /** From the document's root. */
  readonly path: Inwards;
  /** The same as faults name it, with what the document is called: `formula.method[3]`. */
  readonly faultPath: string;
  /** Those at this place and below it. */
  readonly faults: readonly FileFault[];
}

/** The place at `path` of a document that faults call `document` (`formula`, `products[2]`). */
export function placeAt(document: string, path: Inwards, faults: readonly FileFault[]): FormPlace {
  const faultPath = faultPathOf(document, path);
  return { path, faultPath, faults: faults.filter((fault) => isWithin(fault.path, faultPath)) };
}

/** A place further in. */
export function within(place: FormPlace, inwards: Inwards): FormPlace {
  const inner = placeAt(place.faultPath, inwards, place.faults);
  return { ...inner, path: [...place.path, ...inwards] };
}

/** What is wrong at a place and below it, in words. */
export function faultTexts({ faults }: FormPlace): readonly string[] {
  return faults.map(faultText);
}

/** What is wrong at this very place, in words. */
export function ownFaultTexts({ faults, faultPath }: FormPlace): readonly string[] {
  return faults.filter((fault) => fault.path === faultPath).map(faultText);
}

/** A path as faults write it, behind another: `products[2]` and ["way", 3] are `products[2].way[3]`. */
export function faultPathOf(document: string, path: Inwards): string {
  return path.reduce<string>((text, part) => (typeof part === 'number' ? `${text}[${part}]` : `${text}.${part}`), document);
}

function isWithin(path: string, outer: string): boolean {
  return path === outer || path.startsWith(`${outer}.`) || path.startsWith(`${outer}[`);
}
