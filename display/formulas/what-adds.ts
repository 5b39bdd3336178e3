import type { Formula, Part, PartItem } from '../../shared/documents/formula.ts';
import { folded } from '../../shared/book/folded.ts';
import { PARTS } from '../words/formulas.ts';
import type { EditorContext } from './editor-context.ts';
import { keptG, totalG } from './part-edits.ts';

/** Something that can become a line of a part, by the name that one types. */
export interface Addable {
  readonly name: string;
  /** What it is, where it is no ingredient. */
  readonly what: string;
  readonly line: PartItem;
}

/** Everything that can be added to a part of a formula: earlier parts that nothing takes, ingredients, what other formulas make, and the pot's own seed. */
export function addables(formula: Formula, partIndex: number, { ingredients, entries }: EditorContext): readonly Addable[] {
  const taken = takenParts(formula.parts);
  const parts = formula.parts.slice(0, partIndex).filter(({ name }) => !taken.has(name));
  const hasSeed = formula.parts.some(({ items }) => items.some((line) => 'seed' in line));
  const others = entries.filter(({ id, kind }) => kind !== 'dough' && id !== formula.id);
  return [
    ...parts.map((part) => ({ name: part.name, what: PARTS.fromPart, line: { part: part.name, g: keptG(totalG(part.items)) } })),
    ...(formula.kind === 'ferment' && !hasSeed ? [{ name: PARTS.seed, what: '', line: { seed: true, g: 0 } as const }] : []),
    ...others.map(({ id, name, kind }) => ({
      name,
      what: kind === 'ferment' ? PARTS.ferment : PARTS.prep,
      line: { formula: id, g: 0 },
    })),
    ...ingredients.map(({ id, name }) => ({ name, what: '', line: { item: id, g: 0 } })),
  ];
}

/** What was meant by a name that was typed, however it was spelt; null where nothing has it. */
export function addableNamed(all: readonly Addable[], typed: string): Addable | null {
  const wanted = folded(typed.trim());
  if (wanted === '') return null;
  const exact = all.find(({ name }) => folded(name) === wanted);
  if (exact !== undefined) return exact;
  // The beginning of a name will do where only one begins so.
  const begun = all.filter(({ name }) => folded(name).startsWith(wanted));
  return begun.length === 1 ? (begun[0] ?? null) : null;
}

function takenParts(parts: readonly Part[]): ReadonlySet<string> {
  return new Set(parts.flatMap(({ items }) => items.flatMap((line) => ('part' in line ? [line.part] : []))));
}
