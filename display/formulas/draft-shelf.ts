import { z } from 'zod';
import { formulaSchema, type Formula } from '../../shared/documents/formula.ts';
import type { FormulaDraft } from './formula-draft.ts';
import { MOST_PLACES, newDraftKey } from './page-address.ts';

/** Where texts are kept by key on this device. */
export interface TextShelf {
  read(key: string): string | null;
  write(key: string, value: string): void;
}

const PREFIX = 'ovenward.formula-draft.';
const PLACES = Array.from({ length: MOST_PLACES }, (_, index) => index + 1);

/** As much of a kept draft as must be there for it to be taken up again; what is typed may be no formula yet. */
const documentSchema = z.looseObject({
  formula: z.looseObject({
    id: z.string(),
    name: z.string(),
    letters: z.string(),
    parts: z.array(z.looseObject({ name: z.string(), items: z.array(z.looseObject({})) })).min(1),
    method: z.array(z.looseObject({ id: z.string() })),
    takesBack: z.array(z.looseObject({})),
    sidePreps: z.array(z.looseObject({})),
  }),
  products: z.array(z.looseObject({ id: z.string(), way: z.array(z.looseObject({})) })),
});
const keptSchema = z.looseObject({
  key: z.string(),
  version: z.number(),
  productVersions: z.record(z.string(), z.number()),
  base: documentSchema,
  mine: documentSchema,
});

/** The draft that this device has kept of a formula; null where it has none, or one that cannot be read. */
export function keptDraft(shelf: TextShelf, key: string): FormulaDraft | null {
  const text = shelf.read(PREFIX + key);
  if (text === null || text === '') return null;
  const parsed = keptSchema.safeParse(jsonOrNull(text));
  if (!parsed.success || parsed.data.key !== key) return null;
  return { ...(parsed.data as unknown as FormulaDraft), told: [] };
}

/** A new formula that was begun on this device and not saved. */
export interface Begun {
  readonly kind: Formula['kind'];
  readonly place: number;
  readonly name: string;
}

/** All that were begun on this device and not saved. */
export function begunDrafts(shelf: TextShelf): readonly Begun[] {
  return formulaSchema.shape.kind.unwrap().options.flatMap((kind) =>
    PLACES.flatMap((place) => {
      const draft = keptDraft(shelf, newDraftKey(kind, place));
      return draft === null ? [] : [{ kind, place, name: draft.mine.formula.name }];
    }),
  );
}

/** The first place of a kind at which nothing is kept; null where all are taken. */
export function freePlace(shelf: TextShelf, kind: Formula['kind']): number | null {
  return PLACES.find((place) => keptDraft(shelf, newDraftKey(kind, place)) === null) ?? null;
}

/** Keeps a draft on this device until it is saved or put back. */
export function keepDraft(shelf: TextShelf, draft: FormulaDraft): void {
  shelf.write(PREFIX + draft.key, JSON.stringify({ ...draft, told: [] }));
}

/** Forgets what was kept of a formula. */
export function dropDraft(shelf: TextShelf, key: string): void {
  shelf.write(PREFIX + key, '');
}

function jsonOrNull(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}
