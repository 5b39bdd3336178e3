import type { Formula, Ingredient, Product } from '../../../shared/documents/formula.ts';
import type { ClientCommand, CommandOf } from '../../../shared/floor/commands.ts';
import { newestFormula } from '../../../shared/floor/contents.ts';
import { versionKey, type FloorState } from '../../../shared/floor/state.ts';
import { unreachable } from '../../../shared/result.ts';
import type { Seen } from './other-words.ts';

const MINUTE_MS = 60_000;

export const BOOK_WORDS = [
  ['adoptFormula', 2],
  ['adoptProduct', 1],
  ['adoptIngredient', 1],
  ['archiveFormula', 1],
  ['leaveLesson', 3],
  ['bringInBook', 1],
  ['planBatches', 1],
] as const;

export type BookWord = (typeof BOOK_WORDS)[number][0];

/** A change of the book, or batches by it: most of them could be meant, some are behind, impossible or about nothing. */
export function bookWord(type: BookWord, seen: Seen): ClientCommand {
  const { digits, state, workpiece } = seen;
  const formula = newestFormula(state)(workpiece.formulaId);
  switch (type) {
    case 'adoptFormula':
      return formula === null ? archiving(seen) : adoptFormula(formula, seen);
    case 'adoptProduct': {
      const product = digits.among(productsOf(state, workpiece.formulaId));
      if (product === undefined) return archiving(seen);
      return {
        type,
        fromVersion: versionSeen(seen, state.productVersions[product.id]),
        product: { ...product, bakeLossPct: digits.below(30) },
      };
    }
    case 'adoptIngredient': {
      const known = digits.among(state.ingredients?.document ?? []);
      const fresh: Ingredient = { id: `grain-${digits.below(9)}`, name: 'Grain', kind: 'seed', allergens: [] };
      if (known === undefined || digits.onceIn(2)) return { type, ingredient: fresh };
      return {
        type,
        ingredient: digits.onceIn(4) ? { ...known, kind: 'other' } : { ...known, name: `${known.name.slice(0, 50)} ${digits.below(99)}` },
      };
    }
    case 'archiveFormula':
      return archiving(seen);
    case 'leaveLesson':
      return leaving(seen);
    case 'bringInBook':
      return bringInBook(seen);
    case 'planBatches':
      return planBatches(seen);
    default:
      return unreachable(type);
  }
}

/** With another loss on the bench, renamed, longer in the bowl; now and then with a part that goes into nothing. */
function adoptFormula(formula: Formula, seen: Seen): CommandOf<'adoptFormula'> {
  const { digits, state } = seen;
  const [part] = formula.parts;
  const changed: Formula = { ...formula, handlingLossPct: digits.below(10), note: `tried ${digits.below(50)} times` };
  const parts = digits.onceIn(6) && part !== undefined ? [{ ...part, name: 'Left over' }, ...formula.parts] : formula.parts;
  return { type: 'adoptFormula', fromVersion: versionSeen(seen, state.formulaVersions[formula.id]), formula: { ...changed, parts } };
}

function archiving({ digits, state }: Seen): CommandOf<'archiveFormula'> {
  const back = digits.onceIn(2) ? digits.among(state.archivedFormulas) : undefined;
  const formulaId = back ?? digits.amongOr([...Object.keys(state.formulaVersions), 'sawdust'], 'sawdust');
  return { type: 'archiveFormula', formulaId, isArchived: back === undefined };
}

/** Minutes that were found of a step are left; now and then of one that is not there, or that says something else by now. */
function leaving({ digits, state, workpiece }: Seen): CommandOf<'leaveLesson'> {
  const step = digits.among(newestFormula(state)(workpiece.formulaId)?.method ?? []);
  const id = digits.onceIn(9) ? 'sawdust' : workpiece.formulaId;
  const assumedMin = digits.onceIn(9) ? 77 : (step?.minutes.target ?? 5);
  return {
    type: 'leaveLesson',
    subject: { kind: 'formula', id },
    stepId: step?.id ?? 'mix',
    assumedMin,
    foundMin: assumedMin + digits.below(3),
  };
}

/** A prep that is new or known, made of what the house has. */
function bringInBook({ digits, state }: Seen): CommandOf<'bringInBook'> {
  const n = digits.below(12);
  const item = digits.amongOr(
    (state.ingredients?.document ?? []).map(({ id }) => id),
    'sawdust',
  );
  const prep: Formula = {
    id: `soak-${n}`,
    name: `Soak ${n}`,
    letters: `Z${'abcdefghijkl'[n] ?? 'z'}`,
    kind: 'prep',
    parts: [{ name: 'Soak', role: 'preferment', items: [{ item, g: 100 + digits.below(9) }] }],
    takesBack: [],
    sidePreps: [],
    method: [{ id: 'soak', verb: 'weigh', kind: 'hands', minutes: { target: 2 }, toleranceMin: { late: 5 }, claims: [], additions: [] }],
  };
  return { type: 'bringInBook', ingredients: [], formulas: [prep], products: [], archived: digits.onceIn(3) ? [prep.id] : [] };
}

/** One more of what the thumb is at, or of another formula; of a day that is open as a rule. */
function planBatches({ digits, state, workpiece, nowMs }: Seen): CommandOf<'planBatches'> {
  const formulaId = digits.onceIn(3) ? digits.amongOr(Object.keys(state.formulaVersions), 'sawdust') : workpiece.formulaId;
  const formula = newestFormula(state)(formulaId);
  const product = formula?.kind === 'dough' ? digits.among(productsOf(state, formulaId)) : undefined;
  const pieces = 4 + digits.below(40);
  const cutG = product === undefined ? 0 : product.pieceG * pieces;
  const batch = {
    formulaId,
    plannedStartMs: nowMs + digits.below(120) * MINUTE_MS,
    grams: product === undefined ? 500 + 100 * digits.below(60) : Math.ceil(cutG * (1 + digits.below(3) / 10)),
    cuts: product === undefined ? [] : [{ productId: product.id, pieces, grams: cutG }],
  };
  return { type: 'planBatches', serviceDate: digits.amongOr([...state.openDates, ...state.closedDates], '2026-03-08'), batches: [batch] };
}

function productsOf(state: FloorState, formulaId: string): readonly Product[] {
  return Object.entries(state.productVersions)
    .flatMap(([id, version]) => state.products[versionKey(id, version)] ?? [])
    .filter((product) => product.formula === formulaId);
}

function versionSeen({ digits }: Seen, version = 0): number {
  return digits.onceIn(6) ? Math.max(0, version - 1) : version;
}
